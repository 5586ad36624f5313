"""Upright readings against their baseline."""

from __future__ import annotations

from reckoning.series import changes, pressure

from dictate.model import Side
from dictate.reckoning.changes import changes_of, inputs_of, times_of
from dictate.reckoning.readings import readings_of


def test_every_upright_reading_is_compared_with_the_lying_one():
    """Falls are positive for pressure, rises for rate."""
    found = changes("supine 138/82, 70 > 1 min 130/80, 74 > 5 min 116/74, 78")
    assert [(change.systolic, change.diastolic, change.rate) for change in found] == [(8, 2, 4), (22, 8, 8)]


def test_the_last_lying_reading_before_standing_is_the_baseline():
    """A repeat after rest replaces the first as baseline."""
    first = pressure("146/82", "supine")
    again = pressure("144/80", "supine", detail=("repeat",))
    (change,) = changes_of(readings_of((first, again, pressure("120/70", "standing", 1.0))))
    assert change.systolic == 24


def test_a_sitting_reading_is_the_baseline_only_without_a_lying_one():
    """Lying comes first; from_sitting asks for the other."""
    text = "supine 122/74 > sitting 124/76 > 5 min 128/78"
    assert changes(text)[0].systolic == -6
    assert changes("sitting 124/76 > 5 min 128/78")[0].systolic == -4


def test_another_arm_is_not_compared():
    """Right lying and left standing give no change."""
    lying = pressure("142/84", "supine", side=Side.RIGHT)
    assert changes_of(readings_of((lying, pressure("120/70", "standing", 1.0, side=Side.LEFT)))) == ()
    assert len(changes_of(readings_of((lying, pressure("120/70", "standing", 1.0))))) == 1


def test_without_baseline_or_upright_reading_there_is_no_change():
    """Nothing to compare, nothing computed."""
    assert changes("1 min 120/70") == ()
    assert changes("supine 120/70 > sitting 118/70") == ()


def test_a_palpable_pressure_gives_a_systolic_change_only():
    """98/80 to 70/palpable is a fall of 28 systolic."""
    (change,) = changes("supine 98/80 > standing 70/palpable")
    assert (change.systolic, change.diastolic) == (28, None)


def test_the_inputs_are_the_places_of_the_findings():
    """A figure points at every finding it was computed from."""
    assert inputs_of(changes("supine 138/82, 70 > 1 min 130/80, 74")) == (0, 1, 2, 3)


def test_times_are_written_as_said():
    """One, several, none."""
    found = changes("supine 138/82 > 1 min 130/80 > 3 min 124/78 > 5 min 116/74 > standing 116/74")
    assert times_of(list(found[:1])) == "1 min"
    assert times_of(list(found[:3])) == "1, 3 and 5 min"
    assert times_of(list(found[3:])) == "an unstated time"


def test_the_higher_arm_is_the_reference_when_the_arm_standing_was_not_said():
    """Whatever the order in which the arms were spoken. Source: ESC/ESH 2018 (from memory)."""
    right, left = pressure("142/84", "supine", side=Side.RIGHT), pressure("130/80", "supine", side=Side.LEFT)
    upright = pressure("120/70", "standing", 1.0)
    for order in ((right, left, upright), (left, right, upright)):
        (change,) = changes_of(readings_of(order))
        assert change.systolic == 22


def test_uprights_come_in_order_of_time():
    """Those without a time last."""
    found = changes("supine 138/82 > standing 116/74 > 5 min 124/78 > 1 min 130/80")
    assert [change.minutes for change in found] == [1, 5, None]
