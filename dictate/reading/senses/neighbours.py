"""Words that mean what the words beside them make of them: "a clear tremor", "all on the right", "still reduced"."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.cells.measures import MISSES
from dictate.reading.marks import Role
from dictate.reading.nodes import Node

_PLAIN_TO_SEE = frozenset({"clear", "full", "good", "perfect"})
_MEASURED = ("grade", "quantity", "score", "acuity", "pressure")
_ARTICLES = frozenset({"a", "an", "with a", "the"})
_HESITATIONS = frozenset({"um", "uh", "er", "erm", "hm", "well"})
_SAYING = ("negation", "value", "number", "severity")
_SHOWING = frozenset(
    {"shows", "showed", "reveals", "revealed", "demonstrates", "demonstrated", "show", "reveal"}
    | {f"{verb} {word} for" for verb in "is was are were".split() for word in "notable remarkable significant".split()}
)
_THEN = frozenset({"last time", "last year", "last visit", "before", "previously", "then", "last month", "last week"})
_NOW = frozenset({"is", "are", "now", "today"})
_PERCENT = ("percent", "per cent", "%")
_REACTS = ("reacts", "react", "reacting", "reactive", "reacted")
_SENSATION = frozenset({"sensation", "feeling", "sense", "perception", "sensibility"})
_TOO = frozenset({"too", "also", "as well", "similarly"})
_CLAUSE = 4  # "tremor, left is fine"
_WITH = frozenset({"with", "on", "in", "at"})


def settle_neighbours(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Settle, in place, words whose sense their neighbours show."""
    sides_of_parts(nodes, items)
    plain_signs(nodes, items)
    fine_there(nodes)
    histories(nodes)
    but_so(nodes)
    on_oxygen(nodes)
    all_of_them(nodes)
    hesitations(nodes)
    misses(nodes, items)
    shown_of_next(nodes, items)
    then_and_now(nodes)
    still_so(nodes)
    out_of_all(nodes)
    none_of_it(nodes, items)
    much_worse(nodes)
    senses_led(nodes, items)
    so_too(nodes, items)
    felt_there(nodes, items)


def fine_there(nodes: list[Node]) -> None:
    """ "Tremor in the right hand, the left is fine": well there, and no fine tremor beside one that was coarse."""
    for place, node in enumerate(nodes):
        if node.text != "fine" or node.main != "value" or place < _CLAUSE or nodes[place - 1].text not in ("is", "was"):
            continue
        clause = list(itertools.takewhile(lambda one: not one.is_break, reversed(nodes[:place])))
        before = nodes[: place - len(clause)]
        where = any(one.main in ("side", "site") for one in clause) and not any(one.main == "item" for one in clause)
        if where and before and all(one.main not in ("value", "qualifier") for one in before):
            node.mark = node.mark.only("normal")


