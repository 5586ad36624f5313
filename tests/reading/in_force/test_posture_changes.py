"""Where the posture changes in a sentence, and which reading is of which."""

from __future__ import annotations

import pytest

from dictate.model import Position
from dictate.reading.in_force.context import Posture
from dictate.reading.in_force.posture_changes import events, posture_at

LYING, SITTING, UP = Position.SUPINE, Position.SITTING, Position.STANDING


def postures(nodes, phrase, last=None):
    return [(posture.position, posture.minutes) for _, posture in events(nodes(phrase), last)]


@pytest.mark.parametrize(
    ("phrase", "expected"),
    [
        ("blood pressure lying 140/80", [(LYING, None)]),
        ("blood pressure lying 140/80, sitting 130/80, standing 120/70", [(LYING, None), (SITTING, None), (UP, None)]),
        ("standing at three minutes, blood pressure 120/70", [(UP, 3)]),
        ("standing for two minutes, blood pressure 120/70", [(UP, 2)]),
        ("at three minutes standing blood pressure 120/70", [(UP, 3)]),
        ("immediately on standing, blood pressure 120/70", [(UP, 0)]),
        ("standing at once, blood pressure 120/70", [(UP, 0)]),
        ("standing blood pressure 120/70, at three minutes 118/70", [(UP, None), (UP, 3)]),
        ("after five minutes lying down, blood pressure 120/70", [(LYING, None)]),
        ("blood pressure 120/70", []),
    ],
)
def test_where_the_posture_changes(nodes, phrase, expected):
    """Minutes count standing only; "immediately" is minute 0; five minutes of rest are no minute of standing."""
    assert postures(nodes, phrase) == expected


def test_minutes_go_on_from_a_standing_reading(nodes):
    """ "At five minutes 118/70" after a standing reading is five minutes of standing."""
    assert postures(nodes, "at five minutes blood pressure 118/70", Posture(position=UP)) == [(UP, 5)]


def test_minutes_after_nothing_are_no_posture(nodes):
    """Without a position before them they say nothing of standing."""
    assert postures(nodes, "at five minutes blood pressure 118/70") == []


def test_minutes_lying_are_kept_in_words(nodes):
    """They are no time since standing."""
    ((_, posture),) = events(nodes("after five minutes lying down, blood pressure 120/70"))
    assert (posture.minutes, posture.detail) == (None, "after 5 min lying")


def test_a_manoeuvre_is_no_position(nodes):
    """After stairs."""
    ((_, posture),) = events(nodes("blood pressure after stairs 150/90"))
    assert (posture.position, posture.manoeuvre) == (None, "stairs")


@pytest.mark.parametrize(("reading", "expected"), [(0, LYING), (1, UP)])
def test_each_reading_has_the_posture_before_it(nodes, reading, expected):
    """ "Lying 140/80, standing 120/70"."""
    found = nodes("blood pressure lying 140/80, standing 120/70")
    anchors = [node.mark.start for node in found if node.mark.number is not None]
    assert posture_at(anchors[reading], found, anchors, None).position is expected


def test_a_posture_said_after_its_reading(nodes):
    """ "140/80 lying, 120/70 standing"."""
    found = nodes("blood pressure 140/80 lying, 120/70 standing")
    anchors = [node.mark.start for node in found if node.mark.number is not None]
    assert [posture_at(anchor, found, anchors, None).position for anchor in anchors] == [LYING, UP]


def test_a_carried_posture_holds_for_a_sentence_without_its_own(nodes):
    """The pulse that follows the pressure."""
    found = nodes("pulse 66")
    anchors = [node.mark.start for node in found if node.mark.number is not None]
    carried = Posture(position=LYING)
    assert posture_at(anchors[0], found, anchors, carried) is carried
    assert posture_at(anchors[0], found, anchors, None) is None
