"""reading.clause_limbs: a limb that opens a clause is what the clause tells of."""

from __future__ import annotations

from collections.abc import Callable

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Power in the left arm normal; the right arm has increased tone, power 4 and brisk reflexes.",
            [
                "strength_upper_limb left normal",
                "tone right arm abnormal increased",
                "strength_upper_limb right measured 4",
                "reflex_upper_limb right abnormal brisk",
            ],
        ),
        (
            "In the arms, tone is normal, power is full; in the legs, tone is normal, power is 4.",
            ["tone arm normal", "strength_upper_limb normal", "tone leg normal", "strength_lower_limb measured 4"],
        ),
        (
            "Left arm tone normal, power 4/5; leg tone normal, power 5/5.",
            [
                "tone left arm normal",
                "strength_upper_limb left measured 4",
                "tone leg normal",
                "strength_lower_limb measured 5",
            ],
        ),
        ("Legs normal, tone normal, power 5 throughout.", ["tone leg normal", "strength_lower_limb measured 5"]),
        ("Right arm in a cast, power otherwise full.", ["strength_all normal"]),
        ("Arms normal, power 5 in the legs.", ["strength_lower_limb measured 5"]),
    ],
)
def test_what_is_told_of_the_limb(rows: Callable[[str], list[str]], text: str, wanted: list[str]) -> None:
    """And nothing where another place is named, or where it is the limb of something else."""
    assert rows(text) == wanted
