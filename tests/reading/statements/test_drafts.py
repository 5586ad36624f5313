"""A cell and a draft before anything is put into them."""

from __future__ import annotations

from dictate.model import Status
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Cell, Draft

NODE = Node(Mark(0, 1, (Role("value"),), text="normal"), "value")


def test_a_cell_with_only_a_side_is_empty():
    """A side, a hedge or words alone say nothing."""
    assert Cell().empty
    assert Cell(hedged=True, nodes=[NODE], detail=["words"]).empty


def test_a_value_a_denial_or_a_degree_fill_a_cell():
    """Each says something by itself."""
    assert not Cell(values=[NODE]).empty
    assert not Cell(negated=True).empty
    assert not Cell(modifiers=[NODE]).empty


def test_a_draft_claims_nothing_by_itself():
    """No side, site, position, time, value or unit by default."""
    draft = Draft(item="gait", status=Status.NORMAL, spans=[(0, 2)])
    assert (draft.side, draft.position, draft.minutes, draft.value) == (None, None, None, None)
    assert (draft.site, draft.unit, draft.uncertain, draft.excepted) == ("", "", False, False)


def test_cells_and_drafts_share_nothing():
    """What is added to one is not in another."""
    one, two = Cell(), Cell()
    one.detail.append("words")
    assert two.detail == []
