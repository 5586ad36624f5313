"""Plus and minus behind a side: "Hoffmann R+ L-", "ankle jerks R + L ++"."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.tokens import Token

_SIDES = {"r": "right", "l": "left"}
_TWO_SIDES = (("r", "+", "l"), ("l", "+", "r"))  # also written for both sides
_JERKS = "tendon_reflex"
_STRENGTH = "mrc"
_BARELY = "+ / -"
_NAMING = ("item", "sign", "context")
_JERK = {"+": Number(a=1, a_sign="+"), "-": Number(a=0)}


def signs_of_sides(marks: Sequence[Mark], tokens: Sequence[Token], lexicon: Lexicon) -> list[Mark]:
    """The marks, with the plus and minus beside a side as what was found there, where a sign or a jerk was named."""
    result: list[Mark] = []
    named: tuple[Item, ...] = ()
    led = False  # "+ R, - L": signs in front of their sides
    link = (Role("conj"),)
    joined = [
        replace(mark, roles=link, text="and") if _joins_places(marks, i, tokens) else mark
        for i, mark in enumerate(marks)
    ]
    parted = _rated(levels_as_sides(_parted(joined, tokens), tokens), tokens, lexicon)
    for place, mark in enumerate(parted):
        if place and tokens[mark.start - 1].ends_sentence:
            named, led = (), False
        sided = (
            mark.text in _JERK
            and bool(result)
            and (
                (result[-1].has("side") and _is_sign(mark, tokens))
                or (result[-1].has("site") and mark.text in _JERK and _ends_phrase(mark.start, tokens, sides=()))
            )
        )
        strength = mark.text in _JERK and bool(named) and all(item.scale == _STRENGTH for item in named)
        if mark.text in _JERK and named and not mark.number and not strength:
            before = [one for one in result[-2:] if not one.has("colon", "comma")]
            leads = (
                bool(before) and before[-1].has("item", "sign") and mark.text == "+" and not tokens[mark.start].glued
            )
            led = _is_side(parted[place + 1 : place + 2]) and (led or leads)
            if _of_both(parted[place : place + 3], tokens, named):
                parted[place + 1] = replace(parted[place + 1], roles=(Role("side", key="both"),))
                parted[place + 2] = parted[place + 2].only("filler")
                sided = True
            mark = _told(mark, named, lexicon) if led or sided else mark
        elif strength:
            mark = mark.only("word")  # "medial ham -   +": no strength is there or not
        elif mark.text == _BARELY and named and all(item.scale != _JERKS for item in named):
            mark = mark.only("word")  # barely there, or right and left: of a sign nobody knows which
        elif not mark.has("side") and not (led and mark.has("site")):  # "R" is short for other things too
            names = [lexicon.items[role.item] for role in mark.roles if role.kind in _NAMING and role.item]
            named = tuple(names) or named
        result.append(mark)
    return result


def _rated(marks: Sequence[Mark], tokens: Sequence[Token], lexicon: Lexicon) -> list[Mark]:
    """ "Rigidity: Rt ++, Lt +. Neck +": behind a word for what was wrong a plus says how much of it, on its line."""
    if not any(mark.text == "+" for mark in marks):
        return list(marks)
    result: list[Mark] = []
    named: frozenset[str] = frozenset()
    wrong = False
    for mark in marks:
        if result and tokens[mark.start - 1].ends_line:
            named, wrong = frozenset(), False
        names = {role.item for role in mark.roles if role.kind in ("item", "sign") and not mark.has("site")}
        kinds = {lexicon.items[name].kind for name in names if lexicon.items[name].sited}
        if names and not names & named:
            named, wrong = frozenset(names if kinds == {"normality"} else ()), False
        wrong = wrong or any(role.kind in ("abnormal", "value") and role.item in named for role in mark.roles)
        if mark.text == "+" and wrong and _ends_phrase(mark.start, tokens):
            mark = replace(mark, roles=(Role("number"),), number=_JERK["+"])
        result.append(mark)
    return result


def _of_both(three: Sequence[Mark], tokens: Sequence[Token], named: Sequence[Item]) -> bool:
    """ "Corneals +/+", "Hoffmann -/-": the same of a sign on both sides; of jerks it is a grade."""
    if len(three) < 3 or three[1].text != "/" or three[2].text != three[0].text:
        return False
    glued = tokens[three[1].start].glued and tokens[three[2].start].glued
    return glued and all(item.scale != _JERKS and item.sided != "never" for item in named)


def _joins_places(marks: Sequence[Mark], place: int, tokens: Sequence[Token]) -> bool:
    """ "Wasting both hands + both feet": a plus with a place on either side is an "and"."""
    if marks[place].text != "+" or not 0 < place < len(marks) - 1 or tokens[marks[place].start].glued:
        return False
    if tokens[marks[place].start - 1].ends_sentence or tokens[marks[place].start].ends_sentence:
        return False
    before, behind = marks[place - 1], marks[place + 1 : place + 4]
    words = 1 if _is_place(behind[0]) else 2 if behind[0].has("side") and any(map(_is_place, behind[1:2])) else 0
    signed = any(mark.text[:1] in _JERK for mark in behind[words : words + 1])  # "R ankle + L ankle -"
    return _is_place(before) and words > 0 and not signed


def _is_place(mark: Mark) -> bool:
    return mark.has("site") or (bool(mark.inner) and mark.inner[-1].has("site"))


def _is_side(after: Sequence[Mark]) -> bool:
    first = (after[0].inner or after)[0] if after else None  # "R wrist" may be one mark
    return first is not None and first.text in ("r", "l", "rt", "lt", "right", "left")


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


def _ends_phrase(place: int, tokens: Sequence[Token], *, sides: Collection[str] = tuple(_SIDES)) -> bool:
    after = tokens[place + 1] if place + 1 < len(tokens) and not tokens[place].ends_sentence else None
    return after is None or after.lower in {",", ";", ".", ")", *sides}


def _told(mark: Mark, named: Sequence[Item], lexicon: Lexicon) -> Mark:
    """What the sign says of what was named: a jerk's grade, or that the sign was there or not."""
    if any(item.scale == _JERKS for item in named):
        return replace(mark, roles=(Role("number"),), number=_JERK[mark.text])
    if all(item.kind in ("presence", "choice") or item.negated == "normal" for item in named):
        return replace(mark, roles=tuple(lexicon.meanings("positive" if mark.text == "+" else "negative")))
    return mark
