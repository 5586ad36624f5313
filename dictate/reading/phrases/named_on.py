"""Sides with a word that is the first of the name behind it: "on the left | eye movements", "left | first toe"."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark

_ORDERS = ("left_then_right", "right_then_left")


def named_on(spans: Sequence[Mark]) -> list[Mark]:
    """ "Ptosis on the left eye movements full": a side with a part of the body whose word begins the next name.

    Nor is a "left first" the order of two sides where a "first toe" or "first web space" begins with its last word.
    """
    named = {(span.start, span.end) for span in spans if span.has("item", "sign") and span.end - span.start > 1}
    sides = {span.end for span in spans if span.has("side")}
    ahead = {start for start, _ in named}
    places = {span.start for span in spans if span.has("site") and span.end - span.start > 1}
    return [
        span
        for span in spans
        if not (span.has(*_ORDERS) and span.end - 1 in places)
        and not (span.has("side") and span.end - 1 in ahead and span.end - 1 > span.start and span.end - 1 in sides)
    ]
