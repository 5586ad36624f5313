"""The coma scale by its numbers alone: "Glasgow four five six, so fifteen", "GCS 4/5/6", "GCS 1-T-2"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.grammar.number_words import whole_number
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.tokens import Token

_TOTAL = "gcs_total"
_ORDER = ("gcs_eye", "gcs_verbal", "gcs_motor")
_OPENS = frozenset({"of", "is", "was", "at", "a", ":", "=", ",", "(", "score"})
_LINKS = frozenset({",", "/", "-", "and", "+", ".", ";"})
_TUBE = frozenset({"t", "tee"})
_ENDS = frozenset({"/", "of", "out", "-", "+", "to", "score"})  # behind the third number: it is part of something else


def name_numbers(marks: Sequence[Mark], tokens: Sequence[Token], items: Mapping[str, Item]) -> list[Mark]:
    """The marks, where three numbers in a row behind the scale's name are points of eyes, speech and movement.

    A sum may stand in front of them ("GCS 15 (4/5/6)").
    """
    result: list[Mark] = []
    done = 0  # token up to which marks were replaced
    for mark in marks:
        if mark.start < done:
            continue
        points = _points(mark, tokens, items) if mark.role("item", _TOTAL) else []
        if not points:
            result.append(mark)
            continue
        if points[0][0] == mark.end or _skipped(mark.end, tokens, _OPENS) == points[0][0]:
            mark = mark.only("filler")  # no number of the total follows it
        result += [mark, *_between(marks, mark.end, points[0][0])]
        for (place, point), name in zip(points, _ORDER, strict=True):
            result += [Mark(done, place, (Role("comma"),), None, ",")] if done and done < place else []
            result += _named(name, place, point, tokens)
            done = place + 1
    return result


def _between(marks: Sequence[Mark], start: int, end: int) -> list[Mark]:
    """What stands between the name and the first of its points, a sum among it."""
    return [mark for mark in marks if start <= mark.start and mark.end <= end]


def _named(name: str, place: int, point: int | None, tokens: Sequence[Token]) -> list[Mark]:
    """One point as a reading of its part; of speech through a tube the letter."""
    text = tokens[place].lower
    if point is not None:
        return [Mark(place, place + 1, (Role("item", name),), Number(a=point), text)]
    return [Mark(place, place + 1, (Role("alone", name, "T"), Role("value", name, "T")), None, text)]


def _points(mark: Mark, tokens: Sequence[Token], items: Mapping[str, Item]) -> list[tuple[int, int | None]]:
    """The three points, each with its token, and None for speech that a tube prevents; empty: there are none."""
    place = _skipped(mark.end, tokens, _OPENS)
    found = _row(place, tokens, items)
    if found or mark.number is not None:
        return found
    total = _digit(place, tokens)
    behind = _row(_skipped(place + 1, tokens, _OPENS), tokens, items) if total is not None else []
    return behind if behind and sum(point or 0 for _, point in behind) == total else []


def _row(place: int, tokens: Sequence[Token], items: Mapping[str, Item]) -> list[tuple[int, int | None]]:
    found: list[tuple[int, int | None]] = []
    for name in _ORDER:
        place = _skipped(place, tokens, _LINKS) if found else place
        if place >= len(tokens) or (found and any(t.ends_sentence for t in tokens[found[-1][0] : place])):
            return []
        tube = name == "gcs_verbal" and tokens[place].lower in _TUBE
        point = _digit(place, tokens)
        if not tube and (point is None or not 1 <= point <= (items[name].of or 0)):
            return []
        found.append((place, None if tube else point))
        place += 1
    ended = tokens[place - 1].ends_sentence or place == len(tokens)
    return found if ended or tokens[place].lower not in _ENDS else []


def _digit(place: int, tokens: Sequence[Token]) -> int | None:
    """A whole number of one token, in digits or as a word."""
    return whole_number(tokens[place].lower) if place < len(tokens) else None


def _skipped(place: int, tokens: Sequence[Token], passed: frozenset[str]) -> int:
    while place < len(tokens) and tokens[place].lower in passed and not tokens[place - 1].ends_sentence:
        place += 1
    return place
