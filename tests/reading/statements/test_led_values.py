"""Grades in front of their names. No source: how strengths and jerks are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        (
            "4/5 hip flexion, 4+/5 knee flexion and 3/5 ankle dorsiflexion",
            ["strength_iliopsoas 4", "strength_hamstrings 4+", "strength_tibialis_anterior 3"],
        ),
        ("Motor: 5/5 deltoid, 4/5 biceps", ["strength_deltoid 5", "strength_biceps 4"]),
        ("absent ankle jerks, 3+ knee jerks", ["reflex_achilles 0", "reflex_patellar 3+"]),
        ("grade 4 power in hip flexion, grade 5 in knee extension", ["strength_iliopsoas 4", "strength_quadriceps 5"]),
    ],
)
def test_each_grade_is_of_the_name_behind_it(rows: Rows, said: str, wanted: list[str]) -> None:
    """In a row that began with a grade."""
    assert [row.replace(" measured", "") for row in rows(said)] == wanted


@pytest.mark.parametrize("said", ["deltoid, 5 biceps, 4 triceps, 5", "deltoid 5, biceps 4, triceps 5"])
def test_a_row_that_begins_with_a_name_keeps_its_grades_behind(rows: Rows, said: str) -> None:
    """Wherever a recogniser put its commas."""
    assert rows(said) == ["strength_deltoid measured 5", "strength_biceps measured 4", "strength_triceps measured 5"]


def test_the_whole_behind_a_grade_says_only_what_was_graded(rows: Rows) -> None:
    """The strength of a muscle is no strength of everything."""
    assert rows("4/5 strength in the left hip flexors") == ["strength_iliopsoas left measured 4"]
    assert rows("5/5 strength in the upper extremities") == ["strength_upper_limb measured 5"]
