"""reading.grading: words beside grades that only the whole sentence settles."""

from __future__ import annotations

from collections.abc import Callable

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Knee jerks brisk (3+) on both sides.", ["reflex_patellar both measured 3+"]),
        (
            "Deltoid worse on right, 4 minus, left 4.",
            ["strength_deltoid right measured 4-", "strength_deltoid left measured 4"],
        ),
        ("Reflexes depressed but present in the arms.", ["reflex_upper_limb abnormal depressed"]),
        (
            "Right biceps 2+, right triceps 1+, left both 2+.",
            [
                "reflex_biceps right measured 2+",
                "reflex_triceps right measured 1+",
                "reflex_triceps left measured 2+",
                "reflex_biceps left measured 2+",
            ],
        ),
        (
            "Weakness of the left deltoid and biceps, MRC 3.",
            ["strength_deltoid left measured 3", "strength_biceps left measured 3"],
        ),
        ("MRC 3 in the left arm.", ["strength_upper_limb left measured 3"]),
        (
            "Power 3/5 left upper and 4/5 left lower limb.",
            ["strength_upper_limb left measured 3", "strength_lower_limb left measured 4"],
        ),
        ("Arms normal, power 5 throughout.", ["strength_upper_limb measured 5"]),
        ("Arms normal, power 5 in the legs.", ["strength_lower_limb measured 5"]),
    ],
)
def test_what_the_words_are_of(rows: Callable[[str], list[str]], text: str, wanted: list[str]) -> None:
    """Each grade at its place, and nothing claimed of more than was named."""
    assert rows(text) == wanted
