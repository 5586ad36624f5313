"""A side that a recogniser's stop parted from its finding: "Rest tremor of the right hand, none. On the left."."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark
from dictate.reading.titles.title_style import bare_side, ends_line
from dictate.reading.tokens import Token

_OPPOSITE = {"left": "right", "right": "left"}


def join_stray_sides(sentences: Sequence[list[Mark]], tokens: Sequence[Token]) -> list[list[Mark]]:
    """The sentences, each that is nothing but a side joined to the one before it, where that one lacks it.

    It lacks it where it tells of the other side, and behind its last comma of none. Otherwise a side by itself may be
    the title of what follows.
    """
    result: list[list[Mark]] = []
    for sentence in sentences:
        side = bare_side(sentence)
        if side and result and _lacks(result[-1], side, tokens):
            before = result.pop()
            sentence = [*(mark for mark in before if not mark.has("stop")), *sentence]
        result.append(sentence)
    return result


def _lacks(sentence: Sequence[Mark], side: str, tokens: Sequence[Token]) -> bool:
    """Whether it tells of the other side only, and behind its last comma of something without a side."""
    if ends_line(sentence, tokens):
        return False
    comma = max((at for at, mark in enumerate(sentence) if mark.has("comma")), default=0)
    parts = [part for mark in sentence for part in (mark.inner or (mark,))]
    sides = {role.key for part in parts if (role := part.role("side")) is not None}
    behind = [mark for mark in sentence[comma + 1 :] if not mark.has("stop", "filler")]
    told = [mark for mark in behind if mark.number is not None or not mark.has("word")]
    one = len(told) == len(behind) == 1 and not told[0].has("side", "item")
    return bool(comma) and sides == {_OPPOSITE[side]} and one
