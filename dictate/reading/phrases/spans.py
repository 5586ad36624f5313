"""Phrases found in a text → marks in order: the longest win, every token is in exactly one."""

from __future__ import annotations

import itertools
from bisect import bisect_left
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.phrases.kinds import LENGTHS
from dictate.reading.phrases.nerves import nerve_range
from dictate.reading.phrases.numbers import find_numbers
from dictate.reading.tokens import Token

_PUNCTUATION = {
    ",": "comma",
    ";": "semicolon",
    ":": "colon",
    "(": "comma",
    ")": "comma",
    "-": "comma",
    ".": "stop",
    "?": "stop",
    "!": "stop",
    "=": "filler",
    "&": "conj",
    "/": "conj",
    "@": "filler",
    ">": "word",
    "<": "word",
    "%": "word",
    "+": "word",
}
_MINUTES = {"minute", "minutes", "min", "mins"}
_SECONDS = {"second", "seconds", "sec", "secs"}
_AT = {"at", "after"}
_COUNTS = {"step", "steps"}  # behind a number they count, and name nothing
_WALKS = {"walks", "walked"}
_OF_TIME = (7, 12, 52)  # days, months and weeks of one week or year
_FOR = ("for", "since", "last", "past", "over")
_SYSTOLIC = 60  # mmHg, and more than any grade or acuity
_FOOT = 10  # from here "n feet" is a distance: no one has ten feet, and no grade is that high
_SPANS = {"hour", "hours", "year", "years", "day", "days", "week", "weeks", "month", "months", "yrs", "yr", "hrs"}
_DERMATOME_LIMIT = {"c": 8, "t": 12, "d": 12, "l": 5, "s": 5, "v": 3}  # D: dorsal, as many write T
_BEFORE_LEVEL = {"at", "to", "below", "level", "above", "through", "from", "and", "of", "over"}
_LEVEL_LISTS = frozenset({",", "and", "or", "/"})
_LEVEL_LINKS = frozenset({"-", "/", "to", "and"})


def dermatomes(tokens: Sequence[Token]) -> Iterable[Mark]:
    """ "T8", "t eight", "T-10" as sites and levels, and the second one of "C5/6", "L4 to 5"."""
    numbers = {mark.start: mark for mark in find_numbers(tokens)}
    last = -1  # token after the level before
    for place, token in enumerate(tokens):
        listed = 0 < last < place and all(one.lower in _LEVEL_LISTS for one in tokens[last:place])
        mark = _level_at(place, token, tokens, numbers, listed=listed)
        if mark is None and token.lower in ("v1", "v2"):  # the first is a place by its name
            division = Mark(place, place + 1, (Role("site", key=token.lower),))
            if (second := _level_behind(division, tokens, numbers)) is not None:
                yield replace(second, roles=(Role("site", key=second.roles[0].key),))
        if mark is None:
            continue
        last = mark.end
        yield mark
        if (second := _level_behind(mark, tokens, numbers)) is not None:
            yield second


def _level_at(
    place: int, token: Token, tokens: Sequence[Token], numbers: Mapping[int, Mark], *, listed: bool
) -> Mark | None:
    """listed: in one list with a level before it ("at L two, L three and L four")."""
    letter, rest = token.lower[:1], token.lower[1:]
    if letter in _DERMATOME_LIMIT and letter not in "dv" and rest.isdigit():
        return _level(place, place + 1, letter, int(rest))
    if token.lower not in _DERMATOME_LIMIT or token.lower == "v" or place + 1 >= len(tokens):
        return None
    after = place + 2 if tokens[place + 1].lower == "-" else place + 1
    before = tokens[place - 1].lower if place else ""
    if not (listed or letter in ("t", "c") or before in _BEFORE_LEVEL) or (letter == "s" and before == "s"):
        return None
    number = _whole(numbers.get(after))
    return None if number is None else _level(place, numbers[after].end, letter, number)


def _level_behind(mark: Mark, tokens: Sequence[Token], numbers: Mapping[int, Mark]) -> Mark | None:
    """The segment whose letter is not said again: with the word or sign that links it to the first."""
    link = tokens[mark.end].lower if mark.end < len(tokens) else ""
    number = _whole(numbers.get(mark.end + 1)) if link in _LEVEL_LINKS else None
    first = mark.roles[0].key
    if number is None or number <= int(first[1:]) or tokens[mark.end - 1].ends_sentence:
        return None
    if link == "and" and number != int(first[1:]) + 1:
        return None  # "C5 and 6"
    return _level(mark.end, numbers[mark.end + 1].end, first[0], number)


