"""Ratings by place: "rigidity: neck 1, right arm 2, left arm 1": each number says how much of the sign is there."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Sequence

from dictate.model import Side
from dictate.reading.cells.corrections import OPPOSITE
from dictate.reading.cells.limb_parts import MIDLINE
from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import is_rating
from dictate.reading.statements.drafts import Cell

_ROW = 2  # numbers in a row


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
    _deal_places(cells)
    _deal_sides(cells)
    _share_unit(cells)
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
    """ "Ashworth right elbow 2, wrist 1; left all 0": a side in front of a place is that of the places behind it.

    To the next side, a semicolon, or whatever is not measured by its place.
    """
    side = None
    for cell in cells:
        words = cell.site_node.text.split() if cell.site_node is not None else []
        if not _measures_place(cell) or cell.side is not None:
            side = cell.side if _measures_place(cell) and _leads_place(cell) else None
        elif not (any(word in plurals for word in words) or words[-1] in MIDLINE):
            cell.side = side
        side = None if cell.closed else side


def _measures_place(cell: Cell) -> bool:
    """A number of one place, and nothing else."""
    return cell.site_node is not None and len(cell.values) == 1 and cell.values[0].mark.number is not None


def _leads_place(cell: Cell) -> bool:
    """ "Right elbow 2", "2 at the right elbow": a side directly in front of its place."""
    place = next((at for at, node in enumerate(cell.nodes) if node is cell.site_node), 0)
    return cell.side is not Side.BOTH and place > 0 and cell.nodes[place - 1].main == "side"


def _deal_places(cells: Sequence[Cell]) -> None:
    """ "3 at the left knee, 2 at the ankle; right 1 and 0": as many numbers of the other side as there are places."""
    first = next((at for at, cell in enumerate(cells) if at and _opens_other_side(cells[at - 1], cell)), len(cells))
    own, other = cells[:first][first - len(cells) :], cells[first:]
    bare = all(cell.site_node is None and cell.side is None for cell in other[1:])
    places = {cell.site_node.key("site") for cell in own if cell.site_node is not None and _measures_place(cell)}
    numbers = all(len(cell.values) == 1 and cell.values[0].mark.number is not None for cell in other)
    if len(other) < _ROW or not (bare and numbers and len(places) == len(other) == len(own)):
        return
    for one, two in zip(own, other, strict=True):
        two.site_node, two.site, two.side = one.site_node, one.site, other[0].side


def _deal_sides(cells: Sequence[Cell]) -> None:
    """ "Great toes 4 on the right and 5 on the left, ankles 7 and 8": two numbers of a place in the order of sides."""
    for at in range(_ROW, len(cells) - 1):
        first, second, one, two = cells[at - _ROW : at + _ROW]
        sides = (first.side, second.side)
        bare = one.side is None and two.side is None and two.site_node is None and _measures_place(one)
        numbers = [cell.values[0].mark.number for cell in (first, second, two) if len(cell.values) == 1]
        opposite = first.side is not None and second.side is OPPOSITE.get(first.side)
        if bare and opposite and len(numbers) == len((first, second, two)) and all(n is not None for n in numbers):
            (one.side, two.side), two.site_node, two.site = sides, one.site_node, one.site


def _opens_other_side(before: Cell, cell: Cell) -> bool:
    """Of the other side, at a place that it only shares with the number before."""
    shared = cell.site_node is None or cell.site_node is before.site_node
    return shared and before.side is not None and cell.side is OPPOSITE.get(before.side)


def _share_unit(cells: Sequence[Cell]) -> None:
    """ "Right toe 5 seconds, left 9": of seconds, too, where nothing else is said of it."""
    for one, two in itertools.pairwise(cells):
        measured = [node.mark.number for cell in (one, two) for node in cell.values if node.mark.number is not None]
        alone = len(measured) == len(one.values) + len(two.values) == _ROW
        if alone and len(one.units) == 1 and not two.units and not any(number.op for number in measured):
            two.units = {id(two.values[0]): next(iter(one.units.values()))}


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
