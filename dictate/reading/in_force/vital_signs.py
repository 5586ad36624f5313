"""Vital signs in a sentence: minutes, positions and rates that are told beside a reading only."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from dictate.grammar import CommonFile, Item
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.nodes import Node

_SLOWEST = 30  # a minute: less are breaths, or minutes
_RANGING = ("rang", "var", "betw")
_CHANGING = (
    "ris",
    "rose",
    "fall",
    "fell",
    "drop",
    "increase",
    "increasing",
    "decrease",
    "decreasing",
    "climb",
    "go",
    "come",
)
_UP_OR_DOWN = frozenset({"up", "down"})
_WEIGHTS = frozenset({"kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "lb", "lbs", "pounds", "stone"})
_FELT = ("orthostatic_symptoms",)
_TOLD = ("filler", "word", "comma", "talk", "value")
_LONGEST_STANDING = 30  # minutes; a tilt table's longest usual stay is more, and is said with its unit


def read_vital_signs(nodes: list[Node], items: Mapping[str, Item], common: CommonFile) -> None:
    """Tell, in place, what words and numbers are beside a pressure or a rhythm."""
    numbered_beds(nodes)
    positions_of_readings(nodes, common.beside_pressures)
    minutes_of_readings(nodes)
    rates_of_rhythms(nodes, items)
    changes_of_rates(nodes, items)
    changes_by(nodes)


def positions_of_readings(nodes: list[Node], ways: Mapping[Any, Sequence[str]]) -> None:
    """ "BP 124/70 sit, on her feet 120/72": beside a pressure, and with nothing else behind it, it is a position."""
    positions = {word: position for position, words in ways.items() for word in words}
    longest = max((len(way.split()) for way in positions), default=1)
    ends = {way.rpartition(" ")[2] for way in positions}
    for place in range(len(nodes) - 1, -1, -1):
        node = nodes[place]
        if node.main not in ("word", "filler", "site") or node.text.rpartition(" ")[2] not in ends:
            continue
        starts = range(max(0, place - longest + 1), place + 1)  # "on her feet"
        said = {start: " ".join(one.text for one in nodes[start : place + 1]) for start in starts}
        start = next((at for at, way in said.items() if way in positions), None)
        if start is None:
            continue
        before = nodes[place - 1] if place else None
        timed = place + 2 < len(nodes) and nodes[place + 1].main == "minutes"  # "stand 1 min 128/80"
        after = nodes[place + 1 + timed] if place + 1 < len(nodes) else None
        behind = before is not None and is_pressure(before) and (after is None or after.is_break)
        led = start < place and after is not None and after.main == "comma"  # "after a minute on her feet, 118/70"
        after = nodes[place + 2] if led and place + 2 < len(nodes) else after
        if behind or (after is not None and is_pressure(after)):
            role = Role("position", key=positions[said[start]])
            mark = replace(node.mark, start=nodes[start].mark.start, roles=(role,), text=said[start])
            nodes[start : place + 1] = [replace(node, main="position", mark=mark)]


def rates_of_rhythms(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Sinus rhythm at 72": the number is of another item than the name."""
    named: Node | None = None
    for one, two in itertools.pairwise(nodes):
        named = one if one.main == "item" else named
        rates = {items[name].rate for name in named.candidates} if named is not None else set()
        number = two.mark.number
        if len(rates) != 1 or one.text != "at" or two.main != "number" or number is None or number.op:
            continue
        if (rate := rates.pop()) and named is not None and rate not in named.candidates:
            two.main, two.candidates = "item", (rate,)


