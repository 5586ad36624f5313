"""How far along the segments a finding reaches: "below T10", "from T10 to L2"."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.model import SEGMENT
from dictate.reading.marks import Mark
from dictate.reading.phrases.kinds import LEVELS
from dictate.reading.phrases.spans import dermatomes
from dictate.reading.statements.drafts import Draft
from dictate.reading.tokens import Token

_SIDE_OF_IT = frozenset({"below", "above"})
_ON_THE_WAY = frozenset({"the", "his", "her", "both", "left", "right"})
_UP_TO = ("up to", "down to")
_ON_TO = frozenset({"to", "through", "-", "down", "up"})


def add_extents(drafts: Sequence[Draft], tokens: Sequence[Token]) -> None:
    """Keep, in place, the words that say which segments a finding at a segment reaches over."""
    marks = list(dermatomes(tokens)) if any(SEGMENT.fullmatch(draft.site) for draft in drafts) else []
    for draft in drafts:
        if draft.item in LEVELS:
            _between(draft, tokens)
        for mark in marks:
            if mark.roles[0].key == draft.site and any(start <= mark.start < end for start, end in draft.spans):
                _add(draft, mark, marks, tokens)
                break
        if draft.site and not SEGMENT.fullmatch(draft.site):
            _beside(draft, tokens)


def _beside(draft: Draft, tokens: Sequence[Token]) -> None:
    """ "Reduced below the left knee": on which side of the body part."""
    said = {place for start, end in draft.spans for place in range(start, end)}
    for place in range(min(said), max(said)):
        if tokens[place].lower not in _SIDE_OF_IT or place in said or tokens[place].ends_sentence:
            continue
        behind = next(
            (p for p in range(place + 1, min(place + 4, len(tokens))) if tokens[p].lower not in _ON_THE_WAY), place
        )
        if behind in said:
            draft.detail.append(f"{tokens[place].lower} the {draft.site.replace('_', ' ')}")
            draft.spans.append((place, place + 1))
            return


def _between(draft: Draft, tokens: Sequence[Token]) -> None:
    """ "Sensory level between T8 and T10", "T8 or T9": one level said as two may be either."""
    start, end = min(s for s, _ in draft.spans), max(e for _, e in draft.spans)
    marks = list(dermatomes(tokens[start : end + 3]))
    for one, two in itertools.pairwise(marks):
        link = [token.lower for token in tokens[start + one.end : start + two.start]]
        ended = any(token.ends_sentence for token in tokens[start : start + two.start])
        before = tokens[start + one.start - 1].lower if start + one.start else ""
        either = link in (["or"], ["to"], ["/"], ["-"], []) or (link == ["and"] and before == "between")
        if not ended and either:
            levels = [mark.roles[0].key.upper() for mark in (one, two)]
            if str(draft.value) in levels:
                draft.readings = tuple(levels)
                draft.spans.append((start + one.start, start + two.end))


def _add(draft: Draft, mark: Mark, marks: Sequence[Mark], tokens: Sequence[Token]) -> None:
    before = tokens[mark.start - 1] if mark.start else None
    if before is not None and before.lower in _SIDE_OF_IT and not before.ends_sentence:
        draft.detail.append(f"{before.lower} {draft.site.upper()}")
        draft.spans.append((mark.start - 1, mark.end))
    upto = " ".join(token.lower for token in tokens[max(0, mark.start - 2) : mark.start])
    if upto in _UP_TO and not any(token.ends_sentence for token in tokens[max(0, mark.start - 2) : mark.start]):
        draft.detail.append(f"{upto} {draft.site.upper()}")
    last = mark.end
    between = before is not None and before.lower == "between"
    links = {*_ON_TO, "and"} if between else _ON_TO
    while last < len(tokens) and tokens[last].lower in links and not tokens[last - 1].ends_sentence:
        last += 1
    end = next((one for one in marks if one.start in (last, mark.end)), None)
    ended = tokens[mark.end - 1].ends_sentence
    joined = not ended and end is not None and tokens[end.start].word == tokens[mark.end - 1].word  # "C6-C7"
    if end is not None and not ended and (joined or end.end - end.start > 1 or last > mark.end):
        draft.detail.append(f"to {end.roles[0].key.upper()}")
        draft.spans.append((mark.start, end.end))
