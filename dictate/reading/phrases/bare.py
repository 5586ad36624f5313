"""Numbers that name their item by themselves: a pressure anywhere, "80 bpm", "5/5" under motor, "20/40" of an eye."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.grammar import Item
from dictate.reading.marks import Mark, Number
from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import LENGTHS, read_number
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.phrases.numbers import CHART_LINES

_COLDEST = 30  # a temperature said with one letter for its unit, of either scale
_EYES = ("eye", "eyes", "od", "os", "ou")
WHOLE_SIDES = frozenset(
    {"right hand side", "left hand side", "on the right hand side", "on the left hand side"}
    | {"right side", "left side", "right sided", "left sided", "r side", "l side", "rt side", "lt side"}
)


def _of_initials(after: Sequence[Mark]) -> bool:
    """ "5/5 D/B/T": of what single letters stand for, and nothing here knows."""
    return (
        bool(after) and len(after[0].text) == 1 and after[0].text.isalpha() and not after[0].has("side", "unit", "site")
    )


def _is_limb(node: Node) -> bool:
    """ "RUE": a side and a limb in one word."""
    return node.mark.role("side") is not None and node.mark.role("site", "") is not None


def _of_chart(number: Number) -> bool:
    """ "20/40", "6/9": the distance and a line of the chart, in feet or metres."""
    return number.b in CHART_LINES.get(int(number.a), ())


def _by_eye(marks: Sequence[Mark], place: int) -> bool:
    """ "OD 20/40", "6/6 in both eyes": an eye is named at the number."""
    near = [*marks[max(0, place - 1) : place], *marks[place + 1 : place + 2]]
    return any(mark.has("side") and mark.text.split()[-1] in _EYES for mark in near)


def _of_a_root(nodes: Sequence[Node]) -> bool:
    """ "C5 5/5 5/5": rows by root are of no whole limb."""
    clause = itertools.takewhile(lambda n: not n.is_break and n.main != "item", reversed(nodes))
    return any(n.main == "dermatome" for n in clause)


def _of_another_vessel(item: Item) -> bool:
    """A pressure that the cuff does not measure: "retinal artery pressure 40/20" names no blood pressure."""
    return item.kind == "quantity" and item.unit == "mm[Hg]"


class BareNumbers:
    """Says which item a number without a name is of."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items

    def of_unit(self, marks: Sequence[Mark], place: int, here: tuple[str, str], nodes: list[Node]) -> tuple[str, ...]:
        """ "80 bpm", "35.8 C": a number whose unit can only be of one item, unless it is of the item just named."""
        unit = marks[place + 1] if place + 1 < len(marks) and marks[place + 1].has("unit") else None
        number = marks[place].number
        if unit is None or number is None or number.op:
            return ()
        owners = [role.item for role in unit.roles if role.kind == "unit"]
        named = [name for name in owners if unit.text in self.items[name].bare_units]
        last = next((node for node in reversed(nodes) if node.main == "item"), None)
        told = marks[place + 2].roles if place + 2 < len(marks) else ()  # "97% on room air"
        if not named and not (last is not None and set(owners) & set(last.candidates)):
            ways = [role.item for role in told if role.kind == "qualifier"]
            own = last is not None and bool({*ways} & {*last.candidates})  # "falls after 5 s with the eyes closed"
            named = [] if own else [name for name in ways if name in owners]
        if walk := self._of_walk(marks, place, here, last):
            return walk
        if len(unit.text) == 1 and (last is None or number.a < _COLDEST):
            return ()  # "45F": a woman of forty five; "12 F words"
        if not named or (last is not None and set(named) & set(last.candidates) and not last.sign):
            return ()
        return tuple(named[:1])

    def _of_walk(self, marks: Sequence[Mark], place: int, here: tuple[str, str], last: Node | None) -> tuple[str, ...]:
        """ "10 m in 9.2 s": a distance with its time, where walking is told of."""
        told = [mark.text for mark in marks[place + 1 : place + 5]]
        timed = len(told) == 4 and told[0] in LENGTHS and told[1] == "in" and marks[place + 3].number is not None
        if not timed or not marks[place + 4].has("unit"):
            return ()
        names = [name for name, item in self.items.items() if {"m", "s"} <= {*item.units}]
        walking = any(self.lexicon.component[name].value in here for name in names)
        named = last is not None and bool({*names} & {*last.candidates})
        return tuple(names[:1]) if walking and not named else ()

    def of_number(self, marks: Sequence[Mark], place: int, here: tuple[str, str], nodes: list[Node]) -> tuple[str, ...]:
        """A number that can only be of one item, without its name: a pressure anywhere, "5/5" under motor."""
        number = marks[place].number
        last = next((node for node in reversed(nodes) if node.main == "item"), None)
        if number is None or number.op not in ("/", "of") or number.then:
            return ()
        if _of_a_root(nodes) or _of_initials(marks[place + 1 :]):
            return ()
        if last is not None and any(_of_another_vessel(self.items[name]) for name in last.candidates):
            return ()
        whole_side = bool(nodes) and (_is_limb(nodes[-1]) or nodes[-1].text in WHOLE_SIDES)
        whole = last is None or self.items[last.candidates[0]].blanket or self._takes_none(last, nodes)
        for name in last.candidates if last and (whole or not whole_side) else ():
            meaning = read_number(self.items[name], number, "", self.lexicon.grammar.scales.get(self.items[name].scale))
            if meaning is not None and meaning.fits > 1:
                return ()
        for name, item in self.items.items():
            if not item.bare_value:
                continue
            meaning = read_number(item, number, "", self.lexicon.grammar.scales.get(item.scale))
            if meaning is None or meaning.fits < 3 or meaning.by_side:
                continue
            if item.kind == "pressure" and number.a >= 60 and (number.palpable or (number.b or 0) >= 30):
                return (name,)
            spoken_of = self.lexicon.component[name].value in here or _by_eye(marks, place)
            if item.kind == "acuity" and spoken_of and _of_chart(number):
                return (name,)
            headed = self.lexicon.component[name].value in here and (whole or whole_side)
            alone = last is None and bool(nodes) and _is_limb(nodes[-1])  # "RUE 4/5", under no heading
            if item.kind == "grade" and (headed or alone):
                return () if self._leads(marks[place + 1 :], item.scale) else (name,)
        return ()

    def _takes_none(self, last: Node, nodes: list[Node]) -> bool:
        """ "Normal bulk and tone, 5/5": behind a comma, and what was named last is never told by a number."""
        plain = all(
            one.kind == "normality" and not (one.scored or one.units)
            for one in map(self.items.get, last.candidates)
            if one
        )
        return plain and nodes[-1].is_break and nodes[-1].main != "conj"

    def _leads(self, after: Sequence[Mark], scale: str) -> bool:
        """ "5/5 in the left deltoid": the grade stands in front of the muscle's name."""
        named = next((mark for mark in after if not mark.has("filler", "side")), None)
        names = [role.item for role in named.roles if role.kind in ("item", "context")] if named is not None else []
        return any(self.items[name].scale == scale and not self.items[name].blanket for name in names)
