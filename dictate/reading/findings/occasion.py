"""Whether a text holds an examination at all: somewhere its words stand close together as findings."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from dictate.reading.layout.sections import Kept
from dictate.reading.marks import Mark
from dictate.reading.statements.drafts import Draft

# Measured: of any thirty words of fifteen lectures, letters and reports at most 0.43 were taken for findings, of
# some thirty words of thirty examinations, dictated or from reports, 0.70 and more; of all words at most 0.20 and at
# least 0.42. Either is enough, so that an examination stands in a sea of talk, and when every fifth word is misheard.
WINDOW, DENSE, OVERALL = 30, 0.5, 0.25
# Of a recording a third of the words may be misheard: less has to stand together.
HEARD_DENSE, HEARD_OVERALL = 0.35, 0.15
LEAST = 60  # a shorter text is too little to judge


def is_examination(
    sentences: Iterable[Sequence[Mark]],
    marks: Sequence[Mark],
    drafts: Sequence[Draft],
    kept: Sequence[Kept],
    *,
    heard: bool,
) -> bool:
    """Whether findings drawn from a text may stand: it is short, has a heading, or they stand close together.

    heard: the words are those of a recording.
    """
    if any(_is_heading(sentence) for sentence in sentences):
        return True
    taken = {place for draft in drafts for start, end in draft.spans for place in range(start, end)}
    outside = {place for _, start, end in kept for place in range(start, end)} - taken
    said = [
        place in taken
        for mark in marks
        for place in range(mark.start, mark.end)
        if place not in outside and not mark.has("comma", "stop", "semicolon", "colon")
    ]
    if len(said) < LEAST:
        return True
    held = sum(said[:WINDOW])
    densest = held
    for place in range(WINDOW, len(said)):
        held += said[place] - said[place - WINDOW]
        densest = max(densest, held)
    dense, overall = (HEARD_DENSE, HEARD_OVERALL) if heard else (DENSE, OVERALL)
    return densest >= dense * WINDOW or sum(said) >= overall * len(said)


def _is_heading(sentence: Sequence[Mark]) -> bool:
    """A component's heading that stands alone, or with a colon behind it."""
    return sentence[0].has("heading") and all(mark.has("stop", "colon") for mark in sentence[1:2])
