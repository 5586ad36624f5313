"""As many grades in a row as names in a row."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Motor. On the left strength is five, five, four in deltoid, biceps and triceps.",
            [
                "strength_deltoid left measured 5",
                "strength_biceps left measured 5",
                "strength_triceps left measured 4",
            ],
        ),
        (
            "HF, KE, DF 4/5, 5/5, 3/5 on the right.",
            [
                "strength_iliopsoas right measured 4",
                "strength_quadriceps right measured 5",
                "strength_tibialis_anterior right measured 3",
            ],
        ),
        (
            "Reflexes: biceps, triceps, knees 2, 2, 3.",
            ["reflex_biceps measured 2+", "reflex_triceps measured 2+", "reflex_patellar measured 3+"],
        ),
        (
            "Motor. Biceps 5/5 4/5. UL all groups 5/5 5/5.",
            [
                "strength_biceps right measured 5",
                "strength_biceps left measured 4",
                "strength_upper_limb right measured 5",
                "strength_upper_limb left measured 5",
            ],
        ),
        (
            "Power: deltoid, biceps and triceps four on the left.",
            [
                "strength_deltoid left measured 4",
                "strength_biceps left measured 4",
                "strength_triceps left measured 4",
            ],
        ),
    ],
)
def test_grades_in_a_row(rows, text, wanted):
    """Each grade is of the name in its place; one grade for all is left to the reader. From memory, no source."""
    assert rows(text) == wanted
