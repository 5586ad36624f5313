"""Tables with the items over their columns and a side in front of each row ("DTR  B T S K A / Rt ++ ++ ++ +++ ++")."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.tokens import Token

_FEWEST = 3  # columns
_REFLEX = "tendon_reflex"
_NAMES = ("item", "context")
# Initials of jerks over a table; a P in front of the ankle is the patella. Common practice, no source.
_INITIALS = {
    "b": "reflex_biceps",
    "t": "reflex_triceps",
    "s": "reflex_brachioradialis",
    "br": "reflex_brachioradialis",
    "k": "reflex_patellar",
    "p": "reflex_patellar",
    "a": "reflex_achilles",
}
_SIGNS = {"+": Number(a=1, a_sign="+"), "-": Number(a=0)}  # a jerk that is there, one that is not
_ORDERS = ("right_then_left", "left_then_right")
_SEGMENT = re.compile(r"t ?([0-4])")
_LINKS = ("comma", "colon", "filler", "stop", "semicolon")


def deal_charts(marks: Sequence[Mark], tokens: Sequence[Token], items: Mapping[str, Item]) -> list[Mark]:
    """The marks, with each value of such a table named by its column and its row; a row of another length is left."""
    result = _deal_letters(list(marks), tokens)
    lines = _lines(marks, tokens)
    for number, line in enumerate(lines):
        title, columns = _heads(marks, line)
        rows = [row for row in (_row(marks, below) for below in lines[number + 1 : number + 3]) if row is not None]
        if len(columns) < _FEWEST or not rows or any(len(values) != len(columns) for _, values in rows):
            continue
        values = [marks[at] for _, row in rows for at in row]
        named = _items_of([marks[at] for at in columns], title, values, items)
        signs = any(marks[at].number is None for _, row in rows for at in row)
        if not named or (signs and items[named[0]].scale != _REFLEX):
            continue
        for at in columns:
            result[at] = marks[at].only("filler")
        for side, row in rows:
            for at, item in zip(row, named, strict=True):
                count = marks[at].number or _SIGNS.get(marks[at].text)
                roles = (Role("item", item), Role("side", key=side), Role("number"))
                result[at] = replace(marks[at], roles=roles, number=count)
    return result


def _deal_letters(marks: list[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """ "DTR: B 2+/2+, T 2+/2+, S 1+/2+": initials of jerks behind a title, or below it, each with its grade."""
    titled, told, letters = False, False, list[int]()
    for at, mark in enumerate([*marks, None]):
        lettered = mark is not None and titled and tokens[mark.start].text.isupper()
        if mark is not None and lettered and _is_initial(mark, marks[at + 1 : at + 2]):
            letters.append(at)
        elif mark is None or not (titled and (_is_told(mark) or mark.has("side", *_ORDERS, *_LINKS))):
            for place in letters if len(letters) >= _FEWEST else ():
                marks[place] = _named(marks[place])
            titled, told, letters = mark is not None and _names_reflexes(mark), False, []
        told = told or (mark is not None and mark.number is not None)
        if mark is not None and tokens[mark.end - 1].ends_sentence and not letters:
            titled = titled and (mark.has("colon") or not told)
    return marks


def _is_initial(mark: Mark, behind: Sequence[Mark]) -> bool:
    """An initial with its grade behind it; "T 2" is one mark, for it may be a segment."""
    return _SEGMENT.fullmatch(mark.text) is not None or (mark.text in _INITIALS and any(map(_is_told, behind)))


def _is_told(mark: Mark) -> bool:
    """A grade, or a sign of one: "B +/+, T ++/++"."""
    return mark.number is not None or mark.text in ("+", "/")


def _named(mark: Mark) -> Mark:
    segment = _SEGMENT.fullmatch(mark.text)
    if segment is None:
        return mark.only("item", _INITIALS[mark.text])
    return replace(mark, roles=(Role("item", _INITIALS["t"]), Role("number")), number=Number(a=float(segment[1])))


def _lines(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[list[int]]:
    """Places of the marks of each line."""
    lines: list[list[int]] = [[]]
    for at, mark in enumerate(marks):
        lines[-1].append(at)
        if tokens[mark.end - 1].ends_line:
            lines.append([])
    return [line for line in lines if line]


def _heads(marks: Sequence[Mark], line: Sequence[int]) -> tuple[list[Mark], list[int]]:
    """The title in front of the columns, and the places of their names; no names where anything else stands there."""
    said = [at for at in line if not marks[at].has(*_LINKS) or marks[at].text in _INITIALS]
    title = [marks[at] for at in said[:1] if _names_reflexes(marks[at]) or marks[at].has("heading")]
    columns = said[len(title) :]
    lettered = bool(title) and all(marks[at].text in _INITIALS for at in columns)
    if lettered or all(marks[at].has(*_NAMES) and marks[at].number is None for at in columns):
        return title, columns
    return title, []


def _row(marks: Sequence[Mark], line: Sequence[int]) -> tuple[str, list[int]] | None:
    """The side in front of a row and the places of its numbers; None where it is no such row."""
    said = [at for at in line if not marks[at].has(*_LINKS) or marks[at].text == "-"]
    side = marks[said[0]].role("side") if said else None
    if side is None or not all(map(_is_value, (marks[at] for at in said[1:]))):
        return None
    return side.key, said[1:]


def _is_value(mark: Mark) -> bool:
    return mark.number is not None or mark.text in _SIGNS


def _items_of(
    columns: Sequence[Mark], title: Sequence[Mark], values: Sequence[Mark], items: Mapping[str, Item]
) -> list[str]:
    """One item for each column, all of one scale: that of the title, or the one the values are written in."""
    if title and all(mark.text in _INITIALS for mark in columns):
        return [_INITIALS[mark.text] for mark in columns]
    own = [
        {items[r.item].scale: r.item for r in mark.roles if r.kind in _NAMES and items[r.item].kind == "grade"}
        for mark in columns
    ]
    scales = set.intersection(*map(set, own))
    if len(scales) > 1:
        signed = all(m.number is not None and (m.number.a_sign == "+" or not m.number.a) for m in values)
        scales &= {_REFLEX} if signed or any(map(_names_reflexes, title)) else scales - {_REFLEX}
    named = [one[scale] for scale in scales for one in own]
    return named if len(scales) == 1 and len(named) == len(set(named)) else []


def _names_reflexes(mark: Mark) -> bool:
    return mark.role("item", "reflex_all") is not None or mark.role("context", "reflex_all") is not None
