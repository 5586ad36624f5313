"""Names of joint and movement: shortened ("elb flexn"), without the joint, or a joint that may be a jerk ("knee 5")."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Mapping, Sequence

from dictate.grammar import Item, Scale
from dictate.reading.marks import Mark, Role
from dictate.reading.phrases.kinds import read_number
from dictate.reading.tokens import Token

_ARTICLES = frozenset({"the", "a", "his", "her"})
_EXTENTS = frozenset({"below", "above", "beneath"})
_PASSED = ("site", "side", "conj", "filler", "severity")
_JERKY = frozenset({"brisk", "brisker"})
_STRENGTH = frozenset({"strong", "full"})
_LISTED = 3  # a joint, its number and a comma
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
        title = place > 1 and tokens[place - 1].lower == ":" and tokens[place - 2].lower.removesuffix("s")
        if title in _JOINTS and token.lower in _MOVEMENTS:
            joint = str(title)  # "Hips: flexion 2, extension 2"
        turned = " ".join(one.lower for one in tokens[place : place + 2])
        if token.lower in _MOVEMENTS and before.removesuffix("s") in _JOINTS:
            joint = before.removesuffix("s")  # "fingers flexion 1, extension 0"
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


def goes_on_by_place(marks: Sequence[Mark], place: int, active: Sequence[str], items: Mapping[str, Item]) -> bool:
    """ "Power: hip 4, knee 4", "arms 5, knees 4": behind the strength of another part; "2+" is of jerks."""
    regions = bool(active) and all(items[name].blanket and items[name].limb for name in active)
    whole = bool(active) and all(items[name].blanket and items[name].bare_value for name in active)
    before = [mark for mark in marks[:place] if not mark.has("side", "filler")][-_LISTED:]
    joint = len(before) == _LISTED and before[0].has("site")
    number = next((mark.number for mark in marks[place + 1 : place + 3] if mark.number is not None), None)
    jerk = number is not None and number.a_sign == "+" and number.a < _BRISKEST
    return (regions or (whole and joint)) and goes_on_listing(marks[:place]) and not jerk


def goes_on_measuring(
    marks: Sequence[Mark], active: Sequence[str], items: Mapping[str, Item], scales: Mapping[str, Scale]
) -> bool:
    """ "Ashworth right arm 2. Left arm 1+.": numbers of what was just told by places, and no name but places."""
    numbers = [mark.number for mark in marks if mark.number is not None]
    if not (active and numbers and all(items[name].sited and not items[name].blanket for name in active)):
        return False
    item, scale = items[active[0]], scales.get(items[active[0]].scale)
    known = scale is None or all(number.first in scale.grades and number.b is None for number in numbers)
    read = item.kind != "presence" and all(read_number(item, number, "", scale) is not None for number in numbers)
    return read and known and not any(mark.has("item", "sign", "heading") and not mark.has("site") for mark in marks)


def no_jerk(after: Sequence[Mark]) -> bool:
    """A grade behind a joint that no jerk can have: 5, 4 minus, 3 of 5."""
    number = next((mark.number for mark in after if mark.number is not None), None)
    return number is not None and (number.a > _BRISKEST or number.a_sign == "-" or number.b not in (None, _BRISKEST))


def says_jerk(marks: Sequence[Mark], place: int, items: Mapping[str, Item]) -> bool | None:
    """Whether the word behind the name, or its list, is one of jerks ("knees brisk") or of strength ("arms strong").

    None: neither, or the name is none of a jerk in any company.
    """
    if not may_be_jerk(marks[place], items):
        return None
    behind = (at for at in range(place + 1, len(marks)) if not marks[at].has(*_PASSED))
    at = next(behind, len(marks))
    named = any(mark.has("item", "sign", "context") for mark in marks[at + 1 : at + 2])  # "brisk reflexes"
    word = marks[at].text.removeprefix("very ").split()[0] if at < len(marks) and marks[at].text and not named else ""
    if word in _JERKY | _STRENGTH:
        return word in _JERKY
    return True if _listed_with_joints(marks, items) else None


def _listed_with_joints(marks: Sequence[Mark], items: Mapping[str, Item]) -> bool:
    """ "Biceps 2+, triceps 2+, knees 3+, ankles 2+": knees and ankles are no muscles, so neither are the others.

    Only where every number may be of a jerk and one has a plus, and nothing else in the sentence is named.
    """
    names = [at for at, mark in enumerate(marks) if mark.has("item", "sign", "context")]
    joints = [at for at in names if marks[at].text.removesuffix("s") in ("knee", "ankle")]
    if not joints or not all(may_be_jerk(marks[at], items) for at in names):
        return False
    numbers = [mark.number for mark in marks if mark.number is not None]
    plain = all(one.a < _BRISKEST and one.a_sign != "-" and one.b is None for one in numbers)
    return plain and any(one.a_sign == "+" for one in numbers)


def measured_from(marks: Sequence[Mark], place: int) -> bool:
    """ "Dull below the right knee": how far something reaches, and no jerk."""
    before = next((m for m in reversed(marks[:place]) if not m.has("side") and m.text not in _ARTICLES), None)
    return before is not None and before.text in _EXTENTS


def no_strength(marks: Sequence[Mark], place: int, active: Sequence[str], items: Mapping[str, Item]) -> bool:
    """ "Power: right arm 5. Left arm nil": nothing of what is graded there, and no jerks."""
    after = next((mark for mark in marks[place + 1 :] if not mark.has("filler", "colon", "comma")), None)
    graded = {items[name].scale for name in active}
    return after is not None and after.has("absent") and graded == {items["strength_all"].scale}


def absent_jerk(item: Item, marks: Sequence[Mark], place: int, component: str) -> bool:
    """ "Tone is floppy. Knees and ankles absent.": what is absent there, behind the motor system, are reflexes."""
    if item.scale != "tendon_reflex" or component != "motor" or not marks[place].has("site"):
        return False
    after = next((mark for mark in marks[place + 1 :] if not _of_list(mark)), None)
    return all(map(_of_list, marks[:place])) and after is not None and after.role("absent", "") is not None


def may_be_jerk(mark: Mark, items: Mapping[str, Item]) -> bool:
    """Whether it may name a jerk, or those of a limb, in the right company."""
    named = [items[role.item] for role in mark.roles if role.kind == "context"]
    return any(item.scale == "tendon_reflex" and (item.limb or not item.blanket) for item in named)


def told_already(links: Sequence[Mark], items: Mapping[str, Item]) -> bool:
    """ "Tone increased, knee 3+, ankle 3+": how it was stands right behind the name, and jerks follow."""
    said = [mark for mark in links if not mark.has("filler", "side")]
    plain = all(mark.number is None or mark.number.a_sign == "+" for mark in links)
    jerks = all(may_be_jerk(mark, items) for mark in links if mark.has("site") and not mark.has("side"))
    return said[0].has("normal", "abnormal") and said[0].number is None and plain and jerks


def _of_list(mark: Mark) -> bool:
    """A body part or what links two of them."""
    return mark.has("site", "side", "conj", "comma", "filler")


def paired_with(marks: Sequence[Mark], place: int, near: Mark) -> bool:
    """ "Flex and extend the knee": two short names say nothing of each other."""
    link = marks[place + 1] if near.start > marks[place].start else marks[place - 1]
    return (
        link.text == "and" and near.has("context") and abs(near.start - marks[place].start) == 1 + link.end - link.start
    )
