"""Words of ability ("is able to", "manages", "can"): when they say that a task was done."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.reading.marks import Mark
from dictate.reading.nodes import Node

_DOES = frozenset("walks walked stands stood hops hopped rises rose gets squats".split())
SUBJECTS = frozenset({"she", "he", "they", "i", "we", "patient", "the patient"})
_AHEAD = 6  # marks in which the task follows
_ENDS = ("comma", "semicolon", "stop", "contrast")


def opens_task(marks: Sequence[Mark], place: int, items: Mapping[str, Item]) -> bool:
    """ "is able to walk on his heels": words of ability in front of a task."""
    if place and marks[place - 1].has("negation"):
        return False
    for later in marks[place + 1 : place + _AHEAD]:
        if any(items[r.item].task for r in later.roles if r.kind in ("item", "context")):
            return True
        if later.text == "you" or later.has("comma", "negation", "contrast", "stop", "item", "sign"):
            return False
    return False


def closes_task(marks: Sequence[Mark], place: int, nodes: Sequence[Node], items: Mapping[str, Item]) -> bool:
    """Words of ability behind the task: "toes he manages", "heel walk can", "can't on the left, can on the right".

    Also "he cannot on the right, on the left he can".
    """
    last = next((i for i in range(len(nodes) - 1, -1, -1) if nodes[i].main == "item"), None)
    if last is None or not any(items[name].task for name in nodes[last].candidates):
        return False
    after = next((mark for mark in marks[place + 1 :] if not mark.has("filler")), None)
    ended = after is None or after.has(*_ENDS)
    behind = [n for n in nodes[last + 1 :] if n.text not in SUBJECTS]
    if not behind:
        return ended
    told = nodes[last].sign or any(n.main in ("value", "negation") for n in itertools.chain(nodes[:last], behind))
    said = [n for n in behind if n.main != "filler"]
    if told and ended and len(said) > 1 and said[-1].main == "side" and said[-2].main in ("conj", *_ENDS):
        return True
    linked = behind[-1].main in ("conj", *_ENDS)
    return told and linked and after is not None and after.has("side")


def done(name: Node) -> bool:
    """ "Walks on his heels", "hops on the right": the name itself says that the patient does it."""
    return name.main == "item" and name.text.split()[0] in _DOES
