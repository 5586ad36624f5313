"""A muscle at the head of what is told of it: "Left triceps: power four, reflex absent"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.nodes import Node

_PARTING = ("stop", "semicolon")
_STRENGTH = ("power", "strength")
_ONE_JERK = ("reflex", "jerk", "tendon reflex", "deep tendon reflex")


def tell_muscles(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Make, in place, "power" and "reflex" behind a muscle with a colon or comma those of that muscle and its side.

    Only of muscles that have a jerk of their name, and where the head has no value of its own but a grade.
    """
    for place, head in enumerate(nodes):
        name = _named(head, items)
        if not name:
            continue
        ends = next((at for at in range(place + 1, len(nodes)) if nodes[at].main in _PARTING), len(nodes))
        told = [at for at in range(place + 1, ends) if nodes[at].main == "item"]
        kinds = [_kind(nodes[at], items) for at in told]
        if not told or not all(kinds) or not _leads(nodes, place, told[0]):
            continue
        side = nodes[place - 1] if place and nodes[place - 1].main == "side" else None
        graded = any(n.main == "number" for n in nodes[place + 1 : told[0]])
        for at, kind in reversed(list(zip(told, kinds, strict=True))):
            nodes[at].candidates = (f"{kind}_{name}",)
            first = at == told[0] and not graded
            if side is not None and not first and not any(n.main == "side" for n in nodes[at:ends]):
                nodes.insert(at, replace(side))
        if graded:
            head.candidates = (f"strength_{name}",)
        else:
            nodes[told[0]].mark = replace(nodes[told[0]].mark, start=head.mark.start)
            del nodes[place : told[0]]
        return


def _named(node: Node, items: Mapping[str, Item]) -> str:
    """The muscle, where both its strength and its jerk have an item."""
    names = {name.partition("_")[2] for name in node.candidates if name.startswith(("strength_", "reflex_"))}
    names |= {name for name in (node.text,) if node.main in ("site", "word")}
    return next((name for name in names if f"strength_{name}" in items and f"reflex_{name}" in items), "")


def _kind(node: Node, items: Mapping[str, Item]) -> str:
    """Whether the name is that of strength or of jerks as a whole; empty: of something else."""
    scales = {items[name].scale for name in node.candidates if items[name].kind == "grade"}
    if len(scales) != 1 or not all(items[name].blanket for name in node.candidates) or node.sign:
        return ""
    return "strength" if node.text in _STRENGTH else "reflex" if node.text in _ONE_JERK else ""


def _leads(nodes: Sequence[Node], place: int, first: int) -> bool:
    """A colon or comma stands behind the muscle, and nothing but its grade in front of the first name."""
    between = [n.main for n in nodes[place + 1 : first] if n.main != "filler"]
    return between in (["colon"], ["comma"], ["number", "comma"])
