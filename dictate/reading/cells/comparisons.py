"""Comparisons: "worse on the left", "weaker than the right": which side is worse, not where it was found."""

from __future__ import annotations

import itertools

from dictate.model import Side
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node
from dictate.reading.statements.cuts import is_unknown
from dictate.reading.statements.drafts import Cell

_WAYS = ("to the left", "to the right", "to left", "to right")  # of the eyes, and no side
_LESS = ("weaker", "brisker", "slower", "poorer", "fainter")  # of the side that is not as it should be
_CIRCUMSTANCES = ("when", "while", "with", "if", "as", "whenever")
_UNEVEN = ("unequal", "asymmetric", "asymmetrical", "asymmetrically")  # told of the two sides together


def compares(node: Node, following: list[Node], cell: Cell) -> bool:
    """Whether a word is compared with something: "weaker than"."""
    return bool(following) and following[0].text == "than"


def take_comparison(cell: Cell, node: Node, following: list[Node]) -> int:
    """ "worse on the left", "greater than right": kept as detail; returns how many further nodes it took."""
    when = _under_what(following) if cell.values else []
    taken = len(when)
    words = [node.text, *(n.text for n in when)]
    cell.nodes.extend((node, *when))
    following = following[taken:]
    placed = not cell.values and _is_place(following)
    for place, after in enumerate([] if placed or when else following[:8]):
        way = after.main in ("side", "site", "direction", "compared") or after.text in _WAYS
        if way or after.main in ("filler", "comparison") or after.text == "than":
            words.append(after.text)
            cell.nodes.append(after)
            taken += 1
            than = any(n.text.startswith("than") for n in following[place + 1 : place + 2])
            if way and not than:
                break
        else:
            break
    if len(following) > taken and following[taken].main == "number":
        return taken  # "more than ten": a bound, which is read with its number
    if cell.values:
        cell.detail.append(" ".join(words))
        uneven = any(n.text in _UNEVEN for n in cell.values)
        if cell.side is None and not uneven and _of_both(node, following[:taken]):
            cell.side = Side.BOTH
    else:  # comparison alone says that it was not as it should be
        sides = [n for n in following[:taken] if n.main == "side" and n.key("side") in ("left", "right")]
        if node.text in _LESS and len(sides) == 1 and cell.side is None:
            cell.side = Side(sides[0].key("side"))  # "weaker on the right than on the left"
        mark = Mark(node.mark.start, node.mark.end, (Role("abnormal"),), None, " ".join(words))
        cell.values.append(Node(mark, "value"))
    return taken


def _is_place(following: list[Node]) -> bool:
    """ "Has got worse in the left leg": worse than it was, and there; not "worse on the left" than on the right."""
    said = [n for n in following[:8] if n.main != "filler"]
    held = any(n.text.startswith("than") for n in following[:8])
    return not held and [n.main for n in said[:2]] == ["side", "site"]


def _of_both(node: Node, following: list[Node]) -> bool:
    """ "Increased, right more than left", "wasting R > L": what was found was found on both sides."""
    keys = [n.key("side") for n in (node, *following) if n.main == "side"]
    return node.main == "side" and {*keys} == {"left", "right"}


def both_compared(following: list[Node], *, told: bool = False) -> bool:
    """ "right more than left": which side is worse, not where it was found.

    told: something was found of both sides, or of no side in particular.
    """
    if not following or following[0].main != "comparison":
        return False
    if told and (len(following) == 1 or following[1].is_break):
        return True  # "reduced on both sides, right worse"
    return any(n.main == "side" for n in following[1:3])


def says_equal(node: Node) -> bool:
    """Equal on both sides, alone or at the end of a phrase ("full and equal")."""
    return node.mark.has("equal") or node.text.split()[-1] in ("equal", "symmetric", "symmetrical", "symmetrically")


def _under_what(following: list[Node]) -> list[Node]:
    """ "Worse when he did something with the other hand": up to the next break, where unknown words tell of it."""
    clause = list(itertools.takewhile(lambda n: not n.is_break, following))
    led = bool(clause) and clause[0].text in _CIRCUMSTANCES
    return clause if led and any(is_unknown(n) or n.main == "rest" for n in clause) else []
