"""What stands behind a "but" of one finding: "slow but regular", "steady but slow", "negative, although she sways"."""

from __future__ import annotations

import itertools

from dictate.model import Side
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Cell

_COPULAS = frozenset({"were", "are", "was", "is", "s"})
_QUALITIES = frozenset("regular smooth accurate steady rhythmic even precise coordinated safe".split())  # of a movement


def keep_but(cell: Cell, before: Cell) -> bool:
    """ "A bit slow on the right but regular": behind a "but" and of no other place it is of what was found there."""
    placed = cell.side is not None or cell.site_node is not None
    if cell.excepted or cell.negated or not cell.values or not before.contrasted:
        return False
    told = [n for n in before.values if n.mark.has("abnormal", "sign")]
    if not placed and not told and _falls_short(cell, before):
        return True
    if not told or not all(n.mark.has("normal") and n.mark.number is None for n in cell.values):
        return False
    unplaced = before.side is None and before.site_node is None
    if placed and unplaced and {n.text for n in cell.values} <= _QUALITIES:
        before.side, before.site_node = cell.side, cell.site_node  # "slow but regular in both hands"
    elif placed or before.side not in (Side.LEFT, Side.RIGHT):
        return False
    before.detail.extend(f"but {n.text}" for n in cell.values)
    before.nodes.extend(cell.nodes)
    return True


def _falls_short(cell: Cell, before: Cell) -> bool:
    """ "Steady but slow", "negative, although she sways a bit": one finding, of no other kind or place."""
    plain = not any(n.main in ("qualifier", "direction") for n in (*cell.modifiers, *before.modifiers))
    well = before.values and all(n.mark.role("normal") is not None and not n.mark.number for n in before.values)
    told = all(n.mark.role("abnormal") is not None and n.mark.number is None for n in cell.values)
    less = told and not any(n.mark.has("normal") for n in cell.values)
    if not (plain and well and less) or before.negated or before.site_node is not None:
        return False
    words = [n.text for n in sorted((*cell.modifiers, *cell.values), key=lambda n: n.mark.start)]
    if any(n.mark.has("absent") for n in before.values):
        before.detail.append(" ".join(words))  # "negative" stays so
    else:
        before.detail.extend(n.text for n in before.values)
        before.values, before.modifiers = cell.values, [*before.modifiers, *cell.modifiers]
    before.nodes.extend(cell.nodes)
    return True


def but_some(nodes: list[Node]) -> None:
    """ "No fasciculations in the arms but some in the left calf": there, to some degree."""
    for but, some in itertools.pairwise(nodes):
        if but.main == "contrast" and some.text == "some" and some.main == "filler":
            some.main = "severity"


def but_holds(nodes: list[Node]) -> None:
    """ "The leg drifts but holds": it drifts all the same, and does not fall."""
    for but, holds in itertools.pairwise(nodes):
        if but.main != "contrast" or holds.text not in ("holds", "held"):
            continue
        clause = [node.text.split()[-1] for node in nodes if node.main == "item" and node.mark.end <= but.mark.start]
        if clause[-1:] in (["drifts"], ["drifted"]):
            holds.main = but.main = "filler"


def but_is_not(nodes: list[Node]) -> None:
    """ "Has a wobble but is not wasted": the same as "but not wasted"."""
    for place in range(len(nodes) - 4, -1, -1):
        but, verb, negation = nodes[place : place + 3]
        if but.text == "but" and verb.text in _COPULAS and negation.text == "not":
            mark = Mark(but.mark.start, negation.mark.end, (Role("except"),), text="but not")
            nodes[place : place + 3] = [Node(mark, "except")]
