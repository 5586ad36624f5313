"""Sides that open a list by themselves. No source: how limbs are dictated one by one, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]

ARMS = [
    "tone right normal",
    "pronator_drift right absent",
    "strength_deltoid right measured 4",
    "strength_biceps right measured 4",
    "tone left abnormal increased",
    "pronator_drift left present",
    "strength_deltoid left measured 3",
    "strength_biceps left measured 3",
]


@pytest.mark.parametrize(
    "said",
    [
        "Right, tone normal. No drift. Deltoid 4, biceps 4. Left, tone increased, pronator drift, deltoid 3, biceps 3.",
        "Right tone normal. No drift. Deltoid 4, biceps 4. Left tone increased. Pronator drift, deltoid 3, biceps 3.",
    ],
)
def test_a_side_alone_is_a_title_where_the_other_opens_the_same_list(rows: Rows, said: str) -> None:
    """With a comma behind it or without."""
    assert rows(said) == ARMS


def test_a_side_alone_is_of_the_name_behind_it(rows: Rows) -> None:
    """Where no list is told again."""
    assert rows("Right tone normal. Left tone increased. Deltoid 4.")[2] == "strength_deltoid measured 4"
    assert rows("Right deltoid 5, biceps 5. Left deltoid 4, biceps 4. Triceps 5.")[4] == "strength_triceps measured 5"


def test_a_title_may_be_followed_by_a_denial_or_a_word_for_how_it_was(rows: Rows) -> None:
    """ "No drift", "normal tone"."""
    said = "Right arm, no drift, normal tone, power 5, left arm, no drift, increased tone, power 4."
    assert rows(said)[3:5] == ["pronator_drift left absent", "tone left upper_limb abnormal increased"]
