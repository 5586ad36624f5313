"""The standing clock."""

from __future__ import annotations

from dictate.live.clock import StandingClock


def test_marks_ring_once() -> None:
    """At 1, 3 and 5 minutes; when a look comes late, what is past is not told as if it were now."""
    clock = StandingClock()
    assert clock.due(100) == []
    clock.start(10)
    assert clock.due(69) == []
    assert clock.due(70) == [1.0]
    assert clock.due(71) == []
    assert clock.due(400) == [5.0]
    assert clock.due(900) == []


def test_minutes_since_standing() -> None:
    """None before it was started; shown as minutes and seconds."""
    clock = StandingClock()
    assert clock.minutes(50) is None
    assert clock.show(50) == ""
    clock.start(10)
    assert clock.minutes(5) is None
    assert clock.minutes(100) == 1.5
    assert clock.show(100) == "1:30"
    clock.stop()
    assert not clock.runs


def test_started_anew_rings_anew() -> None:
    """A second standing has its own minutes."""
    clock = StandingClock()
    clock.start(0)
    clock.due(60)
    clock.start(100)
    assert clock.due(160) == [1.0]


def test_time_without_sound() -> None:
    """It goes on while nothing is recorded."""
    clock = StandingClock()
    clock.miss(100)
    assert not clock.runs
    clock.start(10)
    clock.miss(100)
    assert clock.due(70) == [1.0]
    assert clock.show(70) == "2:40"
