"""Parts of the coma scale told over several sentences, without its name: "Eyes three. Verbal four. Motor six." """

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.nodes import Node

_GROUP = "coma_scale"
_TOTAL = "gcs_total"
_ORDER = ("gcs_eye", "gcs_verbal", "gcs_motor")
_PARTS = frozenset(_ORDER)
_VERBAL = {"v one": 1, "v two": 2, "v three": 3}
_LETTERED = 8  # marks that they take with a comma between
_RESPONSE, _LOCALIZES = "motor_response", "localizes"
_FOUR = ("four_eye", "four_motor", "four_brainstem", "four_respiration")
_NOT = frozenset({"not", "t", "no", "never"})
_FOUR_LONG = 12  # marks that the four parts take, with their points and what stands between
_NEAR = 16  # marks from one part to the next
_TOTAL_NEAR = 30  # marks from the scale's name to "total thirteen"
_BETWEEN = ("filler", "colon", "comma")
_SO = frozenset({"so", "that", "that's", "which", "is", "and", "so that's"})
_BEHIND = 7  # marks from a part to its points
_NAMED = ("context", "item")
_WORDED = ("value", "qualifier")


def name_parts(marks: Sequence[Mark], items: Mapping[str, Item]) -> list[Mark]:
    """The marks, where eye, verbal and motor each stand with their points near each other, as names of these parts.

    A part may be told by its words ("obeys, six"); and each by words alone, which give no points.
    """
    marks = _lettered(_four_parts(marks, items), items)
    told = [(place, name) for place in range(len(marks)) if (name := _part(marks, place, items))]
    told = [one for at, one in enumerate(told) if not at or not _is_of(marks, told[at - 1][0], one[0])]
    result = list(marks)
    for start in range(len(told)):
        run = [told[start]]
        for place, name in told[start + 1 :]:
            if name == run[-1][1] and place - run[-1][0] < _BEHIND:
                continue  # "verbal response is confused, so four"
            if place - run[-1][0] > _NEAR or name in {one for _, one in run}:
                break
            run.append((place, name))
        if not {name for _, name in run} >= _PARTS:
            continue
        for place, name in run:
            result[place] = replace(marks[place], roles=(Role("item", name),))
    return _totals(_worded(result, items), items)


def _four_parts(marks: Sequence[Mark], items: Mapping[str, Item]) -> list[Mark]:
    """ "FOUR E2 M3 B4 R1": where all four stand side by side with their points, they are those of that score."""
    said = {mark.text for mark in marks}
    if not said.isdisjoint(("four score", "four score e")):  # "M1 B2": no 1b of the stroke scale
        marks = [part for mark in marks for part in (mark.inner if len(mark.text) == len("1 b") else ()) or (mark,)]
    result = list(marks)
    for place, mark in enumerate(marks):
        if mark.text[:1] != "e" and not mark.text.startswith("four score"):
            continue
        letters = [at for at in range(place, min(place + _FOUR_LONG, len(marks))) if marks[at].number is None]
        named = [at for at in letters if not marks[at].has(*_BETWEEN)][: len(_FOUR)]
        told = [{role.item for role in marks[at].roles if role.kind in ("context", "item")} for at in named]
        if len(told) < len(_FOUR) or named[0] != place or not all(n in t for n, t in zip(_FOUR, told, strict=True)):
            continue
        if not all(at + 1 < len(marks) and marks[at + 1].number is not None for at in named):
            continue
        for name, at in zip(_FOUR, named, strict=True):
            result[at] = replace(marks[at], roles=(Role("item", name),))
        if place and marks[place - 1].text == "four":
            result[place - 1] = marks[place - 1].only("filler")
    return result


def _lettered(marks: Sequence[Mark], items: Mapping[str, Item]) -> list[Mark]:
    """ "E three V five M six" as a recogniser writes it, without its capitals: the three letters with points behind."""
    marks = [part for at, mark in enumerate(marks) for part in _verbal_letter(mark, marks[max(0, at - 3) : at])]
    result = list(marks)
    for start, mark in enumerate(marks):
        if mark.number is not None or mark.text.split()[-1:] != ["e"]:
            continue
        said = [at for at in range(start, min(start + _LETTERED, len(marks))) if not marks[at].has("comma", "conj")]
        letters, points = said[:6:2], said[1:6:2]
        if [marks[at].text.split()[-1:] for at in letters] != [["e"], ["v"], ["m"]] or len(points) < len(_ORDER):
            continue
        numbers = [marks[at].number for at in points]
        if all(n and not n.op and n.a <= (items[name].of or 0) for n, name in zip(numbers, _ORDER, strict=True)):
            for at, name in zip(letters, _ORDER, strict=True):
                result[at] = replace(marks[at], roles=(Role("item", name),))
    return result


