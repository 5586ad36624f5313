"""Ratings by place: "rigidity: neck 1, right arm 2, left arm 1": each number says how much of the sign is there."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Sequence

from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import is_rating
from dictate.reading.statements.drafts import Cell


def share_rated(cells: Sequence[Cell], *, sign: bool, plurals: Collection[str]) -> None:
    """The sign rated in one reading is what is rated in those behind it that have a number and nothing else.

    So is its kind: "rest tremor right hand 2, left hand 1, none in the legs" says nothing of a tremor of another kind.
    sign: the item is there when it is named.
    """
    for one, two in itertools.pairwise(cells):
        signs = [node for node in one.values if node.mark.number is None]
        named = bool(signs) and len(signs) < len(one.values) and all(map(_is_sign, signs))
        rated = [*one.values[len(signs) :], *two.values]
        if named and two.values and (two.side or two.site_node) and all(map(_rates, rated)):
            two.values = [*signs, *two.values]
    _share_side(cells, plurals)
    _share_sign(cells)
    kinds = _kinds(cells[0]) if cells and sign else []
    for cell in cells[1:] if kinds else ():
        own = any(node.main == "qualifier" for node in cell.modifiers) or cell.affirmed or cell.excepted or cell.units
        if own or not (cell.side or cell.site_node) or not (cell.values or cell.negated or cell.modifiers):
            return
        cell.modifiers = [*kinds, *cell.modifiers]


def _share_side(cells: Sequence[Cell], plurals: Collection[str]) -> None:
    """ "Ashworth right elbow 2, wrist 1": the side in front of the first place is that of those that have none."""
    if len(cells) < 2 or not cells[0].side_first or any(cell.side is not None for cell in cells[1:]):
        return
    for cell in cells:
        if cell.site_node is None or len(cell.values) != 1 or not all(map(_rates, cell.values)) or cell.closed:
            return
    for cell in cells[1:]:
        words = cell.site_node.text.split() if cell.site_node is not None else []
        cell.side = None if any(word in plurals for word in words) else cells[0].side


def _share_sign(cells: Sequence[Cell]) -> None:
    """ "No wasting in the hands, but mild in the left calf": what was denied in the one place was found there."""
    for one, two in itertools.pairwise(cells):
        placed = one.site_node is not None and two.site_node is not None
        if two.affirmed and placed and one.negated and not two.values and one.values and all(map(_is_sign, one.values)):
            two.values = one.values


def _rates(node: Node) -> bool:
    return node.mark.number is not None and is_rating(node.mark.number)


def _kinds(cell: Cell) -> list[Node]:
    """Of what kind the sign is, said beside its name ("rest tremor", "tremor at rest")."""
    name = next((node for node in cell.nodes if node.main == "item"), None)
    return [node for node in cell.modifiers if name is not None and node.main == "qualifier" and _beside(node, name)]


def _beside(one: Node, two: Node) -> bool:
    return one.mark.end == two.mark.start or two.mark.end == one.mark.start


def _is_sign(node: Node) -> bool:
    """A word that names what was found, and no word for how anything was."""
    return node.main == "item" and node.mark.has("alone")
