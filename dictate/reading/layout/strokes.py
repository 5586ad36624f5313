"""The stroke scale said in numbers: "1c 0, 2 1, 3 0" by item number, or fifteen points in the order of the form."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from dictate.grammar.sums import STROKE
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.phrases.cardinals import UNITS
from dictate.reading.tokens import Token

# Source: NINDS form (public domain): its item numbers, in its order.
_LABELS = ("1a", "1b", "1c", "2", "3", "4", "5a", "5b", "6a", "6b", "7", "8", "9", "10", "11")
_ITEMS = dict(zip(_LABELS, STROKE.parts, strict=True))
_BARS = ("|", "¦", "-", "–", ")", "/")
_NOTES = ("(", "-", "–")  # what opens a note behind the points: "2 1 (R gaze pref)"
_UNTESTABLE = ("not_assessable", "value")
_FEWEST = 4  # entries in a row that make a form
_ENTRY = 14  # marks of one entry
_LETTERED = re.compile(r"(?:item )?(\d|one|five|six) ?([abc])")


def number_items(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """The marks, with bare item numbers, and points in a row, made names of their items."""
    marks = _form(marks, tokens)
    result: list[Mark] = []
    place = 0
    while place < len(marks):
        mark = marks[place]
        result.append(mark)
        place += 1
        label = _label_of(mark)
        if label or mark.role("item", STROKE.total) is not None:
            end = _end_of_run(marks, place, tokens)
            run = [part for one in marks[place:end] for part in _digits(one, tokens)]
            result += _labelled(run, label) if label else _dealt(run)
            place = end
    return result


def _form(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """The form filled in, "1a LOC 0 | 1b questions 1": item numbers name, the words behind them only say it again.

    Read so where at least four entries follow each other as on the form, each with its points at its end.
    """
    result = list(marks)
    place = 0
    while place < len(marks):
        entries = _entries(marks, place, tokens)
        for at, points, item in entries if len(entries) >= _FEWEST else ():
            said = [between for between in range(at, points) if marks[between].text[-1:].isalnum()]
            named = said[1] if len(said) > 1 else at  # the first word behind the number, which may be a sentence alone
            for between in said:
                result[between] = result[between].only("filler")
            result[named] = replace(marks[named], roles=(Role("item", item),), number=None)
        place = entries[-1][1] + 1 if len(entries) >= _FEWEST else place + 1
    return result


def _entries(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> list[tuple[int, int, str]]:
    """Entries of the form from a place on: (its item number, its points, its item) as places of marks and a name."""
    found: list[tuple[int, int, str]] = []
    label = _number_of_item(marks[place])
    while label:
        after = _LABELS[_LABELS.index(label) + 1 :][:1]
        following = _next_label(marks, place, after[0] if after else "", tokens)
        points = _points(marks, place, following, label)
        if not points:
            break
        found.append((place, points, _ITEMS[label]))
        place, label = following, after[0] if after and following < len(marks) else ""
        if label and _number_of_item(marks[place]) != label:
            break
    return found


def _next_label(marks: Sequence[Mark], place: int, label: str, tokens: Sequence[Token]) -> int:
    """Where the next item number stands: at the start of an entry, or behind the points of the last one."""
    end = min(place + _ENTRY, len(marks))
    for at in range(place + 2, end):
        opens = marks[at - 1].number is not None or marks[at - 1].has("comma", "semicolon", "stop")
        opens = opens or marks[at - 1].text in _BARS or tokens[marks[at].start - 1].ends_sentence
        opens = opens or marks[at - 1].has(*_UNTESTABLE)
        if opens and label and _number_of_item(marks[at]) == label:
            return at
    told = (at for at in range(place + 1, end) if _whole(marks[at]) or marks[at].has(*_UNTESTABLE))
    return next((at + 1 for at in told), end)


def _points(marks: Sequence[Mark], place: int, end: int, label: str) -> int:
    """The place of the points of an entry: the last thing in it, a number that its item can have, or "untestable"."""
    inside = [at for at in range(place + 1, end) if not marks[at].has("comma", "semicolon", "stop", "colon")]
    while inside and marks[inside[-1]].text in _BARS:
        inside.pop()
    highest = [str(points) for points in range(STROKE.parts[_ITEMS[label]][1] + 1)]
    noted = place + 2 < end and marks[place + 2].text in _NOTES
    if noted and inside[:1] == [place + 1] and _whole(marks[place + 1]) in highest:
        return place + 1
    if not inside or any(marks[at].number is not None for at in inside[:-1]):
        return 0
    last = marks[inside[-1]]
    possible = _whole(last) in highest
    return inside[-1] if possible or last.has(*_UNTESTABLE) else 0


def _number_of_item(mark: Mark) -> str:
    """ "1a", "item 2", "11": the item number that a mark can be."""
    said = _LETTERED.fullmatch(mark.text)
    if said:
        label = f"{UNITS.get(said[1], said[1])}{said[2]}"
    else:
        plain = mark.number is not None and not (mark.number.op or mark.number.a_sign or mark.number.mark)
        label = _whole(mark) if plain else mark.text.removeprefix("item ")
    return label if label in _ITEMS else ""


def _label_of(mark: Mark) -> str:
    """The item number that the mark is; empty when it is none with a letter."""
    said = _LETTERED.fullmatch(mark.text)
    label = f"{UNITS.get(said[1], said[1])}{said[2]}" if said else ""
    return label if any(role.item == _ITEMS.get(label, "-") for role in mark.roles) else ""


def _end_of_run(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> int:
    """Where plain numbers in a row end; commas and colons may stand between."""
    for at in range(place, len(marks)):
        number = marks[at].number
        plain = number is not None and marks[at].has("number") and not (number.op or number.a_sign or number.mark)
        if tokens[marks[at].start - 1].ends_sentence or not (plain or marks[at].has("comma", "colon")):
            return at
    return len(marks)


def _digits(mark: Mark, tokens: Sequence[Token]) -> list[Mark]:
    """ "One zero one" in a row of points is three of them."""
    words = [token.lower for token in tokens[mark.start : mark.end]]
    single = all(word in UNITS or (word.isdigit() and len(word) == 1) for word in words)
    if mark.number is None or len(words) < 2 or not single:
        return [mark]
    points = [float(UNITS.get(word, word)) for word in words]
    places = range(mark.start, mark.end)
    return [
        Mark(at, at + 1, (Role("number"),), Number(a=one), word)
        for at, one, word in zip(places, points, words, strict=True)
    ]


def _labelled(run: list[Mark], label: str) -> list[Mark]:
    """ "1c 0, 2 1, 3 0": numbers in pairs whose first ones follow each other on the form name the items."""
    numbers = [at for at, mark in enumerate(run) if mark.number is not None][1:]
    labels = numbers[::2]
    wanted = _LABELS[_LABELS.index(label) + 1 :][: len(labels)]
    if len(numbers) % 2 or [_whole(run[at]) for at in labels] != list(wanted):
        return run
    for at, item in zip(labels, wanted, strict=True):
        run[at] = replace(run[at], roles=(Role("item", _ITEMS[item]),), number=None)
    return run


def _dealt(run: list[Mark]) -> list[Mark]:
    """Fifteen points, each possible for its item, in the order of the form."""
    numbers = [at for at, mark in enumerate(run) if mark.number is not None]
    if len(numbers) != len(_LABELS):
        return run
    dealt = list(zip(numbers, STROKE.parts, strict=True))
    if all(_whole(run[at]) in map(str, range(STROKE.parts[item][1] + 1)) for at, item in dealt):
        for at, item in dealt:
            run[at] = replace(run[at], roles=(Role("item", item),))
    return run


def _whole(mark: Mark) -> str:
    return "" if mark.number is None else f"{mark.number.a:g}"