def _verbal_letter(mark: Mark, before: Sequence[Mark]) -> Sequence[Mark]:
    """ "E two V one M five": behind the eyes no division of the trigeminal nerve."""
    number = _VERBAL.get(mark.text)
    eyes = [one for one in before if not one.has("comma", "conj")][-2:]
    if number is None or len(eyes) < 2 or eyes[0].text.split()[-1:] != ["e"] or eyes[1].number is None:
        return (mark,)
    letter = Mark(mark.start, mark.start + 1, (Role("word"),), None, "v")
    return (letter, Mark(mark.start + 1, mark.end, (Role("number"),), Number(a=number), mark.text[2:]))


def name_sums(nodes: list[Node]) -> None:
    """ "E three V four M five, so twelve": the number behind the last part is their sum, where it is that."""
    parts = [i for i, n in enumerate(nodes) if n.main == "item" and {*n.candidates} <= _PARTS]
    clause = itertools.takewhile(
        lambda n: n.main != "item", nodes[parts[-1] + 1 :] if len(parts) >= len(_PARTS) else []
    )
    behind = [n for n in clause if n.main == "number"]
    held = sum(nodes[at].mark.number is not None for at in parts[-1:])  # the part's own, in one with its name
    told = [next((n for n in nodes[at + 1 - held : at + 4] if n.mark.number is not None), None) for at in parts[-3:]]
    points = [n.mark.number.a for n in told if n is not None and n.mark.number is not None]
    if len(behind) < 2 - held or len(points) != len(_PARTS):
        return
    total = behind[1 - held]
    if total.mark.number is not None and total.mark.number.a == sum(points):
        mark = replace(total.mark, end=total.mark.start, number=None, roles=(Role("item", _TOTAL),))
        nodes.insert(nodes.index(total), Node(mark, "item", candidates=(_TOTAL,)))


def _part(marks: Sequence[Mark], place: int, items: Mapping[str, Item]) -> str:
    """The part, or the total, that a mark with a number behind it may name; empty: none."""
    mark = marks[place]
    names = [role.item for role in mark.roles if role.kind in _NAMED and items[role.item].group == _GROUP]
    names = names or [role.item for role in mark.roles if role.kind in _WORDED and role.item in _PARTS - {"gcs_eye"}]
    if not names:
        return ""
    behind = marks[place + 1 : place + _BEHIND]
    after = next((one for one in behind if not (one.has(*_BETWEEN) or one.text in _SO or _tells(one, names[:1]))), None)
    number = after.number if after is not None else None
    if number is None or number.op or number.a_sign or number.a > (items[names[0]].of or 0):
        return ""
    return names[0]


def _is_of(marks: Sequence[Mark], part: int, place: int) -> bool:
    """ "Opens her eyes only to pain, 2": no number comes between, so that these words tell of the part before them."""
    named = any(role.kind in _NAMED and role.item in _PARTS for role in marks[place].roles)
    return not named and all(mark.number is None for mark in marks[part : place + 1])


def _tells(mark: Mark, names: Sequence[str]) -> bool:
    """A word for how the part was: "to voice", "confused"."""
    return any(role.kind in _WORDED and role.item in names for role in mark.roles)


def _worded(marks: Sequence[Mark], items: Mapping[str, Item]) -> list[Mark]:
    """ "Eyes open to voice. Verbally confused. Motor withdraws.": all three in words, without their points."""
    result = list(marks)
    named: dict[str, int] = {}
    for place, mark in enumerate(marks[:-1]):
        for role in mark.roles:
            if role.kind == "context" and role.item in _PARTS and _tells(marks[place + 1], [role.item]):
                named[role.item] = place
    if {*named} == _PARTS and max(named.values()) - min(named.values()) <= 2 * _NEAR:
        for name, place in named.items():
            motor = name == "gcs_motor" and "motor_response" in items  # its words are those of the response to pain
            result[place] = replace(marks[place], roles=(Role("item", "motor_response" if motor else name),))
    return result


def _totals(marks: Sequence[Mark], items: Mapping[str, Item]) -> list[Mark]:
    """ "GCS: ... Total 13": of the scale that was named, and of no other."""
    result, named = list(marks), -_TOTAL_NEAR
    for place, mark in enumerate(marks):
        scales = [items[role.item] for role in mark.roles if role.kind == "item" and items[role.item].kind == "score"]
        if scales:
            named = place if all(item.group == _GROUP for item in scales) else -_TOTAL_NEAR
        if place - named <= _TOTAL_NEAR and mark.text not in ("=", "equal") and _part(marks, place, items) == _TOTAL:
            result[place] = replace(mark, roles=(Role("item", _TOTAL),))
    return result