def felt_there(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Temperature reduced in the feet": what is told of a place, without a number, is what is felt there."""
    for place, node in enumerate(nodes):
        if node.main != "item" or not all(items[name].kind == "quantity" for name in node.candidates):
            continue
        felt = tuple(role.item for role in node.mark.roles if role.kind == "context" and items[role.item].sited)
        rest = list(itertools.takewhile(lambda one: one.main not in ("item", "stop", "semicolon"), nodes[place + 1 :]))
        placed = any(one.main in ("site", "dermatome") for one in rest) and any(one.main == "value" for one in rest)
        if felt and placed and all(one.mark.number is None for one in rest):
            node.candidates = felt


def much_worse(nodes: list[Node]) -> None:
    """ "Tremor of both hands, slightly worse on the right": how much worse is said of no tremor of its own."""
    for place in range(len(nodes) - 2, 0, -1):
        before, much, worse = nodes[place - 1 : place + 2]
        sided = any(node.main == "side" for node in nodes[place + 2 : place + 4])
        if before.main == "comma" and much.main == "severity" and worse.main == "comparison" and sided:
            words = f"{much.text} {worse.text}"
            worse.mark = replace(worse.mark, start=much.mark.start, text=words)
            del nodes[place]


def senses_led(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Reduced sensation to pinprick and light touch": of these senses, and not of sensation as a whole."""
    for lead, whole, link, sense in zip(nodes, nodes[1:], nodes[2:], nodes[3:], strict=False):
        if whole.main != "item" or whole.text not in _SENSATION or link.text not in ("to", "for"):
            continue
        felt = sense.main == "item" and all(items[name].sited and not items[name].blanket for name in sense.candidates)
        if felt and lead.main in ("value", "negation"):
            whole.main, whole.candidates = "filler", ()


def so_too(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Stereognosis impaired on the left, graphaesthesia too": as what was just told."""
    for place in range(2, len(nodes)):
        node, name = nodes[place], nodes[place - 1]
        closed = place + 1 == len(nodes) or nodes[place + 1].main in ("stop", "semicolon", "comma")
        if node.text not in _TOO or not closed or name.main != "item" or name.sign:
            continue
        told = any(one.main in ("value", "number") for one in nodes[: place - 1])
        if told and all(items[one].kind in ("normality", "grade") for one in name.candidates):
            node.main, node.mark = "value", replace(node.mark, roles=(Role("same"),))


def sides_of_parts(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "On her toes and on the left heel": a side right in front of a part of the body is of that, and not behind."""
    for one, two in itertools.pairwise(nodes):
        if one.main != "side" or one.text not in ("on the left", "on the right"):
            continue
        part = two.main == "item" and two.mark.has("site") and two.mark.start == one.mark.end
        if part and all(items[name].task for name in two.candidates):
            one.mark = replace(one.mark, text=one.text.removeprefix("on the "))


def plain_signs(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "A clear intention tremor", "no clear sensory level": how plain it was to see, and nothing normal."""
    for lead, word, sign in zip(nodes, nodes[1:], nodes[2:], strict=False):
        if word.text not in _PLAIN_TO_SEE or word.main != "value":
            continue
        abnormal = sign.sign or (sign.main == "value" and sign.mark.has("abnormal") and not sign.mark.has("normal"))
        article = lead.text in _ARTICLES and abnormal
        there = lead.text.startswith("there ") or lead.main == "negation"
        shown = there and sign.main == "item" and all(items[c].kind not in _MEASURED for c in sign.candidates)
        if article or shown:
            word.main = "severity"


def but_so(nodes: list[Node]) -> None:
    """ "Reacts but sluggishly", "normal to low": one value, and the second word says it."""
    for one, link, two in zip(nodes, nodes[1:], nodes[2:], strict=False):
        if not one.main == two.main == "value" or one.mark.number is not None or two.mark.number is not None:
            continue
        if link.main == "contrast" and one.text in _REACTS and two.mark.has("abnormal", "value"):
            one.main = link.main = "filler"
        elif link.text == "to" and one.text == "normal" and not two.mark.role("normal", ""):
            one.main = "severity"


def on_oxygen(nodes: list[Node]) -> None:
    """ "Ninety four percent on forty percent": what was breathed, and no second saturation."""
    for one, link, two, unit in zip(nodes, nodes[1:], nodes[2:], nodes[3:], strict=False):
        measured = one.mark.number is not None or one.text in _PERCENT
        if measured and link.text == "on" and two.mark.number is not None and unit.text in _PERCENT:
            two.main, two.mark = "word", replace(two.mark, roles=(), number=None)
            unit.main = "word"


def histories(nodes: list[Node]) -> None:
    """ "She gave a clear history": the word is of how it was told, and tells of no examination."""
    for word, told in itertools.pairwise(nodes):
        if word.main in ("value", "qualifier") and told.mark.has("section") and told.text in ("history", "account"):
            word.main = "word"


def all_of_them(nodes: list[Node]) -> None:
    """ "Three of five on the left, all on the right": all that was counted before."""
    counted = False
    for one, two, three in zip(nodes, nodes[1:], nodes[2:], strict=False):
        counted = one.main != "item" and (counted or (one.mark.number is not None and one.mark.number.op == "of"))
        if counted and one.is_break and two.text in ("all", "all of them") and three.main == "side":
            two.main, two.mark = "value", replace(two.mark, roles=(Role("normal"),))


def out_of_all(nodes: list[Node]) -> None:
    """ "..., all out of eight": the maximum of all that was measured before, and no reading."""
    for place in range(4, len(nodes)):
        if nodes[place].main != "number":
            continue
        said = [n.text for n in nodes[place - 3 : place]]
        maximum = said in (["all", "out", "of"], ["each", "out", "of"]) and nodes[place - 4].is_break
        if maximum and nodes[place].mark.number is not None:
            nodes[place].main = "filler"


def hesitations(nodes: list[Node]) -> None:
    """ "Left, er, not so good": the commas around a hesitation part nothing."""
    for place in range(1, len(nodes) - 3):
        if nodes[place + 1].text not in _HESITATIONS:
            continue
        one, _, two = nodes[place : place + 3]
        if one.main == two.main == "comma":
            two.main = "filler"
            if nodes[place - 1].main in ("side", "item") and nodes[place + 3].main in _SAYING:
                one.main = "filler"


def misses(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Missed 3 of 8 on the right, none on the left": what was missed is no count of right answers; none is normal."""
    if not any(node.text in MISSES for node in nodes):
        return
    names: tuple[str, ...] = ()
    missed = False
    for place, node in enumerate(nodes):
        names = node.candidates or names
        missed = missed and node.main not in ("item", "stop")
        if not names or not all(items[name].kind == "normality" and items[name].sited for name in names):
            continue
        counted = any(n.main == "number" for n in nodes[max(0, place - 2) : place + 3])
        if node.mark.has("loss") and node.text in MISSES and counted:
            node.main, node.mark = "value", replace(node.mark, roles=(Role("abnormal"),))
        missed = missed or (node.text in MISSES and counted)
        if missed and node.text in ("none", "nil") and node.main == "value":
            node.mark = replace(node.mark, roles=(Role("normal"),))


def shown_of_next(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Casual gait shows decreased right arm swing": what is shown is of the name behind it."""
    for place in range(1, len(nodes) - 2):
        name, verb = nodes[place - 1 : place + 1]
        whole = name.main == "item" and all(items[c].blanket for c in name.candidates)
        if whole and any(items[c].limb for c in name.candidates):
            continue  # "the upper extremities show normal tone": where it was
        if name.main != "item" or not (verb.text in _SHOWING or (whole and verb.main == "colon")):
            continue
        told = list(
            itertools.takewhile(lambda n: n.main in ("value", "severity", "side", "filler"), nodes[place + 1 :])
        )
        values = [n for n in told if n.main == "value"]
        after = nodes[place + 1 + len(told) : place + 2 + len(told)]
        fine = [n for n in values if not whole and not n.mark.role("abnormal", "")]
        own = any(n.value_roles(c) for n in fine for c in name.candidates)
        if values and not own and after and after[0].main == "item" and not after[0].sign:
            name.main, name.candidates = "heading", ()


def then_and_now(nodes: list[Node]) -> None:
    """ "Was positive last time and is negative today": what was found then is not found now."""
    for place, node in enumerate(nodes):
        if node.main != "value" or not any(n.text in ("was", "were") for n in nodes[max(0, place - 2) : place]):
            continue
        time = list(itertools.takewhile(lambda n: n.main in ("word", "filler", "time_span"), nodes[place + 1 :]))
        after = nodes[place + 1 + len(time) :]
        then = " ".join(n.text for n in time) in _THEN
        now = bool(after) and after[0].main in ("conj", "contrast", "comma") and any(n.text in _NOW for n in after[1:3])
        if then and now and any(n.main == "value" for n in after[1:5]):
            node.main = "word"


def still_so(nodes: list[Node]) -> None:
    """ "Unchanged, still reduced": the word behind it says how it was and is."""
    for place in range(len(nodes) - 3):
        if nodes[place + 2].text not in ("still", "and still"):
            continue
        word, comma, _, value = nodes[place : place + 4]
        told = value.main == "value" and not value.mark.has("unchanged")
        if word.mark.has("unchanged") and comma.main == "comma" and told:
            word.main = comma.main = "filler"


def none_of_it(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Dysmetria with finger nose, none with heel shin": none of the sign just named, so that the test was normal."""
    shown = False
    for place, node in enumerate(nodes):
        shown = shown or (node.main == "value" and node.mark.has("abnormal"))
        if not shown or node.text not in ("none", "nil") or node.main != "value" or not nodes[place - 1].is_break:
            continue
        after = list(itertools.islice((n for n in nodes[place + 1 :] if n.text != "the"), 2))
        tests = after[1].candidates if len(after) == 2 and after[0].text in _WITH else ()
        if tests and all(items[name].negated == "unclear" and not after[1].sign for name in tests):
            node.mark = replace(node.mark, roles=(Role("normal"),))
