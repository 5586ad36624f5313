"""Retinal against brachial pressure.

Sources: arithmetic; the gap after Perry RB, Rose JC. Circulation 1958;18:864 (looked up: opening page). Three limits of
three kinds stand in the literature (10 %, 20 %, 5 mm[Hg]): none is built in.
"""

from __future__ import annotations

import pytest
from reckoning.series import figures, finding, pressure

from dictate.model import Quantity, Side
from dictate.reckoning.vessels import percent_lower


@pytest.mark.parametrize(("arm", "eye", "gap", "ratio"), [(60, 30, 30, "0.50"), (80, 60, 20, "0.75")])
def test_the_gap_to_the_arm(arm, eye, gap, ratio):
    """Brachial minus retinal diastolic, and their ratio. Source: arithmetic."""
    reading = finding("retinal_artery_diastolic", Quantity(number=eye), side=Side.RIGHT, unit="mm[Hg]")
    (figure,) = figures("retinal artery pressure", (reading, pressure(f"130/{arm}")))
    assert f"right {gap} mmHg below the arm ({arm}; ratio {ratio})" in figure.text


@pytest.mark.parametrize(
    ("one", "other", "percent"), [(60, 54, 10), (60, 48, 20), (60, 49, 18.3), (48, 60, 20), (60, 60, 0)]
)
def test_the_percent_difference(one, other, percent):
    """(higher - lower) / higher. Source: own formula; papers do not agree on the base."""
    assert percent_lower(one, other) == pytest.approx(percent, abs=0.05)


def test_no_limit_between_the_eyes_is_built_in():
    """20 % lower is stated as a number. Source: own rule."""
    eyes = tuple(
        finding("retinal_artery_diastolic", Quantity(number=number), side=side, unit="mm[Hg]")
        for side, number in ((Side.RIGHT, 60.0), (Side.LEFT, 48.0))
    )
    (figure,) = figures("retinal artery pressure", eyes)
    assert figure.text == "Retinal diastolic: left eye lower by 12 mmHg (20 %); no limit is built in"
