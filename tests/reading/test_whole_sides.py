"""A side as a whole behind a list of the other one. No source: how lists are dictated, from memory."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.pipeline import Typed, examine


def rows(grammar: Grammar, text: str) -> list[str]:
    exam = examine([Typed("x", text)], engine=None, grammar=grammar)
    return [" ".join(filter(None, (one.item, one.side, str(one.value or one.status.value)))) for one in exam.findings]


RIGHT = ["strength_deltoid right 4", "strength_biceps right 4"]


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("Right deltoid 4, biceps 4. Left normal.", "strength_all left normal"),
        ("Right deltoid 4, biceps 4, left 5 throughout.", "strength_all left 5"),
        ("On the right, deltoid 4, biceps 4; left full.", "strength_all left normal"),
        ("Right arm, deltoid 4, biceps 4, the left all 5.", "strength_all left 5"),
        ("Right deltoid 4, biceps 4. Left side five.", "strength_all left 5"),
        ("Right deltoid 4, biceps 4, left arm 5.", "strength_upper_limb left 5"),
    ],
)
def test_behind_a_list_it_is_the_whole_side(grammar: Grammar, said: str, left: str) -> None:
    """Not one more value of the muscle named last."""
    assert rows(grammar, f"Motor. {said}") == [*RIGHT, left]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Right deltoid 4, left 5.", ["strength_deltoid right 4", "strength_deltoid left 5"]),
        (
            "Right deltoid 4, left 5. Right biceps 4. Left 5.",
            [
                "strength_deltoid right 4",
                "strength_deltoid left 5",
                "strength_biceps right 4",
                "strength_biceps left 5",
            ],
        ),
        ("Right deltoid 4, left arm normal.", ["strength_deltoid right 4", "strength_upper_limb left normal"]),
    ],
)
def test_behind_one_muscle_it_is_that_muscle(grammar: Grammar, said: str, found: list[str]) -> None:
    """Unless a limb is named."""
    assert rows(grammar, f"Motor. {said}") == found


def test_jerks_are_told_so_too(grammar: Grammar) -> None:
    """Their scale has an item for all of them as well."""
    found = rows(grammar, "Reflexes. Right biceps 3+, knee 3+, left normal.")
    assert found == ["reflex_biceps right 3+", "reflex_patellar right 3+", "reflex_all left normal"]
