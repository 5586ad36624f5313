"""Little words that turn what stands beside them: "hardly palpable", "tongue to the left", "to the left and right"."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.marks import Mark, Role
from dictate.reading.senses.graded import weak_side

_LEANING = frozenset({"tongue", "palate"})
_HARDLY = frozenset({"hardly", "barely", "scarcely"})
_COPULAS = frozenset({"is", "are", "was", "were"})
_STRONG = frozenset({"strong", "clear"})  # of a nystagmus, or of a saccade that corrects
_SLOWEST = 30  # a minute
_TURNS = frozenset({"then", "and then", "now"})
_BREAKS = ("comma", "semicolon", "stop", "colon")


def in_other_words(marks: Sequence[Mark], place: int) -> Mark | None:
    """The mark as the words beside it turn it; None where they leave it as it is."""
    mark = marks[place]
    if mark.text in _HARDLY and place + 1 < len(marks) and _is_well(marks[place + 1]):
        return mark.only("filler")
    if place and marks[place - 1].text in _HARDLY and _is_well(mark):
        said = f"{marks[place - 1].text} {mark.text}"
        return replace(mark, start=marks[place - 1].start, roles=(Role("abnormal"),), text=said)
    if mark.text in ("make that", "make it") and place and marks[place - 1].text == "i":
        named = any(one.has("item") and one.number is None for one in marks[place + 1 : place + 2])
        return mark.only("filler") if named else None  # "I make that NIHSS nine": a sum, and no correction
    if "deviates" in mark.text.split() and any(one.text == "neither" for one in marks[place + 1 : place + 4]):
        jaw = (Role("alone", "jaw_strength", "strong"), Role("value", "jaw_strength", "strong"))
        return replace(mark, roles=jaw) if mark.text.startswith("jaw") else mark.only("normal")
    if mark.role("value") is not None and _to_both_sides(marks, place):
        return mark.only("normal")
    if mark.text == "heart" and _is_rate(marks[place + 1 : place + 2]):
        return replace(mark, roles=(Role("item", "heart_rate"), Role("item", "heart_rhythm")), inner=())
    if mark.text in _STRONG and _of_nystagmus(marks[place + 1 : place + 4]):
        return mark.only("severity")  # "a strong geotropic nystagmus"
    if mark.text == "saccade" and any(one.role("item", "head_impulse") for one in marks[:place]):
        return replace(mark, roles=(Role("abnormal", "head_impulse"),))
    if mark.role("item", "skew") and "test" in mark.text.split() and not _tells_skew(marks[place + 1 :]):
        return mark.only("filler" if any(one.has("sign") for one in marks[place + 1 :]) else "word")
    if mark.text == "there" and place and _is_found(marks, place):
        return replace(mark, roles=(Role("present"),))
    if mark.text == "repetition" and place and marks[place - 1].text in ("with", "on"):
        return mark.only("word")  # "weaker with repetition": no language
    if mark.text in ("either", "both") and mark.has("side") and _is_no_side(marks, place):
        return mark.only("filler")
    if weak_side(marks, place):
        return mark.only("sign", "strength_all")
    if mark.text in _TURNS and place and _turns_to(marks, place):
        return mark.only("semicolon")
    if mark.text == "to" and place and (name := _leant(marks, place)):
        return replace(mark, roles=(Role("value", name, "deviates"),))  # "tongue to the left"
    return None


def _is_no_side(marks: Sequence[Mark], place: int) -> bool:
    """ "No nystagmus either.", "nystagmus both ways": a second denial, and directions."""
    after = marks[place + 1] if place + 1 < len(marks) else None
    if marks[place].text == "both":
        return after is not None and after.text in ("ways", "directions")
    return after is None or after.has(*_BREAKS)


def _turns_to(marks: Sequence[Mark], place: int) -> bool:
    """ "No myoclonus then the legs heel shin is ataxic": on to another part of the body and its test."""
    after = [mark for mark in marks[place + 1 : place + 5] if mark.text != "the"]
    return len(after) > 1 and after[0].role("site", "") is not None and after[1].has("item", "sign")


def _is_rate(after: Sequence[Mark]) -> bool:
    """ "Heart 88, sinus": a whole number as a rate has it."""
    number = after[0].number if after else None
    return number is not None and not number.op and not number.a_sign and number.a >= _SLOWEST


def _of_nystagmus(ahead: Sequence[Mark]) -> bool:
    """ "Geotropic nystagmus": words for its kind and its name."""
    told = itertools.takewhile(lambda mark: not mark.has(*_BREAKS, "side", "negation", "conj", "filler"), ahead)
    return any("nystagmus" in mark.text or mark.text == "saccade" for mark in told)


def _tells_skew(behind: Sequence[Mark]) -> bool:
    """Whether the clause says what the test showed of skew; a phoria is none ("cover test shows an exophoria")."""
    clause = itertools.takewhile(lambda mark: not mark.has("stop", "semicolon", "comma"), behind)
    told = ("normal", "abnormal", "absent", "present", "negation", "not_examined", "not_assessable", "number")
    return any(
        mark.role("value", "skew") is not None
        or any(role.item in ("", "skew") and role.kind in told for role in mark.roles)
        for mark in clause
    )


def _is_found(marks: Sequence[Mark], place: int) -> bool:
    """ "Corneal there on the left", "direct absent but consensual there": behind a name, and no pointing."""
    front, behind = marks[place - 1], marks[place + 1 : place + 2]
    clause = itertools.takewhile(lambda mark: not mark.has(*_BREAKS, "contrast"), reversed(marks[:place]))
    if any(mark.has("negation") for mark in clause):
        return False  # "no bruits there"
    if front.text in _COPULAS and place > 1:
        front = marks[place - 2]  # "the jaw jerk is there but not brisk"
    found = front.has("normal", "abnormal")  # "reduced there"
    named = front.has("item", "context", "qualifier") and not found and not front.has("side", "site")
    return named and all(mark.has(*_BREAKS, "conj", "contrast", "except", "side") for mark in behind)


def _is_well(mark: Mark) -> bool:
    """Whether it says of some item that it is normal or there; "hardly palpable" says neither."""
    named = mark.has("item", "sign", "alone") or mark.role("abnormal", "") is not None
    return mark.number is None and mark.has("normal", "present") and not named


def _to_both_sides(marks: Sequence[Mark], place: int) -> bool:
    """ "Tongue moves to the left and to the right": it goes where it is asked to go, and deviates to neither side."""
    if not any(role.key == "deviates" for role in marks[place].roles) or marks[place].text[:4] not in ("move", "goes"):
        return False
    ahead = itertools.takewhile(lambda mark: not mark.has(*_BREAKS, "contrast"), marks[place + 1 :])
    sides = {role.key for mark in ahead if (role := mark.role("side", "")) is not None}
    return "both" in sides or sides == {"left", "right"}


def _leant(marks: Sequence[Mark], place: int) -> str:
    """The item named just before, where a "to" with a side behind it is all that is said of how it stands."""
    name = next((role.item for role in marks[place - 1].roles if role.kind == "item" and role.item in _LEANING), "")
    ahead = [mark for mark in marks[place + 1 : place + 4] if mark.text != "the"]
    sided = bool(ahead) and (side := ahead[0].role("side", "")) is not None and side.key in ("left", "right")
    return name if sided and all(mark.has(*_BREAKS) or mark.text.split()[0] == "on" for mark in ahead[1:2]) else ""
