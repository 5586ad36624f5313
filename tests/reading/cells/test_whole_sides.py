"""A side as a whole behind a list of the other one. No source: how lists are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


RIGHT = ["strength_deltoid right measured 4", "strength_biceps right measured 4"]


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("Right deltoid 4, biceps 4. Left normal.", "strength_all left normal"),
        ("Right deltoid 4, biceps 4, left 5 throughout.", "strength_all left measured 5"),
        ("On the right, deltoid 4, biceps 4; left full.", "strength_all left normal"),
        ("Right arm, deltoid 4, biceps 4, the left all 5.", "strength_all left measured 5"),
        ("Right deltoid 4, biceps 4. Left side five.", "strength_all left measured 5"),
        ("Right deltoid 4, biceps 4, left arm 5.", "strength_upper_limb left measured 5"),
    ],
)
def test_behind_a_list_it_is_the_whole_side(rows: Rows, said: str, left: str) -> None:
    """Not one more value of the muscle named last."""
    assert rows(f"Motor. {said}") == [*RIGHT, left]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Right deltoid 4, left 5.", ["strength_deltoid right measured 4", "strength_deltoid left measured 5"]),
        (
            "Right deltoid 4, left 5. Right biceps 4. Left 5.",
            [
                "strength_deltoid right measured 4",
                "strength_deltoid left measured 5",
                "strength_biceps right measured 4",
                "strength_biceps left measured 5",
            ],
        ),
        ("Right deltoid 4, left arm normal.", ["strength_deltoid right measured 4", "strength_upper_limb left normal"]),
    ],
)
def test_behind_one_muscle_it_is_that_muscle(rows: Rows, said: str, found: list[str]) -> None:
    """Unless a limb is named."""
    assert rows(f"Motor. {said}") == found


def test_jerks_are_told_so_too(rows: Rows) -> None:
    """Their scale has an item for all of them as well."""
    found = rows("Reflexes. Right biceps 3+, knee 3+, left normal.")
    assert found == ["reflex_biceps right measured 3+", "reflex_patellar right measured 3+", "reflex_all left normal"]
