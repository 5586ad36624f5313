"""The other side, hand or leg: the side that was not said last ("tremor in the left hand, none in the other hand")."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dictate.model import Side
from dictate.reading.cells.corrections import OPPOSITE
from dictate.reading.marks import Role
from dictate.reading.nodes import Node

_ARTICLES = frozenset({"the", "his", "her", "their"})
_VERBS = frozenset({"is", "was"})
_PARTS = frozenset("arm hand leg foot eye ear ankle knee wrist elbow shoulder hip thumb toe thigh forearm".split())


def other_sides(nodes: list[Node], told: Side | None) -> None:
    """Make, in place, "the other side" and "the other hand" the side that it is.

    told: the one side told of before the sentence; None: none, or both.
    """
    for place, node in enumerate(nodes):
        if node.text == "on the other" and _opens_clause(nodes, place):
            for word in nodes[place : place + 2]:
                word.main, word.candidates = "filler", ()  # "on the other hand there was no rigidity"
            continue
        if not (node.main == "other_side" or _is_of_pair(nodes, place)):
            continue
        sides = {one.key("side") for one in nodes[:place] if one.main == "side"} or {told.value if told else ""}
        one = Side(said) if len(sides) == 1 and (said := sides.pop()) else None
        side = OPPOSITE.get(one) if one is not None else None
        if side is not None:
            node.main, node.candidates = "side", ()
            node.mark = replace(node.mark, roles=(Role("side", key=side.value),))


def _is_of_pair(nodes: Sequence[Node], place: int) -> bool:
    """ "The other arm", or "the other" and no more, behind an article or a preposition."""
    if nodes[place].text not in ("other", "the other"):
        return False
    after = nodes[place + 1 : place + 2]
    if all(one.is_break or one.text in _VERBS for one in after):
        return any(one.text in _ARTICLES for one in nodes[place - 1 : place]) or nodes[place].text == "the other"
    return after[0].text in _PARTS


def _opens_clause(nodes: Sequence[Node], place: int) -> bool:
    """ "On the other hand": no hand, where a comma or a clause of its own stands behind it."""
    hand = [one.text for one in nodes[place + 1 : place + 2]] == ["hand"]
    behind = nodes[place + 2 : place + 3]
    return hand and any(one.text == "," or one.text.startswith("there") for one in behind)
