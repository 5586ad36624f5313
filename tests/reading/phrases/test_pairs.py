"""Two sides said together with two values."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Knee jerks right and left 2+ and 3+.",
            ["reflex_patellar right measured 2+", "reflex_patellar left measured 3+"],
        ),
        (
            "Knee jerks left and right 2+ and 3+.",
            ["reflex_patellar left measured 2+", "reflex_patellar right measured 3+"],
        ),
        (
            "Pupils 4 and 3 mm right and left respectively.",
            ["pupil_size right measured 4", "pupil_size left measured 3"],
        ),
        (
            "Blood pressure right and left arm 140/80 and 130/78.",
            ["blood_pressure right measured 140/80", "blood_pressure left measured 130/78"],
        ),
        (
            "Deltoid four on the right and left five.",
            ["strength_deltoid right measured 4", "strength_deltoid left measured 5"],
        ),
        ("Deltoid right and left 4.", ["strength_deltoid both measured 4"]),
        ("Deltoid right and left 4 and biceps 5.", ["strength_deltoid both measured 4", "strength_biceps measured 5"]),
        (
            "Power 5/5 right and left. Reflexes 2+ right and left.",
            ["strength_all both measured 5", "reflex_all both measured 2+"],
        ),
    ],
)
def test_two_values_of_two_sides_are_dealt_out_in_order(rows, text, wanted):
    """One value is of both sides; two are one for each."""
    assert rows(text) == wanted
