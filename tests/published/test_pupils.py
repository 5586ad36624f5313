"""Difference between the pupils against the limit that is taught.

Sources: Lam BL et al. Am J Ophthalmol 1987;104:69 (looked up: abstract): 0.4 mm or more in 19 % of healthy people at
one look · more than 1 mm beyond what is usually called physiological: common teaching (from memory; looked up,
secondary).
"""

from __future__ import annotations

import pytest
from reckoning.series import figures, finding

from dictate.model import Component, Quantity, Side


@pytest.mark.parametrize(
    ("right", "left", "difference", "above"),
    [(4.0, 3.6, 0.4, False), (4, 3.5, 0.5, False), (4, 3, 1, False), (5, 3, 2, True), (3, 4.1, 1.1, True)],
)
def test_the_limit_is_strictly_greater_than_one(right, left, difference, above):
    """1 mm is not above 1 mm. Source: common teaching, arithmetic."""
    pupils = tuple(
        finding("pupil_size", Quantity(number=size), component=Component.CRANIAL_NERVES, side=side, unit="mm")
        for side, size in ((Side.RIGHT, right), (Side.LEFT, left))
    )
    (figure,) = figures("difference between the pupils", pupils)
    assert figure.value == pytest.approx(difference)
    assert ("not above 1 mm" not in figure.text) is above
