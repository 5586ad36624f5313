"""A limb that opens a clause: "the right arm has increased tone, power 4 and brisk reflexes" tells of that arm."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.cells.limb_parts import PARTS
from dictate.reading.marks import Role
from dictate.reading.nodes import WHOLE_LIMBS, Node, limb_of

_ENDS = ("semicolon", "stop", "contrast")
_SAYING_NOTHING = ("filler", *_ENDS)
_TOLD = ("filler", "site", "value", "severity", "qualifier", "item", "number", "negation", "hedge", "throughout")


def limbs_of_clauses(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Put the limb that opens a clause behind every name of it that may be told by limbs, where no other place is."""
    _limbs_before_with(nodes, items)
    _rest_of_limb(nodes, items)
    for first, last in reversed(list(_clauses(nodes))):
        opening, start = _opening(nodes[first:last])
        rest = nodes[first + start : last]
        if not opening or any(_places_itself(node) for node in rest):
            continue
        told = [node for node in rest if node.text not in ("is", "are", "was", "were")][:2]
        if [node.main for node in told] == ["value", "filler"] and told[1].text in ("for", "to", "in"):
            continue  # "arms normal for tone, power and reflexes": one list behind what is told of all of it
        clause = itertools.takewhile(lambda node: not node.is_break, rest)
        if not all(node.main in _TOLD for node in clause):
            continue  # "right arm in a cast, power normal"
        for place in range(last - 1, first + start - 1, -1):
            before = nodes[first + start : place]
            named = any(n.main == "item" for n in before)
            found = any(n.main in ("value", "number", "negation") for n in before)
            apart = any(n.is_break for n in before) and (found or not named)  # "arms tone, power and reflexes normal"
            if apart and _by_limb(nodes[place], limb_of(opening[-1].key("site")), items):
                nodes[place + 1 : place + 1] = opening


def _limbs_before_with(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Power 4 in both legs with brisk reflexes": what goes with what was found in a limb was found there, too."""
    for link in [place for place, node in enumerate(nodes) if node.text == "with"][::-1]:
        site = nodes[link - 1] if link else None
        if site is None or site.main != "site" or site.key("site") not in WHOLE_LIMBS:
            continue
        if any(node.main == "site" for node in nodes[:link][-5:-1]):
            continue  # "of the right arm and leg with brisk reflexes"
        told = list(itertools.takewhile(lambda node: not node.is_break or node.main == "conj", nodes[link + 1 :]))
        if any(node.main not in ("filler", "value", "severity", "item", "conj", "number", "negation") for node in told):
            continue  # a place of its own, or throughout
        limb = [site] if link < 2 or nodes[link - 2].main != "side" else nodes[link - 2 : link]
        for place in range(link + len(told), link, -1):
            if _by_limb(nodes[place], limb_of(site.key("site")), items):
                nodes[place + 1 : place + 1] = limb


def _rest_of_limb(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Left arm power four in the deltoid, rest normal": the rest of the strength of that arm."""
    for place in reversed([at for at, node in enumerate(nodes) if node.main == "item" and node.mark.has("rest")]):
        begin = max((at for at, node in enumerate(nodes[:place]) if node.main in _ENDS), default=-1) + 1
        at = next((at for at in range(begin, place) if nodes[at].main == "item"), place)
        opening = _limb_told(nodes, begin, at, items)
        limb = limb_of(opening[-1].key("site")) if opening else ""
        own = all(limb in items[name].site_items and items[name].blanket for name in nodes[place].candidates)
        target = items[nodes[place].candidates[0]].site_items.get(limb, "")
        told = {name for node in nodes[at + 1 : place] for name in node.candidates}
        within = bool(told) and target in items and told <= {*items[target].covers}
        placed = any(node.main in ("side", "site") for node in nodes[place + 1 : place + 3])
        sides = {node.key("side") for node in opening[:-1]}
        other = {node.key("side") for node in nodes[at:place] if node.main == "side"} - sides
        if own and within and not placed and not (sides and other):
            nodes[place + 1 : place + 1] = opening


def _limb_told(nodes: Sequence[Node], begin: int, at: int, items: Mapping[str, Item]) -> list[Node]:
    """ "Left arm power", "power in the left arm": the limb, and its side, that a clause opens with."""
    names = [items[name] for name in nodes[at].candidates]
    if not names or not all(item.blanket for item in names):
        return []
    if limb := names[0].limb:
        site = Node(replace(nodes[at].mark, roles=(Role("site", key=limb),)), "site")
        return [*[node for node in nodes[begin:at] if node.main == "side"][-1:], site]
    behind = list(itertools.takewhile(lambda n: n.main in ("filler", "side", "site"), nodes[at + 1 :]))
    placed = [node for node in behind if node.main != "filler"]
    kinds = [node.main for node in placed]
    return placed if kinds in (["side", "site"], ["site"]) and placed[-1].key("site") in WHOLE_LIMBS else []


def _clauses(nodes: Sequence[Node]) -> Iterator[tuple[int, int]]:
    ends = [place for place, node in enumerate(nodes) if node.main in _ENDS]
    yield from itertools.pairwise([0, *ends, len(nodes)])


def _opening(clause: Sequence[Node]) -> tuple[list[Node], int]:
    """Side and limb at the start of a clause, or in its first name ("left arm tone"), and where they end."""
    telling = (place for place, node in enumerate(clause) if node.main not in _SAYING_NOTHING)
    said = list(itertools.islice(telling, 2))
    sides = [place for place in said[:1] if clause[place].main == "side" and clause[place].mark.role("site") is None]
    at = next((place for place in said if place not in sides), None)
    if at is None:
        return [], 0
    node = clause[at]
    own = next((r for r in node.mark.roles if r.kind == "site" and r.item in node.candidates), None)
    site = own if node.main == "item" else node.mark.role("site", "") if node.main in ("site", "side") else None
    if site is None or site.key not in WHOLE_LIMBS:
        return [], 0
    limb = Node(replace(node.mark, roles=(Role("site", key=site.key),)), "site") if node.main == "item" else node
    return [*(clause[place] for place in sides), limb], at if node.main == "item" else at + 1


def _places_itself(node: Node) -> bool:
    """A side or place of its own, but for a part of the limb; a list or an exception."""
    if node.main == "site":
        return node.key("site") not in PARTS
    return node.main in ("side", "colon", "rest", "except")


def _by_limb(node: Node, limb: str, items: Mapping[str, Item]) -> bool:
    """Whether the name is of something that is told by limbs, and no sign that says where it is itself."""
    if node.main != "item" or node.sign:
        return False
    told = (items[name] for name in node.candidates)
    return all(limb in item.site_items or (item.sited and item.kind == "normality") for item in told)
