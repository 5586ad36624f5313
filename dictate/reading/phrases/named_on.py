"""Sides with a part of the body whose word is the first of the name behind it: "on the left | eye movements"."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark


def named_on(spans: Sequence[Mark]) -> list[Mark]:
    """ "Ptosis on the left eye movements full": a side with a part of the body whose word begins the next name."""
    named = {(span.start, span.end) for span in spans if span.has("item", "sign") and span.end - span.start > 1}
    sides = {span.end for span in spans if span.has("side")}
    ahead = {start for start, _ in named}
    return [
        span
        for span in spans
        if not (span.has("side") and span.end - 1 in ahead and span.end - 1 > span.start and span.end - 1 in sides)
    ]
