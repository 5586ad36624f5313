"""Two values in a row under a declared order of sides."""

from __future__ import annotations

import pytest

from dictate.model import Side
from dictate.reading.in_force.columns import give_order
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Cell

NORMAL = Node(Mark(0, 1, (Role("normal"),), text="normal"), "value")
L, R = Side.LEFT, Side.RIGHT


def full(side=None):
    return Cell(side=side, values=[NORMAL], nodes=[NORMAL])


def test_a_declared_order_gives_two_bare_values_their_sides():
    """ "Right then left": two and three."""
    cells = [full(), full()]
    give_order(cells, (R, L))
    assert [cell.side for cell in cells] == [R, L]


@pytest.mark.parametrize("sides", [[None], [None, L], [None, None, None]])
def test_an_order_gives_no_side_where_it_cannot_be_meant(sides):
    """One value, a side already said, or three values."""
    cells = [full(side) for side in sides]
    give_order(cells, (R, L))
    assert [cell.side for cell in cells] == sides
