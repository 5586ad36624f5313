"""A side said once at the end of a list of grades, or as a whole: whose side it is."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from dictate.grammar import Item, Scale
from dictate.model import Grade, Side
from dictate.reading.nodes import Node
from dictate.reading.phrases.bare import WHOLE_SIDES
from dictate.reading.statements.drafts import Draft
from dictate.reading.statements.weights import Statement

_ALL = ("all", "both")  # of what was named of the other side
_OF_SIGN = ("filler", "severity", "qualifier", "unit", "number", "negation")  # what stands before a sign


def side_of_list(
    statements: Sequence[Statement],
    drafts: list[Draft],
    items: dict[str, Item],
    scales: dict[str, Scale],
    plurals: Collection[str],
) -> None:
    """ "hip flexion four, knee extension five, on the left": a side set off at the end is of the whole list.

    So is "on both sides" behind values that are all the same, and any side behind values that nothing parts from each
    other, or of which one is not as it should be: nobody says without its side that a deltoid was four.
    The list is what stands before it in the sentence, each with one value of the same scale and no side of its own.
    """
    last = [n for n in statements[-1].after if n.main != "stop"] if len(statements) > 1 else []
    while last and last[-1].is_break:
        last.pop()  # in front of what is told of the other side as a whole
    equal = [two for one, two in itertools.pairwise(last) if one.text == "all" and two.mark.has("equal")]
    sides = [n for n in last if n.main == "side"] or equal  # "triceps 1+, supinators 1+, all symmetrical"
    place = next((i for i, n in enumerate(last) if sides and n is sides[0]), 0)
    if not sides or last[place:] != sides or not drafts:
        return
    said = sides[0].key("side")
    if said in ("left", "right") and drafts[-1].side is not Side(said) and items[drafts[-1].item].blanket:
        drafts = drafts[:-1]  # "..., all on the left, the right side normal"
    if not drafts or any(n.main == "side" for statement in statements[:-1] for n in statement.nodes):
        return
    listed = list(_listed(drafts, items))
    alike = len({str(draft.value) for draft in drafts}) == 1 and drafts[-1].side is Side.BOTH
    lead = [n for n in last[:place] if n.text != "all"]  # "triceps 5, all on the left"
    parted = any(n.is_break for statement in statements for n in statement.nodes if n.main != "stop")
    words = {word for statement in statements for node in statement.names for word in node.text.split()}
    plural = drafts[-1].side is not Side.BOTH and not words.isdisjoint(plurals)  # "knees 4+, ankles 0 on the right"
    told = not plural and (_below(listed, items, scales) or not parted)
    if len(listed) + 1 < len(drafts) or not (alike or (lead and lead[-1].main == "comma") or told):
        return
    span = (sides[0].mark.start, sides[-1].mark.end)
    for draft in listed:
        draft.side = drafts[-1].side
        draft.spans.append(span)


def side_of_company(statements: Sequence[Statement], drafts: list[Draft], items: dict[str, Item]) -> None:
    """ "Four plus on the left with sustained clonus": what was found with it was found on that side."""
    for one, two in itertools.pairwise(statements):
        lead = [*one.after, *two.before]
        place = next((i for i in range(len(lead) - 1, -1, -1) if lead[i].text.split()[0] == "with"), 0)
        if not place or lead[place - 1].main != "side" or not all(n.main in _OF_SIGN for n in lead[place:]):
            continue
        if any(n.main == "side" for n in two.after):
            continue
        for draft in drafts:
            item = items[draft.item]
            named = any(start <= two.names[0].mark.start < end for start, end in draft.spans)
            if named and draft.side is None and item.sided == "paired" and item.kind == "presence":
                draft.side = Side(lead[place - 1].key("side"))
                draft.spans.append((lead[place - 1].mark.start, lead[place - 1].mark.end))


def _listed(drafts: Sequence[Draft], items: dict[str, Item]) -> Iterator[Draft]:
    """What is graded before the last, as the last is, and without a side."""
    scale = items[drafts[-1].item].scale
    for draft in reversed(drafts[:-1]):
        item = items[draft.item]
        if draft.side is not None or item.scale != scale or item.sided == "never" or item.kind != "grade":
            return
        yield draft


def _below(drafts: Sequence[Draft], items: dict[str, Item], scales: dict[str, Scale]) -> bool:
    """Whether each is graded, and one of them not as it should be: that one has a side."""
    graded = [(draft, scales[items[draft.item].scale]) for draft in drafts if isinstance(draft.value, Grade)]
    paired = all(items[draft.item].sided == "paired" for draft in drafts)
    return paired and len(graded) == len(drafts) and any(str(d.value) not in scale.normal for d, scale in graded)


def whole_sides(nodes: Sequence[Node], drafts: list[Draft], items: dict[str, Item]) -> None:
    """ "Left arm 3, left leg 4, right side normal": what is said of a whole side is of all that was named of the other.

    What was named: what the sentence graded on the other side before it, on the same scale.
    """
    wholes = [node for place, node in enumerate(nodes) if is_whole(nodes, place)]
    for place in range(len(drafts) - 1 if wholes else 0, 0, -1):
        last = drafts[place]
        of_side = next((node for node in wholes if _within(node, last)), None)
        if of_side is None or last.side is None or items[last.item].kind != "grade":
            continue
        earlier = drafts[:place]
        told = {(d.item, d.site) for d in drafts if d.side is last.side}
        span = (of_side.mark.start, last.spans[-1][1])
        for one in earlier:
            alike = items[one.item].scale == items[last.item].scale and one.side not in (None, Side.BOTH, last.side)
            covered = items[last.item].blanket and not items[last.item].limb
            if alike and not covered and (one.item, one.site) not in told:
                drafts.append(replace(last, item=one.item, site=one.site, spans=[*one.spans[:1], span], detail=[]))
                told.add((one.item, one.site))


def is_whole(nodes: Sequence[Node], place: int) -> bool:
    """ "Right side", "left all", "on the left it is all", "L side"."""
    if nodes[place].main != "side" or nodes[place].text in WHOLE_SIDES:
        return nodes[place].text in WHOLE_SIDES
    after = next((n for n in nodes[place + 1 :] if n.main not in ("filler", "colon") or n.text in _ALL), None)
    return after is not None and (after.text in _ALL or nodes[place + 1].text == "side")


def _within(node: Node, draft: Draft) -> bool:
    return any(start <= node.mark.start < end for start, end in draft.spans)
