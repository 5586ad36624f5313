"""What is denied where its word stands in the clause before: "pin is reduced, touch isn't", "not A, it's B"."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Role
from dictate.reading.nodes import Node
from dictate.reading.phrases.bare import WHOLE_SIDES

_IS = frozenset({"is", "was", "are", "were"})
_TESTED = frozenset({"tested", "examined", "checked", "assessed"})
_IT_IS = frozenset({"it is", "it was", "that is", "this is", "these are", "those are", "it", "that", "this"})
_DEGREES = frozenset({"large", "big", "marked", "constant", "continuous", "regular", "obvious"})
_CHANGED = frozenset({"gone", "down", "up", "improved", "fallen", "dropped", "risen", "changed"})
_PLACES = frozenset({"on", "in", "at", "over", "the", "his", "her"})
_PLACING = ("at ", "on ", "in ", "with ", "to ")


def tell_unsaid(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Settle, in place, what is denied or not."""
    _another_thing(nodes)
    _side_is_weak(nodes)
    _not_so_much(nodes, items)
    _not_there_but_here(nodes)
    _as_the_other(nodes)
    _but_there(nodes)
    _rest_of_limb(nodes)
    grade_of_two(nodes)
    for place, node in enumerate(nodes):
        if node.main == "negation" and node.text == "not":
            _is_not(nodes, place)


def _is_not(nodes: list[Node], place: int) -> None:
    """ "Pin is reduced on the left, touch isn't": normal, for what stands before it is not."""
    node = nodes[place]
    ends = all(after.is_break for after in nodes[place + 1 : place + 2])
    before = [n for n in nodes[:place] if n.text not in ("the", "his", "her")]
    before = before[:-1] if before and before[-1].text in _IS else before  # "gait not", "gait isn't"
    if not ends or not before or before[-1].main != "item":
        return
    name = before[-1]
    clause = list(itertools.takewhile(lambda n: not n.is_break, reversed(before[:-1])))
    earlier = before[: len(before) - 1 - len(clause)]
    told = next((n for n in reversed(earlier) if n.main in ("value", "number", "item") or n.text in _TESTED), None)
    if name.sign or told is None or clause:
        return
    if told.text in _TESTED:
        node.main, node.mark = "value", replace(node.mark, roles=(Role("not_examined"),))
        comma = next(n for n in reversed(nodes[:place]) if n.is_break)
        comma.main = "semicolon"  # of this one, and not of what was tested
    elif told.main == "value" and told.mark.role("normal", ""):
        node.main, node.mark = "value", replace(node.mark, roles=(Role("abnormal"),), text="not normal")
    elif told.main == "value" and told.mark.role("abnormal", "") and not told.mark.has(*_TESTED):
        node.main, node.mark = "value", replace(node.mark, roles=(Role("normal"),))


def _another_thing(nodes: Sequence[Node]) -> None:
    """ "It's not aphasia, it's dysarthria": the denial ends where what it is begins."""
    for place, node in enumerate(nodes):
        if node.main != "comma" or not any(n.main == "negation" for n in nodes[:place]):
            continue
        after = [n.text for n in nodes[place + 1 : place + 3]]
        if after[:1] and after[0] in _IT_IS and (" " in after[0] or after[1:2] == ["is"]):
            node.main = "semicolon"


def _side_is_weak(nodes: Sequence[Node]) -> None:
    """ "Pin is down and the right side is weak": the side begins what follows it."""
    for place, node in enumerate(nodes):
        before = [n for n in nodes[:place] if n.main != "filler"][-2:]
        whole = len(before) > 1 and before[1].main == "side" and before[1].text in WHOLE_SIDES
        if node.main == "item" and node.sign and whole and before[0].text == "and":
            before[0].main = "semicolon"


def _not_so_much(nodes: Sequence[Node], items: Mapping[str, Item]) -> None:
    """ "The tremor isn't constant", "the drift is not large": there all the same."""
    for place, node in enumerate(nodes):
        if node.main != "negation" or node.text != "not":
            continue
        before = next((n for n in reversed(nodes[:place]) if n.main != "filler"), None)
        after = next((n for n in nodes[place + 1 :] if n.main != "filler"), None)
        if before is None or after is None or before.main != "item":
            continue
        sign = before.sign or any(items[name].kind == "presence" for name in before.candidates)
        degree = after.main in ("severity", "comparison", "word") or after.mark.has("equal") or after.text in _DEGREES
        degree = degree or (after.main == "qualifier" and not after.text.startswith(_PLACING))
        if sign and degree:
            node.main = "word"
            after.main = "word" if after.main != "severity" else after.main


