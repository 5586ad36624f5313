"""Where one reading ends and the next begins inside a statement."""

from __future__ import annotations

import pytest

from dictate.reading.statements.cuts import site_next, starts_anew, value_next, value_side_order
from dictate.reading.statements.drafts import Cell


@pytest.mark.parametrize(
    ("phrase", "word", "expected"),
    [
        ("pinprick reduced, right foot normal", "right", True),
        ("knee jerk right two plus, left three plus", "right", True),
        ("knee jerk two plus right, three plus left", "right", False),
        ("knee jerk right, three plus", "right", False),
    ],
)
def test_a_value_before_the_next_break(after, phrase, word, expected):
    """ "Right two plus, ..." against "two plus right, ..."."""
    _, following = after(phrase, word)
    assert value_next(following) is expected


@pytest.mark.parametrize(
    ("phrase", "expected"),
    [("tone increased right arm", True), ("tone increased right more", False), ("tone increased right", False)],
)
def test_a_site_right_after_a_side(after, phrase, expected):
    """ "right arm"."""
    _, following = after(phrase, "right")
    assert site_next(following) is expected


def test_a_further_reading_starts_after_a_link_when_a_side_follows(cells, after):
    """ "Tremor of the right hand, and none on the left"."""
    node, following = after("tremor of the right hand, and none on the left", "none")
    (cell,) = cells("tremor of the right hand,")
    cell.split = True
    assert starts_anew(cell, node, following)
    assert not starts_anew(cell, node, [])


def test_values_that_stand_before_their_sides(cells):
    """ "Two plus right, three plus left" is in that order, "right two plus, left three plus" is not."""
    assert value_side_order([*cells("knee jerk two plus right, three plus left"), Cell()])
    assert not value_side_order([*cells("knee jerk right two plus, left three plus"), Cell()])


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("Sustained clonus at the right ankle, three beats on the left.", 2),
        ("Gait normal, zebra stripes reduced.", 1),
        ("Tremor of the right hand, none on the left.", 2),
        ("Facial droop absent.", 1),
    ],
)
def test_readings_of_one_statement(rows, phrase, findings):
    """As many findings as were said."""
    assert len(rows(phrase)) == findings


def test_what_follows_an_unknown_word_is_not_of_the_whole_component(rows):
    """ "Motor examination ... zebra absent" denies nothing of the component."""
    assert rows("Motor examination normal, zebra absent.") == ["motor_all normal"]
