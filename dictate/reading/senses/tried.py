"""Tests named by what was done: "walking he is unsteady", "big toe up four", "nothing on the right"."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.reading.marks import Mark

_WASTED = frozenset({"wasted", "atrophic"})
_ELSEWHERE = frozenset({"anywhere else", "anywhere", "elsewhere", "else", "anything else"})
_TRIED = frozenset({"walking", "neck"})
_TOLD = ("normal", "abnormal", "not_examined", "not_assessable")
_TOES = frozenset("toe toes big great hallux".split())
_TOES_MOVED = {"up": "strength_extensor_hallucis_longus", "down": "strength_toe_flexors"}


def by_what_was_tried(marks: Sequence[Mark], place: int) -> Mark | None:
    """The mark as the muscle or the finding that it stands for here; None where it is as it says."""
    if muscle := _toe_muscle(marks, place):
        return marks[place].only("item", muscle)
    if marks[place].text == "nothing" and _is_of_other_side(marks, place):
        return marks[place].only("absent")
    if marks[place].has("not_examined") and any(mark.text in _ELSEWHERE for mark in marks[place + 1 : place + 3]):
        return marks[place].only("word")  # "normal in the hands and feet, I didn't check anywhere else"
    return None


def is_tried(marks: Sequence[Mark], place: int, active: Sequence[str]) -> bool:
    """ "On walking he is unsteady", "Neck not examined": what opens the sentence is what was tried.

    active: items spoken of, which it may be a place of ("Tone: arms normal. Neck normal.").
    """
    if marks[place].text in _WASTED:  # "both hands are wasted": of muscles, whatever was told before
        return any(mark.role("site", "") is not None for mark in marks[max(0, place - 3) : place])
    opens = marks[place].text in _TRIED and all(mark.has("filler") for mark in marks[:place])
    of_these = any(role.kind == "site" and role.item in active for role in marks[place].roles)
    told = [mark for mark in marks[place + 1 : place + 4] if not mark.has("filler")][:1]
    return opens and not of_these and any(mark.has(*_TOLD) for mark in told)


def _toe_muscle(marks: Sequence[Mark], place: int) -> str:
    """ "Big toe up, that's four on the right": a plantar response has no grade, so it is the muscle that was tried."""
    words = marks[place].text.split()
    if words[-1] not in _TOES_MOVED or words[0] not in _TOES or not marks[place].has("alone", "value"):
        return ""
    behind = (mark for mark in marks[place + 1 : place + 5] if not mark.has("filler", "comma", "colon"))
    told = next(behind, None)
    return _TOES_MOVED[words[-1]] if told is not None and told.number is not None and not told.number.op else ""


def _is_of_other_side(marks: Sequence[Mark], place: int) -> bool:
    """ "A bruit on the left, nothing on the right": none, where one side was told before it and nothing is graded."""
    side = marks[place + 1].role("side") if place + 1 < len(marks) else None
    behind = marks[place + 2] if place + 2 < len(marks) else None
    parted = place > 0 and marks[place - 1].has("comma", "conj", "contrast")
    if side is None or not parted or not (behind is None or behind.has("comma", "stop", "conj", "semicolon")):
        return False
    before = [role.key for mark in marks[:place] for role in mark.roles if role.kind == "side"]
    graded = any(one.number is not None and not two.has("unit") for one, two in itertools.pairwise(marks[:place]))
    return before[-1:] in (["left"], ["right"]) and before[-1] != side.key and not graded
