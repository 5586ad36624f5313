"""Sums of scales."""

from __future__ import annotations

from reckoning.series import coma, figures, finding, muscles

from dictate.model import Component, Score
from dictate.reckoning.scales import STROKE_PARTS

COMA, STROKE, MUSCLE = "coma scale sum", "stroke scale sum", "muscle sum score"


def stroke(*points: float) -> tuple:
    """Stroke scale items in their order."""
    return tuple(
        finding(item, Score(points=float(one)), component=Component.COORDINATION_GAIT)
        for item, one in zip(STROKE_PARTS, points, strict=False)
    )


def test_the_coma_sum_is_computed_when_no_total_was_said():
    """E3 V4 M6 gives 13, shown as computed."""
    (figure,) = figures(COMA, coma(3, 4, 6))
    assert (figure.value, figure.inputs) == (13, (0, 1, 2))
    assert "computed" in figure.text


def test_no_coma_sum_beside_an_equal_total():
    """What was dictated is not computed again; a differing total is."""
    assert figures(COMA, coma(3, 4, 6, 13)) == ()
    assert len(figures(COMA, coma(4, 5, 6, 14))) == 1


def test_no_coma_sum_from_missing_untestable_impossible_or_repeated_parts():
    """Never a total from missing parts."""
    assert figures(COMA, coma(3, None, 6)) == ()
    assert figures(COMA, coma(3, "T", 6)) == ()
    assert figures(COMA, coma(3, 6, 6)) == ()
    assert figures(COMA, coma(0, 5, 6)) == ()
    assert figures(COMA, (*coma(3, 4, 6), *coma(4, None, None))) == ()


def test_the_stroke_sum_needs_all_fifteen_items():
    """Fourteen items give no total."""
    assert figures(STROKE, stroke(*[0] * 14)) == ()
    (figure,) = figures(STROKE, stroke(*[0] * 5, 1, 0, 0, 1, 1, 0, 0, 0, 1, 0))
    assert figure.value == 4
    assert figures(STROKE, stroke(9, *[0] * 14)) == ()


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
