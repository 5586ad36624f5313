"""Two sides said together with two values: "four on the right and left five", "right and left four and five"."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

_FAR = 7  # marks in which two numbers and their units stand


def part_sides(marks: list[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """The marks, with "right and left" taken apart where each side has a value of its own."""
    dealt = list(marks)
    for place, mark in enumerate(marks):
        if _names_both(mark):
            numbers = _two_numbers(marks, place, tokens)
            order = ("right", "left") if mark.text.index("right") < mark.text.index("left") else ("left", "right")
            for at, side in zip(numbers, order, strict=False):
                dealt[at] = replace(marks[at], roles=(*marks[at].roles, Role("side", key=side)))
            if numbers:
                dealt[place] = replace(mark, roles=(Role("filler"),))
    return list(_between_values(dealt, tokens))


def _names_both(mark: Mark) -> bool:
    return mark.role("side") is not None and {"left", "and", "right"} <= set(mark.text.split())


def _two_numbers(marks: list[Mark], place: int, tokens: Sequence[Token]) -> tuple[int, ...]:
    """Places of the two numbers that "right and left" deals out, behind it or before it; empty: there are not two."""
    ahead = _clause(marks[place + 1 : place + 1 + _FAR], tokens)
    until = place - 1 if place and marks[place - 1].has("comma") else place  # "five and four plus, right and left"
    back = _clause(marks[max(0, until - _FAR) : until], tokens, ends=True)
    for said, first in ((ahead, place + 1), (back, until - len(back))):
        numbers = [first + at for at, mark in enumerate(said) if mark.number is not None and mark.has("number")]
        if len(numbers) != 2:
            continue
        one, two = numbers
        link = [mark.text for mark in marks[one + 1 : two] if not mark.has("unit")]
        beyond = said[two - first + 1 :] if said is ahead else said[: one - first]
        if link == ["and"] and not any(mark.has("side", "number") for mark in beyond):
            return one, two
    return ()


def _clause(marks: list[Mark], tokens: Sequence[Token], *, ends: bool = False) -> list[Mark]:
    """The marks up to the next break, from the first on, or from the last back."""
    found: list[Mark] = []
    for mark in reversed(marks) if ends else marks:
        if mark.has("comma", "semicolon", "stop", "contrast", "colon"):
            break
        if ends and tokens[mark.end - 1].ends_sentence:
            break
        found.append(mark)
        if not ends and tokens[mark.end - 1].ends_sentence:
            break
    return found[::-1] if ends else found


def _between_values(marks: list[Mark], tokens: Sequence[Token]) -> Iterable[Mark]:
    """ "Four on the right and left five": between two values "right and left" is two sides, each with its own value."""
    for place, mark in enumerate(marks):
        inside = 0 < place < len(marks) - 1 and not tokens[mark.end - 1].ends_sentence
        if inside and _names_both(mark) and _is_value(marks, place - 1) and _is_value(marks, place + 1):
            link = mark.start + mark.text.split().index("and")
            for start, end in ((mark.start, link), (link, link + 1), (link + 1, mark.end)):
                said = [token.lower for token in tokens[start:end]]
                role = Role("conj") if start == link else Role("side", key="left" if "left" in said else "right")
                yield Mark(start, end, (role,), text=" ".join(said))
            continue
        yield mark


def _is_value(marks: list[Mark], place: int) -> bool:
    """A number, its unit, or a word for what was found that nothing but a break follows."""
    mark = marks[place]
    closed = place + 1 == len(marks) or marks[place + 1].has("side", "comma", "semicolon", "stop", "conj", "contrast")
    return mark.number is not None or (mark.has("unit", "normal", "absent", "present", "abnormal", "grade") and closed)
