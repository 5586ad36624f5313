"""Numbers said as about so much: "about twelve seconds"."""

from __future__ import annotations

import re

from dictate.grammar.number_words import whole_number
from dictate.model import Finding, Status

APPROXIMATE = frozenset("about approximately approx roughly around circa nearly almost maybe".split())
WORD = re.compile(r"[a-z]+|\d+")
MINUTES = ("minute", "minutes")  # "at about three minutes": when, not how much


def rough_word(finding: Finding) -> str:
    """The word in front of a measured number that makes it about so much, as said; else empty.

    The number behind the word has to be the value's: not a time, not one that was taken back or changed at review.
    """
    if finding.status is not Status.MEASURED or finding.value is None:
        return ""
    numbers = WORD.findall(str(finding.value))
    said: list[str] = WORD.findall(finding.quote.lower())
    for at, word in enumerate(said[:-1]):
        is_time = any(one in MINUTES for one in said[at + 2 : at + 3])
        if word in APPROXIMATE and not is_time and _may_be(said[at + 1], numbers):
            return word
    return ""


def _may_be(said: str, numbers: list[str]) -> bool:
    """Whether a number begins with what was said: in digits the whole of it, in words "one" of 140."""
    if said.isdigit():
        return said in numbers
    count = whole_number(said)
    return count is not None and any(number.startswith(str(count).rstrip("0") or "0") for number in numbers)
