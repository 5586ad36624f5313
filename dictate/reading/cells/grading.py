"""Words beside grades that only the whole sentence shows the sense of: "brisk (3+)", "worse on the right, 4 minus"."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.cells.clause_limbs import limbs_of_clauses
from dictate.reading.cells.gradients import signs_beside_jerks, values_of_gradients
from dictate.reading.marks import Role
from dictate.reading.nodes import Node
from dictate.reading.statements.cuts import is_unknown

_WHERE = frozenset({"at", "in", "on", "of", "over"})
_TAPS = ("finger_taps", "toe_taps", "rapid_alternating")
_STRONG = ("full", "strong", "weak")
_ARTICLES = ("a", "an")
_SCALE_NAMES = frozenset({"mrc", "mrc grade", "mrc power", "mrc strength"})
_SIDES = ("left", "right")
_SHORT_LIMBS = {"upper": "upper_limb", "lower": "lower_limb"}
_JERKS = ("jerk", "jerks", "reflex", "reflexes")

_VERSUS = ("versus", "vs", "against", "compared with", "compared to", "as against")


def settle_grades(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Settle, in place, what words beside grades mean."""
    grades_aside(nodes, items)
    compared_then_graded(nodes)
    there_at_all(nodes, items)
    both_named(nodes)
    scale_named(nodes, items)
    unknown_jerks(nodes, items)
    shared_signs(nodes)
    limbs_in_short(nodes, items)
    times(nodes)
    grades_described(nodes)
    regions_listed(nodes, items)
    limbs_strong(nodes, items)
    grips_rated(nodes)
    rated_limbs(nodes, items)
    order_of_pairs(nodes, items)
    limbs_of_clauses(nodes, items)
    values_of_gradients(nodes, items)
    signs_beside_jerks(nodes, items)


