"""A word shared by two names of two sides, and a name that a side parts. No source: from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Right hip flexion and left knee extension are four.",
            ["strength_iliopsoas right measured 4", "strength_quadriceps left measured 4"],
        ),
        (
            "The right arm and the left leg are weak.",
            ["strength_upper_limb right abnormal weak", "strength_lower_limb left abnormal weak"],
        ),
        (
            "Both knee jerks and both ankle jerks are two plus.",
            ["reflex_patellar both measured 2+", "reflex_achilles both measured 2+"],
        ),
    ],
)
def test_the_word_is_said_of_each(rows: Rows, text: str, wanted: list[str]) -> None:
    assert rows(text) == wanted


def test_the_other_limb_less(rows: Rows) -> None:
    """Neither is lost."""
    assert rows("The right leg is spastic, the left slightly.") == [
        "tone right leg abnormal spastic",
        "tone left leg abnormal spastic slightly",
    ]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Extension of the right knee is four.", ["strength_quadriceps right measured 4"]),
        ("Rest tremor of the right hand.", ["tremor right hand present rest"]),
    ],
)
def test_a_joint_is_of_its_movement(rows: Rows, text: str, wanted: list[str]) -> None:
    """And the place of a sign stays its place."""
    assert rows(text) == wanted
