"""A patient's reference said aloud ("patient number P 17"): who it is about, and no finding."""

from __future__ import annotations

import re
from collections.abc import Sequence

from dictate.reading.marks import Mark
from dictate.reading.phrases.cardinals import UNITS
from dictate.reading.tokens import Token

_DIGITS = {word: str(digit) for word, digit in UNITS.items()} | {"oh": "0", "o": "0"}
_PART = re.compile(r"[a-z]|[a-z]*\d[a-z\d]*")  # "p", "17", "p104"
_BETWEEN = frozenset({"is", ":", ",", "-"})
_LONGEST = 14  # tokens of a reference
Spoken = tuple[int, int, str]  # first token, token after the last, "P17"


def set_apart_references(marks: Sequence[Mark], tokens: Sequence[Token]) -> tuple[list[Mark], list[Spoken]]:
    """The marks with every reference as one that carries nothing, and the references as letters and digits."""
    result: list[Mark] = []
    found: list[Spoken] = []
    for mark in marks:
        if found and mark.start < found[-1][1]:
            continue
        spoken = _reference(mark, tokens) if mark.has("reference") or _lettered(mark, tokens) else None
        if spoken is not None:
            found.append(spoken)
            mark = Mark(spoken[0], spoken[1], mark.only("filler").roles, None, mark.text)
        result.append(mark)
    return result, found


def _lettered(lead: Mark, tokens: Sequence[Token]) -> bool:
    """ "Patient P 4": a letter and a digit right behind the word, and no pulse of four."""
    behind = [token.lower for token in tokens[lead.end : lead.end + 2]]
    told = lead.text.split()[-1:] == ["patient"] and len(behind) > 1 and len(behind[0]) == 1 and behind[0].isalpha()
    return told and (behind[1].isdigit() or behind[1] in _DIGITS)


def _reference(lead: Mark, tokens: Sequence[Token]) -> Spoken | None:
    """What stands behind "patient number", where it holds a digit."""
    said, end = "", lead.end
    for place in range(lead.end, min(lead.end + _LONGEST, len(tokens))):
        if tokens[place - 1].ends_sentence:
            break
        word = tokens[place].lower
        part = _DIGITS.get(word) or (word.upper() if _PART.fullmatch(word) else "")
        if not part and (word == "-" or (word in _BETWEEN and not said)):
            continue
        if not part:
            break
        said, end = said + part, place + 1
    return (lead.start, end, said) if any(letter.isdigit() for letter in said) else None