def changes_of_rates(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Pulse rose from 64 to 70", "HR 70 -> 92": two readings, and no range of them ("ranged from 64 to 70")."""
    for place in range(len(nodes) - 1, 0, -1):
        node, before = nodes[place], nodes[place - 1]
        number = node.mark.number
        if number is None or number.op not in ("to", "->") or number.b is None or number.a < _SLOWEST:
            continue
        named = next((one for one in reversed(nodes[:place]) if one.main == "item"), None)
        rates = [items[name] for name in named.candidates] if named is not None else []
        ranged = place > 1 and nodes[place - 2].text.startswith(_RANGING)
        if not any(item.positions and item.kind == "quantity" for item in rates) or ranged:
            continue
        words = node.mark.text.split()
        if (number.op != "->" and before.text != "from") or number.op not in words:
            continue
        at = node.mark.start + words.index(number.op)
        first = replace(
            node.mark, end=at, number=replace(number, op="", b=None), text=" ".join(words[: words.index(number.op)])
        )
        link = Mark(at, at + 1, (Role("filler"),), None, number.op)
        second = replace(
            node.mark, start=at + 1, number=Number(a=number.b), text=" ".join(words[words.index(number.op) + 1 :])
        )
        nodes[place : place + 1] = [Node(first, "number"), Node(link, "filler"), Node(second, "number")]


def changes_by(nodes: list[Node]) -> None:
    """ "Pulse rises by thirty", "weight is up four kilos": by how much it changed, and no reading."""
    for place, node in enumerate(nodes):
        if node.main != "number" or not place:
            continue
        before = nodes[place - 1].text.split()[-1:]
        changed = any(n.text.startswith(_CHANGING) for n in nodes[max(0, place - 3) : place - 1])
        weighed = before in (["up"], ["down"]) and nodes[place + 1 : place + 2] and nodes[place + 1].text in _WEIGHTS
        if weighed or (before == ["by"] and (changed or _changed_name(nodes[:place]))):
            node.main = "word"


def _changed_name(before: Sequence[Node]) -> bool:
    """ "Weight has gone up by", "up by": the word for the change in one phrase with its little words."""
    said = " ".join(n.text for n in before[-4:]).split()
    return any(word in _UP_OR_DOWN for word in said)


def numbered_beds(nodes: list[Node]) -> None:
    """ "Seen in bed four": which bed, and no position."""
    for one, two in itertools.pairwise(nodes):
        if one.text == "in bed" and two.main == "number" and two.mark.number is not None and not two.mark.number.op:
            one.main = two.main = "word"


def minutes_of_readings(nodes: list[Node]) -> None:
    """ "Standing, at one 120/70", "120/70 at one minute and 118/72 at three": a small number beside a pressure."""
    told = False  # minutes were said with their unit
    for place, node in enumerate(nodes):
        told = told or node.main == "minutes"
        number = node.mark.number
        if node.main != "number" or number is None or number.op or number.a > _LONGEST_STANDING:
            continue
        if not place or nodes[place - 1].text not in ("at", "after", "by"):
            continue
        after = next((n for n in nodes[place + 1 : place + 3] if n.main != "comma"), None)
        course = place > 1 and nodes[place - 2].mark.has("absent", "negation")  # "dizzy at 1 min, gone by 3"
        later = told and _pressure_later(nodes[place + 1 :])  # "at five she felt faint, 72/40"
        read = place > 1 and (is_pressure(nodes[place - 2]) or is_rate(nodes[place - 2]))  # "95 at three"
        behind = told and (read or course)
        if (after is not None and is_pressure(after)) or later or (behind and (after is None or after.is_break)):
            node.main = "minutes"


def _pressure_later(behind: Sequence[Node]) -> bool:
    """Whether nothing but what was felt leads to a pressure."""
    told = itertools.takewhile(lambda n: n.main in _TOLD or n.candidates == _FELT or is_pressure(n), behind)
    return any(map(is_pressure, told))


def is_pressure(node: Node) -> bool:
    """Whether the node is a pair of numbers as a pressure is written."""
    return node.mark.number is not None and node.mark.number.op == "/" and node.main in ("number", "item")


def is_rate(node: Node) -> bool:
    """A plain number as large as a pulse."""
    number = node.mark.number
    return node.main == "number" and number is not None and not number.op and number.a >= _SLOWEST
