"""What is said of a limb by its own name: a grade ("right leg, five throughout"), that it is weak, or spastic."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.reading.marks import Mark
from dictate.reading.nodes import LIMBS, limb_of
from dictate.reading.phrases.bare import WHOLE_SIDES

_WEAK = ("weak", "weaker", "plegic", "paretic", "paralysed", "paralyzed")
_STRONG = (*_WEAK, "weakness", "strong")
_BETWEEN = frozenset({"is", "are", "was", "were", "not", "and", "nor", "the", ","})
_SAID_OF = frozenset({"is", "are", "was", "were", "s", "very", "both", ":"})
_BEHIND = frozenset({"and", "in", "with", "on"})
_TELLERS = frozenset({"he", "she", "they", "patient", "the patient"})
_ENDS = ("comma", "conj", "semicolon", "stop")
_BRISKEST = 4  # grade of a jerk
_SINCE = frozenset({"for", "since", "when", "she", "he"})


def is_called_weak(marks: Sequence[Mark], place: int) -> bool:
    """ "The right leg is weak", "the right arm and leg are weak": how strong it was, whatever was told before.

    Not how long it has been so ("left arm weak for two days"), nor what the patient says of it.
    """
    parts = [part for mark in marks[place + 1 : place + 9] for part in (mark.inner or (mark,))]
    told = next((at for at, part in enumerate(parts) if not _leads_on(part)), len(parts))
    if told == len(parts):
        return False
    number = parts[told].number
    graded = number is not None and parts[told].is_grade and not (number.a_sign == "+" and number.a < _BRISKEST)
    if graded and any(part.text in ("are", "were") for part in parts[:told]):
        return True  # "the right arm and the left leg are four"
    if parts[told].text not in _WEAK:
        return False
    behind = parts[told + 1 : told + 4]
    return not any(part.text.partition(" ")[0] in _SINCE or part.has("time_span", "minutes", "talk") for part in behind)


def weak_side(marks: Sequence[Mark], place: int) -> bool:
    """ "The right side is weak", "she is weak on the left": of a side as a whole, and nothing else is named."""
    if marks[place].text not in _WEAK or not place:
        return False
    clause = itertools.takewhile(lambda mark: not mark.has(*_ENDS), reversed(marks[:place]))
    before = [mark for mark in clause if mark.text not in _BETWEEN and mark.text != "very"]
    after = marks[place + 1 : place + 2]
    whole = bool(before) and before[0].text in WHOLE_SIDES
    placed = bool(after) and after[0].has("side") and not after[0].has("site")
    person = bool(before) and before[0].text in _TELLERS and placed
    return (whole or person) and not any(mark.has("item", "sign", "context") for mark in before[1:])


def begins_with_touch(marks: Sequence[Mark], place: int) -> bool:
    """ "Touch is reduced in the left hand", "neither touch nor pin": what was examined, and no "touch of"."""
    if marks[place].text != "touch":
        return False
    before = marks[place - 1] if place else None
    opens = before is None or before.has("comma", "semicolon", "stop", "conj", "colon", "negation", "contrast")
    after = marks[place + 1].text if place + 1 < len(marks) else ""
    return opens and after not in ("of", "the", "his", "her", "my")


def is_of_limb(marks: Sequence[Mark], place: int, name: str = "", *, part: bool = False) -> bool:
    """ "Both legs are spastic", "the right arm is flaccid": said of a limb in front of it and of nothing behind it.

    name: the item of which it is said, whose own sites will do as well ("the left deltoid is wasted").
    part: any part of the body will do ("the calves are tender").
    """
    before = [part for mark in marks[:place] for part in ((not mark.has("site") and mark.inner) or (mark,))]
    limb = next((part for part in reversed(before) if part.text not in _SAID_OF and not part.has("severity")), None)
    role = limb.role("site", "") if limb is not None else None
    own = limb is not None and bool(name) and limb.role("site", name) is not None
    if not own and (role is None or not (part or limb_of(role.key) in LIMBS)):
        return False
    after = next((mark for mark in marks[place + 1 :] if not mark.has("severity")), None)
    return after is None or after.text in _BEHIND or after.has("comma", "stop", "semicolon", "side", "contrast")


def _leads_on(mark: Mark) -> bool:
    return mark.text in _BETWEEN or mark.has("severity", "side") or mark.role("site", "") is not None


def is_graded(marks: Sequence[Mark], place: int) -> bool:
    """Whether a grade, or a word that is said of strength, stands beside the name of the limb at that place."""
    set_off = place + 2 < len(marks) and marks[place + 1].has("comma") and marks[place + 2].number is not None
    for near in marks[place + 1 + set_off : place + 5]:  # "right leg, five throughout"
        if near.has("minutes", "time_span", "except"):
            break  # "left arm, standing, one minute, 118/76": a time is no grade
        if near.number is not None:
            return near.is_grade and not _has_unit(marks, near)
        if near.has("grade", "not_examined", "not_assessable"):
            return True
        if near.role("normal", "") or near.text in _STRONG:
            return True
        if marks[place].text == "jerks" and near.role("abnormal", ""):
            return True  # "jerks brisk", and no word of a limb
        if any(r.kind in ("item", "sign", "alone", "value", "abnormal") for r in near.roles) or near.has(
            "comma", "stop"
        ):
            break
    before = itertools.takewhile(lambda mark: not mark.has("comma"), reversed(marks[max(0, place - 3) : place]))
    return any(mark.is_grade for mark in before)  # "right leg five, left leg hip flexion four": of the leg before


def _has_unit(marks: Sequence[Mark], number: Mark) -> bool:
    """ "Left arm 3 cm shorter": a length is no grade."""
    after = next((mark for mark in marks if mark.start == number.end), None)
    return after is not None and after.has("unit")
