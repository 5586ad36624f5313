"""Words that the next clause shares: "reduced to the ankles, pinprick to mid calf", "3+ with clonus, right 2+"."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Role
from dictate.reading.nodes import Node

_REACHES = frozenset({"to", "up to", "as far as", "below", "above", "from", "to the", "up to the", "at"})
_PLACING = ("filler", "site", "side", "dermatome", "number")
_JOINTS = {"knee": "knee", "knees": "knee", "ankle": "ankle", "ankles": "ankle", "wrist": "wrist", "wrists": "wrist"}


def values_of_gradients(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Light touch reduced to the ankles, pinprick to mid calf": how it was is said once, where it begins of each.

    The word goes behind every name that has nothing but such a place.
    """
    value: Node | None = None
    place = 0
    while place < len(nodes):
        node = nodes[place]
        if node.main == "semicolon" or (node.main == "item" and not _is_felt(node, items)):
            value = None
        if node.main == "item" and _is_felt(node, items):
            clause = list(itertools.takewhile(_goes_on, nodes[place + 1 :]))
            reaches = _reaches(clause)
            ahead = itertools.takewhile(_goes_on, reversed(nodes[:place]))  # "reduced to pinprick to mid calf"
            told = [one for one in (*ahead, *clause) if one.main == "value"]
            plain = all(one.main in _PLACING for one in clause)
            if reaches and plain and not told and value is not None and clause[0].main == "filler":
                nodes.insert(place + 1, replace(value))
            elif clause:
                one = reaches and len(told) == 1 and told[0].mark.role("abnormal", "") is not None
                value = told[0] if one else None
        place += 1


def _is_felt(node: Node, items: Mapping[str, Item]) -> bool:
    """Whether it names what is felt somewhere, and no sign."""
    felt = (items[name] for name in node.candidates)
    return not node.sign and all(item.kind == "normality" and item.sited and not item.blanket for item in felt)


def _goes_on(node: Node) -> bool:
    return not node.is_break and node.main != "item"


def _reaches(clause: Sequence[Node]) -> bool:
    """ "To mid calf": a place behind a word for how far."""
    pairs = itertools.pairwise([node for node in clause if node.text not in ("the", "side") and node.main != "side"])
    return any(one.text in _REACHES and two.main in ("site", "dermatome") for one, two in pairs)


def signs_beside_jerks(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Left ankle 3+ with clonus, right 2+": the sign is of that joint and side, and the other grade of the jerk."""
    for jerk, link, sign in reversed(list(_beside(nodes, items))):
        behind = nodes[sign + 1 :]
        clause = list(itertools.takewhile(lambda node: not node.is_break, behind))
        rest = [node for node in behind[len(clause) :] if node.main not in ("filler", "conj", "comma", "contrast")]
        _grade_again(nodes, jerk, sign, rest, items)
        placed = any(word in _JOINTS for word in nodes[sign].text.split())  # "ankle clonus"
        if placed or any(node.main in ("side", "site") for node in (*nodes[link:sign], *clause)):
            continue
        sides = [node for node in nodes[max(0, jerk - 1) : link] if node.main == "side"]
        side = sides if len(sides) == 1 else []
        site = next((_JOINTS[word] for word in nodes[jerk].text.split() if word in _JOINTS), "")
        named = [Node(replace(nodes[jerk].mark, roles=(Role("site", key=site),), inner=()), "site")] if site else []
        nodes[sign + 1 : sign + 1] = [*side, *named]


def _grade_again(nodes: list[Node], jerk: int, sign: int, rest: Sequence[Node], items: Mapping[str, Item]) -> None:
    """The grade behind a sign is of the jerk before it, or of the joint in front of the grade."""
    said = [node.main for node in rest[:3]]
    if said[:2] == ["side", "number"] and rest[1].unit is None:
        at = next(place for place in range(sign, len(nodes)) if nodes[place] is rest[0])
        nodes.insert(at, replace(nodes[jerk]))
    elif said == ["side", "site", "number"] and rest[2].unit is None:
        named = (role.item for role in rest[1].mark.roles if role.kind == "context")
        jerks = tuple(name for name in named if items[name].scale == "tendon_reflex" and not items[name].blanket)
        if jerks:
            rest[1].main, rest[1].candidates = "item", jerks


def _beside(nodes: Sequence[Node], items: Mapping[str, Item]) -> Iterator[tuple[int, int, int]]:
    """Places of a jerk's name, of a "with" behind its grade, and of the sign that the "with" leads to."""
    jerk = -1
    for place, node in enumerate(nodes):
        if node.main == "item":
            jerk = place if all(items[name].scale == "tendon_reflex" for name in node.candidates) else -1
        elif node.main in ("comma", "semicolon", "stop"):
            jerk = -1
        elif jerk >= 0 and node.text in ("with", "with a") and jerk < place - 1:
            behind = range(place + 1, len(nodes))
            sign = next((at for at in behind if nodes[at].main == "item" or nodes[at].is_break), 0)
            if sign and nodes[sign].main == "item" and _is_sign(nodes[sign], items):
                yield jerk, place, sign


def _is_sign(node: Node, items: Mapping[str, Item]) -> bool:
    """Something that is there or not, at a joint or on a side."""
    return all(items[name].kind == "presence" and items[name].sited for name in node.candidates)
