"""Standing on one leg beside the means of an age: only on request, and only where all is said."""

from __future__ import annotations

import pytest
from reckoning.series import figures, finding

from dictate.model import Component, Conventions, Evidence, Quantity, Side

NAME = "one-leg stance against age"
ON = Conventions(one_leg_norms=True)


def stance(seconds: float, *detail: str, quote: str = "one leg stance", **more: object):
    """A timed stance."""
    fields = {"unit": "s", "side": Side.RIGHT, **more}
    evidence = (Evidence(first=0, last=0, quote=quote),)
    return finding(
        "stance",
        Quantity(number=seconds),
        component=Component.COORDINATION_GAIT,
        detail=detail,
        evidence=evidence,
        **fields,
    )


def test_the_mean_of_the_age_stands_beside_the_time():
    """No word of good or bad."""
    (figure,) = figures(NAME, (stance(12, "eyes open"),), age=64, conventions=ON)
    assert figure.text == ("One-leg stance right 12 s, eyes open: mean at 64 years 32.1 s (best of three, up to 45 s)")
    (closed,) = figures(NAME, (stance(3, "eyes closed"),), age=64, conventions=ON)
    assert "3.6 (women) and 5.1 (men) s" in closed.text


@pytest.mark.parametrize(
    ("said", "age"),
    [
        (stance(12), 64),
        (stance(12, "eyes open", quote="tandem stance"), 64),
        (stance(12, "eyes open", unit=""), 64),
        (stance(12, "eyes open", "more than"), 64),
        (stance(12, "eyes open"), None),
        (stance(12, "eyes open"), 17),
        (stance(12, "eyes open"), 100),
    ],
)
def test_nothing_where_something_was_not_said(said, age):
    """Eyes, one leg, the unit, a bound, the age, or an age outside the table."""
    assert figures(NAME, (said,), age=age, conventions=ON) == ()


def test_off_unless_switched_on():
    """The table is one protocol's, and its decimals are recalled."""
    assert figures(NAME, (stance(12, "eyes open"),), age=64) == ()
