"""Digits that are parts of a code ("M1", "SCA6", "B12"), and a plus that is an "and" ("wasted + fasciculating")."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark
from dictate.reading.tokens import Token

PREPOSITIONS = frozenset(
    "in on at of to over below above from around behind across within up down under for through".split()
)
_SIDED = frozenset("left right both bilat bilaterally bilateral l r ve".split())


def without_codes(marks: list[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """Digits that hang on a word of unknown meaning are no number."""
    result: list[Mark] = []
    for mark in marks:
        code = mark.number is not None and tokens[mark.start].glued and bool(result) and result[-1].text.isalpha()
        if code and not any(role.kind != "word" for role in result[-1].roles):
            mark = mark.only("word")
        following = tokens[mark.end].lower if mark.end < len(tokens) and not tokens[mark.end - 1].ends_sentence else ""
        if mark.text == "+" and following.isalpha() and following not in PREPOSITIONS | _SIDED:
            mark = mark.only("conj")
        result.append(mark)
    return result
