"""Typed shorthand that means something in company: RE and LE behind an acuity, "-/-" behind a jerk, "toes down B"."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.phrases.numbers import ROMAN
from dictate.reading.tokens import Token

_EYES = {"RE": "right", "LE": "left"}  # LE is also a leg: an eye only where eyes are spoken of
_EYE_NERVES = frozenset({"II", "III", "IV", "VI"})
_NAMES = ("item", "sign", "context", "alone")
_FOUR_SCORE = 16  # points
_SATURATION = "oxygen_saturation"
_LITRES = frozenset({"l", "litres", "liters", "litre", "liter", "lpm"})
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
        if tokens[mark.start].text == "FOUR" and _is_coma_score(marks[place + 1 : place + 5]):
            mark = replace(mark, roles=(Role("item", "four_score"),), number=None)
        if mark.text == "n" and mark.has("word") and _closes(marks, place, tokens):
            mark = replace(mark, roles=(Role("normal"),))
        if mark.text == "else" and marks[place + 1 : place + 2] and marks[place + 1].has("normal"):
            mark = replace(mark, roles=(Role("rest"),), text="otherwise")  # "else NAD"
        if mark.text == "nil" and _denies_next(marks, place, tokens):
            mark = replace(mark, roles=(Role("negation"),))
        if tokens[mark.start].text in ("B", "each") and _is_both(marks, place, tokens):
            mark = replace(mark, roles=(Role("side", key="both"),))
        flow = _oxygen(marks[place : place + 2], marks[:place])
        if flow is not None and _names(marks, place, tokens, items, _is_share):
            place, mark = place + 1, flow
        pair = _sign_pair(marks, place, tokens)
        if pair is not None and _names(marks, place, tokens, items, _is_jerk):
            place += next(i for i, one in enumerate(marks[place:]) if one.end == pair.end)
            mark = pair
        result.append(mark)
        place += 1
    return result


def _is_coma_score(after: Sequence[Mark]) -> bool:
    """ "FOUR 6/16", "FOUR: E1 M2 B4 R1": the coma score in capitals is no number four."""
    number = after[0].number if after else None
    if number is not None and number.op in ("/", "of") and number.b == _FOUR_SCORE:
        return True
    told = [mark for mark in after if not mark.has("colon", "comma")]
    told = told[1:] if told and told[0].number is not None else told  # "FOUR 8 (E1 M2 B4 R1)"
    return len(told) > 1 and told[0].text == "e" and told[1].number is not None


def _is_both(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> bool:
    """ "Toes down B, biceps 3+ B", "ankles 1+ each": at the end of a clause in which something was found."""
    if marks[place].has("item", "sign", "number") or place == 0:
        return False
    if tokens[marks[place - 1].end - 1].ends_sentence or marks[place - 1].has("word", "comma", "colon"):
        return False  # "hepatitis B", "plan B"
    last = tokens[marks[place].end - 1].ends_sentence or place + 1 == len(marks)
    return last or marks[place + 1].has("comma", "semicolon", "stop", "conj") or marks[place + 1].text in ("w", "with")


def _closes(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> bool:
    """ "Gait n.", "bulk n, tone ↑", "VIII - grossly N": right behind a name, and nothing more is said of it."""
    named = place > 0 and marks[place - 1].has("item", "context")
    lead = [mark for mark in marks[max(0, place - 3) : place] if not mark.has("severity") and mark.text not in "-:"]
    named = named or (bool(lead) and lead[-1].text in ROMAN and tokens[lead[-1].start].text.isupper())
    pair = place > 1 and marks[place - 1].text == "/"  # "knees ↓/N"
    named = named or (
        pair and place > 1 and (marks[place - 2].text == "n" or marks[place - 2].has("abnormal", "value"))
    )
    ends = tokens[marks[place].end - 1].ends_line or place + 1 == len(marks)
    return named and (ends or marks[place + 1].has("stop", "comma", "semicolon") or marks[place + 1].text == "/")


def _denies_next(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> bool:
    """ "Carotids: nil bruits", "nil focal weakness": no, in front of a name of which nothing else is said."""
    if tokens[marks[place].start].ends_sentence:
        return False
    behind = []
    for mark in marks[place + 1 :]:
        if mark.has("comma", "semicolon", "stop", "conj", "contrast"):
            break
        behind.append(mark)
        if tokens[mark.end - 1].ends_sentence:
            break
    told = any(mark.number is not None or mark.has("absent", "present", "not_examined", "negation") for mark in behind)
    return not told and any(mark.has(*_NAMES) for mark in behind)


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


def _is_share(item: Item) -> bool:
    return item.unit == "%"


def _oxygen(said: Sequence[Mark], before: Sequence[Mark]) -> Mark | None:
    """ "SpO2 97% 15L", "94% 2 L": the oxygen that was given while it was measured."""
    number = said[0].number
    told = [mark for mark in before[-4:] if not mark.has("comma", "filler")][-2:]
    if number is None or number.op or len(said) < 2 or said[1].text not in _LITRES:
        return None
    if not any(mark.number is not None for mark in told):
        return None
    roles = (Role("qualifier", _SATURATION),)
    return Mark(said[0].start, said[1].end, roles, None, f"{said[0].text} {said[1].text}")


def _is_jerk(item: Item) -> bool:
    return item.scale == "tendon_reflex"


def _sign_pair(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> Mark | None:
    """ "-/-", "+/+", "++/+", "- -": two jerks that are there or not; "+/-" alone is one that is barely there."""
    said = marks[place : place + 3]
    if len(said) < 3 or said[1].text != "/" or not (tokens[said[1].start].glued and tokens[said[2].start].glued):
        said = said[:2]
        if len(said) < 2 or not _is_column(said[1], tokens, marks[place + 2 : place + 3]):
            return None
    one, two = _jerk_written(said[0]), _jerk_written(said[-1])
    if one is None or two is None:
        return None
    (a, a_sign), (b, b_sign) = one, two
    number = Number(a=a, a_sign=a_sign, op="/", b=b, b_sign=b_sign)
    return Mark(said[0].start, said[-1].end, (Role("number"),), number, " ".join(mark.text for mark in said))


def _is_column(second: Mark, tokens: Sequence[Token], after: Sequence[Mark]) -> bool:
    """A sign that stands apart from the one before it, and ends its phrase."""
    apart = not tokens[second.start].glued and not tokens[second.start - 1].ends_sentence
    ends = tokens[second.end - 1].ends_sentence or not after or after[0].has("comma", "semicolon", "stop")
    return apart and ends and second.text != "/"


def _jerk_written(mark: Mark) -> tuple[float, str] | None:
    """ "+", "-", "++": how brisk, and its sign; None: no jerk is written so."""
    if mark.text in _SIGNS:
        return _SIGNS[mark.text]
    pluses = set(mark.text.split()) == {"+"} and mark.number is not None and not mark.number.op
    return (mark.number.a, "+") if pluses and mark.number is not None else None
