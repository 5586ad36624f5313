"""Talk about another time or another person inside a sentence: set aside, never read as findings."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark, Role

_CLAUSE_ENDS = frozenset({"comma", "semicolon", "contrast", "stop"})
_RUN_ON = 24  # marks without a comma: speech that runs on, where a clause has no end of its own
# How a question to the patient begins; "tremor?" alone may be the examiner's own doubt.
_ASKS = frozenset("any are can could did do does has have how is was were what when where which who would will".split())
_BACK, _AHEAD = 3, 14  # in such speech: how far talk is taken to reach from the word that gives it away


def silence_talk(marks: Sequence[Mark]) -> tuple[list[Mark], list[tuple[int, int]]]:
    """The sentence with talk turned into plain words, and the token spans of the talk that named something."""
    spans: list[tuple[int, int]] = []
    result = list(marks)
    question = is_question(marks)
    for start, end in _clauses(marks):
        talk = [i for i in range(start, end) if question or marks[i].role("talk")]
        stretches = [(start, end)] if talk and end - start <= _RUN_ON else [_reach(marks, i, start, end) for i in talk]
        for first, last in stretches:
            names = any(marks[i].has("item", "sign", "alone", "context", "number") for i in range(first, last))
            for i in range(first, last):
                kind = "comma" if marks[i].has("comma") else "talk"
                result[i] = Mark(marks[i].start, marks[i].end, (Role(kind),), None, marks[i].text)
            if names and not question:  # what was asked may have been meant as a finding: it is left over, and shown so
                spans.append((marks[first].start, marks[last - 1].end))
    return result, spans


def is_question(marks: Sequence[Mark]) -> bool:
    """Whether the sentence asks somebody something."""
    words = [mark.text.lower().split() for mark in marks if mark.text.strip()]
    return bool(words) and words[-1] == ["?"] and words[0][0] in _ASKS


def _reach(marks: Sequence[Mark], place: int, start: int, end: int) -> tuple[int, int]:
    """How far talk reaches in speech that runs on: back to the name before it, on to the next name."""
    first = place
    while first > max(start, place - _BACK) and not marks[first - 1].has("item", "sign", "alone"):
        first -= 1
    if first > start and first == place and marks[first - 1].has("item"):
        first -= 1  # "his tremor used to be on the right": the tremor is of another time
    last = place + 1
    while last < min(end, place + _AHEAD) and not marks[last].has("item", "sign", "alone", "heading"):
        last += 1
    return first, last


def _clauses(marks: Sequence[Mark]) -> list[tuple[int, int]]:
    clauses: list[tuple[int, int]] = []
    start = 0
    for place, mark in enumerate(marks):
        if any(role.kind in _CLAUSE_ENDS for role in mark.roles):
            if place > start:
                clauses.append((start, place))
            start = place + 1
    if start < len(marks):
        clauses.append((start, len(marks)))
    return clauses
