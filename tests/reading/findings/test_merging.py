"""Drafts that say the same twice become one."""

from __future__ import annotations

import pytest

from dictate.grammar import Item, Scale
from dictate.model import Grade, Quantity, Side, Status, Text
from dictate.reading.findings.merging import merge_denials, merge_readings, merge_repeats, pair_like_neighbours
from dictate.reading.statements.drafts import Draft

ITEMS = {
    "gait": Item(name="gait", kind="normality"),
    "fields": Item(name="fields", kind="normality", sided="paired"),
    "tremor": Item(name="tremor", kind="presence", sided="paired"),
    "pulse": Item(name="pulse", kind="quantity", positions=True),
}


def draft(item, status, start=0, **more):
    return Draft(item=item, status=status, spans=[(start, start + 1)], **more)


def test_the_same_words_twice_are_one_reading():
    """With the evidence of both."""
    (one,) = merge_readings([draft("gait", Status.NORMAL), draft("gait", Status.NORMAL, 5)], ITEMS)
    assert one.spans == [(0, 1), (5, 6)]


@pytest.mark.parametrize(
    "other",
    [
        draft("gait", Status.ABNORMAL),
        draft("fields", Status.NORMAL),
        draft("gait", Status.NORMAL, site="knee"),
        draft("gait", Status.NORMAL, value=Text(words="steady")),
    ],
)
def test_what_differs_stays_apart(other):
    """In status, item, site or value."""
    assert len(merge_readings([draft("gait", Status.NORMAL), other], ITEMS)) == 2


def test_two_sides_stay_apart():
    """Right and left are two readings."""
    drafts = [draft("tremor", Status.PRESENT, side=side) for side in (Side.RIGHT, Side.LEFT)]
    assert len(merge_readings(drafts, ITEMS)) == 2


def test_the_same_pulse_in_two_positions_stays_two():
    """Lying and standing are two readings, whatever their numbers."""
    drafts = [draft("pulse", Status.MEASURED, value=Quantity(number=66)) for _ in range(2)]
    assert len(merge_readings(drafts, ITEMS)) == 2


def test_a_side_said_later_completes_a_sign():
    """ "Tremor, on the left": one finding."""
    (one,) = merge_readings([draft("tremor", Status.PRESENT), draft("tremor", Status.PRESENT, side=Side.LEFT)], ITEMS)
    assert one.side is Side.LEFT


def test_denials_of_one_item_are_one():
    """ "No hemianopia or scotoma"."""
    (one,) = merge_denials([draft("fields", Status.NORMAL), draft("fields", Status.NORMAL, 5)], ITEMS)
    assert one.spans == [(0, 1), (5, 6)]


@pytest.mark.parametrize(
    "other",
    [draft("fields", Status.NORMAL, side=Side.LEFT), draft("fields", Status.ABNORMAL), draft("gait", Status.NORMAL)],
)
def test_denials_that_differ_stay_apart(other):
    """In side, status or item."""
    assert len(merge_denials([draft("fields", Status.NORMAL), other], ITEMS)) == 2


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("No hemianopia or scotoma.", ["visual_fields normal"]),
        ("No tremor on the right, no tremor on the left.", ["tremor right absent", "tremor left absent"]),
        (
            "Right deltoid five, left deltoid five.",
            ["strength_deltoid right measured 5", "strength_deltoid left measured 5"],
        ),
    ],
)
def test_sides_named_apart_stay_two_rows(rows, phrase, findings):
    """Equal values side by side are not made "both"."""
    assert rows(phrase) == findings


def test_plain_finding_said_again_later_is_one():
    """With both its words; one that says more stays apart."""
    drafts = [draft("gait", Status.NORMAL), draft("gait", Status.NORMAL, 9), draft("gait", Status.NORMAL, 12)]
    drafts[2].detail.append("with a stick")
    kept = merge_repeats(drafts, ITEMS)
    assert [one.spans for one in kept] == [[(0, 1), (9, 10)], [(12, 13)]]


@pytest.mark.parametrize(
    ("grade", "side", "readings"), [("5", Side.BOTH, ()), ("4", None, ("4 of 5", "right 4, left 5"))]
)
def test_grade_beside_a_pair_is_or_may_be_a_pair(grade, side, readings):
    """Where "5/4" is right and left, "5/5" is both, and "4/5" is open."""
    scale = Scale(name="strength", grades=("0", "1", "2", "3", "4", "5"), of=5, source="Medical Research Council 1976")
    items = {"power": Item(name="power", kind="grade", scale="mrc")}
    pair = draft("power", Status.MEASURED, paired=True, side=Side.LEFT, value=Grade(scale="mrc", grade="4"))
    other = draft("power", Status.MEASURED, 3, whole=True, value=Grade(scale="mrc", grade=grade))
    pair_like_neighbours([pair, other], items, {"mrc": scale})
    assert (other.side, other.readings) == (side, readings)


def test_said_again_of_both_sides_is_one_of_both_sides():
    """ "Strong", and "symmetrical" besides."""
    drafts = [draft("fields", Status.NORMAL), draft("fields", Status.NORMAL, 4, side=Side.BOTH)]
    (one,) = merge_repeats(drafts, ITEMS)
    assert (one.side, one.spans) == (Side.BOTH, [(0, 1), (4, 5)])
