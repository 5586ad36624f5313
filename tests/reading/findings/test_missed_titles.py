"""What is told a second time under one title. No source: how limbs are dictated one by one, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


RIGHT = "Right arm. Deltoid 5. Biceps 5."


@pytest.mark.parametrize("unheard", ["", "Lofton. "])
def test_what_is_told_again_is_of_another_title(rows: Rows, unheard: str) -> None:
    """Whichever that was."""
    said = f"{RIGHT} {unheard}Deltoid 5. Biceps 4. Triceps 4. Left leg. Hip flexion 3."
    assert rows(said) == [
        "strength_deltoid right measured 5",
        "strength_biceps right measured 5",
        "strength_deltoid measured 5",
        "strength_biceps measured 4",
        "strength_triceps measured 4",
        "strength_iliopsoas left measured 3",
    ]


def test_words_that_mean_nothing_may_have_been_the_title(rows: Rows) -> None:
    """So what stands between them and what is told again is of no side, too."""
    assert rows(f"{RIGHT} Lofton. Triceps 4. Deltoid 4.")[2] == "strength_triceps measured 4"


def test_a_correction_tells_it_of_the_same(rows: Rows) -> None:
    """And so does what is repeated, or found under a condition of its own."""
    assert rows(f"{RIGHT} Correction, biceps 4. Triceps 5.")[1:] == [
        "strength_biceps right measured 4",
        "strength_triceps right measured 5",
    ]
    said = "Left eye. Acuity 6/12. Acuity 6/9 with pinhole. Right eye. Acuity 6/6."
    assert rows(said)[1] == "visual_acuity left measured 6/9"


def test_one_more_word_of_a_disc_is_of_the_same_eye(rows: Rows) -> None:
    """Of what has no number, one thing said again is no list told again."""
    said = "Right arm. Tone normal. Pinprick normal. Pinprick normal. Deltoid 5. Left arm. Deltoid 5."
    assert "strength_deltoid right measured 5" in rows(said)


def test_other_places_told_right_before_are_told_again_too(rows: Rows) -> None:
    """The pinprick of the next limb is no second one of L5."""
    said = "Right leg. Pinprick reduced in L5. Vibration 4. Pinprick normal. Vibration 6."
    assert rows(said)[2] == "pinprick normal"
