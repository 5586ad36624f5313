"""A "both" that means the two that were named, and no sides: "tone and bulk were both normal"."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.model import Side
from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Draft

_VERBS = frozenset({"were", "are", "was", "is", "s"})
_NAMES = ("item", "site")
_PARTING = ("stop", "semicolon")


def both_of_two(nodes: list[Node]) -> None:
    """ "Tone and bulk were both normal", "touch and pin ... both are low": the two that were named, and no sides."""
    for place, node in enumerate(nodes):
        if node.text != "both" or node.main != "side":
            continue
        before = [n.main for n in nodes[:place] if n.main != "filler"]
        verbs = {n.text for n in nodes[max(0, place - 1) : place]}
        pair = before == ["item", "conj", "item"]
        names = [at for at, one in enumerate(nodes[:place]) if one.main == "item"]
        two = len(names) == 2 and [n.text for n in nodes[names[0] + 1 : names[1]]] == ["and"]
        after = {n.text for n in nodes[place + 1 : place + 2]}
        told = nodes[place + 1 : place + 2]
        graded = bool(told) and told[0].mark.number is not None and nodes[place - 1].main == "item"
        linked = place > 1 and nodes[place - 2].main == "conj" and nodes[place - 3].main == "item"
        sided = (
            any(n.main == "side" for n in nodes[:place]) and linked
        )  # "on the right elbow extension 1, A and B both 0"
        kinds = [n.main for n in nodes[place + 1 : place + 4]]
        between = list(itertools.takewhile(lambda n: not n.is_break or n.text == "and", nodes[place + 1 :]))
        paired = any(n.text == "and" for n in between[1:])
        joined = kinds == ["qualifier", "conj", "qualifier"] or (paired and bool(after & {"to", "in", "on", "at"}))
        between = list(itertools.takewhile(lambda n: not n.is_break, between))
        other = [n.main for n in between if n.main != "filler"] == ["value", "side"] and between[-1].main == "side"
        other = other and between[-1].key("side") in ("left", "right")  # "clumsy on the left; both normal on the right"
        if (
            _is_of_pair(nodes, place)
            or other
            or (pair and verbs & _VERBS)
            or (two and after & _VERBS)
            or (graded and sided)
            or joined
        ):
            node.main = "filler"


def _is_of_pair(nodes: Sequence[Node], place: int) -> bool:
    """ "A and B both four on the right", "both the arm and the leg", "the left arm and leg are both four".

    Where the two stand behind it without an article, and no side is said, it is of both sides: "both arms and legs".
    """
    before = list(itertools.takewhile(lambda n: n.main not in _PARTING, reversed(nodes[:place])))
    after = list(itertools.takewhile(lambda n: n.main not in _PARTING, nodes[place + 1 :]))
    front = [n for n in before if n.main != "filler"][:3]
    behind = [n for n in after if n.main != "filler"][:3]
    sided = any(n.main == "side" and n.key("side") in ("left", "right") for n in (*before, *after))
    article = bool(after) and after[0].text == "the"
    told = bool(behind) and behind[0].main in ("value", "number", "severity")
    return (_is_pair(front) and told) or (_is_pair(behind) and (sided or article))


def _is_pair(nodes: Sequence[Node]) -> bool:
    return (
        len(nodes) == len(("one", "and", "two"))
        and nodes[1].text == "and"
        and {nodes[0].main, nodes[2].main} <= {*_NAMES}
    )


def names_of_both(nodes: Sequence[Node], drafts: Sequence[Draft], declared: Side | None) -> list[tuple[str, ...]]:
    """The two items last told of the other side, where this sentence says "on the left both are reduced"; else none.

    drafts: what was found so far. declared: the side said as a heading ("Left: both reduced").
    Its "both" then is no side, in place.
    """
    both = next((n for n in nodes if n.main == "side" and n.text in ("both", "both of them")), None)
    said = {Side(n.key("side")) for n in nodes if n.main == "side" and n is not both}
    sides = said or ({declared} if declared is not None else said)
    if both is None or sides not in ({Side.LEFT}, {Side.RIGHT}):
        return []
    last = drafts[-2:]
    items = list(dict.fromkeys(draft.item for draft in last))
    if len(items) != len(last) or len(items) < len(("one", "two")) or any(d.side in (*sides, Side.BOTH) for d in last):
        return []
    both.main = "filler"
    return [(item,) for item in items]