def _whole(mark: Mark | None) -> int | None:
    """A plain whole number, and nothing that carries a sign, a maximum or a fraction."""
    number = mark.number if mark is not None else None
    if number is None or number.op or number.a_sign or number.mark or number.a != int(number.a):
        return None
    return int(number.a)


def _level(start: int, end: int, letter: str, number: int) -> Mark | None:
    if not 1 <= number <= _DERMATOME_LIMIT[letter]:
        return None
    key = f"{'t' if letter == 'd' else letter}{number}"
    return Mark(start, end, (Role("dermatome", key=key), Role("site", key=key)))


def longest_first(spans: list[Mark], length: int) -> list[Mark]:
    """Marks that do not overlap: the longest first, then names, then the earliest; equal spans are one mark."""
    by_span: dict[tuple[int, int], Mark] = {}
    for mark in spans:
        key = (mark.start, mark.end)
        old = by_span.get(key)
        by_span[key] = (
            mark if old is None else Mark(mark.start, mark.end, (*old.roles, *mark.roles), old.number or mark.number)
        )
    taken = [False] * length
    chosen = []
    for mark in sorted(by_span.values(), key=lambda m: (m.start - m.end, not m.has("item", "number"), m.start)):
        if not any(taken[mark.start : mark.end]):
            taken[mark.start : mark.end] = [True] * (mark.end - mark.start)
            chosen.append(mark)
    return sorted(chosen, key=lambda m: m.start)


def with_inner(mark: Mark, spans: list[Mark], tokens: Sequence[Token], items: Collection[str]) -> Mark:
    """A phrase that means something of certain items only, together with what it falls into elsewhere.

    spans: in the order in which they start. items: ids of all items.
    """
    if mark.end - mark.start < 2 or mark.number is not None:
        return mark
    if any(not role.item or role.kind in ("item", "sign", "alone") for role in mark.roles):
        return mark
    first = bisect_left(spans, mark.start, key=lambda s: s.start)
    starting = itertools.takewhile(lambda s: s.start < mark.end, itertools.islice(spans, first, None))
    inside = [s for s in starting if s.end <= mark.end and s.end - s.start < mark.end - mark.start]
    moved = [Mark(s.start - mark.start, s.end - mark.start, s.roles, s.number, s.text) for s in inside]
    said = tokens[mark.start : mark.end]
    inner = tuple(
        with_inner(Mark(m.start + mark.start, m.end + mark.start, m.roles, m.number, m.text), inside, tokens, items)
        for m in join(fill(longest_first(moved, len(said)), said), said, items)
    )
    return Mark(mark.start, mark.end, mark.roles, mark.number, mark.text, inner=inner)


