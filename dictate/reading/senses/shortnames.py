"""Short names ("biceps", "knees", "motor"): in which company they name an item."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.grammar import Item
from dictate.reading.marks import Mark, Number
from dictate.reading.phrases.joints import (
    absent_jerk,
    goes_on_by_place,
    goes_on_measuring,
    measured_from,
    no_jerk,
    no_strength,
    paired_with,
    says_jerk,
    told_already,
)
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.phrases.numbers import CHART_LINES
from dictate.reading.senses.company import has_points, limbs_follow, plain_number, pluses_next, titles_value
from dictate.reading.senses.graded import begins_with_touch, is_called_weak, is_graded, is_of_limb
from dictate.reading.senses.tried import is_tried

_TOTALS = frozenset({"total", "sum", "total score", "sum score"})
_REACH = 40  # marks in front of an exception, in which it was said from what
_FAR = 9  # marks behind a name in which its grade may stand ("grip weak on both sides, 4 minus right")
_ENDS = ("item", "sign", "alone", "context", "stop")
_JERKS = ("jerk", "jerks", "reflex", "reflexes")
_SAID = ("value", "normal", "abnormal")


class ShortNames:
    """Says whether a name that needs a context has it."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items

    def full_names(self, marks: Sequence[Mark], place: int, here: tuple[str, str]) -> list[str]:
        """Items that the phrase names in any company.

        "Neck rigidity" names the stiff neck, and only among tones, or with a rating, says how the neck was.
        """
        mark = marks[place]
        toned = [role.item for role in mark.roles if role.kind == "alone" and mark.role("site", role.item) is not None]
        if toned and (self._graded_next(marks, place) or limbs_follow(marks, place)):
            return toned
        named = {self.lexicon.component[role.item] for role in mark.roles if role.kind == "item"}
        return [
            role.item
            for role in mark.roles
            if role.kind in ("item", "sign")
            or (role.kind == "alone" and (not named or self.lexicon.component[role.item] in {*named, *here}))
            or (role.kind == "alone" and mark.role("site", role.item) is None)
        ]

    def holds(
        self, name: str, marks: Sequence[Mark], place: int, here: tuple[str, str], active: tuple[str, ...]
    ) -> bool:
        """Whether the short name names the item here."""
        item = self.items[name]
        if item.kind == "score" and place and marks[place - 1].text == "to":
            return False  # "eyes one to pain"
        if self.items[name].kind == "grade" and self._of_jerks(marks, place):
            return item.scale == "tendon_reflex"
        if item.kind == "grade" and (jerk := says_jerk(marks, place, self.items)) is not None:
            return jerk is (item.scale == "tendon_reflex")
        no_jerk_here = measured_from(marks, place) or (item.blanket and no_strength(marks, place, active, self.items))
        if (item.scale == "tendon_reflex" and no_jerk_here) or self._is_place(item, marks, place):
            return False
        if marks[place].has("site") and goes_on_measuring(marks, active, self.items, self.lexicon.grammar.scales):
            return False
        if marks[place].text in _TOTALS and self.lexicon.component[name].value == "motor":
            return self._sum_of_strength(marks, place, active)
        if marks[place].has("side") and not item.group:
            of_sides = any(self.items[one].sided == "paired" and self.items[one].units for one in active)  # "SLR: R 40"
            return here[0] == "general" and not of_sides and plain_number(marks[place + 1 : place + 3])
        if item.group and any(self.items[a].group not in ("", item.group) for a in active):
            return False  # "FOUR score E4 M4": the parts of another scale
        if item.group and item.group != "coma_scale" and item.kind == "score":
            return self._part_follows(item, marks, place, active)
        if item.group and item.kind == "score" and not has_points(name, marks[max(0, place - 2) : place + 5]):
            return False  # "makes good eye contact": points are a number, or words of the scale
        told = self.lexicon.component[name].value in here or any(mark.number for mark in marks[place - 2 : place + 3])
        if item.group and (told or item.kind != "quantity") and self._group_near(item.group, marks, place, active):
            return True
        if item.group == "coma_scale":
            return False
        if self._is_said_of_limb(name, marks, place) or begins_with_touch(marks, place):
            return True
        if item.blanket and item.kind == "grade" and not is_graded(marks, place):
            return False  # "legs spastic": where the tone was so, not how strong they were
        if item.blanket and self._jerk_as_well(marks, place, active):
            return False
        if self.lexicon.component[name].value in here:
            return True
        if item.scale == "tendon_reflex" and self._strength_of(marks, place):
            return False  # "leg four throughout bar the ankle which is three"
        denied = place > 0 and marks[place - 1].has("negation")
        if item.positions and denied and any(m.has("position") for m in marks[place + 1 : place + 3]):
            return True  # "no dizziness on standing"
        if is_tried(marks, place, active) and item.kind == "normality":
            return True
        return self._fits_alone(name, marks, place) or absent_jerk(item, marks, place, here[0])

    def _is_said_of_limb(self, name: str, marks: Sequence[Mark], place: int) -> bool:
        """ "The right leg is weak", "the face is weak"; "both legs are spastic"."""
        item = self.items[name]
        strength = item.scale == self.items["strength_all"].scale if self._is_region(name) else "weak" in item.abnormal
        if strength and is_called_weak(marks, place):
            return True
        told = item.kind in ("normality", "presence") and marks[place].has("abnormal", "sign", "value")
        descriptor = told and item.sited and not item.blanket
        return descriptor and is_of_limb(marks, place, name, part=item.kind == "presence")

    def _of_jerks(self, marks: Sequence[Mark], place: int) -> bool:
        """ "Biceps and triceps jerks": the noun behind the last name is of all of them."""
        for mark in marks[place + 1 :]:
            jerks = [role.item for role in mark.roles if role.kind == "item"]
            if mark.text.endswith(_JERKS) and any(self.items[one].scale == "tendon_reflex" for one in jerks):
                return not all(self.items[one].blanket for one in jerks)
            if not (mark.has("comma", "conj") or any(role.kind == "context" for role in mark.roles)):
                return False
        return False

    def _sum_of_strength(self, marks: Sequence[Mark], place: int, active: tuple[str, ...]) -> bool:
        """ "Total 46" right behind grades of strength; no total of anything else."""
        scale = self.items["strength_all"].scale
        after = next((m for m in marks[place + 1 : place + 4] if not m.has("filler", "colon", "comma")), None)
        number = after is not None and after.number is not None
        return number and any(self.items[name].scale == scale for name in active)

    def _strength_of(self, marks: Sequence[Mark], place: int) -> bool:
        """An exception from a strength, whose number is plain as its grades are."""
        number = next((mark.number for mark in marks[place + 1 : place + 4] if mark.number is not None), None)
        before = marks[max(0, place - _REACH) : place]
        if number is None or number.a_sign or not any(mark.has("except") for mark in before):
            return False
        scale = self.items["strength_all"].scale
        return any(self.items[role.item].scale == scale for m in before for role in m.roles if role.item in self.items)

    def _is_place(self, item: Item, marks: Sequence[Mark], place: int) -> bool:
        """ "Abdominals: upper present", "tone: R arm increased, L arm normal": where it was, of what was just named."""
        at = next((at for at in range(place - 1, -1, -1) if marks[at].has("item", "sign", "alone")), None)
        roles = marks[at].roles if at is not None else ()
        named = [role.item for role in roles if role.kind in ("item", "sign", "alone")]
        last = next((mark for mark in reversed(marks[:place]) if mark.has("item", "sign", "context")), None)
        naming = ("item", "sign", "alone", "context")
        told_of = {role.item for role in last.roles if role.kind in naming} if last is not None else set()
        told_of |= {role.item for role in last.roles if role.item in named} if last is not None else set()
        told_of = told_of if item.blanket else {*named}
        sided = place > 0 and marks[place - 1].has("side") and marks[place].role("site", "") is not None
        if sided and item.scale == "tendon_reflex" and self._rated(marks[:place]):
            return True  # "Ashworth left elbow flexors 2, left ankle 1+"
        muscle = item.kind == "grade" and not item.blanket
        sited = bool(named) and all(self.items[one].sited and self.items[one].kind != "grade" for one in named)
        if sited and item.blanket and pluses_next(marks, place):
            return True  # "Rigidity UL: Rt ++, Lt +": how much of the sign
        graded = place + 1 < len(marks) and marks[place + 1].number
        if sited and graded and graded.a_sign == "+" and item.scale == "tendon_reflex" and at is not None:
            links = marks[at + 1 : place]  # "4 plus with clonus, left ankle 3 plus"
            plain = all(mark.has("comma", "side", "filler") for mark in links) or told_already(links, self.items)
            if plain and any(mark.has("comma") for mark in links):
                return False
        if muscle and sited and marks[place].role("site", "") is not None:
            return True  # "Vibration: great toes 0": no muscle of the toe
        weak = any(mark.text in ("weak", "weaker") for mark in marks[place + 1 : place + 2])
        if muscle and (weak or self._graded_next(marks, place)) and not any(map(self._is_sited_grade, named)):
            return False  # "no fasciculations right deltoid five"
        if any(role.kind == "site" and role.item in told_of for role in marks[place].roles):
            return True
        if named and marks[place].role("site", "") is not None and all(map(self._is_sited_grade, named)):
            return item.blanket  # "Ashworth L arm 2, L leg 1+"
        between = marks[at + 1 : place] if at is not None else ()
        rated = sited and all(self.items[one].kind == "normality" for one in named)
        titled = bool(between) and all(mark.has("colon", "side") for mark in between)  # "Tone: R arm 1+, L arm 0"
        if rated and item.blanket and item.kind == "grade" and (titled or any(mark.number for mark in between)):
            return True  # "right arm rigidity 1, left arm 0"
        told = next((mark for mark in marks[place + 1 :] if not mark.has("side", "filler")), None)
        denied = told is not None and told.number is None and told.has("normal", "absent", "not_examined")
        if not (denied and item.blanket and item.kind == "grade"):
            return False
        if not sited or at is None or any(mark.has("contrast") for mark in between):
            return False  # else: "right arm bradykinesia, left arm none"
        placed = any(mark.has("site") for mark in (*marks[:at][-2:], *between))
        return placed or bool(self.lexicon.site_in(marks[at].text.split()[0]))  # "left arm tremor, right arm normal"

    def _jerk_as_well(self, marks: Sequence[Mark], place: int, active: tuple[str, ...]) -> bool:
        """ "Knees 2": a jerk, unless its number is none of a jerk, or a list of joints goes on ("hips 4, knees 4")."""
        named = [self.items[role.item] for role in marks[place].roles if role.kind == "context"]
        listed = goes_on_by_place(marks, place, active, self.items)
        jerk = any(item.scale == "tendon_reflex" and not item.blanket for item in named)
        return jerk and not (listed or no_jerk(marks[place + 1 : place + 3]))

    def _is_region(self, name: str) -> bool:
        return self.items[name].blanket and bool(self.items[name].limb)

    def _graded_next(self, marks: Sequence[Mark], place: int) -> bool:
        """A grade alone right behind it, and no count of anything."""
        graded = place + 1 < len(marks) and marks[place + 1].is_grade
        return graded and not (place + 2 < len(marks) and marks[place + 2].has("unit", "filler"))

    def _rated(self, before: Sequence[Mark]) -> bool:
        """Whether a rating by place, and nothing but places, was named last."""
        last = next((mark for mark in reversed(before) if mark.has("item") and not mark.has("site")), None)
        return last is not None and all(self._is_sited_grade(role.item) for role in last.roles if role.kind == "item")

    def _is_sited_grade(self, name: str) -> bool:
        return self.items[name].kind == "grade" and self.items[name].sited and not self.items[name].blanket

    def _part_follows(self, item: Item, marks: Sequence[Mark], place: int, active: tuple[str, ...]) -> bool:
        """A part of a scale: named after the scale or another part, with its points behind it."""
        if not any(self.items[name].group == item.group for name in active):
            return False
        between = ("colon", "filler", "comma", *(("side",) if item.sided != "never" else ()))
        after = next(
            (m for m in marks[place + 1 : place + 4] if m.number is not None or not m.has(*between)),
            None,
        )
        if after is not None and after.has("not_assessable"):
            return True  # "dysarthria untestable": a part of the scale without points
        return after is not None and after.number is not None and not after.number.op and not after.number.a_sign

    def _group_near(self, group: str, marks: Sequence[Mark], place: int, active: tuple[str, ...]) -> bool:
        """Another item of the group in the same breath."""
        if any(self.items[name].group == group for name in active):
            return True
        own = {role.item for role in marks[place].roles}
        return any(
            role.kind in ("item", "context")
            and role.item in self.items
            and self.items[role.item].group == group
            and role.item not in own
            for other in (*marks[max(0, place - 6) : place], *marks[place + 1 : place + 7])
            for role in other.roles
        )

    def _can_only_be(self, scale: str, number: Number) -> bool:
        """ "2+" beside a name shared with a muscle is a reflex; "4" or "4-" is a strength."""
        written = self.lexicon.grammar.scales[scale]
        if number.a_sign == "+" and (number.b is None or number.b != written.of):
            return scale == "tendon_reflex"
        return number.first in written.grades and number.b in (None, written.of)

    def _fits_alone(self, name: str, marks: Sequence[Mark], place: int) -> bool:
        """The value beside the name fits this item of all that share the name ("knees 2+")."""
        item = self.items[name]
        if item.kind == "choice" and titles_value(marks, place, name):
            return True
        alone = {role.item for role in marks[place].roles if role.item} == {name}
        told = [m.text for m in marks[place + 1 : place + 4] if m.text not in ("are", "were")]
        if told[:1] == ["full"] and told[1:2] != ["of"] and any(words.startswith("full ") for words in item.normal):
            return True  # "fields full, pupils equal"
        further = itertools.takewhile(lambda m: not m.has(*_ENDS), marks[place + 1 : place + _FAR])
        beside = (*marks[place + 1 : place + 4], *reversed(marks[max(0, place - 2) : place]))
        for near in (*beside, *(m for m in further if m.number is not None)):
            kinds = _SAID if alone and near.start > marks[place].start else _SAID[:1]
            if near.number is not None and item.kind == "grade":
                named = [r.item for r in marks[place].roles if r.item]
                names = [one for one in named if not self._is_region(one)] or named
                own = {self.items[one].scale for one in names} - {""}
                written = self.lexicon.grammar.scales[item.scale]
                alone = own == {item.scale} and near.number.b in (None, written.of)
                if self._is_region(name) and near.number.first == "4+" and near.number.b is None:
                    return item.scale != "tendon_reflex"  # "left arm 4 plus": hardly of all its jerks
                return near.is_grade if alone else self._can_only_be(item.scale, near.number)
            if near.number is not None and item.kind == "quantity":
                return self._is_measured(item, near.number, marks[place + 1 : place + 4])
            if near.number is not None and item.kind == "acuity":
                return near.number.op == "logmar" or (near.number.op == "/" and near.number.a in CHART_LINES)
            of_it = any(r.item == name and r.kind in kinds for r in near.roles) and all(r.item for r in near.roles)
            if of_it and not paired_with(marks, place, near):
                return True  # "walks with short steps"
        return False

    def _is_measured(self, item: Item, number: Number, after: Sequence[Mark]) -> bool:
        """ "PR 88/min", "T 36.9": a number with a unit of the item, or with a fraction and between its limits."""
        if any(role.kind == "unit" and self.items.get(role.item) is item for mark in after for role in mark.roles):
            return True
        low, high = (item.limits.low, item.limits.high) if item.limits is not None else (None, None)
        whole = number.op or number.a == int(number.a)
        return not whole and low is not None and high is not None and low <= number.a <= high
