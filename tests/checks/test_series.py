"""Postural series among the findings."""

from __future__ import annotations

from dictate.checks.series import readings, without_position, without_time


def test_only_measured_values_of_no_manoeuvre_belong_to_a_series(said, exam):
    """Not examined, and after stairs, are no readings."""
    one = exam(
        said("blood_pressure", "measured", "140/80", position="supine"),
        said("blood_pressure", "not_examined"),
        said("blood_pressure", "measured", "150/80", site="stairs"),
    )
    assert readings(one, "blood_pressure") == one.findings[:1]


def test_other_items_are_not_drawn_in_by_the_scope(said, exam):
    """The dizziness scope asks for the position of pressures; scoped=False leaves it out."""
    one = exam(said("blood_pressure", "measured", "140/80"), scope="dizziness")
    assert len(list(without_position(one, "blood_pressure"))) == 1
    assert list(without_position(one, "blood_pressure", scoped=False)) == []


def test_tilted_readings_need_their_time_too(said, exam):
    """Upright is standing or tilted."""
    one = exam(
        said("blood_pressure", "measured", "140/80", position="supine"),
        said("blood_pressure", "measured", "120/80", position="tilted"),
    )
    assert list(without_time(one, "blood_pressure")) == [one.findings[1]]
