"""Words beside grades that only the whole sentence shows the sense of: "brisk (3+)", "worse on the right, 4 minus"."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.cuts import is_unknown
from dictate.reading.marks import Role
from dictate.reading.nodes import LIMBS, Node, limb_of

_WHERE = frozenset({"at", "in", "on", "of", "over"})
_SCALE_NAMES = frozenset({"mrc", "mrc grade", "mrc power", "mrc strength"})
_SIDES = ("left", "right")
_JERKS = ("jerk", "jerks", "reflex", "reflexes")


def settle_grades(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Settle, in place, what words beside grades mean."""
    grades_aside(nodes, items)
    compared_then_graded(nodes)
    there_at_all(nodes, items)
    both_named(nodes)
    scale_named(nodes, items)
    unknown_jerks(nodes, items)
    limbs_in_short(nodes, items)
    of_the_limb_told(nodes, items)


def grades_aside(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Brisk (3+) at both knees", "brisk, 3+, at both knees": a number set off says how much the word before it says.

    A grade says it better than the word.
    """
    for place in range(len(nodes) - 3):
        word, opening, number, closing = nodes[place : place + 4]
        if word.main != "value" or number.main != "number" or not opening.main == closing.main == "comma":
            continue
        if opening.text == "(" or any(n.text in _WHERE for n in nodes[place + 4 : place + 5]):
            opening.main = closing.main = "filler"
            named = next((n.candidates for n in reversed(nodes[:place]) if n.main == "item"), ())
            if any(items[name].kind == "grade" for name in named):
                word.main = "filler"


def compared_then_graded(nodes: list[Node]) -> None:
    """ "Worse on the right, 4 minus, left 4": the grade behind the worse side is of it, as the other has its own."""
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
        how, but, there = nodes[place - 1 : place + 2]
        graded = any(items[name].kind == "grade" for node in nodes[:place] for name in node.candidates)
        told = how.main == "value" and how.mark.has("abnormal") and not how.mark.has("absent")
        if graded and told and but.main == "contrast" and there.main == "value" and there.mark.has("present"):
            but.main = there.main = "filler"


def both_named(nodes: list[Node]) -> None:
    """ "Biceps 5, triceps 4 minus, left both 5": behind a side both are the two that were named."""
    for place in range(1, len(nodes) - 1):
        side, both, value = nodes[place - 1 : place + 2]
        one_side = side.main == "side" and side.key("side") in _SIDES
        if one_side and both.text == "both" and value.main in ("number", "value"):
            both.main = "qualifier"


def scale_named(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Weakness of the left deltoid and biceps, MRC 3": the name of the scale, behind the muscles that are graded."""
    scale = items["strength_all"].scale
    for place in range(1, len(nodes) - 1):
        node, before = nodes[place], nodes[:place]
        if node.main != "item" or node.text not in _SCALE_NAMES or nodes[place + 1].main != "number":
            continue
        last = next((one for one in reversed(before) if one.main in ("item", "semicolon", "stop")), None)
        muscle = last is not None and any(items[name].scale == scale for name in last.candidates)
        graded = _graded(before, last)
        if muscle and not graded:
            node.main, node.candidates = "filler", ()


def _graded(before: Sequence[Node], last: Node | None) -> bool:
    start = next((place for place, node in enumerate(before) if node is last), 0)
    return any(node.mark.number is not None for node in before[start:])


def unknown_jerks(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Suprapatellar reflex present", "deltoid jerks brisk": a jerk that has no name here is no muscle, nor all."""
    scale = items["strength_all"].scale
    for one, two in itertools.pairwise(nodes):
        whole = two.main == "item" and two.text == "reflex" and all(items[name].blanket for name in two.candidates)
        if whole and is_unknown(one):
            two.main, two.candidates = "word", ()
        muscle = one.main == "item" and all(items[name].scale == scale for name in one.candidates)
        if muscle and two.main == "word" and two.text in _JERKS:
            one.main, one.candidates = "word", ()


def limbs_in_short(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Power 3/5 left upper and 4/5 left lower limb": where the grade before it was found, and no name of the next."""
    for place in range(2, len(nodes)):
        node = nodes[place]
        limb = {items[name].limb for name in node.candidates} if node.main == "item" else set()
        short = node.text in ("upper", "lower") and len(limb) == 1 and all(limb)
        before = [one for one in nodes[:place] if one.main not in ("filler", "side")]
        closed = place + 1 == len(nodes) or nodes[place + 1].is_break
        whole = [name for one in before for name in one.candidates if items[name].blanket]
        if short and closed and whole and before[-1].main == "number" and nodes[place - 1].main == "side":
            mark = replace(node.mark, roles=(Role("site", key=limb.pop()),))
            nodes[place] = Node(mark, "site")


def of_the_limb_told(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Arms normal, power 5 throughout": the whole that is graded behind it is of the limb that opens the sentence."""
    lead = [node for node in nodes[:9] if node.main != "filler"][:5]
    if len(lead) < 4 or lead[0].main not in ("site", "side"):
        return
    opening, rest = (lead[:1], lead[1:]) if lead[0].mark.has("site") else (lead[:2], lead[2:])
    limb = limb_of(opening[-1].key("site"))
    if limb not in LIMBS or [node.main for node in rest[:3]] != ["value", "comma", "item"]:
        return
    first = next(place for place, node in enumerate(nodes) if node is rest[2])
    told = any(node.main in ("side", "site") or node.mark.has("sign") for node in nodes[first:])
    if told or rest[0].mark.role("normal", "") is None:
        return
    for place in range(len(nodes) - 1, first - 1, -1):
        names = nodes[place].candidates if nodes[place].main == "item" else ()
        if names and all(limb in items[one].site_items or items[one].sited for one in names):
            nodes[place + 1 : place + 1] = opening
