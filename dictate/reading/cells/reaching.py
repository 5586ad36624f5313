"""How far something reaches over the body: "in the legs to the knees", "from the toes to the knees"."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Sequence
from dataclasses import replace

from dictate.reading.marks import Role
from dictate.reading.nodes import Node, limb_of

_REACHING = frozenset(
    {
        "to",
        "until",
        "till",
        "up to",
        "as far as",
        "all the way to",
        "below",
        "above",
        "beneath",
        "to the level of",
        "up to the level of",
    }
)
_FROM = frozenset({"from", "from the"})
WHOLE_LIMBS = frozenset({"upper_limb", "lower_limb", "limb", "distal"})


def between(nodes: list[Node]) -> None:
    """ "Between T4 and T6": one stretch, said by where it begins and kept with where it ends."""
    for opening, one, link, two in zip(nodes, nodes[1:], nodes[2:], nodes[3:], strict=False):
        if opening.text == "between" and one.main == two.main == "dermatome" and link.text == "and":
            link.main = two.main = "filler"


def reach(nodes: list[Node]) -> None:
    """ "Reduced in the legs to the knees", "from the toes to the knees": where it ends says more than the rest."""
    between(nodes)
    for one, two in itertools.pairwise(nodes):
        if one.main == "site" and one.text in ("back", "the back") and two.text == "of":
            one.main = "word"  # "down the back of the right arm": no back
    for place, node in enumerate(nodes):
        if node.main == "site" and _led_by(nodes[max(0, place - 3) : place], _REACHING):
            node.mark = replace(node.mark, roles=(*node.mark.roles, Role("reached")))
    limb: Node | None = None
    for place, node in enumerate(nodes):
        if node.is_break or node.main == "item":
            limb = None
        elif node.main == "site" and limb is not None and _led_by(nodes[max(0, place - 3) : place], _REACHING):
            limb.main, limb = "filler", None
        elif node.main == "site":
            whole = limb_of(node.key("site")) in WHOLE_LIMBS or _led_by(nodes[max(0, place - 3) : place], _FROM)
            limb = node if whole and not node.mark.has("side") else None


def _led_by(before: Sequence[Node], words: Collection[str]) -> bool:
    """Whether such a word stands in front, with no more than an article and a side between."""
    said = [n.text for n in before[-3:] if n.main != "side" and n.text not in ("the", "his", "her")]
    return bool(said) and said[-1] in words
