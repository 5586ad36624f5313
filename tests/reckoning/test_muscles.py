"""Muscle sum score."""

from __future__ import annotations

from reckoning.series import figures, muscles

MUSCLE = "muscle sum score"


def test_the_muscle_sum_says_which_movement_is_missing():
    """Eleven grades give no total; ten say nothing at all."""
    (figure,) = figures(MUSCLE, muscles("5 5 5 5 5 5", "5 5 5 5 5 -"))
    assert figure.value is None
    assert "ankle dorsiflexion left is missing" in figure.text
    assert figures(MUSCLE, muscles("5 5 5 5 5 5", "5 5 5 5 - -")) == ()


def test_two_grades_of_one_muscle_give_no_sum():
    """None of them is chosen."""
    twice = (*muscles("5 5 5 5 5 5", "5 5 5 5 5 5"), *muscles("4 - - - - -", "- - - - - -"))
    assert figures(MUSCLE, twice) == ()
