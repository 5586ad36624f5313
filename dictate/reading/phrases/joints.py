"""Names of joint and movement: shortened ("elb flexn"), without the joint, or a joint that may be a jerk ("knee 5")."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Mapping, Sequence

from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

_ARTICLES = frozenset({"the", "a", "his", "her"})
_EXTENTS = frozenset({"below", "above", "beneath"})
_BRISKEST = 4  # grade of a jerk
_JOINTS = frozenset("hip knee ankle wrist elbow shoulder neck finger thumb toe".split())
_TURNS = frozenset({"external rotation", "internal rotation"})
_MOVEMENTS = frozenset(
    "flexion extension abduction adduction flexors extensors abductors adductors inversion eversion".split()
)


def shared_joints(tokens: Sequence[Token], spans: Sequence[Mark], meanings: Callable[[str], set[Role]]) -> list[Mark]:
    """A movement alone, where the same sentence named a joint with another movement before, as that of the joint.

    meanings: everything that a phrase can be.
    """
    found: list[Mark] = []
    named = {place for mark in spans if mark.has("item", "sign") for place in range(mark.start, mark.end)}
    joint = ""
    for place, token in enumerate(tokens):
        before = tokens[place - 1].lower if place and not tokens[place - 1].ends_sentence else ""
        turned = " ".join(one.lower for one in tokens[place : place + 2])
        if token.lower in _MOVEMENTS and before in _JOINTS:
            joint = before
        elif turned in _TURNS and joint and place not in named:
            roles = tuple(r for r in meanings(f"{joint} {turned}") if r.kind == "item")
            found.extend([Mark(place, place + 2, roles)] if roles else [])
        elif token.lower in _MOVEMENTS and joint and place not in named:
            roles = tuple(r for r in meanings(f"{joint} {token.lower}") if r.kind == "item")
            if roles:
                found.append(Mark(place, place + 1, roles))
        if token.ends_sentence:
            joint = ""
    return found


def shortened(terms: Sequence[str], ways: Mapping[str, Sequence[str]]) -> Iterator[str]:
    """Those that name one joint and one movement, each of the two words in full or in any of its short ways."""
    for term in terms:
        joint, _, movement = term.partition(" ")
        if joint in _JOINTS and movement in ways:
            parts = itertools.product((joint, *ways.get(joint, ())), (movement, *ways[movement]))
            yield from (" ".join(one) for one in parts)


def goes_on_listing(before: Sequence[Mark]) -> bool:
    """ "Hips 4, knees ...": a number and a comma in front of the joint."""
    links = [mark for mark in before if not mark.has("side", "filler")][-2:]
    return [mark.number is not None for mark in links] == [True, False] and links[-1].has("comma", "conj")


def no_jerk(after: Sequence[Mark]) -> bool:
    """A grade behind a joint that no jerk can have: 5, 4 minus, 3 of 5."""
    number = next((mark.number for mark in after if mark.number is not None), None)
    return number is not None and (number.a > _BRISKEST or number.a_sign == "-" or number.b not in (None, _BRISKEST))


def measured_from(marks: Sequence[Mark], place: int) -> bool:
    """ "Dull below the right knee": how far something reaches, and no jerk."""
    before = next((m for m in reversed(marks[:place]) if not m.has("side") and m.text not in _ARTICLES), None)
    return before is not None and before.text in _EXTENTS


def paired_with(marks: Sequence[Mark], place: int, near: Mark) -> bool:
    """ "Flex and extend the knee": two short names say nothing of each other."""
    link = marks[place + 1] if near.start > marks[place].start else marks[place - 1]
    return (
        link.text == "and" and near.has("context") and abs(near.start - marks[place].start) == 1 + link.end - link.start
    )
