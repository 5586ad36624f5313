"""Body mass index."""

from __future__ import annotations

import pytest
from reckoning.series import figures, finding

from dictate.model import Quantity
from dictate.reckoning.body import body_mass_index

NAME = "body mass index"


def weight(number: float, unit: str, **more: object):
    """A dictated weight."""
    return finding("weight", Quantity(number=number, **more), unit=unit)


def test_the_index_needs_weight_and_height():
    """Kilograms or pounds; the height is given or dictated."""
    (figure,) = figures(NAME, (weight(70, "kg"),), height=172.0)
    assert (figure.text, figure.value, figure.inputs) == ("Body mass index 23.7 kg/m²", 23.7, (0,))
    (figure,) = figures(
        NAME, (weight(154.32, "[lb_av]"), finding("height", Quantity(number=172), unit="cm")), height=172.0
    )
    assert (figure.value, figure.inputs) == (23.7, (0, 1))


def test_nothing_is_computed_from_missing_parts():
    """No height, no unit, two weights, a range, or an index that was dictated."""
    assert figures(NAME, (weight(70, "kg"),)) == ()
    assert figures(NAME, (weight(70, ""),), height=172.0) == ()
    assert figures(NAME, (weight(70, "kg"), weight(80, "kg")), height=172.0) == ()
    assert figures(NAME, (weight(70, "kg", upto=72),), height=172.0) == ()
    said = finding("body_mass_index", Quantity(number=24), unit="kg/m2")
    assert figures(NAME, (weight(70, "kg"), said), height=172.0) == ()


def test_the_formula():
    """80 kg at 2 m are 20. Source: arithmetic."""
    assert body_mass_index(80, 200) == pytest.approx(20)
