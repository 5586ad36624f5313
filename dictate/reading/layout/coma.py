"""Parts of the coma scale told over several sentences, without its name: "Eyes three. Verbal four. Motor six." """

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node

_GROUP = "coma_scale"
_PARTS = frozenset({"gcs_eye", "gcs_verbal", "gcs_motor"})
_TOTAL = "gcs_total"
_NEAR = 16  # marks from one part to the next
_BETWEEN = ("filler", "colon", "comma")


def name_parts(marks: Sequence[Mark], items: Mapping[str, Item]) -> list[Mark]:
    """The marks, where eye, verbal and motor each stand with their points near each other, as names of these parts."""
    told = [(place, name) for place in range(len(marks)) if (name := _part(marks, place, items))]
    result = list(marks)
    for start in range(len(told)):
        run = [told[start]]
        for place, name in told[start + 1 :]:
            if place - run[-1][0] > _NEAR or name in {one for _, one in run}:
                break
            run.append((place, name))
        if not {name for _, name in run} >= _PARTS:
            continue
        for place, name in run:
            result[place] = replace(marks[place], roles=(Role("item", name),))
    return result


def name_sums(nodes: list[Node]) -> None:
    """ "E three V four M five, so twelve": the number behind the last part is their sum, where it is that."""
    parts = [i for i, n in enumerate(nodes) if n.main == "item" and {*n.candidates} <= _PARTS]
    behind = [n for n in nodes[parts[-1] + 1 :] if n.main == "number"] if len(parts) >= len(_PARTS) else []
    told = [next((n for n in nodes[at + 1 : at + 4] if n.mark.number is not None), None) for at in parts[-3:]]
    points = [n.mark.number.a for n in told if n is not None and n.mark.number is not None]
    if len(behind) < 2 or len(points) != len(_PARTS) or any(n.main == "item" for n in nodes[parts[-1] + 1 :]):
        return
    total = behind[1]
    if total.mark.number is not None and total.mark.number.a == sum(points):
        mark = replace(total.mark, end=total.mark.start, number=None, roles=(Role("item", _TOTAL),))
        nodes.insert(nodes.index(total), Node(mark, "item", candidates=(_TOTAL,)))


def _part(marks: Sequence[Mark], place: int, items: Mapping[str, Item]) -> str:
    """The part, or the total, that a mark with a number behind it may name; empty: none."""
    mark = marks[place]
    names = [role.item for role in mark.roles if role.kind == "context" and items[role.item].group == _GROUP]
    after = next((one for one in marks[place + 1 : place + 3] if not one.has(*_BETWEEN)), None)
    plain = after is not None and after.number is not None and not after.number.op and not after.number.a_sign
    return names[0] if names and plain else ""
