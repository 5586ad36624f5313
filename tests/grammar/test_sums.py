"""Sums of scales: parts as dictated."""

from __future__ import annotations

from by_hand import finding

from dictate.grammar.sums import ATAXIA, COMA, STROKE, parts_of, points_of
from dictate.model import Component, Score, Side, Status, Text


def part(item: str, points: float | None, status: Status = Status.MEASURED, **more: object):
    """One part."""
    value = None if points is None else Score(points=points)
    return finding(Component.MENTAL_STATUS, item, status, value=value, **more)


def test_parts_are_known_missing_or_untestable():
    """Eye 4, motor not testable, verbal not said."""
    parts = parts_of((part("gcs_eye", 4), part("gcs_motor", None, Status.NOT_ASSESSABLE)), COMA)
    assert parts is not None
    assert (parts.points, parts.untestable, parts.missing) == ({"gcs_eye": 4}, ("gcs_motor",), ("gcs_verbal",))
    assert (parts.known, parts.places) == (4, (0, 1))


def test_a_part_said_twice_is_not_counted():
    """Nor one with a number and untestable at once, nor one without plain points."""
    assert parts_of((part("gcs_eye", 4), part("gcs_eye", 3)), COMA) is None
    assert parts_of((part("gcs_eye", 4), part("gcs_eye", None, Status.NOT_ASSESSABLE)), COMA) is None
    assert parts_of((part("gcs_eye", None, Status.NOT_EXAMINED),), COMA) is None


def test_sided_parts_are_means():
    """Right 1 and left 2 are 1.5; one side alone is missing; both sides at once are both."""
    name = "sara_heel_shin"
    both = parts_of((part(name, 1, side=Side.RIGHT), part(name, 2, side=Side.LEFT)), ATAXIA)
    assert both is not None
    assert both.points == {name: 1.5}
    one = parts_of((part(name, 1, side=Side.RIGHT),), ATAXIA)
    assert one is not None
    assert name in one.missing
    at_once = parts_of((part(name, 3, side=Side.BOTH),), ATAXIA)
    assert at_once is not None
    assert at_once.points == {name: 3}


def test_points_are_plain_numbers():
    """A digit kept as text counts; a T does not."""
    assert points_of(finding(Component.MENTAL_STATUS, "gcs_verbal", Status.MEASURED, value=Text(words="2"))) == 2
    assert (
        points_of(finding(Component.MENTAL_STATUS, "gcs_total", Status.MEASURED, value=Score(points=10, mark="T")))
        is None
    )


def test_only_some_stroke_items_may_be_untestable():
    """Arms, legs, ataxia and dysarthria."""
    assert len(STROKE.may_be_untestable) == 6
    assert set(STROKE.may_be_untestable) < set(STROKE.parts)
    assert not COMA.may_be_untestable
