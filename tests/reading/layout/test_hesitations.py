"""Hesitations. No source: how people speak."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dictate.reading.layout.hesitations import without_hesitations
from dictate.reading.tokens import Token

Cut = Callable[[str], list[Token]]
Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("reduced, um, on the left leg", "reduced on the left leg"),
        ("knees three plus, um, ankles one", "knees three plus , ankles one"),
        ("Um, so the tone is, er, uh, normal", "so the tone is , normal"),
        ("right, two, um, two plus left", "right , two plus left"),
        ("the pulse is twenty, um, thirty", "the pulse is twenty , thirty"),
        ("seen in the ER, well", "seen in the ER , well"),
    ],
)
def test_hesitations_say_nothing(cut: Cut, said: str, left: str) -> None:
    """Nor do their commas, unless something new may begin; a number begun and said anew is said once."""
    assert " ".join(token.text for token in without_hesitations(cut(said), ["um", "uh", "er"])) == left


def test_a_place_behind_a_hesitation(rows: Rows) -> None:
    """Is of what was told before it."""
    assert rows("Sensory. Pinprick is reduced, um, on the left leg.") == ["pinprick left leg abnormal reduced"]
    assert rows("Reflexes. Knees three plus right, two, um, two plus left.") == [
        "reflex_patellar right measured 3+",
        "reflex_patellar left measured 2+",
    ]
