"""Mean and pulse pressure, arms."""

from __future__ import annotations

from reckoning.series import figures, pressure

from dictate.model import Pressure, Side
from dictate.reckoning.pressures import mean_pressure, pulse_pressure


def test_no_mean_of_a_palpable_pressure():
    """Without diastolic there is no mean and no pulse pressure."""
    palpable = Pressure(systolic=70)
    assert mean_pressure(palpable) is None
    assert pulse_pressure(palpable) is None
    assert figures("mean arterial pressure", (pressure("70/palpable"),)) == ()


def test_no_mean_of_an_impossible_pressure():
    """84/142 is asked about, not computed with."""
    assert figures("mean arterial pressure", (pressure("84/142"),)) == ()


def test_the_mean_names_its_reading():
    """It stands under its reading, which names arm and position."""
    (figure,) = figures("mean arterial pressure", (pressure("142/84", "supine", side=Side.RIGHT),))
    assert figure.text.startswith("142/84: mean pressure 103 mmHg, pulse pressure 58")
    assert (figure.value, figure.inputs) == (103.3, (0,))


def test_arms_in_different_positions_are_not_compared():
    """Right lying and left standing."""
    name = "difference between the arms"
    right = pressure("142/84", "supine", side=Side.RIGHT)
    assert figures(name, (right, pressure("122/80", "standing", 1.0, side=Side.LEFT))) == ()
    assert figures(name, (right, pressure("122/80", "supine"))) == ()


def test_a_repeated_arm_is_not_chosen():
    """Two readings of one arm leave the difference open."""
    name = "difference between the arms"
    right, left = pressure("142/84", side=Side.RIGHT), pressure("122/80", side=Side.LEFT)
    assert len(figures(name, (right, left))) == 1
    assert figures(name, (right, left, pressure("130/80", side=Side.LEFT))) == ()
