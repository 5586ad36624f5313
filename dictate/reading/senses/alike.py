"""Words that say of sides or places that they are alike, or that one of them has none; a name said again."""

from __future__ import annotations

from dataclasses import replace

from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import LIMBS, Node, limb_of

_ALIKE = frozenset({"symmetric", "symmetrical", "symmetrically", "equal", "equally", "even"})


def settle_alike(nodes: list[Node]) -> None:
    """Settle, in place, what "symmetric" and "none" are of."""
    _alike_in_place(nodes)
    _none_of_next(nodes)
    _alike_signs(nodes)
    _named_again(nodes)
    _limb_than_limb(nodes)
    _so_is(nodes)


def _so_is(nodes: list[Node]) -> None:
    """ "Kernig is negative, and so is Brudzinski": what was said of the one before, behind the name."""
    for place in range(len(nodes) - 2, -1, -1):
        so = nodes[place]
        if not so.mark.has("same") or "so" not in so.text.split()[:2]:
            continue
        at = next((i for i in range(place + 1, len(nodes)) if nodes[i].main != "filler"), place)
        name = nodes[at]
        if name.main == "item" and all(n.is_break for n in nodes[at + 1 : at + 2]):
            end = name.mark.end
            same = Node(replace(so.mark, start=end, end=end), "value")
            name.mark = replace(name.mark, start=so.mark.start)
            nodes[place : at + 1] = [name, same]


def _limb_than_limb(nodes: list[Node]) -> None:
    """ "Left sided weakness, arm worse than leg": of both limbs, and of one more than of the other."""
    said = [node for node in nodes if node.text != "the"]
    for one, than, two in zip(said, said[1:], said[2:], strict=False):
        if than.main != "comparison" or not than.text.endswith(" than") or not one.main == two.main == "site":
            continue
        limbs = {limb_of(node.key("site")) for node in (one, two)}
        if limbs == {*LIMBS}:
            start = than.mark.start
            than.main, than.mark = "conj", Mark(start, start, (Role("conj"),), text="and")
            two.mark = replace(two.mark, start=start)


def _named_again(nodes: list[Node]) -> None:
    """ "She walks with a stiff, spastic gait": the name behind its words is the one in front of them."""
    for place in range(len(nodes) - 1, 1, -1):
        again = nodes[place]
        if again.main != "item" or again.sign or nodes[place - 1].main != "value":
            continue
        first = next((at for at in range(place - 1, -1, -1) if nodes[at].main == "item"), place)
        words = nodes[first + 1 : place]
        plain = all(n.main in ("filler", "value", "comma", "severity") for n in words) and len(words) > 1
        led = bool(words) and words[0].text.split()[0] in ("with", "has")
        if plain and led and first < place and nodes[first].candidates == again.candidates:
            again.main, again.candidates = "filler", ()


def _alike_in_place(nodes: list[Node]) -> None:
    """ "Two plus and symmetric in the arms": one grade there, and no second finding."""
    for place in range(2, len(nodes) - 1):
        grade, link, alike = nodes[place - 2 : place + 1]
        where = next((n for n in nodes[place + 1 :] if n.main != "filler"), None)
        placed = where is not None and (where.main == "site" or where.mark.has("site"))
        if alike.mark.has("equal") and link.text == "and" and grade.main == "number" and placed:
            link.main = "filler"


def _none_of_next(nodes: list[Node]) -> None:
    """ "Wasting on the right none on the left", in speech without commas: none is of the side behind it."""
    for place in range(len(nodes) - 2, 0, -1):
        none, after = nodes[place : place + 2]
        before = next((n for n in reversed(nodes[:place]) if n.main not in ("site", "filler")), none)
        if (
            none.text in ("none", "nil")
            and before.main == after.main == "side"
            and before.key("side") != after.key("side")
        ):
            start = none.mark.start
            nodes.insert(place, Node(Mark(start, start, (Role("comma"),), text=","), "comma"))


def _alike_signs(nodes: list[Node]) -> None:
    """ "Wasting of both hands, symmetrical": alike on both sides, and no word for normal."""
    sign = False
    for node in nodes:
        if node.main == "item":
            sign = node.sign
        elif node.main in ("value", "number", "negation", "semicolon"):
            if sign and node.main == "value" and (node.mark.has("equal") or node.text in _ALIKE):
                node.main = "filler"
            sign = sign and node.main == "filler"
