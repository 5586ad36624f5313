"""How far along the segments a finding reaches: "below T10", "from T10 to L2"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from dictate.reading.drafts import Draft
from dictate.reading.marks import Mark
from dictate.reading.spans import dermatomes
from dictate.reading.tokens import Token

_SEGMENT = re.compile(r"[ctls]\d{1,2}")
_SIDE_OF_IT = frozenset({"below", "above"})
_ON_TO = frozenset({"to", "through", "-", "down", "up"})


def add_extents(drafts: Sequence[Draft], tokens: Sequence[Token]) -> None:
    """Keep, in place, the words that say which segments a finding at a segment reaches over."""
    marks = list(dermatomes(tokens)) if any(_SEGMENT.fullmatch(draft.site) for draft in drafts) else []
    for draft in drafts:
        for mark in marks:
            if mark.roles[0].key == draft.site and any(start <= mark.start < end for start, end in draft.spans):
                _add(draft, mark, marks, tokens)
                break


def _add(draft: Draft, mark: Mark, marks: Sequence[Mark], tokens: Sequence[Token]) -> None:
    before = tokens[mark.start - 1] if mark.start else None
    if before is not None and before.lower in _SIDE_OF_IT and not before.ends_sentence:
        draft.detail.append(f"{before.lower} {draft.site.upper()}")
        draft.spans.append((mark.start - 1, mark.end))
    last = mark.end
    while last < len(tokens) and tokens[last].lower in _ON_TO and not tokens[last - 1].ends_sentence:
        last += 1
    end = next((one for one in marks if one.start == last), None)
    if last > mark.end and end is not None:
        draft.detail.append(f"to {end.roles[0].key.upper()}")
        draft.spans.append((mark.start, end.end))
