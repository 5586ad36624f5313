"""Brackets of a typed examination that hold no finding of today: "Deltoid R 4+ [4-]", "knee 2+ (was 3+)"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from dictate.reading.marks import Mark
from dictate.reading.tokens import Token

Span = tuple[int, int]  # first token, token after the last
_PAIRS = {"[": "]", "(": ")"}
_LEAST, _LONGEST = 2, 14  # tokens of an earlier value, a time among them
_MONTHS = (
    "january february march april may june july august september october november december "
    "jan feb mar apr jun jul aug sep sept oct nov dec"
).split()
# How an earlier value is marked as one, in front of it or behind it. Common practice, no source.
_OPENS = frozenset("was were prev previous previously prior earlier formerly baseline".split())
_CLOSES = frozenset("previously before earlier formerly prior yesterday baseline".split())
_EXPECTED = frozenset({"normal", "norm", "nl", "normally", "reference", "ref", "expected"})
_LAST = frozenset({"visit", "time", "exam", "examination", "week", "month", "year", "review", "clinic"})  # "last visit"
_VALUES = ("number", "normal", "abnormal", "absent", "present", "grade", "value", "not_examined", "not_assessable")
_OTHER_TIMES = frozenset(
    "prev previous previously last prior earlier before former formerly baseline admission yesterday old first "
    "second visit".split()
)
_LOST = frozenset({"lost", "lose", "loses", "dropped", "minus", "-"})
_IN = frozenset({"on", "in", "for", "of", "at"})
_BRACKETS = frozenset({"bracket", "brackets", "parentheses", "parenthesis"})
_YEAR = re.compile(r"(?:19|20)\d\d")


def set_apart_earlier(marks: Sequence[Mark], tokens: Sequence[Token]) -> tuple[list[Mark], list[Span]]:
    """The marks with each bracket of an earlier value as one that carries nothing, and the tokens of these brackets.

    Earlier is what says so inside ("was 4", "3+ in June"), and every bracket where the text has said what brackets
    are for ("June findings in brackets"). A bracket that says nothing of another time is read like other words.
    """
    declared = _declared(tokens)
    spans = [span for span in _brackets(tokens) if _is_earlier(marks, tokens, span, declared)]
    starts = dict(spans)
    result: list[Mark] = []
    skip = 0
    for mark in marks:
        if mark.start < skip:
            continue
        end = starts.get(mark.start)
        if end is not None:
            skip = end
            mark = Mark(mark.start, end, mark.only("filler").roles, None, mark.text)
        result.append(mark)
    return result, spans


def _brackets(tokens: Sequence[Token]) -> list[Span]:
    """Brackets without others inside; one that is not closed soon is none."""
    found: list[Span] = []
    for start, token in enumerate(tokens):
        closing = _PAIRS.get(token.text)
        if closing is None:
            continue
        for end in range(start + 1, min(start + _LONGEST, len(tokens))):
            if tokens[end].text in _PAIRS:
                break
            if tokens[end].text == closing:
                found.append((start, end + 1))
                break
    return found


def _declared(tokens: Sequence[Token]) -> dict[str, int]:
    """Opening bracket → token from which on it holds earlier values: "last visit's values in square brackets"."""
    square = any(token.text == "[" for token in tokens)
    for place, token in enumerate(tokens):
        if token.lower not in _BRACKETS:
            continue
        start = next((p + 1 for p in range(place - 1, -1, -1) if tokens[p].ends_sentence), 0)
        end = next((p + 1 for p in range(place, len(tokens)) if tokens[p].ends_sentence), len(tokens))
        said = [one.lower for one in tokens[start:end]]
        if _OTHER_TIMES & {*said} or any(_names_date(word) for word in said):
            wanted = "[" if square and not {"round", "parentheses", "parenthesis"} & {*said} else "("
            return {wanted: end}
    return {}


def _is_earlier(marks: Sequence[Mark], tokens: Sequence[Token], span: Span, declared: dict[str, int]) -> bool:
    start, end = span
    if tokens[start].text in declared and start >= declared[tokens[start].text]:
        return True
    inside = [token.lower for token in tokens[start + 1 : end - 1]]
    if _counts_lost(tokens[max(0, start - 3) : start], inside):
        return True
    found = any(mark.has(*_VALUES) for mark in marks if start < mark.start < end)
    if not found or len(inside) < _LEAST or inside[1] == "able":  # "(was able to stand)" tells of today
        return False
    if inside[0] in _OPENS or inside[-1] in _CLOSES or _names_date(inside[0]) or _names_date(inside[-1]):
        return True
    if inside[0] in _EXPECTED and any(word[:1].isdigit() for word in inside[1:]):
        return True  # "3 seconds (normal > 10)": what is expected
    if inside[0] in ("from", "last") and inside[1][:1].isdigit():
        return True
    when = inside[:2], inside[-2:]
    return any((a == "last" and b in _LAST) or (a == "on" and b == "admission") for a, b in when)


def _counts_lost(before: Sequence[Token], inside: Sequence[str]) -> bool:
    """ "MoCA 24/30 (lost 3 recall, 2 VS)", "28/30 (-1 recall)": where a score lost its points."""
    scored = len(before) > 2 and before[0].lower.isdigit() and before[1].lower == "/" and before[2].lower.isdigit()
    lost = len(inside) > 2 and inside[0] in _LOST and inside[1].isdigit()
    return scored and lost and inside[2] not in _IN


def _names_date(word: str) -> bool:
    return word in _MONTHS or bool(_YEAR.fullmatch(word))
