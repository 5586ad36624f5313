"""A denial in front of names, told of the word behind them: "neither pupil reacts", "I don't think the leg is weak"."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.model import Side
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node, is_thought

_NEITHER = frozenset({"neither", "neither of"})
_NONE = frozenset({"none of", "not one of", "not a single one of", "nowhere"})
_ALL = frozenset({"all", "everything", "every", "anything", "all of"})
_BUTS = frozenset({"but", "except", "except for", "but for", "apart from", "other than"})
_VERBS = frozenset({"is", "are", "was", "were"})
_UNDONE = ("not_examined", "not_assessable")


def deny_values(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Move, in place, each such denial to the word that it denies."""
    _but_not(nodes)
    place = 0
    while place < len(nodes):
        node = nodes[place]
        denied = node.main == "negation" and (node.text in _NEITHER | _NONE or is_thought(node))
        excepted = node.text in _BUTS and node.main in ("contrast", "except") and _is_of_all(nodes[:place])
        if denied or excepted:
            _move(nodes, place, items)
        place += 1


def not_this_number(nodes: Sequence[Node]) -> None:
    """ "Not four but three", "four, not five", "neither is five": a number that was denied was not found."""
    for place, node in enumerate(nodes):
        if node.main != "negation" or node.text != "not":
            continue
        after = list(itertools.takewhile(lambda n: n.main in ("filler", "number"), nodes[place + 1 : place + 4]))
        number = next((n for n in after if n.main == "number"), None)
        if number is not None and number.mark.is_grade:
            node.main = number.main = "word"


def _is_of_all(before: Sequence[Node]) -> bool:
    """ "All but the triceps are full": everything in front of it, and nothing found yet."""
    clause = list(itertools.takewhile(lambda n: not n.is_break, reversed(before)))
    told = any(n.main in ("value", "number", "negation") for n in clause)
    return not told and any(n.text.split()[0] in _ALL for n in clause if n.text)


def _move(nodes: list[Node], place: int, items: Mapping[str, Item]) -> None:
    denial = nodes[place]
    end = next((at for at in range(place + 1, len(nodes)) if _ends(nodes[at])), len(nodes))
    linked = [at for at in range(place + 1, end) if nodes[at].text in ("nor", "or")]
    start = (linked[-1] if linked else place) + 1
    target = next((at for at in range(start, end) if _is_told(nodes, at, start, items)), None)
    if target is None:
        return
    _both_sides(nodes, place, linked)
    for at in linked:
        nodes[at].main, nodes[at].mark = "conj", replace(nodes[at].mark, roles=(Role("conj"),), text="and")
    told = nodes[target].mark.start
    nodes.insert(target, Node(Mark(told, told, (Role("negation"),), text="not"), "negation"))
    between = nodes[place + 1 : target]
    sided = any(n.main == "side" for n in between)
    if denial.text in _NEITHER and not linked and not sided:
        denial.main, denial.mark = "side", replace(denial.mark, roles=(Role("side", key=Side.BOTH.value),))
    elif is_thought(denial):
        denial.main = "hedge"
    elif linked and all(n.main != "item" for n in between) and any(n.main == "site" for n in between):
        denial.mark = replace(denial.mark, text="not")  # "neither the arms nor the legs are stiff": of each place
    else:
        _join(nodes, place)


def _join(nodes: list[Node], place: int) -> None:
    """Make the denial, in place, a part of the first word that it was said of."""
    first = next(at for at in range(place + 1, len(nodes)) if nodes[at].main not in ("filler", "conj"))
    nodes[first].mark = replace(nodes[first].mark, start=nodes[place].mark.start)
    del nodes[place:first]


def _but_not(nodes: list[Node]) -> None:
    """ "Pin but not touch is reduced", "the left but not the right leg is weak": denied of the second only."""
    but = next(
        (at for at, n in enumerate(nodes) if n.text in ("but not", "and not") and n.main in ("except", "contrast")), 0
    )
    said = [n for n in nodes[:but] if n.main not in ("filler", "comma")]
    verb = next((at for at in range(but + 1, len(nodes)) if nodes[at].text in _VERBS), 0)
    after = [n for n in nodes[but + 1 : verb] if n.main not in ("filler", "comma")]
    kinds = [n.main for n in said]
    if not but or not verb or kinds not in (["item"], ["side"]) or any(n.main == "conj" for n in after):
        return
    named = [n for n in after if n.main == "item"]
    told = list(itertools.takewhile(lambda n: not n.is_break, nodes[verb + 1 :]))
    values = [at for at, n in enumerate(told) if n.main == "value"]
    if len(named) != 1 or not values or any(n.main in ("item", "number") for n in told):
        return
    first = nodes[:but] + ([replace(named[0])] if kinds == ["side"] else [])
    end = nodes[but].mark.start
    parting = Node(Mark(end, end, (Role("semicolon"),), text=";"), "semicolon")
    at = told[values[0]].mark.start
    denial = Node(Mark(at, at, (Role("negation"),), text="not"), "negation")
    denied = [*told[: values[0]], denial, *told[values[0] :]]
    nodes[but].main = "filler"
    rest = nodes[verb + 1 + len(told) :]
    nodes[:] = [*first, *(replace(n) for n in told), parting, *nodes[but : verb + 1], *denied, *rest]


def _both_sides(nodes: Sequence[Node], place: int, linked: Sequence[int]) -> None:
    """ "Neither the left nor the right pupil": both of what is named once."""
    if len(linked) != 1:
        return
    one = [n for n in nodes[place + 1 : linked[0]] if n.main != "filler"]
    two = next((n for n in nodes[linked[0] + 1 :] if n.main != "filler"), None)
    if two is None or [n.main for n in one] != ["side"] or two.main != "side" or one[0].key("side") == two.key("side"):
        return
    two.mark = replace(two.mark, start=one[0].mark.start, roles=(Role("side", key=Side.BOTH.value),))
    one[0].main = "filler"


def _ends(node: Node) -> bool:
    return node.is_break and node.main != "conj"


def _is_told(nodes: Sequence[Node], at: int, start: int, items: Mapping[str, Item]) -> bool:
    """Whether it says how something named in front of it was."""
    node = nodes[at]
    named = any((n.main == "item" and not n.sign) or n.main == "site" for n in nodes[start:at])
    if not named:
        return False
    if node.main in ("value", "number"):
        return not node.mark.has(*_UNDONE)
    sign = node.sign or any(items[name].kind == "presence" or node.value_roles(name) for name in node.candidates)
    return node.main == "item" and sign  # "the legs are stiff"
