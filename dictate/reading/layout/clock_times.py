"""Times of day ("at ten past nine", "at 10:20", "six o'clock", "8 am"): their numbers are of no item."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dictate.grammar.number_words import whole_number
from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

_LEADS = frozenset("at since from until till by around about after before".split())
_PARTS = frozenset({"half", "quarter"})
_FIVES = frozenset({5, 10, 20, 25})  # minutes to the hour, as they are said
_DAY: tuple[tuple[str, ...], ...] = (
    ("am",),
    ("pm",),
    ("a", "m"),
    ("p", "m"),
    ("this", "morning"),
    ("this", "afternoon"),
    ("this", "evening"),
)
_DAY += (("in", "the", "morning"), ("in", "the", "afternoon"), ("in", "the", "evening"), ("last", "night"), ("hours",))
_CLOCK = (("o", "clock"),)
_OF_DISCS = tuple(Role("qualifier", name) for name in ("fundi", "disc_margins"))  # "a haemorrhage at six o'clock"
_HOURS, _MINUTES = 23, 59
_COUNTED = frozenset("seconds second s minutes minute min beats degrees metres meters m mm cm steps % percent".split())


def set_apart_clocks(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """The marks, each time of day as one mark that is no number; hours of a dial are told of discs."""
    found = {start: (end, dial) for start, end, dial in _times(tokens)}
    if not found:
        return list(marks)
    result: list[Mark] = []
    end = 0
    for mark in marks:
        start = next((at for at in range(mark.start, mark.end) if at in found and at >= end), None)
        if start is not None:
            end, dial = found[start]
            said = "".join(token.lower if token.glued else f" {token.lower}" for token in tokens[start:end]).strip()
            result.append(Mark(start, end, _OF_DISCS if dial else (Role("time_span"),), None, said))
        elif mark.start >= end:
            result.append(mark)
    return result


def _times(tokens: Sequence[Token]) -> Iterator[tuple[int, int, bool]]:
    """First token, token after the last, and whether it is an hour of a dial, of each time."""
    words = [token.lower for token in tokens]
    place = 0
    while place < len(words):
        led = place > 0 and words[place - 1] == "from"  # "down from five to four"
        begins = not led and (
            words[place][0].isdigit() or whole_number(words[place]) is not None or words[place] in _PARTS
        )
        end, dial = _time_at(words, place) if begins else (0, False)
        if end and not any(token.ends_sentence for token in tokens[place : end - 1]):
            yield place, end, dial
            place = end
        place += 1


def _time_at(words: Sequence[str], place: int) -> tuple[int, bool]:
    """The end of the time that begins there, 0 where none does."""
    led = place > 0 and words[place - 1] in _LEADS
    for way in (_digital, _worded):
        if end := way(words, place, led):
            return end, False
    hour = _number(words, place)
    if hour is None or hour > _HOURS:
        return 0, False
    behind = place + 1
    if words[behind : behind + 1] in (["to"], ["and"]) and _number(words, behind + 1) is not None:
        behind += 2  # "from two to five o'clock"
    if end := _ends(words, behind, _CLOCK):
        return end, True
    return (_ends(words, place + 1, _DAY) if led else 0), False


def _digital(words: Sequence[str], place: int, led: bool) -> int:
    """ "10:20", "10.15" behind an "at"; "9:05 am"."""
    hour, dot, minute = words[place].partition(".")
    end = place + 1
    if not dot and words[place + 1 : place + 2] == [":"] and place + 2 < len(words):
        minute, end = words[place + 2], place + 3
    if not (hour.isdigit() and minute.isdigit() and len(minute) == 2 and len(hour) <= 2):
        return 0
    if int(hour) > _HOURS or int(minute) > _MINUTES:
        return 0
    later = _ends(words, end, _DAY)
    return later or (end if led else 0)


def _worded(words: Sequence[str], place: int, led: bool) -> int:
    """ "Ten past nine", "half past two", "quarter to ten", "twenty to eleven" behind an "at"."""
    link = words[place + 1] if place + 1 < len(words) else ""
    hour = _number(words, place + 2)
    if link not in ("past", "to") or hour is None or not 1 <= hour <= _HOURS:
        return 0
    if words[place] in _PARTS:
        return place + 3
    minutes = _number(words, place)
    counted = words[place + 3 : place + 4] and words[place + 3] in _COUNTED
    if minutes is None or minutes > _MINUTES or counted:
        return 0
    return place + 3 if link == "past" or (led and minutes in _FIVES) else 0


def _number(words: Sequence[str], place: int) -> int | None:
    return whole_number(words[place]) if place < len(words) else None


def _ends(words: Sequence[str], place: int, ways: Sequence[tuple[str, ...]]) -> int:
    """Behind the one of these that stands at the place; 0: none."""
    return next((place + len(way) for way in ways if tuple(words[place : place + len(way)]) == way), 0)
