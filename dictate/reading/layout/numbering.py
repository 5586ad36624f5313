"""Numbers of a list ("1. Gait normal. 2. Romberg negative."): they count lines and are no values."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark
from dictate.reading.tokens import Token

_FEWEST = 3  # lines that make a list
_CLOSED = (".", ")")


def without_numbering(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """The marks, with the numbers of a list made fillers: each at the start of a sentence, closed, and one more."""
    result = list(marks)
    opening = [at for at in range(len(marks) - 1) if _opens(marks, at, tokens)]
    runs: list[list[int]] = []
    for at in opening:
        if runs and _count(marks[at]) == _count(marks[runs[-1][-1]]) + 1:
            runs[-1].append(at)
        else:
            runs.append([at])
    for run in runs:
        for at in run if len(run) >= _FEWEST else ():
            result[at] = marks[at].only("filler")
    return result


def _opens(marks: Sequence[Mark], at: int, tokens: Sequence[Token]) -> bool:
    """ "3." or "3)" or "(3)" in front of a sentence."""
    number = marks[at].number
    if number is None or number.op or number.a_sign or number.mark or number.a != int(number.a):
        return False
    first = at - 1 if at and marks[at - 1].text == "(" else at
    begins = not first or tokens[marks[first].start - 1].ends_sentence
    after = marks[at + 1]
    return begins and after.text in _CLOSED and not marks[at].has("heading_part", "heading", "item")


def _count(mark: Mark) -> float:
    return mark.number.a if mark.number is not None else -1
