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
        told = all(map(_rates, rated)) if named else _is_word_of(signs, one, two)
        if two.values and (two.side or two.site_node) and told:
            two.values = [*signs, *two.values]
    _share_side(cells, plurals)
    _share_sign(cells)
    kinds = _kinds(cells[0]) if cells and sign else []
    for cell in cells[1:] if sign else ():
        own = [node for node in cell.modifiers if node.main == "qualifier"]
        placed = (cell.side or cell.site_node) and (cell.values or cell.negated or cell.modifiers)
        if cell.affirmed or cell.excepted or cell.units or not placed:
            return
        if own and not _opens(own[0], cell):
            return
        kinds = own or kinds  # "rest tremor R 2 L 0, postural R 1 L 1"
        cell.modifiers = cell.modifiers if own else [*kinds, *cell.modifiers]


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


def _opens(kind: Node, cell: Cell) -> bool:
    """The kind is said in front of all else, as a title of what is rated behind it."""
    rated = bool(cell.values) and all(map(_rates, cell.values))
    return rated and all(node.mark.start >= kind.mark.start for node in cell.nodes if node.main != "comma")


def _beside(one: Node, two: Node) -> bool:
    return one.mark.end == two.mark.start or two.mark.end == one.mark.start


def _is_sign(node: Node) -> bool:
    """A word that names what was found, and no word for how anything was."""
    return node.main == "item" and node.mark.has("alone")


def _is_word_of(words: Sequence[Node], one: Cell, two: Cell) -> bool:
    """ "Rigidity right ++, left +": the pluses of the second place are of the word in front of the first."""
    rated = [node for node in (*one.values, *two.values) if node not in words]
    return bool(words) and all(n.mark.has("abnormal", "value") for n in words) and all(map(_is_pluses, rated))


def _is_pluses(value: Node) -> bool:
    return {*value.text.split()} == {"+"} and value.mark.number is not None
