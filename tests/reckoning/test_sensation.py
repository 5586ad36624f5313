"""Vibration against age."""

from __future__ import annotations

from reckoning.series import figures, finding

from dictate.model import Component, Conventions, Quantity, Score, Side

NAME = "vibration against age"
ON = Conventions(vibration_norms=True)


def fork(points: float, site: str, **more: object):
    """A reading of the graduated fork."""
    return finding(
        "vibration", Score(points=points, of=8.0), component=Component.SENSORY, side=Side.RIGHT, site=site, **more
    )


def test_norms_are_off_unless_switched_on():
    """And say nothing without an age."""
    assert figures(NAME, (fork(4, "great_toe"),), age=40) == ()
    assert figures(NAME, (fork(4, "great_toe"),), conventions=ON) == ()
    (figure,) = figures(NAME, (fork(4, "great_toe"),), age=40, conventions=ON)
    assert figure.text == "Vibration right great toe 4/8: below the usual for 40 years (4.5 or more)"


def test_arm_and_leg_have_limits_of_their_own():
    """An unknown site has none."""
    (figure,) = figures(NAME, (fork(6, "finger"),), age=50, conventions=ON)
    assert "within the usual for 50 years (6 or more)" in figure.text
    assert figures(NAME, (fork(6, ""),), age=50, conventions=ON) == ()
    assert figures(NAME, (fork(6, "trunk"),), age=50, conventions=ON) == ()


def test_seconds_are_no_eighths():
    """Eight seconds at the toe is another measure; so is a score of another maximum."""
    seconds = finding("vibration", Quantity(number=8), component=Component.SENSORY, site="great_toe", unit="s")
    assert figures(NAME, (seconds,), age=50, conventions=ON) == ()
    other = finding("vibration", Score(points=8, of=10), component=Component.SENSORY, site="great_toe")
    assert figures(NAME, (other,), age=50, conventions=ON) == ()
