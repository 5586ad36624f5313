"""What a denial goes on to admit: "no bruits, a faint one over the left femoral", "no oedema, a trace at the ankle"."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Role
from dictate.reading.nodes import Node

_ARTICLES = frozenset({"a", "an", "just a", "only a"})
_ONLY = frozenset({"just", "only", "a", "an", "though", "maybe", "perhaps"})
_SOME = frozenset({"some", "a few", "a couple of", "a bit of", "a trace of"})
_BEATS = frozenset({"beats", "beat"})
_TRACES = frozenset({"trace", "traces", "a trace", "minimal", "a couple of beats"})
_NONE = frozenset({"none", "nil"})
_WHERE_ONE = frozenset({"over", "on the left", "on the right", "at", "in"})
_SAYING_HOW = ("filler", "value", "severity", "qualifier")
_PLACES = ("side", "site", "direction")


def admit(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Make, in place, the comma or "but" between a denial and what was found after all an "except"."""
    denied = none = False  # none: "neglect: none to line bisection, mild on cancellation on the left"
    for place, node in enumerate(nodes):
        none = (none or node.text in _NONE) and node.main not in ("semicolon", "stop", "except", "site")
        denied = (denied or none or node.main == "negation") and node.main not in ("semicolon", "stop", "except")
        if not denied or node.main not in ("comma", "contrast") or not any(n.main == "item" for n in nodes[:place]):
            continue
        clause = list(itertools.takewhile(lambda n: not n.is_break, nodes[place + 1 :]))
        listed = any(n.text in ("or", "nor") for n in nodes[place + 1 :])  # the denial goes on
        names = [name for n in nodes[:place] if n.main == "item" for name in n.candidates][-1:]
        signs = not none and all(
            items[name].kind == "presence" for name in names
        )  # "no tremor at rest, mild on posture"
        if signs and node.main == "contrast" and _tells_of_another(clause, names):
            for one in clause:
                one.main = "word"  # "no neglect but slow on the left": not a word of what is denied
        if not listed and (_is_one(clause) or _is_some(clause, signs=signs)):
            node.main, node.mark = "except", replace(node.mark, roles=(Role("except"),), text="except")


def _tells_of_another(clause: Sequence[Node], names: Sequence[str]) -> bool:
    """Words for how something is, that no sign is told by, and nothing is named."""
    values = [n for n in clause if n.main == "value"]
    plain = all(n.mark.role("abnormal", "") is not None for n in values)
    own = any(role.item in names for n in values for role in n.mark.roles)
    return bool(values) and plain and not own and all(n.main not in ("item", "number") for n in clause)


def _is_one(clause: Sequence[Node]) -> bool:
    """ "A faint one over the left femoral", "one on the left"."""
    at = next((i for i, n in enumerate(clause) if n.text == "one"), None)
    if at is None or at + 1 == len(clause):
        return False
    led = clause[0].text in _ARTICLES if at else clause[1].text in _WHERE_ONE
    if led and all(n.main in _SAYING_HOW for n in clause[:at]):
        clause[at].main = "filler"
        return True
    return False


def _is_some(clause: Sequence[Node], *, signs: bool) -> bool:
    """ "A trace at the left ankle", "some in the left calf", "a few beats on right gaze", "two beats"."""
    told = [n for n in clause if n.text not in _ONLY]
    if not told:
        return False
    first = told[0]
    if any(n.text in _BEATS for n in told) and all(n.main != "negation" for n in told):
        return True
    few = first.main == "qualifier" and "beats" in first.text
    some = few or first.text in (_TRACES | _SOME) or (first.main == "severity" and not signs)
    placed = any(n.main in _PLACES for n in told[1:])
    if not (some and placed) or any(n.main == "negation" for n in told):
        return False
    if first.text in _SOME and first.main in ("filler", "word"):
        first.main = "severity"
    return True
