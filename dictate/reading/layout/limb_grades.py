"""Limbs in one word with one grade for all: "RUE and RLE 5/5", "LUE/LLE are 4/5"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import limb_of

_LEAST = 2  # limbs
_MOST = 5  # what a grade is out of
_LINKS = ("comma", "conj")
_VERBS = frozenset({"are", "is", "were", "was", ":", "-"})


def grades_of_limbs(marks: Sequence[Mark], items: Mapping[str, Item]) -> list[Mark]:
    """The marks, with each limb of such a row as its side and the strength of that limb.

    One such limb with its grade is read where it stands; of a row the last alone would be.
    """
    wholes = items["strength_all"].site_items
    graded = [at for at in range(len(marks)) if _is_grade(marks[at]) and not any(map(_is_limb, marks[at + 1 : at + 2]))]
    rows = {at: _row(marks, at) for at in graded}
    result = list(marks)
    if all(len(row) < _LEAST for row in rows.values()):
        return result
    for place in reversed(graded):
        row = rows[place]
        limbs = [limb_of(role.key) for at in row if (role := marks[at].role("site", "")) is not None]
        if not row or not all(limb in wholes for limb in limbs):
            continue
        for at, limb in zip(row, limbs, strict=True):
            mark, side = marks[at], marks[at].role("side")
            if side is None:
                continue
            told = [
                Mark(mark.start, mark.end, (Role("side", key=side.key),), text=side.key),
                Mark(mark.start, mark.end, (Role("item", wholes[limb]),), text=mark.text),
                marks[place],
            ]
            end = place + 1 if at == row[0] else at + 1  # the last stands in front of the grade
            result[at:end] = told if at == row[0] else [*told, Mark(mark.end, mark.end, (Role("comma"),), text=",")]
    return result


def _is_grade(mark: Mark) -> bool:
    return mark.number is not None and mark.number.op in ("/", "of") and mark.number.b == _MOST


def _is_limb(mark: Mark) -> bool:
    return mark.has("side") and mark.role("site", "") is not None and not mark.inner


def _row(marks: Sequence[Mark], number: int) -> list[int]:
    """Places of the limbs in front of the grade, the last first."""
    at = number - 1
    while at >= 0 and marks[at].text in _VERBS:
        at -= 1
    found: list[int] = []
    while at >= 0:
        if _is_limb(marks[at]):
            if at and _is_grade(marks[at - 1]):
                break  # "4+/5 RLE, LUE and LLE 5/5": it has its own
            found.append(at)
        elif not marks[at].has(*_LINKS) and marks[at].text != "/":
            break
        at -= 1
    return found
