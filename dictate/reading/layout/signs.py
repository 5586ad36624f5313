"""Plus and minus behind a side: "Hoffmann R+ L-", "ankle jerks R + L ++"."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.tokens import Token

_SIDES = {"r": "right", "l": "left"}
_TWO_SIDES = (("r", "+", "l"), ("l", "+", "r"))  # also written for both sides
_NAMING = ("item", "sign", "context")
_JERK = {"+": Number(a=1, a_sign="+"), "-": Number(a=0)}


def signs_of_sides(marks: Sequence[Mark], tokens: Sequence[Token], lexicon: Lexicon) -> list[Mark]:
    """The marks, with the plus and minus behind a side as what was found there, where a sign or a jerk was named."""
    result: list[Mark] = []
    named: tuple[Item, ...] = ()
    for place, mark in enumerate(levels_as_sides(_parted(marks, tokens), tokens)):
        if place and tokens[mark.start - 1].ends_sentence:
            named = ()
        if not mark.has("side"):  # "R" is short for other things too
            names = [lexicon.items[role.item] for role in mark.roles if role.kind in _NAMING and role.item]
            named = tuple(names) or named
        sided = bool(result) and result[-1].role("side") is not None
        if sided and mark.text in _JERK and named and _is_sign(mark, tokens):
            result.append(_told(mark, named, lexicon))
        else:
            result.append(mark)
    return result


def levels_as_sides(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """ "Shoulder abduction R5 L4+": beside a grade that hangs on the R, the L4 is no segment but a side and a grade."""
    result = list(marks)
    for place, mark in enumerate(marks):
        grade = mark.text[1:] if mark.has("dermatome") and mark.text[:1] == "l" else ""
        if not grade.isdigit() or not (
            _right_grade(marks[max(0, place - 3) : place], tokens) or _right_grade(marks[place + 1 : place + 4], tokens)
        ):
            continue
        after = marks[place + 1] if place + 1 < len(marks) else None
        sign = after.text if after is not None and after.text in _JERK and tokens[after.start].glued else ""
        roles = (Role("number"), Role("side", key="left"))
        result[place] = replace(mark, roles=roles, number=Number(a=int(grade), a_sign=sign))
        if sign and after is not None:
            result[place + 1] = after.only("filler")
    return result


def _right_grade(near: Sequence[Mark], tokens: Sequence[Token]) -> bool:
    """An R with a number hanging on it, and nothing beside the two but a comma or an "and"."""
    said = [mark for mark in near if not mark.has("comma", "conj")]
    for one, two in itertools.pairwise(said):
        if one.text == "r" and two.number is not None and tokens[two.start].glued and not two.number.op:
            return True
    return False


def _parted(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """ "R+ L-" is no "R + L": the plus hangs on the first side, or the second has its own sign."""
    result: list[Mark] = []
    for mark in marks:
        said = tuple(token.lower for token in tokens[mark.start : mark.end])
        plus = tokens[mark.start + 1] if said in _TWO_SIDES else None
        if plus is None or not ((plus.glued and not tokens[mark.start + 2].glued) or _sign_at(mark.end, tokens)):
            result.append(mark)
            continue
        for at, word in enumerate(said, start=mark.start):
            role = Role("side", key=_SIDES[word]) if word in _SIDES else Role("conj")
            result.append(Mark(at, at + 1, (role,), text=word))
    return result


def _sign_at(place: int, tokens: Sequence[Token]) -> bool:
    """A plus, or a minus that ends its phrase, stands there, in the same sentence."""
    if place >= len(tokens) or tokens[place - 1].ends_sentence:
        return False
    return tokens[place].lower == "+" or (tokens[place].lower == "-" and _ends_phrase(place, tokens))


def _is_sign(mark: Mark, tokens: Sequence[Token]) -> bool:
    """Hung on its side, or with nothing behind it that it could join; a dash between words is none."""
    return tokens[mark.start].glued or _ends_phrase(mark.start, tokens) or mark.text == "+"


def _ends_phrase(place: int, tokens: Sequence[Token]) -> bool:
    after = tokens[place + 1] if place + 1 < len(tokens) and not tokens[place].ends_sentence else None
    return after is None or after.lower in {",", ";", ".", ")", *_SIDES}


def _told(mark: Mark, named: Sequence[Item], lexicon: Lexicon) -> Mark:
    """What the sign says of what was named: a jerk's grade, or that the sign was there or not."""
    if any(item.scale == "tendon_reflex" for item in named):
        return replace(mark, roles=(Role("number"),), number=_JERK[mark.text])
    if all(item.kind in ("presence", "choice") or item.negated == "normal" for item in named):
        return replace(mark, roles=tuple(lexicon.meanings("positive" if mark.text == "+" else "negative")))
    return mark
