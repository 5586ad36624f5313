"""Punctuation that was spoken ("comma", "full stop", "new line") and that the recogniser wrote as words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Literal

from dictate.reading.tokens import Token

_FEWEST = 3  # so many of them: it is the speaker's way, and no word of what is told ("it came to a full stop")
LINE = "line"
Mark = Literal[".", ",", ":", ";", "line"]


def with_dictated_marks(tokens: Sequence[Token], phrases: Mapping[Mark, Sequence[str]]) -> list[Token]:
    """The tokens with spoken punctuation as marks; unchanged where fewer than three are spoken.

    phrases: the mark ("." "," ":" ";", "line" for a new line) → the words for it.
    """
    spoken = {tuple(phrase.split()): mark for mark, said in phrases.items() for phrase in said}
    longest = max(map(len, spoken), default=0)
    words = [token.lower for token in tokens]
    found: dict[int, tuple[int, Mark | None]] = {}
    place = 0
    while place < len(words):
        size = next((n for n in range(longest, 0, -1) if tuple(words[place : place + n]) in spoken), 0)
        if size:
            found[place] = (size, spoken[tuple(words[place : place + size])])
        place += size or 1
    if len(found) < _FEWEST:
        return list(tokens)
    result: list[Token] = []
    place = 0
    while place < len(tokens):
        size, mark = found.get(place, (1, None))
        if mark and (mark in ".,:;" or result):
            result.append(_as_mark(tokens[place], mark))
        elif not mark:
            result.append(tokens[place])
        place += size
    return result


def _as_mark(token: Token, mark: Mark) -> Token:
    ends = mark in (".", LINE)
    written = "." if ends else mark
    return replace(token, text=written, lower=written, glued=True, ends_sentence=ends, ends_line=mark == LINE)
