"""Retinal pressure, facial pulse and bruits."""

from __future__ import annotations

from reckoning.series import figures, finding, pressure

from dictate.model import Choice, Position, Quantity, Side, Status

RETINAL, PULSES = "retinal artery pressure", "facial pulse and bruits"


def eye(side: Side | None, number: float, **more: object):
    """Retinal diastolic pressure of one eye."""
    return finding("retinal_artery_diastolic", Quantity(number=number), side=side, unit="mm[Hg]", **more)


def pulse(side: Side | None, choice: str):
    """Facial pulse on compression."""
    status = Status.NORMAL if choice == "unchanged" else Status.ABNORMAL
    return finding("facial_pulse_on_compression", Choice(choice=choice), side=side, status=status)


def test_each_eye_is_compared_with_the_arm_and_the_other_eye():
    """Brachial 60, right 30, left 40."""
    (figure,) = figures(RETINAL, (eye(Side.RIGHT, 30), eye(Side.LEFT, 40), pressure("120/60", side=Side.RIGHT)))
    assert "right 30 mmHg below the arm (60; ratio 0.50)" in figure.text
    assert "left 20 mmHg below the arm (60; ratio 0.67)" in figure.text
    assert "right eye lower by 10 mmHg (25 %)" in figure.text
    assert "no limit is built in" in figure.text


def test_the_arm_of_the_same_side_is_taken():
    """And the position of the reading, where it was said."""
    arms = (pressure("120/60", side=Side.RIGHT), pressure("130/70", side=Side.LEFT))
    (figure,) = figures(RETINAL, (eye(Side.LEFT, 40), *arms))
    assert "left 30 mmHg below the arm (70;" in figure.text
    lying = (pressure("120/60", "supine"), pressure("110/80", "standing", 1.0))
    (figure,) = figures(RETINAL, (eye(Side.LEFT, 40, position=Position.STANDING), *lying))
    assert "left 40 mmHg below the arm (80;" in figure.text
    (figure,) = figures(RETINAL, (eye(Side.LEFT, 40), *lying))
    assert "left 20 mmHg below the arm (60;" in figure.text


def test_no_gap_from_an_open_arm_and_no_comparison_of_one_eye():
    """Two arm pressures that differ, none, or no side."""
    two = (pressure("120/60"), pressure("110/80"))
    assert figures(RETINAL, (eye(Side.LEFT, 40), *two)) == ()
    assert figures(RETINAL, (eye(Side.LEFT, 40),)) == ()
    assert figures(RETINAL, (eye(None, 40), pressure("120/60"))) == ()
    (figure,) = figures(RETINAL, (eye(Side.LEFT, 40), eye(Side.RIGHT, 40)))
    assert "both eyes alike" in figure.text
    assert figures(RETINAL, (eye(Side.LEFT, 40), eye(Side.BOTH, 42), pressure("120/60"))) == ()


def test_pulse_and_bruits_stand_side_by_side():
    """With the words of caution, and no verdict."""
    bruit = finding("carotid_bruit", side=Side.LEFT, status=Status.PRESENT)
    (figure,) = figures(PULSES, (pulse(Side.LEFT, "abolished"), pulse(Side.RIGHT, "unchanged"), bruit))
    assert figure.text.startswith(
        "Facial pulse left abolished, facial pulse right unchanged, carotid bruit left present."
    )
    assert "cannot be told apart" in figure.text
    assert "39 of 100" in figure.text
    assert figure.inputs == (0, 1, 2)


def test_an_unchanged_pulse_says_nothing_more():
    """Unchanged is the usual answer; a bruit alone stands in its own line."""
    bruit = finding("carotid_bruit", side=Side.LEFT, status=Status.PRESENT)
    assert figures(PULSES, (pulse(Side.BOTH, "unchanged"), bruit)) == ()
    assert figures(PULSES, (bruit,)) == ()
