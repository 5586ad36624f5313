"""Typed shorthand that means something in company: RE and LE behind an acuity, "-/-" behind a jerk, "toes down B"."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.tokens import Token

_EYES = {"RE": "right", "LE": "left"}  # LE is also a leg: an eye only where eyes are spoken of
_EYE_NERVES = frozenset({"II", "III", "IV", "VI"})
_FOUR_SCORE = 16  # points
_NEAR = 12  # marks in which a tremor is spoken of
_SIGNS = {"+": (1.0, "+"), "-": (0.0, "")}


def read_shorthand(marks: Sequence[Mark], tokens: Sequence[Token], items: Mapping[str, Item]) -> list[Mark]:
    """The marks, with such shorthand as sides and numbers."""
    result: list[Mark] = []
    place = 0
    while place < len(marks):
        mark = marks[place]
        side = _EYES.get(tokens[mark.start].text) if mark.end - mark.start == 1 else None
        if side is not None and _names(marks, place, tokens, items, _is_of_eyes):
            mark = replace(mark, roles=(Role("side", key=side),))
        if tokens[mark.start].text == "FOUR" and _is_of_sixteen(marks[place + 1 : place + 2]):
            mark = replace(mark, roles=(Role("item", "four_score"),), number=None)
        if mark.text == "n" and mark.has("word") and _closes(marks, place, tokens):
            mark = replace(mark, roles=(Role("normal"),))
        if tokens[mark.start].text in ("B", "each") and _is_both(marks, place, tokens):
            mark = replace(mark, roles=(Role("side", key="both"),))
        if mark.text == "rest" and _is_remainder(marks, place):
            mark = replace(mark, roles=(Role("rest"),))
        pair = _sign_pair(marks, place, tokens)
        if pair is not None and _names(marks, place, tokens, items, _is_jerk):
            mark, place = pair, place + 2
        result.append(mark)
        place += 1
    return result


def _is_of_sixteen(after: Sequence[Mark]) -> bool:
    """ "FOUR 6/16": the coma score in capitals is no number four."""
    number = after[0].number if after else None
    return number is not None and number.op in ("/", "of") and number.b == _FOUR_SCORE


def _is_both(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> bool:
    """ "Toes down B, biceps 3+ B", "ankles 1+ each": at the end of a clause in which something was found."""
    if marks[place].has("item", "sign", "number") or place == 0:
        return False
    if tokens[marks[place - 1].end - 1].ends_sentence or marks[place - 1].has("word", "comma", "colon"):
        return False  # "hepatitis B", "plan B"
    last = tokens[marks[place].end - 1].ends_sentence or place + 1 == len(marks)
    return last or marks[place + 1].has("comma", "semicolon", "stop", "conj") or marks[place + 1].text in ("w", "with")


def _is_remainder(marks: Sequence[Mark], place: int) -> bool:
    """ "Deltoid 4, rest 5": set off from a number before it, with what was found right behind; no tremor's "rest 2"."""
    before = next((mark for mark in reversed(marks[max(0, place - 4) : place]) if not mark.has("side", "comma")), None)
    parted = place > 0 and marks[place - 1].has("comma", "semicolon", "stop", "conj")
    after = next((mark for mark in marks[place + 1 : place + 3] if not mark.has("filler")), None)
    told = after is not None and (after.number is not None or after.role("normal", "") or after.text == "full")
    tremor = any(role.item == "tremor" for mark in marks[max(0, place - _NEAR) : place] for role in mark.roles)
    return bool(parted and told) and before is not None and before.number is not None and not tremor


def _closes(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> bool:
    """ "Gait n.", "bulk n, tone ↑": right behind a name, and nothing more is said of it."""
    named = place > 0 and marks[place - 1].has("item", "context")
    ends = tokens[marks[place].end - 1].ends_line or place + 1 == len(marks)
    return named and (ends or marks[place + 1].has("stop", "comma", "semicolon"))


def _names(
    marks: Sequence[Mark], place: int, tokens: Sequence[Token], items: Mapping[str, Item], fits: Callable[[Item], bool]
) -> bool:
    """Whether the last name in front of a place, in its sentence, is of an item that fits."""
    for before in reversed(marks[:place]):
        if tokens[before.end - 1].ends_sentence:
            return False
        named = [items[role.item] for role in before.roles if role.kind in ("item", "context") and role.item in items]
        if named:
            return any(map(fits, named))
    return False


def _is_of_eyes(item: Item) -> bool:
    return not _EYE_NERVES.isdisjoint((item.nerve or "").split())


def _is_jerk(item: Item) -> bool:
    return item.scale == "tendon_reflex"


def _sign_pair(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> Mark | None:
    """ "-/-", "+/+", "++/+": two jerks that are there or not; "+/-" alone is one that is barely there."""
    three = marks[place : place + 3]
    if len(three) < 3 or three[1].text != "/" or not (tokens[three[1].start].glued and tokens[three[2].start].glued):
        return None
    one, two = (_jerk_written(mark) for mark in (three[0], three[2]))
    if one is None or two is None:
        return None
    (a, a_sign), (b, b_sign) = one, two
    number = Number(a=a, a_sign=a_sign, op="/", b=b, b_sign=b_sign)
    return Mark(three[0].start, three[2].end, (Role("number"),), number, " ".join(mark.text for mark in three))


def _jerk_written(mark: Mark) -> tuple[float, str] | None:
    """ "+", "-", "++": how brisk, and its sign; None: no jerk is written so."""
    if mark.text in _SIGNS:
        return _SIGNS[mark.text]
    pluses = set(mark.text.split()) == {"+"} and mark.number is not None and not mark.number.op
    return (mark.number.a, "+") if pluses and mark.number is not None else None
