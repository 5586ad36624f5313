"""Difference between the pupils."""

from __future__ import annotations

from reckoning.series import figures, finding

from dictate.model import Component, Quantity, Side

NAME = "difference between the pupils"


def pupil(side: Side | None, size: float, then: float | None = None, *detail: str):
    """One pupil in millimetres."""
    value = Quantity(number=size, then=then)
    return finding("pupil_size", value, component=Component.CRANIAL_NERVES, side=side, unit="mm", detail=detail)


def test_pupils_are_compared_before_and_in_light():
    """Four to two and six to two: 2 mm before light, none in it."""
    (figure,) = figures(NAME, (pupil(Side.RIGHT, 4, 2), pupil(Side.LEFT, 6, 2)))
    assert figure.text == (
        "Difference between the pupils: before light 2 mm (left larger), in light 0 mm (equal); above 1 mm"
    )
    assert (figure.value, figure.unit) == (2, "mm")


def test_dark_and_light_are_told_apart():
    """Sizes in different light are not compared."""
    assert (
        figures(NAME, (pupil(Side.RIGHT, 6, None, "in the dark"), pupil(Side.LEFT, 3, None, "in bright light"))) == ()
    )
    both = (
        pupil(Side.RIGHT, 6, None, "in the dark"),
        pupil(Side.LEFT, 5, None, "in dim light"),
        pupil(Side.RIGHT, 3, None, "in the light"),
        pupil(Side.LEFT, 3, None, "in light"),
    )
    (figure,) = figures(NAME, both)
    assert "in the dark 1 mm (right larger), in light 0 mm (equal); not above 1 mm" in figure.text


def test_nothing_is_written_when_nothing_differs_or_something_is_missing():
    """Equal, one pupil, no side, said twice."""
    assert figures(NAME, (pupil(Side.RIGHT, 4), pupil(Side.LEFT, 4))) == ()
    assert figures(NAME, (pupil(Side.RIGHT, 4),)) == ()
    assert figures(NAME, (pupil(None, 4), pupil(None, 5))) == ()
    assert figures(NAME, (pupil(Side.BOTH, 4),)) == ()
    assert figures(NAME, (pupil(Side.RIGHT, 4), pupil(Side.RIGHT, 5), pupil(Side.LEFT, 4))) == ()
