"""Numbers in front of lines count them and are no values."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "1. Gait normal. 2. Romberg negative. 3. Power 5/5. 4. Reflexes 2+.",
            ["gait normal", "romberg normal", "strength_all measured 5", "reflex_all measured 2+"],
        ),
        (
            "7) Power 4/5\n8) Gait normal\n9) Pulse 72",
            ["strength_all measured 4", "gait normal", "heart_rate measured 72"],
        ),
        (
            "(1) Power 4/5\n(2) Gait normal\n(3) Pulse 72",
            ["strength_all measured 4", "gait normal", "heart_rate measured 72"],
        ),
    ],
)
def test_a_list_is_counted(rows, text, wanted):
    """Common practice, no source: findings as a numbered list."""
    assert rows(text) == wanted


def test_numbers_that_do_not_follow_each_other_are_values(rows):
    """Grades behind their muscles stay what they are."""
    assert rows("Deltoids. 5. Triceps. 5. Biceps. 4.") == [
        "strength_deltoid measured 5",
        "strength_triceps measured 5",
        "strength_biceps measured 4",
    ]
