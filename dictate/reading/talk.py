"""Talk about another time or another person inside a sentence: set aside, never read as findings."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark, Role

_CLAUSE_ENDS = frozenset({"comma", "semicolon", "contrast", "stop"})
_REACH = 14  # in speech without commas: how many words a clause is taken to go on


def silence_talk(marks: Sequence[Mark]) -> tuple[list[Mark], list[tuple[int, int]]]:
    """The sentence with talk turned into plain words, and the token spans of the talk."""
    spans: list[tuple[int, int]] = []
    result = list(marks)
    for start, end in _clauses(marks):
        talk = [i for i in range(start, end) if marks[i].role("talk")]
        if not talk:
            continue
        if end - start > 2 * _REACH:
            start, end = max(start, talk[0] - 3), min(end, talk[-1] + _REACH)
        names = any(marks[i].has("item", "sign", "alone", "context", "number") for i in range(start, end))
        for i in range(start, end):
            result[i] = Mark(
                marks[i].start, marks[i].end, (Role("comma" if marks[i].has("comma") else "talk"),), None, marks[i].text
            )
        if names:
            spans.append((marks[start].start, marks[end - 1].end))
    return result, spans


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
