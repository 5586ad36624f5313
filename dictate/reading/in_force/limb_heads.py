"""A limb at the head of its sentence: what is told there is of it ("LL R: ...", "Right leg, hip flexion 5")."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import LIMBS, Node, limb_of

_TITLE = 7  # nodes of a limb, its side and a word on the order
_LEAD = 3  # a limb, a comma and what follows
_HEAD = 9  # marks of two limbs with their sides and what leads to them
_PAIR = 3  # the place of the second limb, behind a side, a limb and a link
_LINKS = frozenset({"and", "&", "/"})
_IN = frozenset({"in", "on", "over", "of", "for"})
_VERBS = frozenset({"are", "is", "has", "have", "had", "were", "was", "show", "shows"})
_ENDS = ("comma", "stop", "semicolon", "conj")


def limb_then_side(nodes: list[Node]) -> tuple[Node, Node, int] | None:
    """ "LL R: ...", "Legs, left, same order: ..." at the head of a sentence: limb, side and where its colon stands."""
    colon = next((at for at, node in enumerate(nodes[:_TITLE]) if node.main == "colon"), 0)
    said = [node for node in nodes[:colon] if node.main not in ("comma", "filler") and node.text != "-"]
    if [node.main for node in said[:2]] not in (["site", "side"], ["item", "side"]) or not said[0].mark.has("site"):
        return None
    plain = all(node.main == "word" or node.mark.has("same") for node in said[2:])
    return (said[0], said[1], colon) if plain else None


def limb_alone(nodes: list[Node]) -> bool:
    """ "Arms, tone flaccid in both.", "Right leg, hip flexion 5": a limb alone in front of what was found in it."""
    nodes = nodes[2:] if [n.main for n in nodes[:2]] == ["position", "comma"] else nodes  # "Supine, right arm, ..."
    said = nodes[1:] if nodes and nodes[0].main == "side" and not nodes[0].mark.has("site") else nodes
    if len(said) < _LEAD or not said[0].mark.has("site") or said[0].main not in ("site", "side", "item"):
        return False
    named = said[2].main in ("item", "negation") or [n.main for n in said[2:4]] == ["value", "item"]
    if said[1].main != "comma" or not named:
        return False
    if said[2].main == "negation" and said is not nodes:
        return True  # "Right ankle, no clonus."
    return limb_of(said[0].key("site")) in LIMBS


def two_limbs(marks: Sequence[Mark]) -> Sequence[Mark]:
    """ "In the right arm and (the right) leg tone is up": both limbs of a side, in front of what was examined there.

    One mark for both, and "in both" behind them says no side. Unchanged where a grade or a word for how they were
    follows: there the limbs are what was graded.
    """
    parts = [part for mark in marks for part in _apart(mark)]
    places = [at for at, part in enumerate(parts[:_HEAD]) if part.text not in ("the", "his", "her")]
    if places and parts[places[0]].text in _IN:
        del places[0]
    if len(places) > _PAIR + 1 and _side(parts[places[0]]) == _side(parts[places[_PAIR]]):
        del places[_PAIR]
    if len(places) <= _PAIR or _side(parts[places[0]]) not in ("left", "right") or parts[places[2]].text not in _LINKS:
        return marks
    one, two = parts[places[1]], parts[places[_PAIR]]
    behind = parts[places[_PAIR] + 1 :]
    after = next((part for part in behind if part.text not in _VERBS), None)
    told = after is not None and (
        after.has("colon", "comma") or (after.has("item", "alone") and not after.has("site", "sign"))
    )
    if {_limb(one), _limb(two)} != {"arm", "leg"} or not told:
        return marks
    both = Mark(one.start, two.end, (Role("site", key="arm_and_leg"),), text=f"{one.text} and {two.text}")
    for at, (link, part) in enumerate(itertools.pairwise(behind), start=1):
        if link.text.endswith("in") and part.text == "both" and all(end.has(*_ENDS) for end in behind[at + 1 : at + 2]):
            behind[at] = part.only("filler")
    return [*parts[: places[1]], both, *behind]


def _apart(mark: Mark) -> Sequence[Mark]:
    """ "Right arm" as a side and a limb, "leg tone" as a limb and what was examined there."""
    if len(mark.inner) == len(("side", "limb")) and mark.inner[0].has("side") and _limb(mark.inner[1]):
        return mark.inner
    first, _, name = mark.text.partition(" ")
    if not name or first not in ("arm", "leg") or not mark.has("item") or mark.has("sign", "alone"):
        return (mark,)
    cut = mark.start + 1
    named = tuple(role for role in mark.roles if role.kind != "site")
    limb = Mark(mark.start, cut, (Role("site", key=first),), text=first)
    return (limb, replace(mark, start=cut, text=name, roles=named, inner=()))


def _limb(mark: Mark) -> str:
    role = mark.role("site", "")
    return role.key if role is not None and role.key in ("arm", "leg") else ""


def _side(mark: Mark) -> str:
    role = mark.role("side")
    return role.key if role is not None else ""


def side_of_two(nodes: Sequence[Node]) -> bool:
    """Two names joined by an "and", each with a verb, and no side but the one that opens."""
    parts = [n.main for n in nodes if n.main in ("item", "side", "comma", "semicolon", "colon", "contrast", "conj")]
    verbs = sum(n.text in ("is", "are", "was", "were") for n in nodes)
    return parts == ["side", "item", "conj", "item"] and verbs > 1
