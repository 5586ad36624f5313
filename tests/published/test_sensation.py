"""Vibration on the graduated fork.

Source: Martina ISJ et al. J Neurol Neurosurg Psychiatry 1998;65:743 (abstract looked up; the digits of the table are
recalled and not certain). The figure is therefore off by default, and what is tested here is the arithmetic of the
rows and what does not depend on their digits.
"""

from __future__ import annotations

import pytest

from dictate.model import Conventions
from dictate.reckoning.sensation import lowest_usual


def test_uncertain_norms_are_off():
    """Source: own rule."""
    assert Conventions().vibration_norms is False


@pytest.mark.parametrize(("younger", "older"), [(40, 41), (60, 61), (85, 86)])
def test_limits_fall_with_age_at_the_edges_of_the_rows(younger, older):
    """Arms better than legs, falling with age. Source: Martina 1998 (abstract, looked up)."""
    for leg in (True, False):
        assert lowest_usual(older, leg=leg) < lowest_usual(younger, leg=leg)
    assert lowest_usual(younger, leg=True) < lowest_usual(younger, leg=False)


def test_a_row_ends_with_its_own_year():
    """20 and 40 years are one row, 41 and 60 the next. Source: Martina 1998 (rows as recalled)."""
    assert lowest_usual(20, leg=True) == lowest_usual(40, leg=True)
    assert lowest_usual(41, leg=True) == lowest_usual(60, leg=True)
    assert lowest_usual(86, leg=True) == lowest_usual(120, leg=True)
