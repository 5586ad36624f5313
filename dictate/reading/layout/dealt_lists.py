"""As many grades in a row as names in a row: "five, five, four in deltoid, biceps, triceps"."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

_FEWEST = 3  # two of each may be one name for both and two sides
_NAMES = ("item", "context")
_OF_WHAT = frozenset({"in", "of", "for", "at", "the"})
_TOLD = frozenset({"are", "is", "were", "was", "graded", ":", ","})
_MUSCLES, _JERKS = "mrc", "tendon_reflex"
_LIMBS = frozenset({"arm", "leg", "upper_limb", "lower_limb"})
_HIGHEST, _FULL = 6, 5  # grades are below; the maximum that may stand behind one


def deal_lists(marks: Sequence[Mark], tokens: Sequence[Token], items: Mapping[str, Item]) -> list[Mark]:
    """The marks, with each grade of such a row named by its place in the row of names, and with the side of the row."""
    result = list(marks)
    for first, last in _sentences(marks, tokens):
        _part_pairs(result, first, last, items)
        _deal_each_side(result, first, last, items)
        numbers = [row for row in _runs(marks, first, last, _is_grade) if len(row) >= _FEWEST]
        names = [row for row in _runs(marks, first, last, lambda mark: _is_name(mark, items)) if len(row) >= _FEWEST]
        for row in numbers:
            for heads in names:
                if len(row) != len(heads) or not _joined(marks, row, heads):
                    continue
                if not (named := _items_of([marks[at] for at in heads], marks[first : min(heads[0], row[0])], items)):
                    continue
                told = _side_of(marks, first, last, row, heads)
                side = () if told is None else (Role("side", key=told.key),)
                for at in heads:
                    result[at] = marks[at].only("filler")
                for at, item in zip(row, named, strict=True):
                    result[at] = replace(marks[at], roles=(Role("item", item), *side, Role("number")))
    return result


def _deal_each_side(marks: list[Mark], first: int, last: int, items: Mapping[str, Item]) -> None:
    """ "Deltoid, biceps, triceps 5 5 5 right, left 4 4 4", "psoas 3, quads 4, TA 2 on the right, 4, 5, 3 on the left".

    As many grades as names twice, once for each side; the names may have the first of them right behind them.
    """
    heads = [at for at in range(first, last) if _is_name(marks[at], items)]
    rows = [row for row in _runs(marks, first, last, _is_grade) if len(row) == len(heads)]
    own = [at + 1 for at in heads if at + 1 < last and _is_grade(marks[at + 1])]
    rows = [own, *rows] if len(own) == len(heads) and len(rows) == 1 else rows
    if len(heads) < _FEWEST or len(rows) != 2 or heads[0] > rows[0][0] or rows[0][-1] >= rows[1][0]:
        return
    between = [mark for mark in marks[rows[0][-1] + 1 : rows[1][0]] if not mark.has("filler", "comma", "conj")]
    outer = [*marks[first : heads[0]], *marks[rows[1][-1] + 1 : last]]
    sides = [role.key for mark in outer if (role := mark.role("side")) is not None]
    inner = [role.key for mark in between if (role := mark.role("side")) is not None]
    if len(inner) != len(between) or {*sides, *inner} != {"left", "right"} or len(sides) != 1 or len(inner) != 1:
        return
    named = _items_of([marks[at] for at in heads], marks[first : heads[0]], items)
    in_front = any(mark.has("side") for mark in marks[first : heads[0]])  # of the first row, and the second has its own
    keys = (sides[0], inner[0]) if in_front else (inner[0], sides[0])
    for row, key in zip(rows, keys, strict=True) if named else ():
        for at, item in zip(row, named, strict=True):
            marks[at] = replace(marks[at], roles=(Role("item", item), Role("side", key=key), Role("number")))
    for at in heads if named else ():
        marks[at] = marks[at].only("filler")


def _part_pairs(marks: list[Mark], first: int, last: int, items: Mapping[str, Item]) -> None:
    """ "Biceps 5/5 4/5", "biceps 3+ 2+": two grades with nothing between are the right and the left one."""
    for at in range(first + 1, last - 1):
        behind = marks[at + 2] if at + 2 < last else None
        alone = marks[at - 1].number is None and (behind is None or (behind.number is None and not behind.has("side")))
        jerks = _is_signed(marks[at]) and _is_signed(marks[at + 1])
        if not (alone and (jerks or (_is_whole(marks[at]) and _is_whole(marks[at + 1])))):
            continue
        before = next((m for m in reversed(marks[first:at]) if not m.has("filler", "colon", "throughout")), None)
        if before is None:
            continue
        scales = {items[role.item].scale for role in before.roles if role.kind in _NAMES and role.item in items}
        site = before.role("site", "")
        if (
            (jerks and _JERKS in scales)
            or (not jerks and _MUSCLES in scales)
            or (not jerks and site is not None and site.key in _LIMBS)
        ):
            for place, side in ((at, "right"), (at + 1, "left")):
                marks[place] = replace(marks[place], roles=(*marks[place].roles, Role("side", key=side)))


def _is_signed(mark: Mark) -> bool:
    """ "3+", 0: as a jerk is graded."""
    number = mark.number
    return number is not None and not number.op and (number.a_sign == "+" or not number.a)


def _is_whole(mark: Mark) -> bool:
    return _is_grade(mark) and mark.number is not None and mark.number.op == "/"


def _sentences(marks: Sequence[Mark], tokens: Sequence[Token]) -> Iterator[tuple[int, int]]:
    """Places of the first mark of each sentence and of the first behind it; a semicolon ends one too."""
    first = 0
    for at, mark in enumerate(marks):
        if tokens[mark.end - 1].ends_sentence or mark.has("semicolon") or at + 1 == len(marks):
            yield first, at + 1
            first = at + 1


def _runs(marks: Sequence[Mark], first: int, last: int, fits: Callable[[Mark], bool]) -> Iterator[list[int]]:
    """Places of marks of one sort with nothing but commas and links between."""
    run: list[int] = []
    for at in range(first, last):
        if fits(marks[at]):
            run.append(at)
        elif run and not marks[at].has("comma", "conj") and marks[at].text != "the":
            yield run
            run = []
    if run:
        yield run


def _is_grade(mark: Mark) -> bool:
    number = mark.number
    if number is None or not mark.has("number") or number.mark or not 0 <= number.a < _HIGHEST:
        return False
    return not number.op or (number.op in ("/", "of") and number.b == _FULL)


def _is_name(mark: Mark, items: Mapping[str, Item]) -> bool:
    """A name of one thing; that of a whole stands in front of the row."""
    named = [items[role.item] for role in mark.roles if role.kind in _NAMES and role.item in items]
    return mark.number is None and any(not item.blanket for item in named)


def _joined(marks: Sequence[Mark], row: Sequence[int], heads: Sequence[int]) -> bool:
    """Grades with "in" before their names, or names with their grades right behind them."""
    if row[-1] < heads[0]:
        between = [mark.text for mark in marks[row[-1] + 1 : heads[0]]]
        return bool(between) and set(between) <= _OF_WHAT
    if heads[-1] < row[0]:
        return {mark.text for mark in marks[heads[-1] + 1 : row[0]]} <= _TOLD
    return False


def _items_of(columns: Sequence[Mark], before: Sequence[Mark], items: Mapping[str, Item]) -> list[str]:
    """One item for each name, all of one scale; where two scales share the names, the one whose whole was named."""
    own = [
        {items[r.item].scale: r.item for r in mark.roles if r.kind in _NAMES and items[r.item].kind == "grade"}
        for mark in columns
    ]
    scales = set.intersection(*map(set, own))
    if len(scales) > 1:
        wholes = {role.item for mark in before for role in mark.roles if role.kind in _NAMES and role.item in items}
        scales &= {items[name].scale for name in wholes if items[name].blanket}
    named = [one[scale] for scale in scales for one in own]
    return named if len(scales) == 1 and len(set(named)) == len(columns) else []


def _side_of(marks: Sequence[Mark], first: int, last: int, row: Sequence[int], heads: Sequence[int]) -> Role | None:
    """The side said in front of both rows, or behind them with nothing of its own; None when there is none."""
    start, end = min(row[0], heads[0]), max(row[-1], heads[-1])
    before = [role for mark in marks[first:start] if (role := mark.role("side")) is not None]
    behind = next((mark for mark in marks[end + 1 : last] if not mark.has("filler", "comma")), None)
    return before[-1] if before else behind.role("side") if behind is not None else None
