"""Timed walks as written, their means and their changes."""

from __future__ import annotations

import pytest
from by_hand import finding

from dictate.grammar.walks import Walk, faster_percent, mean_walk, walk_change, walk_in, walk_of
from dictate.model import Component, Finding, Quantity, Status, Text


def walk(text: str, **more: object) -> Finding:
    """A timed walk."""
    return finding(Component.COORDINATION_GAIT, "timed_walk", Status.MEASURED, value=Text(words=text), **more)


@pytest.mark.parametrize(
    ("text", "found"),
    [("25 ft in 5 s", Walk(25, "ft", 5)), ("10 m in 12.5 s", Walk(10, "m", 12.5)), ("10 m in", None), ("10 m", None)],
)
def test_a_walk_is_read_from_how_it_is_written(text: str, found: Walk | None) -> None:
    """Distance, unit and time; anything less is none."""
    assert walk_in(text) == found
    assert walk_of(walk(text)) == found
    assert found is None or str(found) == text


def test_a_time_with_its_distance_beside_it_is_a_walk() -> None:
    """Seconds as the number and the distance as its note; a range, a bound or another item is none."""
    at = {"status": Status.MEASURED, "unit": "s"}
    place = Component.COORDINATION_GAIT
    timed = finding(place, "timed_walk", value=Quantity(number=5, note="25 ft in"), **at)
    assert walk_of(timed) == Walk(25, "ft", 5)
    assert walk_of(finding(place, "timed_walk", value=Quantity(number=5, upto=6, note="25 ft in"), **at)) is None
    assert walk_of(finding(place, "timed_up_and_go", value=Quantity(number=5, note="25 ft in"), **at)) is None
    assert walk_of(walk("25 ft in 5 s", detail=("more than",))) is None


def test_trials_are_one_walk_by_the_mean_of_their_times() -> None:
    """Of one distance only."""
    mean = mean_walk([walk("25 ft in 5.2 s"), walk("25 ft in 4.8 s")])
    assert mean is not None
    assert walk_of(mean) == Walk(25, "ft", 5)
    assert mean_walk([walk("25 ft in 5.2 s"), walk("10 m in 8 s")]) is None
    assert mean_walk([]) is None


def test_faster_is_said_of_speed() -> None:
    """Less time is more speed, and not by the same percentage."""
    assert faster_percent(6, 4.8) == pytest.approx(25)
    assert faster_percent(5, 6) == pytest.approx(-16.7, abs=0.04)


def test_only_walks_of_25_feet_are_judged() -> None:
    """Another distance, or one visit without a walk: nothing."""
    assert walk_change(Walk(25, "ft", 6), Walk(25, "ft", 5)).endswith(": met")
    assert walk_change(Walk(10, "m", 6), Walk(10, "m", 5)) == ""
    assert walk_change(Walk(25, "ft", 6), None) == ""
