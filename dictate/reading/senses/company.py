"""Words whose company shows that they say nothing of the examination, or something else: "okay" that opens."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import ITEM_VALUE_KINDS, LIMBS, limb_of
from dictate.reading.phrases.lexicon import is_preposition
from dictate.reading.senses.counting import counts_nothing
from dictate.reading.senses.little_words import in_other_words
from dictate.reading.senses.tried import by_what_was_tried

AGREED = frozenset({"okay", "ok", "all right", "alright"})
_OPENERS = frozenset({"good", "fine"})
_PERFECT = frozenset({"had", "has", "have", "having"})
_OWNED = frozenset({"his", "her", "their", "my", "it", "them"})
_BREAKS = ("comma", "semicolon", "stop", "colon")
_NEAR = 6  # marks
_RUN = 12  # marks without a break: nobody punctuates
_THINKING = frozenset("i we he she they initially first".split())
_PATIENT = frozenset({"he", "she"})
_HOW = frozenset({"fine", "good", "well", "ok", "okay", "all right", "alright", "perfectly fine", "quite well"})
_TAKEN = frozenset({"heart_rate", "blood_pressure"})

_PASSED = frozenset({"fine", "good", "normal", "well"})
_CALLED = ("call it", "call that")

_ALL_LIMBS = frozenset(f"all {which}{limbs}" for which in ("", "four ", "4 ") for limbs in ("limbs", "extremities"))
_MOVEMENTS = frozenset(
    {"tremor", "head", "head tremor", "in", "type", "direction", "titubation", "movement", "movements"}
)
_SAID = ("value", "normal", "abnormal")
_ARTICLES = frozenset({"the", "his", "her", "their", "a"})
_IS_THERE = frozenset({"is", "was", "are", "were", "present", "is present", "was present"})


def plain_word(marks: Sequence[Mark], place: int) -> Mark:
    """The mark, as a plain word where it opens a sentence ("Okay, sensory.") or is no number ("on one side")."""
    mark = marks[place]
    after = marks[place + 1].text if place + 1 < len(marks) else ""
    counted = counts_nothing(marks, place) or by_what_was_tried(marks, place)
    if counted is not None:
        return counted
    if not place and (_opens(marks) if mark.text in AGREED else mark.text in _OPENERS and after == ","):
        return mark.only("filler")
    called = mark.text.endswith(_CALLED) and mark.has("correction")
    if called and place and marks[place - 1].has("site", "side", "item"):
        return mark.only("filler")  # "in the arms I'd call it decreased"; "brisk, I'd call it 3+" says it anew
    if mark.text in AGREED and _leads_on(marks, place):
        return mark.only("filler")
    if mark.text == "well" and place and marks[place - 1].text == after == ",":
        return mark.only("filler")  # "swallow, well, she coughed"
    if mark.text == "left" and place and _went(marks, place, after):
        return mark.only("word")
    if mark.text == "right" and place and _is_correct(marks, place):
        return mark.only("filler")
    if mark.text in ("rest", "others") and place and _is_remainder(marks, place):
        return replace(mark, roles=(Role("rest"),), text="the rest")
    parted = place > 0 and (marks[place - 1].has("comma") or marks[place - 1].text.endswith("than"))
    parted = parted or _closes_places(marks, place)
    if mark.text in _ALL_LIMBS and _closes_places(marks, place):
        return replace(mark, roles=(Role("site", "", "limb"),))  # "rigidity in the neck and all four limbs"
    if mark.text in ("limb", "limbs") and parted and any(one.has("item", "sign") for one in marks[:place]):
        return replace(mark, roles=(Role("site", "", "limb"),))  # "tone: ... limbs mildly increased"
    if mark.text == "thought" and place and marks[place - 1].text.split()[-1] in _THINKING:
        return mark.only("word")  # "I thought at first it was nasal"
    if mark.text.split()[-1] == "full" and after == "of":
        return mark.only("word")  # "her arms were full of shopping"
    if _is_how_patient_felt(marks, place):
        return mark.only("filler")
    if place and _is_how_patient_felt(marks, place - 1) and mark.role("normal", ""):
        return mark.only("word")  # "fine", "okay": how the patient was, and no rhythm
    if mark.text == "no no" and (after in _MOVEMENTS or _is_of_head(marks, place)):
        return replace(mark, roles=tuple(role for role in mark.roles if role.kind == "qualifier"))
    if mark.text == "down" and (_is_of_segment(marks, place) or _is_down_on(marks, place)):
        return mark.only("abnormal")
    if mark.text in AGREED | _PASSED and place and marks[place - 1].text == "then" and _felt_dizzy(marks[:place]):
        return mark.only("word")  # "woozy the first few seconds, then fine"
    if (other := in_other_words(marks, place)) is not None:
        return other
    return mark


def _closes_places(marks: Sequence[Mark], place: int) -> bool:
    """ "Chorea of the face, trunk and limbs": the last of the places, as nothing is told of the limbs behind it."""
    before = [mark for mark in marks[:place] if mark.text not in ("the", "all", "four")][-2:]
    joined = len(before) > 1 and before[1].has("conj") and before[0].has("site")
    ends = all(mark.has("comma", "stop", "semicolon", "conj", "contrast") for mark in marks[place + 1 : place + 2])
    return joined and ends


def behind_comparison(words: Sequence[Mark]) -> Sequence[Mark]:
    """ "Dysmetria, right greater than left, on finger-nose": the words behind the comparison between the commas."""
    commas = [at for at, mark in enumerate(words[:_RUN]) if mark.has("comma")]
    compared = bool(commas) and any(mark.has("comparison") for mark in words[: commas[-1]])
    placed = compared and all(mark.has("side", "comma", "filler", "comparison") for mark in words[: commas[-1]])
    return words[commas[-1] + 1 :] if placed else words


def limbs_follow(marks: Sequence[Mark], place: int) -> bool:
    """ "Rigidity of the neck and left arm", "of the neck, arms ...": of the neck as one of several places."""
    parts = [part for mark in marks[place + 1 : place + 6] for part in (mark.inner or (mark,))]
    behind = [part for part in parts if not part.has("side", "filler")][:2]
    if len(behind) < 2 or not behind[0].has("conj", "comma") or behind[1].has("item"):
        return False
    role = behind[1].role("site", "")
    return behind[1].text in ("limbs", "trunk") or (role is not None and limb_of(role.key) in LIMBS)


def _is_of_head(marks: Sequence[Mark], place: int) -> bool:
    """ "Head tremor, no-no, ...": of which kind the tremor just named is, and nothing is taken back."""
    before = [mark for mark in marks[max(0, place - 3) : place] if not mark.has("comma", "filler")]
    named = any(role.item in ("tremor", "titubation") and role.kind != "qualifier" for m in before for role in m.roles)
    head = any("head" in mark.text.split() for mark in before)  # "tremor right, no no, left" takes back the right
    return named and head and marks[place - 1].has("comma", "site", "item")


def _opens(marks: Sequence[Mark]) -> bool:
    """ "Okay eye movements now", "okay, sensory", "okay that's it"; but "okay on the left" and "OK." tell of a test."""
    if len(marks) < 2 or marks[1].has("stop"):
        return False
    return not (marks[1].has("side", "site", "conj") or is_preposition(marks[1]))


def _felt_dizzy(before: Sequence[Mark]) -> bool:
    return any(role.item == "orthostatic_symptoms" for mark in before for role in mark.roles)


def _leads_on(marks: Sequence[Mark], place: int) -> bool:
    """ "Strength, okay, on the right hip flexion five": between commas, before the side of what is told first."""
    if not place or not (
        marks[place - 1].has("comma") and marks[place + 1 : place + 2] and marks[place + 1].has("comma")
    ):
        return False
    behind = [mark for mark in marks[place + 2 : place + 6] if not mark.has("filler")]
    return len(behind) > 1 and behind[0].has("side") and behind[1].has("item") and not behind[1].has("side")


def qualifies_next(marks: Sequence[Mark], place: int) -> bool:
    """ "Fine postural tremor": a word for normal that only says of what kind the sign named next is."""
    told = {role.item for role in marks[place].roles if role.kind in ("normal", "abnormal")}
    own = {role.item for role in marks[place].roles if role.kind == "qualifier"} - told
    for mark in marks[place + 1 : place + 4] if marks[place].role("normal", "") else ():
        if any(role.kind in ("item", "sign") and role.item in own for role in mark.roles):
            return True
        if not any(role.kind == "qualifier" and role.item in own for role in mark.roles):
            return False
    return False


def measured(marks: Sequence[Mark], place: int) -> bool:
    """ "not tested because of pain knee extension four plus": a name with its number ends the reason.

    So does one with a word that says how it was ("because he is confined to bed gait not examined"), and any test's
    name where the words run on without a stop.
    """
    after = marks[place + 1 : place + 2]
    if any(mark.number is not None for mark in after):
        return marks[place].has("item", "context")
    sided = marks[place + 1 : place + 3]
    named = marks[place].has("item") and not marks[place].has("sign") and len(sided) > 1 and sided[0].has("side")
    if named and (sided[1].number is not None or sided[1].has("normal", "not_examined", "not_assessable")):
        return True  # "due to weakness heel shin right normal"
    told = any(mark.has("not_examined", "not_assessable") or mark.role("absent", "") for mark in after)
    runs_on = len(marks) - place > _RUN and not any(mark.has(*_BREAKS) for mark in marks[place : place + _RUN])
    return marks[place].has("item") and (told or runs_on)


def _is_remainder(marks: Sequence[Mark], place: int) -> bool:
    """ "Left ptosis, rest normal", "deltoid 4, rest 5": what was not named; but "postural 2, rest 1"."""
    lying = {role.item for role in marks[place].roles if role.item}
    named = any(role.item in lying for mark in marks[:place] for role in mark.roles if role.kind in ("item", "sign"))
    behind = marks[place + 1 : place + 2]
    told = any(mark.role("normal", "") or (not named and (mark.number or mark.has("heading"))) for mark in behind)
    return told and marks[place - 1].has(*_BREAKS, "conj")


def _is_of_segment(marks: Sequence[Mark], place: int) -> bool:
    """ "S1 normal, L5 down, L4 normal": between breaks, beside one segment; and not "reduced, T10 down"."""
    front = marks[max(0, place - 2) : place]
    one = len(front) > 1 and front[0].has(*_BREAKS) and front[1].has("dermatome", "site") and front[1].text[0] in "clsv"
    return one and all(mark.has(*_BREAKS) for mark in marks[place + 1 : place + 2])


def _went(marks: Sequence[Mark], place: int, after: str) -> bool:
    """ "She had left her glasses at home", "when he left the room"."""
    before = marks[place - 1].text.split()[-1] if marks[place - 1].text else ""
    return (before in _PERFECT and after in _OWNED) or before in ("he", "she", "they", "i")


def _is_correct(marks: Sequence[Mark], place: int) -> bool:
    """ "Four out of five right on the left", "on the left five of five right": answers, and no side."""
    number = marks[place - 1].number
    if number is None or number.op not in ("of", "out of") or number.b is None:
        return False
    behind = marks[place + 1 : place + 2]
    if behind and not behind[0].has(*_BREAKS):
        return behind[0].has("side") or behind[0].text in ("on", "at", "in")
    before = marks[max(0, place - _NEAR) : place - 1]
    told = any(mark.has("side") for mark in before) and all(mark.number is None for mark in before)
    return told and not any(mark.has("side") for mark in marks[place + 1 : place + _NEAR])


def _is_down_on(marks: Sequence[Mark], place: int) -> bool:
    """ "Pinprick's down on the right arm": of what was felt there, right behind its name; "toe down" says more."""
    if place + 2 >= len(marks) or not (marks[place + 1].has("side") and marks[place + 1].text.startswith("on ")):
        return False
    name = next((mark for mark in reversed(marks[:place]) if mark.text not in ("is", "was", "s")), None)
    return name is not None and name.has("item") and name.role("heading_part") is None and marks[place + 2].has("site")


def _is_how_patient_felt(marks: Sequence[Mark], place: int) -> bool:
    """ "Pulse 88, felt woozy", "standing 118/70, she felt fine"; but "pulse 72, felt in both feet" tells of vessels."""
    if marks[place].text != "felt" or not place:
        return False
    taken = any(mark.has("position") or any(role.item in _TAKEN for role in mark.roles) for mark in marks[:place])
    after = marks[place + 1 : place + 2]
    said = marks[place - 1].number is not None and any(mark.text in _HOW for mark in after)  # "pulse 88 felt fine"
    told = said or marks[place - 1].text in _PATIENT or marks[place - 1].has("comma")
    where = any(mark.has(*_BREAKS, "conj", "side", "site", "absent") or is_preposition(mark) for mark in after)
    of_vessels = any(role.item == "peripheral_pulses" for mark in after for role in mark.roles)
    return taken and told and bool(after) and not (where or of_vessels)


def beside_limb(marks: Sequence[Mark], place: int) -> bool:
    """ "Deltoid 4 left. Full power in the right arm.": a limb beside a word for its strength, not a muscle."""
    before = (marks[at] for at in range(place - 1, -1, -1))
    behind = (marks[at] for at in range(place + 1, len(marks)))
    clause = itertools.takewhile(lambda mark: not mark.has("stop", "semicolon"), behind)
    beside = (part for mark in itertools.chain(before, clause) for part in (mark.inner or (mark,)))
    site = next((role for part in beside if (role := part.role("site")) is not None), None)
    return site is not None and limb_of(site.key) in LIMBS


def has_points(name: str, near: Sequence[Mark]) -> bool:
    """A number, a word that the scale counts by, or that it was not tested."""
    return any(
        mark.number is not None
        or mark.has("not_examined", "not_assessable", "unchanged")
        or any(role.item == name and role.kind == "value" for role in mark.roles)
        for mark in near
    )


def pluses_next(marks: Sequence[Mark], place: int) -> bool:
    """Pluses alone are the next that is told of a limb."""
    told = next((mark for mark in marks[place + 1 :] if not mark.has("side", "filler", "colon")), None)
    return told is not None and {*told.text.split()} == {"+"}


def plain_number(after: Sequence[Mark]) -> bool:
    """ "P95 R20": a letter that is also a side names a rate only with a whole number right behind it, and no unit."""
    number = after[0].number if after else None
    if number is None or number.op or number.a_sign or number.a < 8:
        return False
    return not (len(after) > 1 and after[1].has("unit"))


def titles_value(marks: Sequence[Mark], place: int, name: str) -> bool:
    """ "Toes: down left, up right": a short name in front of a colon, and what only that item can be behind it."""
    after = marks[place + 1 : place + 3]
    return len(after) == 2 and after[0].has("colon") and any(after[1].role(kind, name) for kind in _SAID)


def opens_other(marks: Sequence[Mark], place: int, names: Sequence[str]) -> bool:
    """Whether an item or sign other than these follows what begins a clause, with its side and degree at most."""
    if place and not marks[place - 1].has(*_BREAKS):
        return False
    named = next((mark for mark in marks[place + 1 :] if not mark.has("side", "severity")), None)
    return named is not None and any(role.kind in ("item", "sign") and role.item not in names for role in named.roles)


def found_on(marks: Sequence[Mark], place: int, *, whole: bool) -> bool:
    """ "no dysmetria on finger to nose": the test at which a sign was looked for is named behind it.

    whole: without it the sign would be of a whole component ("dysmetria of the left finger nose test").
    """
    behind = behind_comparison([part for mark in marks[place + 1 : place + 16] for part in (mark.inner or (mark,))])
    link = _IS_THERE if not (place and marks[place - 1].has("negation")) else frozenset()
    after = [one for one in behind[:6] if one.text not in {*_ARTICLES, *link} and not one.has("side")][:2]
    tight = len(after) == 2 and after[0].text in ("on", "with")
    if len(after) < 2 or not (tight or (whole and after[0].text in ("of", "in"))):
        return False
    owners = {r.item for r in after[1].roles if r.kind == "item" or (tight and r.kind == "context")}
    return any(r.item in owners and r.kind in ITEM_VALUE_KINDS for r in marks[place].roles)
