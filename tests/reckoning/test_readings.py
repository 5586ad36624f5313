"""Readings of pressure and rate."""

from __future__ import annotations

from reckoning.series import pressure, rate, series

from dictate.reckoning.readings import conflicting, readings_of


def test_a_rate_behind_a_pressure_of_one_position_is_one_reading():
    """Pressure and pulse of one position and minute belong together."""
    (reading,) = readings_of((pressure("142/84", "supine"), rate(70, "supine")))
    assert (str(reading.pressure), reading.rate, reading.places) == ("142/84", 70, (0, 1))


def test_a_rate_of_another_position_is_a_reading_of_its_own():
    """A rate is not lent to a pressure taken in another position."""
    assert len(readings_of((pressure("142/84", "supine"), rate(70, "standing")))) == 2


def test_readings_after_a_manoeuvre_and_impossible_ones_are_left_out():
    """After stairs nothing is compared; nor is a pressure whose diastolic is not below."""
    assert readings_of((pressure("142/84", "supine", site="stairs"), pressure("84/142", "supine"))) == ()


def test_a_palpable_pressure_is_a_reading():
    """70/palpable has a systolic value."""
    assert len(readings_of((pressure("70/palpable", "standing"),))) == 1


def test_two_values_of_one_position_conflict():
    """Without anything to tell them apart neither is chosen."""
    both = readings_of((pressure("130/80", "sitting"), pressure("150/80", "sitting")))
    assert conflicting(both) == both


def test_a_repeat_does_not_conflict():
    """A reading said to be a repeat stands beside the first."""
    first = pressure("146/82", "supine")
    assert conflicting(readings_of((first, pressure("144/80", "supine", detail=("repeat",))))) == ()
    quoted = pressure("144/80", "supine")
    evidence = (quoted.evidence[0].model_copy(update={"quote": "repeat supine 144 over 80"}),)
    assert conflicting(readings_of((first, quoted.model_copy(update={"evidence": evidence})))) == ()


def test_one_pressure_with_two_rates_conflicts():
    """The same pressure twice with two rates leaves the rate open."""
    assert len(conflicting(readings_of(series("supine 120/80, 60 > supine 120/80, 90")))) == 2


def test_when_names_position_and_time():
    """The words used in figures."""
    readings = readings_of(series("supine 120/80 > 3 min 118/80 > standing 116/80"))
    assert [reading.when for reading in readings] == ["supine", "standing at 3 min", "standing, time not said"]


def test_seconds_are_no_heart_rate():
    """A number with a word or unit of its own was not counted in a minute."""
    seconds = rate(15, "standing").model_copy(update={"unit": "s"})
    assert readings_of((seconds,)) == ()


def test_a_rate_far_from_its_pressure_finds_it():
    """The only ones of their position and minute belong together, in either order."""
    lying = (rate(70, "supine"), pressure("120/70", "standing", 1.0), pressure("142/84", "supine"))
    supine = next(one for one in readings_of(lying) if one.position == "supine")
    assert (str(supine.pressure), supine.rate, supine.places) == ("142/84", 70, (0, 2))


def test_minutes_of_lying_are_read_from_the_detail():
    """As said with the reading; none when not said."""
    (reading,) = readings_of((pressure("142/84", "supine", detail=("after 5 min lying",)),))
    assert reading.lying == 5
    assert readings_of((pressure("142/84", "supine"),))[0].lying is None


def test_early_minutes_are_seconds():
    """A quarter of a minute is 15 s."""
    assert readings_of((pressure("142/84", "standing", 0.25),))[0].when == "standing at 15 s"
    assert readings_of((pressure("142/84", "standing", 0.0),))[0].when == "standing at once"
