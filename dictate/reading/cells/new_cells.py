"""When a word begins another reading: a second kind, a list of places that is closed, words before their places."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.reading.nodes import Node
from dictate.reading.statements.cuts import place_follows, side_next, site_next, value_next
from dictate.reading.statements.drafts import Cell


def another_kind(cell: Cell, node: Node, following: Sequence[Node]) -> bool:
    """ "Postural tremor mild, rest absent": a second kind behind a comma, each with a value of its own."""
    kinds = _kinds(cell)
    told = bool(cell.values) or any(n.main == "severity" for n in cell.modifiers)
    after = [n for n in following[:2] if n.main != "comma"][:1]
    none = bool(after) and after[0].mark.role("absent", "") is not None  # "horizontal nystagmus, vertical none"
    gone = any(n.mark.role("absent", "") for n in cell.values)
    some = gone and bool(after) and after[0].main == "severity"  # "tremor: rest, none; postural, mild"
    told = (told and bool(following[:1]) and value_next(list(following[:1]))) or none or some
    return node.main == "qualifier" and cell.split and told and kinds


def none_of_another_kind(cell: Cell, node: Node, following: Sequence[Node]) -> bool:
    """ "Nystagmus horizontal, none vertical": of the kind behind it, where the first was named and is there."""
    another = bool(following) and following[0].main == "qualifier"
    return _kinds(cell) and cell.split and not cell.values and another and node.mark.role("absent", "") is not None


def _kinds(cell: Cell) -> bool:
    """Whether a kind is told beside the name or in it ("horizontal nystagmus")."""
    if any(n.main == "qualifier" for n in cell.modifiers):
        return True
    names = [n for n in cell.nodes if n.main == "item"]
    return any(" " in n.text and any(r.kind in ("value", "qualifier") for r in n.mark.roles) for n in names)


def tells_abnormal(node: Node, candidates: Sequence[str]) -> bool:
    """Whether it is a word for what is not as it should be, of one of these items."""
    roles = (role for role in node.mark.roles if role.item in ("", *candidates))
    return node.mark.number is None and any(role.kind == "abnormal" for role in roles)


def value_first(cells: Sequence[Cell], following: Sequence[Node]) -> bool:
    """ "Floppy in the right arm and the right leg, normal on the left": words before their places, so this one too."""
    if len(cells) < 2 or not side_next(list(following)):
        return False
    before, cell = cells[-2:]
    places = [one.site_node for one in (before, cell)]
    if cell.values or cell.side is None or not before.values or places[0] is None or places[1] is None:
        return False
    return before.values[0].mark.start < places[0].mark.start


def closes_list(cells: Sequence[Cell], node: Node, following: Sequence[Node]) -> bool:
    """A word behind a comma, where the places before it had their word in front of them, and it has its own behind."""
    cell = cells[-1]
    listed = cell.site_node is not None and cell.split and not (cell.values or cell.negated or cell.modifiers)
    if len(cells) < 2 or not listed or node.mark.number is not None or cells[-2].site_node is None:
        return False
    led = bool(cells[-2].values) and cells[-2].values[0].mark.start < cells[-2].site_node.mark.start
    elsewhere = bool(following) and following[0].main in ("rest", "throughout")
    return led and (elsewhere or place_follows(list(following)))


def places_first(before: Sequence[Cell], cell: Cell) -> bool:
    """ "V1 normal, V2 and V3 reduced": each place stands in front of its word, so the list has the word behind it."""
    told = [one for one in (*before, cell) if one.values][-2:]
    placed = [one.site_node is not None and one.site_node.mark.end <= one.values[0].mark.start for one in told]
    return placed == [True, True]


def names_where(cell: Cell, before: Cell) -> bool:
    """ "Rigidity, mild, right arm": where the sign was that was named with how much of it, and nothing more."""
    graded = bool(before.modifiers) and all(n.main == "severity" for n in before.modifiers)
    named = graded and all(n.mark.number is None for n in before.values) and not (before.negated or before.contrasted)
    unplaced = before.side is None and before.site_node is None and not before.site
    return named and unplaced and cell.site_node is not None and not cell.modifiers


def later_on(before: Sequence[Node], node: Node, following: Sequence[Node]) -> bool:
    """ "Dizzy at 1 min, gone by 3 min", "symptoms at one minute but not at three": another time, another reading."""
    if node.main not in ("negation", "value"):
        return False
    clause = list(itertools.takewhile(lambda n: n.main in ("minutes", "filler"), following[:3]))
    timed = any(n.main == "minutes" for n in clause)
    parted = any(n.main in ("comma", "semicolon", "conj", "contrast") for n in before[-2:])
    return timed and parted and any(n.main == "minutes" for n in before)


def none_of_next(cell: Cell, node: Node, following: Sequence[Node]) -> bool:
    """ "Slight in the left, none in the legs": behind a degree of one side, none is of the place behind it."""
    open_side = cell.split and cell.side is not None and not cell.values
    ahead = [n for n in following if n.main != "filler"][:1]
    other = cell.site_node is not None and bool(ahead) and ahead[0].main == "side"
    if open_side and other and node.text in ("none", "nil"):
        return True  # "at the right temple and none at the left temple"
    graded = open_side and bool(cell.modifiers)
    return graded and node.mark.role("absent", "") is not None and site_next(list(following))