def grades_aside(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Brisk (3+) at both knees", "brisk, 3+, at both knees": a number set off says how much the word before it says.

    A grade says it better than the word.
    """
    for place in range(len(nodes) - 3):
        if nodes[place].main != "value":
            continue
        word, opening, number, closing = nodes[place : place + 4]
        if number.main != "number" or not opening.main == closing.main == "comma":
            continue
        if opening.text == "(" or any(n.text in _WHERE for n in nodes[place + 4 : place + 5]):
            opening.main = closing.main = "filler"
            named = next((n.candidates for n in reversed(nodes[:place]) if n.main == "item"), ())
            if any(items[name].kind == "grade" for name in named):
                word.main = "filler"


def compared_then_graded(nodes: list[Node]) -> None:
    """ "Worse on the right, 4 minus, left 4": the grade behind the worse side is of it, as the other has its own."""
    if not any(node.main == "comparison" for node in nodes):
        return
    said = [node for node in nodes if node.main != "filler"]
    for place in range(len(said) - 4):
        word, side, *rest = said[place : place + 7]
        if word.main != "comparison" or side.main != "side" or side.key("side") not in _SIDES:
            continue
        parts = [node.main for node in rest if not node.is_break]
        other = [node.key("side") for node in rest if node.main == "side"][:1]
        if parts[:3] in (["number", "side", "number"], ["number", "number", "side"]) and other != [side.key("side")]:
            word.main = "filler"


def there_at_all(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Depressed but present": what is there at all is no more than that; how it is was said before."""
    for place in range(1, len(nodes) - 1):
        if nodes[place].main != "contrast":
            continue
        how, but, there = nodes[place - 1 : place + 2]
        graded = any(items[name].kind == "grade" for node in nodes[:place] for name in node.candidates)
        told = how.main == "value" and how.mark.has("abnormal") and not how.mark.has("absent")
        if graded and told and there.main == "value" and there.mark.has("present"):
            but.main = there.main = "filler"


def both_named(nodes: list[Node]) -> None:
    """ "Biceps 5, triceps 4 minus, left both 5": behind a side both are the two that were named."""
    for place in range(1, len(nodes) - 1):
        if nodes[place].text != "both":
            continue
        side, both, value = nodes[place - 1 : place + 2]
        one_side = side.main == "side" and side.key("side") in _SIDES
        if one_side and value.main in ("number", "value"):
            both.main = "qualifier"


def scale_named(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Weakness of the left deltoid and biceps, MRC 3": the name of the scale, behind the muscles that are graded."""
    scale = items["strength_all"].scale
    for place in range(1, len(nodes) - 1):
        node = nodes[place]
        if node.main != "item" or node.text not in _SCALE_NAMES or nodes[place + 1].main != "number":
            continue
        before = nodes[:place]
        last = next((one for one in reversed(before) if one.main in ("item", "semicolon", "stop")), None)
        muscle = last is not None and any(items[name].scale == scale for name in last.candidates)
        graded = _graded(before, last)
        if muscle and not graded:
            node.main, node.candidates = "filler", ()


def _graded(before: Sequence[Node], last: Node | None) -> bool:
    start = next((place for place, node in enumerate(before) if node is last), 0)
    return any(node.mark.number is not None for node in before[start:])


def shared_signs(nodes: list[Node]) -> None:
    """ "Right arm and leg weakness": the noun at the end is of the arm too; a sign of one item keeps its last place."""
    last: Node | None = None
    for node in reversed(nodes):
        if node.main == "item" and node.mark.has("shared_head") and last is not None:
            own = any(role.kind == "sign" and role.item in node.candidates for role in node.mark.roles)
            if own and last.sign and not node.sign:
                node.sign = True
                node.mark = replace(node.mark, text=f"{node.text} {last.text.split()[-1]}")
            elif node.candidates == last.candidates and node.mark.has("site"):
                node.main, node.candidates = "word", ()
        elif node.main == "item":
            last = node


def unknown_jerks(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Suprapatellar reflex present", "deltoid jerks brisk": a jerk that has no name here is no muscle, nor all."""
    scale = items["strength_all"].scale
    for one, two in itertools.pairwise(nodes):
        whole = two.main == "item" and two.text == "reflex" and all(items[name].blanket for name in two.candidates)
        if whole and is_unknown(one):
            two.main, two.candidates = "word", ()
        unnamed = one.main == "item" and two.main == "word" and two.text in _JERKS
        unnamed = unnamed or (one.main == "item" and two.text == "test" and "flexion" in one.text)  # of a nerve
        if unnamed and all(items[name].scale == scale for name in one.candidates):
            one.main, one.candidates = "word", ()


def limbs_in_short(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Power 3/5 left upper and 4/5 left lower limb": where the grade before it was found, and no name of the next."""
    for place in range(2, len(nodes)):
        node = nodes[place]
        if node.text not in ("upper", "lower"):
            continue
        limb = {items[name].limb for name in node.candidates} if node.main == "item" else set()
        short = len(limb) == 1 and all(limb)
        before = [one for one in nodes[:place] if one.main not in ("filler", "side")]
        closed = place + 1 == len(nodes) or nodes[place + 1].is_break
        whole = [name for one in before for name in one.candidates if items[name].blanket]
        if short and closed and whole and before[-1].main == "number" and nodes[place - 1].main == "side":
            mark = replace(node.mark, roles=(Role("site", key=limb.pop()),))
            nodes[place] = Node(mark, "site")


def grades_described(nodes: list[Node]) -> None:
    """ "A full five in the left deltoid", "weak four": the word in front of the grade says no more than it."""
    for place in range(len(nodes) - 2, -1, -1):
        word, number = nodes[place : place + 2]
        opened = place == 0 or nodes[place - 1].is_break or nodes[place - 1].text.split()[-1] in _ARTICLES
        grade = number.main == "number" and number.mark.number is not None and number.mark.number.op in ("", "/", "of")
        led = any(n.text in ("in", "at", "of") or n.main == "throughout" for n in nodes[place + 2 : place + 3])
        grade = grade and not word.mark.has("loss")  # "lost 3 on recall"
        if word.main == "value" and word.mark.has("normal", "abnormal") and opened and grade and led:
            number.mark = replace(number.mark, start=word.mark.start)
            del nodes[place]


def regions_listed(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Deltoid 3, triceps 2, hand 1": behind a muscle, a part of the limb with its own grade is no place of it."""
    named: tuple[str, ...] = ()
    whole = items["strength_all"]
    for place in range(len(nodes) - 1):
        node = nodes[place]
        named = node.candidates if node.main == "item" else named
        muscle = bool(named) and all(items[name].scale == whole.scale and not items[name].blanket for name in named)
        before = next((one for one in reversed(nodes[:place]) if one.main not in ("side", "filler")), node)
        region = whole.site_items.get(node.key("site")) if node.main == "site" else None
        if muscle and region and before.is_break and nodes[place + 1].main == "number":
            node.main, node.candidates = "item", (region,)


def limbs_strong(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Left limbs full", "right limbs full strength": said of their strength, and of no more."""
    for place, node in enumerate(nodes):
        if node.main != "item" or node.text.removeprefix("the ") != "limbs":
            continue
        after = next((one for one in nodes[place + 1 :] if one.main not in ("filler", "side")), node)
        graded = after.main == "number" and after.mark.number is not None and after.mark.number.op in ("/", "of")
        if after.main == "item" and after is not node and {items[c].scale for c in after.candidates} == {"mrc"}:
            node.main, node.candidates = "filler", ()
        elif graded or (after.main == "value" and after.text in _STRONG):
            node.candidates = ("strength_all",)


def grips_rated(nodes: list[Node]) -> None:
    """ "Finger taps 2 right 1 left, hand grip 2 right 1 left": how fast it is opened, behind another such test."""
    for one, two in itertools.pairwise([node for node in nodes if node.main == "item"]):
        tapped = one.candidates[0] in _TAPS and "grip" in two.text and "strength" not in two.text
        if tapped and "strength_finger_flexors" in two.candidates:
            two.candidates = ("finger_taps",)


def rated_limbs(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Rigidity neck 2, right upper 2, left lower 1": a limb, behind a sign that is told by place."""
    named: tuple[str, ...] = ()
    for one, two, three in zip(nodes, nodes[1:], nodes[2:], strict=False):
        named = one.candidates if one.main == "item" else named
        if two.text not in _SHORT_LIMBS:
            continue
        sited = bool(named) and all(items[name].sited and "upper" not in items[name].sites for name in named)
        rated = one.main == "side" and three.mark.number is not None and not three.mark.number.op
        if sited and rated and two.main in ("word", "qualifier", "item", "site"):
            two.main, two.candidates = "site", ()
            two.mark = replace(two.mark, roles=(Role("site", key=_SHORT_LIMBS[two.text]),))


def order_of_pairs(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Eversion 4 on the right and 3 on the left, inversion 4 and 3": the same two sides, in the same order."""
    order: list[Node] = []
    starts = [place for place, node in enumerate(nodes) if node.main == "item"]
    added: list[tuple[int, Node]] = []
    if len(starts) <= 1:
        return
    for start, end in itertools.pairwise([*starts, len(nodes)]):
        graded = any(items[name].kind == "grade" and not items[name].blanket for name in nodes[start].candidates)
        said = [
            (at, nodes[at]) for at in range(start + 1, end) if nodes[at].main in ("number", "side", "site", "value")
        ]
        kinds = [node.main for _, node in said]
        if graded and kinds == ["number", "side", "number", "side"]:
            order = [said[1][1], said[3][1]]
        elif graded and kinds == ["number", "number"] and {n.key("side") for n in order} == {"left", "right"}:
            added += [(at + 1, side) for (at, _), side in zip(said, order, strict=True)]
        elif graded and "side" in kinds:
            order = []
    for at, side in reversed(added):
        nodes.insert(at, side)


def times(nodes: Sequence[Node]) -> None:
    """ "5 out of 5 x 4": in how many limbs, and no grade."""
    for one, two in itertools.pairwise(nodes):
        if one.text == "x" and one.main == "word" and two.main == "number":
            two.main = "word"


def versus(nodes: list[Node]) -> None:
    """ "Brisker on the right than the left, three plus versus two plus": the second grade is of the other side."""
    at = next((i for i, n in enumerate(nodes) if i and n.text in _VERSUS), 0)
    numbers = [n for n in nodes[at - 1 : at + 2] if n.mark.number is not None] if at else []
    sides = [n for n in nodes[:at] if n.main in ("side", "compared")]
    compared = any(n.main in ("comparison", "compared") or n.text == "than" for n in nodes[:at])
    if len(numbers) != 2 or len(sides) != 2 or not compared or any(n.mark.number for n in nodes[: at - 1]):
        return
    first, last = (i for i, n in enumerate(nodes) if n is sides[0] or n is sides[1])
    for node in (*nodes[first + 1 : last], *sides):
        node.main = "filler"
    for node in (n for n in nodes[:at] if n.main == "value" and n.mark.number is None):
        node.main = "filler"  # "brisker"
    nodes[at].main = "comma"
    for side, number in zip(sides, numbers, strict=True):
        mark = replace(number.mark, end=number.mark.start, roles=side.mark.roles, number=None, text=side.text)
        place = next(i for i, n in enumerate(nodes) if n is number)
        nodes.insert(place, Node(mark, "side"))
