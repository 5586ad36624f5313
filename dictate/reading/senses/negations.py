"""Negations that stand behind what they deny, or deny a verb that is left unsaid: "clonus I did not find"."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Role
from dictate.reading.nodes import Node

_LOOKED = frozenset("see find hear feel detect notice observe".split())
_WHOLLY = frozenset("fully completely entirely properly normally well".split())
_AUXILIARIES = ("does", "did", "do")
_FAILING = frozenset({"not", "fails", "cannot"})  # in a name that denies by itself
_WORD = 3  # letters
_QUIET = frozenset({"filler", "word", "talk", "time_span", "conj"})  # no words of the examination


def denied_behind(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Dizziness on standing he denies", "clonus I did not find": behind what it denies, as nothing else follows."""
    for place, node in enumerate(nodes):
        looked = not _LOOKED.isdisjoint(node.text.split()[-1:])
        if node.main != "negation" or not (looked or node.text in ("denies", "denied")):
            continue
        before = itertools.takewhile(lambda n: n.main in _QUIET or not n.is_break, reversed(nodes[:place]))
        named = next((n for n in before if n.main == "item"), None)
        ends = place + 1 == len(nodes) or nodes[place + 1].is_break
        sign = named is not None and (named.sign or all(items[n].kind == "presence" for n in named.candidates))
        if ends and named is not None and (sign or not looked):
            node.main, node.mark = "value", replace(node.mark, roles=(Role("absent"),))


def denies_unknown(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "No relapses since March, alert": what is denied has no name here, and nobody says "no ... alert"."""
    for denial, unknown, place in zip(nodes, nodes[1:], range(2, len(nodes)), strict=False):
        if denial.main != "negation" or denial.text != "no" or unknown.main != "word" or len(unknown.text) < _WORD:
            continue
        named = next((n for n in nodes[place:] if n.main == "item" or n.main == "contrast"), denial)
        roles = [role for role in named.mark.roles if role.kind == "value" and role.item in named.candidates]
        if roles and all(items[role.item].values[role.key].status == "normal" for role in roles):
            denial.main = "word"


def fails_itself(nodes: list[Node]) -> None:
    """ "The right eye doesn't look up and the left eye does not abduct": a name that denies is not denied with it."""
    for place, name in enumerate(nodes):
        if name.main != "item" or _FAILING.isdisjoint(name.text.split()):
            continue
        clause = list(itertools.takewhile(lambda n: n.main in ("filler", "side", "site"), reversed(nodes[:place])))
        link = nodes[place - len(clause) - 1] if place > len(clause) else name
        if link.main in ("conj", "comma", "contrast"):
            link.main = "semicolon"


def not_fully(nodes: list[Node]) -> None:
    """ "The left eye doesn't close fully": what is denied of a word that is unknown here is not normal."""
    for denial, unknown, how in zip(nodes, nodes[1:], nodes[2:], strict=False):
        denied = denial.text.split()[-1:] in (["not"], ["cannot"]) and unknown.main == "word"
        if denied and how.main == "value" and how.text in _WHOLLY:
            how.main = "word"


def verbs_unsaid(nodes: list[Node]) -> None:
    """ "Right pupil reacts, left does not", "but the left did not": an exception from what was just said."""
    for place, node in enumerate(nodes):
        ends = place + 1 == len(nodes) or nodes[place + 1].is_break
        if node.main != "negation" or not ends:
            continue
        start = place
        while start and (nodes[start - 1].main == "filler" or nodes[start - 1].main == "side"):
            start -= 1
        said = [n for n in nodes[start:place] if n.text not in ("the", "a")][-2:]
        if [n.main for n in said] != ["side", "filler"] or said[-1].text not in _AUXILIARIES:
            continue
        node.main = "filler"
        if start and nodes[start - 1].is_break:
            nodes[start - 1].main = "except"


def deny_signs(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "slow but not dysarthric": a sign is denied, where a place would be an exception ("but not on the left").

    So is a task that somebody cannot do ("walks on his toes but not on his heels").
    """
    for place, one in enumerate(nodes):
        if one.main != "except" or not one.text.endswith(" not"):
            continue
        two = next((n for n in nodes[place + 1 :] if n.main not in ("side", "filler")), one)
        task = two.main == "item" and all(items[name].task for name in two.candidates)
        if task or (two.sign and two is nodes[place + 1]):
            one.main = "negation"