def name_responses(marks: Sequence[Mark], items: Mapping[str, Item]) -> list[Mark]:
    """ "To nail bed pressure flexion of the right arm, extension of the left": what each limb did, and no movement.

    In a sentence that names a painful stimulus, or more than one response to it.
    """
    marks = _with_limbs(marks)
    pained = _tells_of_pain(marks)
    marks = [_undone(marks, at, pained=pained) for at in range(len(marks))]
    if not pained:
        return marks
    keys = {words: key for key, value in items[_RESPONSE].values.items() for words in value.say}
    result: list[Mark] = []
    start = 0
    for place, mark in enumerate(marks):
        if mark.has("stop") or place + 1 == len(marks):
            result.extend(_responses(marks[start : place + 1], keys))
            start = place + 1
    return result


def _tells_of_pain(marks: Sequence[Mark]) -> bool:
    """Whether a painful stimulus, or a limb that localises, is named anywhere."""
    for mark in marks:
        for role in mark.roles:
            if role.item == _RESPONSE and (role.kind == "item" or (role.kind == "value" and _LOCALIZES in role.key)):
                return True
            if role.item == "gcs_motor" and role.kind == "qualifier" and mark.text[:3] == "to ":
                return True
    return False


def _responses(sentence: Sequence[Mark], keys: Mapping[str, str]) -> Sequence[Mark]:
    told = {at: key for at, mark in enumerate(sentence) if (key := _response(mark, keys))}
    stimuli = [at for at, mark in enumerate(sentence) if at not in told and _is_stimulus(mark)]
    localised = any(_LOCALIZES in key for key in told.values()) and len({*told.values()}) > 1
    if not told or not (stimuli or localised):
        return sentence
    result: list[Mark] = []
    for at, mark in enumerate(sentence):
        if at in told:
            words = 1 if mark.text not in keys else len(mark.text.split())
            roles = tuple(Role(kind, _RESPONSE, told[at]) for kind in ("value", "alone"))
            result.append(
                Mark(mark.start, mark.start + words, roles, None, mark.text.split()[0] if words == 1 else mark.text)
            )
            if mark.start + words < mark.end:  # "flexion of the", which is of the elbow elsewhere
                result.append(Mark(mark.start + words, mark.end, (Role("filler"),), None, "of the"))
        else:
            result.append(mark.only("filler") if at in stimuli else mark)
    return result


def _with_limbs(marks: Sequence[Mark]) -> list[Mark]:
    """ "Right arm flaccid, no response to pain": the limb that opens the clause before is that of a bare response."""
    result: list[Mark] = []
    limb: list[Mark] = []  # of the clause before, where it tells of no response itself
    start = 0
    for place, mark in enumerate(marks):
        if not mark.has("comma", "semicolon", "stop") and place + 1 < len(marks):
            continue
        clause = list(marks[start : place + 1])
        responds = any(role.item == _RESPONSE and role.kind == "alone" for one in clause for role in one.roles)
        placed = any(one.has("side", "site") for one in clause)
        result += [*(limb if responds and not placed else []), *clause]
        opening = [part for one in clause[:3] if one.text != "the" for part in one.inner or (one,)][:2]
        opens = len(opening) > 1 and opening[0].has("side") and opening[1].role("site", "") is not None
        limb = opening if opens and not responds and mark.has("comma") else []
        start = place + 1
    return result


def _undone(marks: Sequence[Mark], place: int, *, pained: bool) -> Mark:
    """ "Does not withdraw to pain": what it does instead was not said, and it is no better for that."""
    mark = marks[place]
    told = {role.kind for role in mark.roles if role.item == _RESPONSE and not role.key.endswith("obeys")}
    response = "alone" in told or (pained and "value" in told)
    denied = place > 0 and marks[place - 1].has("negation") and marks[place - 1].text.split()[-1] in _NOT
    return mark.only("word") if denied and response else mark


def _response(mark: Mark, keys: Mapping[str, str]) -> str:
    """What the limb did, by its key, or empty."""
    if mark.number is not None:
        return ""
    role = mark.role("value", _RESPONSE)
    if role is not None:
        return role.key
    first, _, rest = mark.text.partition(" ")
    return keys.get(first, "") if rest in ("of", "of the") else ""


def _is_stimulus(mark: Mark) -> bool:
    """ "Nail bed pressure", "to pain"."""
    pained = any(role.item == "gcs_motor" and role.kind == "qualifier" for role in mark.roles)
    return mark.role("item", _RESPONSE) is not None or (pained and mark.text.startswith("to "))
