"""Mean pressure, pulse pressure and the difference between the arms.

Sources: DeMers D, Wachs D. Physiology, Mean Arterial Pressure. StatPearls (looked up, secondary) · Clark CE et al.
Hypertension 2021;77:650 and a table of guidelines on the difference between the arms (looked up). Values are
arithmetic.
"""

from __future__ import annotations

import pytest
from reckoning.series import figures, pressure

from dictate.grammar.units import convert
from dictate.model import Pressure, Side
from dictate.reckoning.pressures import mean_pressure, pulse_pressure


@pytest.mark.parametrize(
    ("systolic", "diastolic", "mean", "pulse"),
    [
        (120, 80, 93.3, 40),
        (142, 84, 103.3, 58),
        (114, 66, 82.0, 48),
        (90, 60, 70.0, 30),
        (200, 110, 140.0, 90),
        (118, 64, 82.0, 54),
        (180, 62, 101.3, 118),
        (118, 62, 80.7, 56),
    ],
)
def test_mean_and_pulse_pressure(systolic, diastolic, mean, pulse):
    """Diastolic plus a third of the difference. Source: DeMers and Wachs (arithmetic)."""
    value = Pressure(systolic=systolic, diastolic=diastolic)
    assert mean_pressure(value) == pytest.approx(mean, abs=0.05)
    assert pulse_pressure(value) == pulse


@pytest.mark.parametrize(
    ("left", "difference", "limits"),
    [
        ("138/82", 4, ()),
        ("132/80", 10, ()),
        ("131/80", 11, (10,)),
        ("127/78", 15, (10,)),
        ("126/78", 16, (10, 15)),
        ("122/76", 20, (10, 15)),
        ("121/76", 21, (10, 15, 20)),
    ],
)
def test_the_difference_between_the_arms(left, difference, limits):
    """Above 10, 15, 20: sources differ, each limit is named. Source: Clark 2021; guideline table (looked up)."""
    readings = (pressure("142/84", "sitting", side=Side.RIGHT), pressure(left, "sitting", side=Side.LEFT))
    (figure,) = figures("difference between the arms", readings)
    assert figure.value == difference
    for limit in (10, 15, 20):
        assert (f"{limit} (" in figure.text and "not above" not in figure.text) is (limit in limits)
    assert "one pair only" in figure.text


@pytest.mark.parametrize(("right", "left", "difference"), [("120/80", "141/80", -21), ("120/80", "120/82", 0)])
def test_the_sign_of_the_difference(right, left, difference):
    """Right minus left; the text names the higher arm. Source: arithmetic."""
    (figure,) = figures(
        "difference between the arms", (pressure(right, side=Side.RIGHT), pressure(left, side=Side.LEFT))
    )
    assert figure.value == difference
    assert ("left higher" if difference else "equal") in figure.text


@pytest.mark.parametrize(
    "stances",
    [(("supine", None), ("standing", 1.0)), (("standing", 1.0), ("standing", 3.0)), (("", None), ("supine", None))],
)
def test_arms_of_different_positions_or_minutes_are_not_compared(stances):
    """Right lying and left standing, or minutes apart: no difference. Source: own rule."""
    (one, minute), (other, later) = stances
    readings = (pressure("142/84", one, minute, side=Side.RIGHT), pressure("121/76", other, later, side=Side.LEFT))
    assert figures("difference between the arms", readings) == ()


@pytest.mark.parametrize(("number", "unit", "kilograms"), [(150, "[lb_av]", 68.04), (71, "kg", 71)])
def test_pounds_are_weighed_in_kilograms(number, unit, kilograms):
    """150 lb are 68.04 kg: 0.45359237 kg a pound, exact by definition (from memory); arithmetic."""
    assert convert(number, unit, "kg") == pytest.approx(kilograms, abs=0.005)


def test_fahrenheit():
    """98.6 are 37.0 degrees Celsius. Source: definition, (F - 32) * 5/9."""
    assert convert(98.6, "[degF]", "Cel") == pytest.approx(37.0)
