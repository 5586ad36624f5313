"""The stroke scale told in sentences behind its name: "Gaze, a forced deviation to the left, which is a two."."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dictate.grammar.sums import STROKE
from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

_FEWEST = 4  # sentences with points that make a scale
_IDLE = 3  # sentences without points that end it
_OF = ("for", "on")  # "two on questions", "one for commands"
_NAMES = ("item", "context")
_COUNTED = ("unit", "time_span", "minutes")  # "ten seconds" are no points


@dataclass(frozen=True, slots=True)
class _Points:
    """Where the points of a part stand, and where the part is named (nowhere for the total)."""

    place: int
    item: str
    named: int


def points_in_sentences(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """The marks, with the points of sentences behind the scale's name made readings of the parts they speak of.

    What else such a sentence says is read as it is everywhere: the deviation of gaze with its side, and two points.
    """
    result: list[Mark | None] = list(marks)
    sentences = _sentences(marks, tokens)
    for at, sentence in enumerate(sentences):
        if _names_scale(marks, sentence):
            given = _told(marks, sentences[at + 1 :])
            for one in given if len(given) >= _FEWEST else ():
                _give(result, marks, one)
    return [mark for mark in result if mark is not None]


def _give(result: list[Mark | None], marks: Sequence[Mark], one: _Points) -> None:
    """One mark for part and points said together ("two on questions"); else the part is a title, the points stand."""
    first, last = sorted((one.place, one.named))
    together = all(marks[place].has("comma", "filler", "colon") for place in range(first + 1, last))
    start, end = (first, last) if together else (one.place, one.place)
    role = Role("item", one.item)
    title = all(r.item in STROKE.parts for r in marks[one.named].roles if r.kind in (*_NAMES, "heading"))
    if not together and title and marks[one.named + 1].has("comma", "colon"):
        result[one.named] = marks[one.named].only("filler")  # "Visual, a complete hemianopia"
    result[start : end + 1] = [None] * (end + 1 - start)
    result[start] = replace(marks[one.place], start=marks[start].start, end=marks[end].end, roles=(role,))


def _sentences(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[range]:
    """The places of the marks of each sentence."""
    found, start = [], 0
    for place, mark in enumerate(marks):
        if tokens[mark.end - 1].ends_sentence or mark.has("stop") or place + 1 == len(marks):
            found.append(range(start, place + 1))
            start = place + 1
    return found


def _names_scale(marks: Sequence[Mark], sentence: range) -> bool:
    """The name of the scale, and no number yet."""
    named = any(marks[place].role("item", STROKE.total) is not None for place in sentence)
    return named and not any(marks[place].number is not None for place in sentence)


def _told(marks: Sequence[Mark], sentences: Sequence[range]) -> list[_Points]:
    """The points given, up to the total or to sentences that give none."""
    given: list[_Points] = []
    idle = 0
    for sentence in sentences:
        numbers = [place for place in sentence if _can_be_points(marks, place)]
        points = numbers[0] if len(numbers) == 1 else None  # more of them are a form filled in
        if points is not None and any(marks[place].text.split()[0] == "total" for place in sentence):
            return [*given, _Points(points, STROKE.total, points)]
        one = None if points is None else _part_of(marks, sentence, points)
        if one is not None and one.item not in {part.item for part in given}:
            given.append(one)
            idle = 0
            continue
        idle += 1
        if idle == _IDLE:
            break
    return given


def _can_be_points(marks: Sequence[Mark], place: int) -> bool:
    number = marks[place].number
    counted = place + 1 < len(marks) and marks[place + 1].has(*_COUNTED)
    plain = number is not None and marks[place].has("number") and not (number.op or number.a_sign or number.mark)
    return plain and not counted


def _part_of(marks: Sequence[Mark], sentence: range, points: int) -> _Points | None:
    """The part that the points are of: named behind them ("two on questions"), or first in the sentence."""
    behind = [place for place in sentence if place > points]
    told = behind[1:] if behind and marks[behind[0]].text in _OF else sentence
    number = marks[points].number
    for place in told:
        item = next((r.item for r in marks[place].roles if r.kind in _NAMES and r.item in STROKE.parts), "")
        if item and number is not None:
            possible = number.a in range(STROKE.parts[item][1] + 1)
            return _Points(points, item, place) if possible else None
    return None