def fill(chosen: list[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """Add a mark for every token that no phrase took; give each mark its text."""
    marks: list[Mark] = []
    place = 0
    for mark in [*chosen, Mark(len(tokens), len(tokens), ())]:
        while place < mark.start:
            lower = tokens[place].lower
            kind = _PUNCTUATION.get(lower, "word" if lower.isalnum() else "filler")
            marks.append(Mark(place, place + 1, (Role(kind),), text=lower))
            place += 1
        if mark.start < mark.end:
            text = " ".join(token.lower for token in tokens[mark.start : mark.end])
            marks.append(Mark(mark.start, mark.end, mark.roles, mark.number, text))
            place = mark.end
    return marks


def deny_by_minus(
    marks: list[Mark], tokens: Sequence[Token], items: Mapping[str, Item], negative: Collection[Role]
) -> list[Mark]:
    """ "Romberg +; Lhermitte -": behind a sign that is there or not, a minus that ends its phrase denies it."""
    result = list(marks)
    for place, mark in enumerate(marks[1:], start=1):
        if mark.text != "-" or tokens[mark.start].glued or tokens[mark.start].hyphened:
            continue
        ends = tokens[mark.start].ends_sentence or place + 1 == len(marks)
        after = marks[place + 1] if place + 1 < len(marks) else None
        if ends and after is not None and after.has("side", "site") and not after.has("item", "sign", "heading"):
            continue  # "Tremor -" over a line that says of which hand
        if not ends and after is not None and not after.has("comma", "semicolon", "stop"):
            continue
        signs = [items[r.item] for r in marks[place - 1].roles if r.kind in ("item", "sign", "alone")]
        if signs and all(item.negated == "normal" or item.kind == "presence" for item in signs):
            result[place] = replace(mark, roles=tuple(negative))
    return result


def join(marks: list[Mark], tokens: Sequence[Token], items: Collection[str]) -> Iterable[Mark]:
    """Join numbers to what makes them minutes, time spans or a range of cranial nerves."""
    place = 0
    while place < len(marks):
        mark = marks[place]
        after = marks[place + 1] if place + 1 < len(marks) else None
        if mark.number is not None and after is not None and not tokens[mark.end - 1].ends_sentence:
            if _is_duration(marks, place, tokens):
                yield replace(mark, roles=(Role("time_span"),), number=None)
                place += 1
                continue
            primed = after.text == "'" and _is_pressure(marks[place + 2 : place + 3])
            kind = "minutes" if primed or after.text in _MINUTES else "time_span" if after.text in _SPANS else ""
            if kind and not mark.number.op:
                yield Mark(mark.start, after.end, (Role(kind),), mark.number, f"{mark.text} {after.text}")
                place += 2
                continue
            if after.text in _SECONDS and not mark.number.op and _since_standing(marks, place, tokens):
                minutes = Number(a=round(mark.number.a / 60, 4))
                yield Mark(mark.start, after.end, (Role("minutes"),), minutes, f"{mark.text} {after.text}")
                place += 2
                continue
            if counted := _counted(mark, after):
                yield mark
                yield counted
                place += 2
                continue
        if mark.number is not None and after is not None and after.has("item") and after.text.split()[0] in LENGTHS:
            yield Mark(mark.start, after.end, after.roles, None, f"{mark.text} {after.text}")
            place += 2
            continue
        if mark.text in _WALKS and "timed_walk" in items and (walk := _distance_walked(marks, place, tokens)):
            yield walk
            place += 3
            continue
        if mark.role("heading") and (joined := nerve_range(marks, place, tokens, items)):
            yield joined[0]
            place = joined[1]
            continue
        yield mark
        place += 1


def _is_duration(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> bool:
    """ "3/12 R hand weakness", "since 5/7": so many months, weeks or days, where nothing is measured in front."""
    number = marks[place].number
    if number is None or number.op != "/" or number.b not in _OF_TIME or number.a >= number.b or number.a_sign:
        return False
    if "/" not in marks[place].text or any(
        one.has("item", "context") and _is_acuity(one) for one in marks[:place][-9:]
    ):
        return False  # "vision six nine on the right, six twelve on the left"
    before = marks[place - 1] if place and not tokens[marks[place].start - 1].ends_sentence else None
    after = marks[place + 1]
    opens = before is None or before.has("comma", "stop", "semicolon", "colon") or before.text in _FOR
    return opens and (after.has("side", "site", "word", "severity", "sign") or after.text in ("of", "history", "hx"))


def _is_acuity(mark: Mark) -> bool:
    return any(role.item == "visual_acuity" for role in mark.roles)


def _is_pressure(after: Sequence[Mark]) -> bool:
    """ "Standing 1' 104/60": minutes, and no feet."""
    number = after[0].number if after else None
    return number is not None and number.op == "/" and number.a >= _SYSTOLIC


def _distance_walked(marks: list[Mark], place: int, tokens: Sequence[Token]) -> Mark | None:
    """ "Walks 20 metres": a walk over that distance, whatever it is."""
    if place + 2 >= len(marks) or any(
        token.ends_sentence for token in tokens[marks[place].start : marks[place + 1].end]
    ):
        return None
    walk, number, length = marks[place : place + 3]
    if number.number is None or number.number.op or length.text not in LENGTHS:
        return None
    return Mark(walk.start, length.end, (Role("item", "timed_walk"),), None, f"{walk.text} {number.text} {length.text}")


def _counted(mark: Mark, after: Mark) -> Mark | None:
    """ "ten steps", "25 feet": what a plain number counts is no name and no place of the body."""
    number = mark.number
    plain = number is not None and not (number.op or number.a_sign or number.mark)
    length = after.text in ("feet", "foot") and number is not None and number.a >= _FOOT
    units = tuple(role for role in after.roles if role.kind == "unit")
    return (
        Mark(after.start, after.end, units, None, after.text)
        if plain and units and (after.text in _COUNTS or length)
        else None
    )


def _since_standing(marks: list[Mark], place: int, tokens: Sequence[Token]) -> bool:
    """ "standing at 15 seconds", "ten seconds after standing": seconds that say when, not how long something took."""
    behind = [one for one in marks[place + 2 : place + 5] if one.text not in ("of", "after", "on", "upon", "the")]
    if (
        behind
        and _is_upright(behind[0])
        and not any(t.ends_sentence for t in tokens[marks[place].start : behind[0].start])
    ):
        return True
    if place == 0 or marks[place - 1].text.split()[-1] not in _AT:
        return False
    first = next((p for p in range(marks[place].start - 1, -1, -1) if tokens[p].ends_sentence), -1)
    return any(_is_upright(one) for one in marks[:place] if one.start > first)


def _is_upright(mark: Mark) -> bool:
    return any(role.kind == "position" and role.key in ("standing", "tilted") for role in mark.roles)
