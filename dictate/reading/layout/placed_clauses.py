"""Clauses that each begin with their place: "On the left a facial droop, on the right ptosis."."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

_LEADS = frozenset({"in", "on", "over", "at", "with"})
_BETWEEN = frozenset({"the", "both", "her", "his"})
_SAYING = frozenset({"the", "is", "was", "are", "were", "his", "her", "and", "on", "in"})
_NAMES = ("item", "sign", "alone", "context")
_LINKS = frozenset({"and", "while", "whereas", "but"})


def part_places(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """The marks, a comma or an "and" between two such clauses as a semicolon: neither place is of the other finding."""
    result = list(marks)
    start = 0
    for place, mark in enumerate(marks):
        if mark.has("stop") or tokens[mark.end - 1].ends_sentence or place + 1 == len(marks):
            _part(result, start, place + 1)
            start = place + 1
    return result


def _part(marks: list[Mark], start: int, end: int) -> None:
    """Part, in place, one sentence."""
    behind = _place(marks, start, end)
    if not behind:
        return
    begins = behind  # behind the place of the clause that goes on
    for at in range(behind, end):
        link = marks[at].has("comma") or marks[at].text in _LINKS
        if not link or (next_ := _place(marks, at + 1, end)) == 0:
            continue
        told = _names(marks[begins:at])
        if told and not _placed(marks[begins:at]) and _names(marks[next_:end]):
            marks[at] = replace(marks[at], roles=(Role("semicolon"),), text=";")
        begins = next_


def _place(marks: Sequence[Mark], at: int, end: int) -> int:
    """Behind the place with its preposition that stands at `at`; 0: none does."""
    while at < end and marks[at].text in _LINKS:
        at += 1
    led = False
    start = at
    while at < end:
        mark = marks[at]
        if _is_place(mark) and mark.text.split()[0] in _LEADS:
            led = True
        elif mark.text.split()[0] in _LEADS and mark.has("filler"):
            led = at == start
        elif not (mark.text in _BETWEEN or (led and _is_place(mark))):
            break
        at += 1
    sided = any(_is_place(mark) for mark in marks[start:at])
    return at if led and sided else 0


def _is_place(mark: Mark) -> bool:
    """A side, a place, or both in one ("left leg", which is a name on the stroke scale)."""
    inner = bool(mark.inner) and all(part.has("side", "site", "filler") for part in mark.inner)
    return inner or (mark.has("side", "site") and not mark.has("sign"))


def _placed(marks: Sequence[Mark]) -> bool:
    return any(_is_place(mark) and (bool(mark.inner) or not mark.has(*_NAMES)) for mark in marks)


def _names(marks: Sequence[Mark]) -> bool:
    """Whether a finding is named there, up to the next clause."""
    clause: list[Mark] = []
    for mark in marks:
        if mark.has("semicolon", "stop"):
            break
        clause.append(mark)
    return any(mark.has(*_NAMES) for mark in clause)


def part_same(sentences: Sequence[list[Mark]]) -> list[list[Mark]]:
    """ "Right deltoid 4, biceps 4, and the left arm is the same except biceps 4+": the other side of the whole list.

    Cut off as a sentence of its own, where at least two were graded before it.
    """
    result: list[list[Mark]] = []
    for sentence in sentences:
        graded = [at for at, mark in enumerate(sentence) if mark.number is not None]
        cut = next((at for at in range(len(sentence)) if _says_same(sentence, at)), 0) if len(graded) > 1 else 0
        listed = cut and len([at for at in graded if at < cut]) > 1
        result.extend([sentence[:cut], sentence[cut:]] if listed else [sentence])
    return result


def _says_same(marks: Sequence[Mark], at: int) -> bool:
    """Whether a clause begins there of nothing but one side, perhaps its limb, and that it is the same."""
    if not at or not (marks[at - 1].has("comma", "semicolon", "conj") or marks[at - 1].text in _LINKS):
        return False
    parts = [part for mark in marks[at : at + 7] for part in (mark.inner or (mark,)) if part.text not in _SAYING]
    side = bool(parts) and _one_side(parts[0])
    said = parts[1:]
    while said and said[0].role("site", "") is not None and not said[0].has("same"):
        said = said[1:]
    return side and bool(said) and said[0].has("same") and "so" not in said[0].text


def _one_side(mark: Mark) -> bool:
    role = mark.role("side")
    return role is not None and role.key in ("left", "right")
