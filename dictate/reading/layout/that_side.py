""" "On that side", "in the same foot": the side that was said last, where only one was."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

_POINTING = frozenset({"that", "this", "same", "the same", "that same"})
_REACH = 2  # sentences back in which the side is looked for
_VERBS = frozenset({"is", "was", "are", "were"})
_ONE = frozenset({"left", "right"})


def with_that_side(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """The marks, with words that point back to a side as that side.

    The sentence that the side was said in must name no other: "brisker on the left than on the right. On that side,
    ..." stays as it is.
    """
    result: list[Mark] = []
    for place, mark in enumerate(marks):
        if mark.has("same_side"):
            side = _said_last(result, tokens)
            told = Mark(mark.start, mark.end, (Role("side", key=side),), text=f"on the {side}")
            result.append(told if side else mark.only("word"))
            continue
        if mark.text.split()[:1] == ["there"] and _is_place(marks, place) and (there := _place_said_last(result)):
            result.append(Mark(mark.start, mark.end, there, text=mark.text))
            continue
        pointed = place > 0 and marks[place - 1].text in _POINTING and mark.role("site", "") is not None
        if pointed and (side := _said_last(result[:-1], tokens)):  # "in the same foot"
            result[-1] = Mark(result[-1].start, result[-1].end, (Role("side", key=side),), text=side)
        result.append(mark)
    return result


def _said_last(marks: Sequence[Mark], tokens: Sequence[Token]) -> str:
    """Left or right, where it is the one side of the last sentence with a side; else empty."""
    found: set[str] = set()
    ends = 0
    for mark in reversed(marks):
        if tokens[mark.end - 1].ends_sentence:
            ends += 1
            if found or ends > _REACH:
                break
        parts = mark.inner or (mark,)
        found |= {role.key for part in parts for role in part.roles if role.kind == "side" and not role.item}
    return next(iter(found)) if len(found) == 1 and found <= _ONE else ""


def _is_place(marks: Sequence[Mark], place: int) -> bool:
    """ "Power there is four": behind a name and in front of a verb."""
    named = place > 0 and marks[place - 1].has("item", "context")
    verb = " " in marks[place].text or (place + 1 < len(marks) and marks[place + 1].text in _VERBS)
    return named and verb


def _place_said_last(marks: Sequence[Mark]) -> tuple[Role, ...]:
    """The limb last spoken of with the one side in front of it; empty where it had none."""
    parts = [part for mark in marks for part in mark.inner or (mark,)]
    for side, site in zip(reversed(parts[:-1]), reversed(parts[1:]), strict=True):
        if site.role("site", "") is not None and site.role("item") is None:
            one = side.role("side")
            return (one, *(r for r in site.roles if r.kind == "site")) if one and one.key in _ONE else ()
    return ()
