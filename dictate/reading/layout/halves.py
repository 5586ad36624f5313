"""Half a pressure ("systolic below 90"): its number is of no other item that was named before."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark
from dictate.reading.tokens import Token

_HALVES = frozenset({"systolic", "diastolic"})
_BETWEEN = frozenset(
    "pressure bp blood of was is at about around roughly only just still now down up to fell dropped rose falls drops "
    "rises below above under over than less more greater lower higher least most no , : =".split()
)
_LONGEST = 7  # tokens between the word and its number


def set_apart_halves(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """The marks with half a pressure as mere words: a pulse named before it takes its number no more.

    The words stay loose, so that they are shown as not placed. A whole pressure and a murmur's grade are left alone.
    """
    result: list[Mark] = []
    for mark in marks:
        start = _half(mark, tokens)
        if start is not None and not any(
            one.start < start < one.end for one in result[-_LONGEST:]
        ):  # "retinal diastolic"
            while result and result[-1].start >= start:
                result.pop()
            mark = Mark(start, mark.end, (), None, " ".join(token.lower for token in tokens[start : mark.end]))
        result.append(mark)
    return result


def _half(mark: Mark, tokens: Sequence[Token]) -> int | None:
    """Where "systolic" or "diastolic" stands in front of a plain number, with nothing between that speaks."""
    if mark.number is None or mark.number.op or mark.number.palpable:
        return None
    for place in range(mark.start - 1, max(-1, mark.start - 2 - _LONGEST), -1):
        if tokens[place].ends_sentence:
            return None
        if tokens[place].lower in _HALVES:
            return place
        if tokens[place].lower not in _BETWEEN:
            return None
    return None