def _not_there_but_here(nodes: Sequence[Node]) -> None:
    """ "The bruit is not on the left but on the right": of the right only."""
    for place, (one, side, but) in enumerate(zip(nodes, nodes[1:], nodes[2:], strict=False)):
        if (one.main, side.main, but.text) != ("negation", "side", "but") or one.text != "not":
            continue
        other = next((n for n in nodes[place + 3 :] if n.main != "filler"), None)
        if other is not None and other.main == "side" and other.key("side") != side.key("side"):
            but.main, but.mark = "except", replace(but.mark, roles=(Role("except"),), text="except")


def _but_there(nodes: Sequence[Node]) -> None:
    """ "Normal everywhere but on the chin", "no oedema but on the left": a place and nothing else is an exception."""
    for place, but in enumerate(nodes):
        only = but.text == "only" and place > 0 and nodes[place - 1].main == "comma"  # "none on the right, only left"
        if not only and (but.text != "but" or but.main != "contrast"):
            continue
        before = list(itertools.takewhile(lambda n: n.main not in ("stop", "semicolon"), reversed(nodes[:place])))
        told = any(n.main == "negation" or (n.main == "value" and _is_well(n)) for n in before)
        after = list(itertools.takewhile(lambda n: n.main not in ("stop", "semicolon", "comma"), nodes[place + 1 :]))
        said = [n for n in after if n.text not in _PLACES]
        alone = (
            bool(said)
            and all(n.main in ("side", "site") for n in said)
            and any(n.main in ("value", "item") for n in before)
        )
        if told and alone:
            but.main, but.mark = "except", replace(but.mark, roles=(Role("except"),), text="except")


def _is_well(node: Node) -> bool:
    return node.mark.role("normal", "") is not None or node.mark.role("present", "") is not None


def _rest_of_limb(nodes: list[Node]) -> None:
    """ "Right hip flexion is four, the rest of the leg is five": of that leg."""
    for place in range(len(nodes) - 2, 0, -1):
        rest, limb = nodes[place], next((n for n in nodes[place + 1 :] if n.main != "filler"), None)
        if rest.main != "rest" or not rest.text.endswith("of") or limb is None or limb.text not in ("leg", "arm"):
            continue
        sides = {n.key("side"): n for n in nodes[:place] if n.main == "side"}
        if len(sides) == 1 and "both" not in sides:
            nodes.insert(nodes.index(limb), replace(next(iter(sides.values()))))


def _as_the_other(nodes: Sequence[Node]) -> None:
    """ "Not as strong as the right": what the side is held against."""
    for place, node in enumerate(nodes):
        if node.main != "side" or node.key("side") == "both":
            continue
        before = [n.text for n in nodes[max(0, place - 4) : place] if n.text not in ("the", "on", "in", "with")]
        first = any(n.text == "as" for n in nodes[: place - 1])
        told = any(n.main == "side" for n in nodes[:place])
        if before[-1:] == ["as"] and first and told and len(before) > 1:
            node.main = "compared"


def grade_of_two(nodes: Sequence[Node]) -> None:
    """ "Has gone down from five to four": what it is now."""
    for place, node in enumerate(nodes):
        after = nodes[place + 1] if place + 1 < len(nodes) else None
        number = after.mark.number if after is not None else None
        changed = place > 0 and nodes[place - 1].text.split(" ")[-1] in _CHANGED
        if (
            node.text != "from"
            or after is None
            or number is None
            or number.b is None
            or number.op == "/"
            or not changed
        ):
            continue
        after.mark = replace(
            after.mark, number=replace(number, a=number.b, a_sign=number.b_sign, b=None, b_sign="", op="")
        )
        for gone in nodes[max(0, place - 2) : place]:
            gone.main = "word" if gone.text.split(" ")[0] in _CHANGED else gone.main
