"""Titles that were not heard: what is told a second time under one title is of another, and nobody knows which."""

from __future__ import annotations

from bisect import bisect
from collections.abc import Sequence
from itertools import groupby

from dictate.reading.marks import Mark
from dictate.reading.statements.drafts import Draft
from dictate.reading.titles.title_style import tells_nothing
from dictate.reading.titles.walk import LimbTitle

_ANEW = frozenset({"again", "repeat", "repeated", "repeating", "still", "now", "then"})
_FEW = 2  # findings without a number that are told again: of one alone more may be told ("disc pink, disc flat")


def without_missed(
    drafts: Sequence[Draft], sentences: Sequence[Sequence[Mark]], titles: Sequence[LimbTitle | None]
) -> list[LimbTitle | None]:
    """The title of each sentence, less those past which another one must have been said.

    "Right arm. Deltoid 5. Biceps 5. [Lift on.] Deltoid 4. Biceps 4.": from the unknown words on, or else from the
    first that is told again, findings are of no side, and asked about. A correction, or what is said anew, is of the
    same side.
    """
    result = list(titles)
    starts = [sentence[0].start for sentence in sentences]
    found: dict[int, list[Draft]] = {}
    for draft in drafts:
        found.setdefault(bisect(starts, max(end for _, end in draft.spans) - 1) - 1, []).append(draft)
    for title, run in groupby(range(len(titles)), key=lambda at: titles[at]):
        places = list(run)
        if title is None or title.side is None:
            continue
        end = _missed(title, places, found, sentences)
        if end is not None:
            result[end : places[-1] + 1] = [None] * (places[-1] + 1 - end)
    return result


def _missed(
    title: LimbTitle, places: Sequence[int], found: dict[int, list[Draft]], sentences: Sequence[Sequence[Mark]]
) -> int | None:
    """The sentence from which on another title holds; None where nothing is told a second time."""
    seen: dict[tuple[object, ...], int] = {}
    known: set[str] = set()
    again: list[tuple[int, int]] = []
    back: list[int] = []  # sentences right before that told of nothing new, if of another place
    numbers = False
    for at in places:
        if any(mark.has("correction", "strike", "swap") or mark.text.lower() in _ANEW for mark in sentences[at]):
            continue
        told = [draft for draft in found.get(at, ()) if draft.side is title.side and not draft.corrected]
        for draft in told:
            key = (draft.item, draft.site, draft.position, tuple(draft.detail))
            if seen.setdefault(key, at) < at:
                again.append((seen[key], min([at, *back])))
                numbers = numbers or any(mark.number is not None for mark in sentences[at])
        back = [*back, at] if told and all(draft.item in known for draft in told) else []
        known |= {draft.item for draft in told}
    if not again:
        return None
    first, second = again[0]
    unread = next((at for at in range(first + 1, second) if tells_nothing(sentences[at])), None)
    return second if unread is None and (numbers or len(again) >= _FEW) else unread
