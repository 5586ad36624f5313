"""A word shared by two names of two sides, and a name that a side parts: "extension of the right knee"."""

from __future__ import annotations

import itertools
from dataclasses import replace

from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node

_SAYING = ("abnormal", "value", "sign")
_VERBS = frozenset({"are", "were"})
_MOVEMENTS = frozenset("flexion extension abduction adduction dorsiflexion eversion inversion plantar".split())
_LINKS = frozenset({"and", ","})


def share_words(nodes: list[Node]) -> None:
    """Say it, in place, of each of the names, where their sides differ, or each is told of both."""
    verb = next((at for at, node in enumerate(nodes) if node.text in _VERBS), None)
    if verb is None:
        return
    groups = _groups(nodes, verb)
    sides = {nodes[side].key("side") for side, _ in groups}
    if len(groups) < len(("one", "two")) or (len(sides) == 1 and sides != {"both"}):
        return
    told = list(itertools.takewhile(lambda n: not n.is_break, nodes[verb + 1 :]))
    plain = bool(told) and all(n.main in ("value", "number", "severity", "filler", "unit") for n in told)
    if not plain or not any(n.main in ("value", "number") for n in told):
        return
    for (_, name), (side, _) in reversed(list(itertools.pairwise(groups))):
        end = nodes[name].mark.end
        parting = Node(Mark(end, end, (Role("semicolon"),), text=";"), "semicolon")
        nodes[name + 1 : side] = [*(replace(n) for n in told), parting]


def joint_of_movement(nodes: list[Node]) -> None:
    """ "Extension of the right knee": the joint is of the movement, and no jerk."""
    for name, side, joint in zip(nodes, nodes[1:], nodes[2:], strict=False):
        words = name.text.split(" ")
        moved = name.main == "item" and words[0] in _MOVEMENTS and words[-2:] == ["of", "the"]
        if moved and side.main == "side" and joint.main in ("item", "site") and joint.mark.has("site"):
            joint.main, joint.candidates = "filler", ()


def other_side_less(nodes: list[Node]) -> None:
    """ "The right leg is spastic, the left slightly": the other limb, and the same word for it."""
    said = [at for at, node in enumerate(nodes) if node.main not in ("filler", "stop")]
    if len(said) < len(("side", "word", ",", "side", "slightly")):
        return
    *front, comma, other, degree = said
    sides = [at for at in front if nodes[at].main == "side"]
    told = nodes[front[-1]]
    parted = nodes[comma].main == "comma" and nodes[other].main == "side" and nodes[degree].main == "severity"
    if not parted or len(sides) != 1 or nodes[sides[0]].key("side") == nodes[other].key("side"):
        return
    if told.main not in ("item", "value") or told.mark.role("absent", "") or not told.mark.has(*_SAYING):
        return
    site = [replace(nodes[at]) for at in front[:-1] if nodes[at].main == "site"]
    nodes[degree + 1 : degree + 1] = [replace(told)]
    nodes[other + 1 : other + 1] = site
    nodes[comma].main = "semicolon"


def _groups(nodes: list[Node], verb: int) -> list[tuple[int, int]]:
    """Where each side and its name stand in front of the verb, in order; empty where anything else does."""
    found: list[tuple[int, int]] = []
    at = verb - 1
    while at > 0:
        name, side = at, at - 1
        if nodes[name].main != "item" or nodes[name].sign or nodes[side].main != "side":
            return []
        found.append((side, name))
        at = side - 1
        while at >= 0 and nodes[at].text == "the":
            at -= 1
        if at < 0 or nodes[at].text not in _LINKS:
            return found[::-1] if at < 0 or nodes[at].is_break else []
        at -= 1
    return []


def share_names(nodes: list[Node]) -> None:
    """All of these, in place: what a side or a joint parts from its name or takes from the name before."""
    joint_of_movement(nodes)
    other_side_less(nodes)
    share_words(nodes)
