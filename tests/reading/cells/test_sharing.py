"""What neighbouring cells share: a value for two sides, a site, a side at the end."""

from __future__ import annotations

import pytest

from dictate.model import Side
from dictate.reading.cells.sharing import share
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Cell

NORMAL = Node(Mark(0, 1, (Role("normal"),), text="normal"), "value")
SIDE = Node(Mark(1, 2, (Role("side", key="left"),), text="left"), "side")
L, R, B = Side.LEFT, Side.RIGHT, Side.BOTH


def full(side=None, *, value=True):
    return Cell(side=side, values=[NORMAL] if value else [], nodes=[NORMAL if value else SIDE])


def test_a_side_without_a_value_shares_the_value_before_it():
    """ "Normal on the right, and on the left"."""
    first, second = share([full(R), full(L, value=False)], sited=False)
    assert (first.side, second.side) == (R, L)
    assert second.values == [NORMAL]


def test_a_side_at_the_end_is_of_all_values_without_one():
    """ "140/80, 138/78, both in the left arm"."""
    assert [cell.side for cell in share([full(), full(), full(L, value=False)], sited=False)] == [L, L]


def test_both_after_two_sides_adds_nothing():
    """ "Right two, left two, both sides": already said."""
    assert [cell.side for cell in share([full(R), full(L), full(B, value=False)], sited=False)] == [R, L]


def test_nothing_is_shared_over_a_semicolon():
    """Another clause is another statement."""
    first = full(R)
    first.closed = True
    assert [cell.side for cell in share([first, full(L, value=False)], sited=False)] == [R]


def test_cells_without_words_are_dropped():
    """Nothing was said in them."""
    assert share([Cell(), full(R)], sited=False)[0].side is R


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Knee jerks right then left, two plus, three plus.",
            ["reflex_patellar right measured 2+", "reflex_patellar left measured 3+"],
        ),
        (
            "Pinprick reduced in the left arm and in the left leg.",
            ["pinprick left arm abnormal reduced", "pinprick left leg abnormal reduced"],
        ),
        (
            "Knee jerks two plus, ankle jerks one plus bilaterally.",
            ["reflex_patellar measured 2+", "reflex_achilles both measured 1+"],
        ),
    ],
)
def test_what_is_shared_in_a_sentence(rows, phrase, findings):
    """A declared order, one value for two sites; never a side over another name."""
    assert rows(phrase) == findings
