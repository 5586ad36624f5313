"""Visual acuity."""

from __future__ import annotations

from reckoning.series import figures, finding

from dictate.model import Acuity, Component, Side, Text

NAME = "visual acuity"


def acuity(text: str, side: Side | None, *detail: str):
    """One eye."""
    return finding("visual_acuity", Acuity(text=text), component=Component.CRANIAL_NERVES, side=side, detail=detail)


def test_both_eyes_are_compared():
    """20/30 and 20/40: decimal, logMAR, lines."""
    (figure,) = figures(NAME, (acuity("20/30", Side.RIGHT), acuity("20/40", Side.LEFT)))
    assert (
        figure.text == "Acuity: right 20/30 = 0.67 (logMAR 0.18), left 20/40 = 0.5 (logMAR 0.30); left 1.2 lines worse"
    )
    assert figure.inputs == (0, 1)


def test_eyes_read_differently_are_not_compared():
    """One corrected, the other not said to be."""
    (figure,) = figures(NAME, (acuity("20/30", Side.RIGHT, "corrected"), acuity("20/40", Side.LEFT)))
    assert figure.text.endswith("; not compared: read under different words")
    (figure,) = figures(NAME, (acuity("6/9", Side.RIGHT, "corrected"), acuity("6/6", Side.LEFT, "corrected")))
    assert figure.text.endswith("; right 1.8 lines worse")
    assert "right 6/9 corrected = 0.67" in figure.text


def test_an_eye_read_twice_is_not_compared():
    """With and without pinhole: both are converted."""
    twice = (acuity("20/60", Side.RIGHT), acuity("20/30", Side.RIGHT, "pinhole"), acuity("20/20", Side.LEFT))
    (figure,) = figures(NAME, twice)
    assert "worse" not in figure.text
    assert figure.text.count("logMAR") == 3


def test_what_adds_nothing_is_not_written():
    """Both eyes 20/20; words; equal eyes are not compared."""
    assert figures(NAME, (acuity("20/20", Side.BOTH),)) == ()
    words = finding("visual_acuity", Text(words="counting fingers"), component=Component.CRANIAL_NERVES)
    assert figures(NAME, (words,)) == ()
    (figure,) = figures(NAME, (acuity("20/40", Side.RIGHT), acuity("6/12", Side.LEFT)))
    assert "worse" not in figure.text


def test_words_stay_words_beside_a_fraction():
    """Counting fingers on one side is not converted, nor compared."""
    words = finding("visual_acuity", Text(words="counting fingers"), component=Component.CRANIAL_NERVES, side=Side.LEFT)
    (figure,) = figures(NAME, (acuity("20/40", Side.RIGHT), words))
    assert figure.text == "Acuity: right 20/40 = 0.5 (logMAR 0.30)"
