"""Body parts that say where the item spoken of was found, told from body parts that name an item."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.grammar import Item
from dictate.reading.marks import Mark
from dictate.reading.nodes import Node, limb_of
from dictate.reading.phrases.lexicon import is_preposition

_BRISKEST = 4  # grade of a jerk
_STRONGEST = 5


class SiteFinder:
    """Knows which items are told by site."""

    def __init__(self, items: dict[str, Item]) -> None:
        self.items = items

    def is_site(
        self,
        marks: Sequence[Mark],
        place: int,
        candidates: tuple[str, ...],
        active: tuple[str, ...],
        nodes: list[Node],
        *,
        placed: bool,
    ) -> bool:
        """A body part that says where the item spoken of was found, rather than an item.

        placed: what was said before was said of a body part.
        """
        if self._told_next(marks, place, candidates):
            return True
        jerk = self._is_jerk(marks[place + 1 : place + 2], candidates, active)
        placeless = not any(self.items[name].sited or self.items[name].site_items for name in active)
        if placeless or jerk or _told_before(nodes, candidates, active):
            return False  # "no carotid bruits, and no tenderness over the temporal arteries"
        if self._rates_on(marks, place, active, nodes):
            return True  # "Ashworth right elbow flexors 2, wrist flexors 1"
        if _none_there(marks, place) and all(self._is_sited_sign(name) for name in active):
            return True  # "fasciculations in the left deltoid, tongue none"
        here = any(node.main == "item" for node in nodes)
        general = any(r.kind == "site" and (not r.item or r.item in active) for r in marks[place].roles)
        placed_here = here and general  # "uppers" alone is no place
        if placed_here and any(set(candidates) <= set(self.items[name].site_items.values()) for name in active):
            return True  # "2+ right arm": the arms of the blanket spoken of
        site = marks[place].role("site")
        if not general or (placed_here and self._closes(marks, place, candidates, active)):
            return general  # "power 4 LL, 5 UL"
        if placed and not here and self._goes_on(marks, place, candidates, active):
            return True  # "paratonia in both legs. The arms are all right."
        limb = limb_of(site.key) if site is not None else ""
        regional = here and any(limb in self.items[name].site_items for name in active)
        covered = any(self.items[name].blanket and set(candidates) <= set(self.items[name].covers) for name in active)
        if not here and (covered or self._is_graded_muscle(marks, place, candidates, active, nodes)):
            return False  # "Reflexes. At the ankles, absent ..."; "Tone normal. In the upper limbs, deltoid is 4/5"
        for node in reversed(nodes):
            if is_preposition(node.mark) or node.text.startswith(("in ", "on ", "at ", "of ", "to ")):
                told = [self.items[name] for name in active if self.items[name].sited]
                sited = any(item.kind != "grade" or not item.blanket for item in told)  # "Ashworth 1+ at the knee"
                return regional or sited or not self._number_before(nodes, node)
            if node.main in ("filler", "side", "site") or node.text in ("both", "the"):
                continue
            if node.main in ("comma", "conj") and any(n.main == "site" for n in nodes):
                continue
            break
        return self._stands_behind(marks, place, candidates, active, nodes)

    def _is_jerk(self, after: Sequence[Mark], candidates: tuple[str, ...], active: tuple[str, ...]) -> bool:
        """A jerk with a grade that is written as those of jerks are, behind strength."""
        number = after[0].number if after else None
        jerks = all(self.items[name].scale == "tendon_reflex" for name in candidates)
        strength = bool(active) and all(self.items[name].scale == "mrc" for name in active)
        return jerks and strength and number is not None and number.a_sign == "+" and number.a < _BRISKEST

    def _is_graded_muscle(
        self, marks: Sequence[Mark], place: int, candidates: tuple[str, ...], active: tuple[str, ...], nodes: list[Node]
    ) -> bool:
        """A muscle behind a comma with its grade right behind it, where what was spoken of has no grades."""
        if not nodes or nodes[-1].main != "comma":
            return False
        behind = [mark for mark in marks[place + 1 : place + 6] if not mark.has("side", "filler")]
        told = None if any(mark.has("unit") for mark in behind[1:2]) else next(iter(behind), None)
        muscle = all(self.items[name].kind == "grade" and not self.items[name].blanket for name in candidates)
        return muscle and told is not None and told.is_grade and all(self.items[n].kind != "grade" for n in active)

    def _rates_on(self, marks: Sequence[Mark], place: int, active: tuple[str, ...], nodes: list[Node]) -> bool:
        """A further place in a list of ratings by place: a number before it, and a number behind it."""
        rated = (
            item.kind == "grade" and item.sited and not item.blanket for item in map(self.items.get, active) if item
        )
        before = [node.main for node in nodes if node.main not in ("filler", "side")][-2:]
        after = [mark for mark in marks[place + 1 : place + 4] if not mark.has("side", "filler")]
        own = any(role.kind == "site" and role.item in ("", *active) for role in marks[place].roles)
        return own and before == ["number", "comma"] and bool(after) and after[0].number is not None and all(rated)

    def _is_sited_sign(self, name: str) -> bool:
        return self.items[name].sited and self.items[name].kind == "presence"

    def _closes(self, marks: Sequence[Mark], place: int, candidates: tuple[str, ...], active: tuple[str, ...]) -> bool:
        """A limb at the end of a phrase whose item was told by limbs: no name of another whole of that limb."""
        site = marks[place].role("site")
        limb = limb_of(site.key) if site is not None else ""
        wholes = bool(limb) and all(self.items[n].blanket and self.items[n].limb == limb for n in candidates)
        ends = place + 1 == len(marks) or marks[place + 1].has("comma", "semicolon", "stop", "conj")
        return wholes and ends and any(limb in self.items[name].site_items for name in active)

    def _told_next(self, marks: Sequence[Mark], place: int, candidates: tuple[str, ...]) -> bool:
        """ "Quads wasted", "hands and calves wasted": a word behind it that says by itself what was found there."""
        own = {role.item for role in marks[place].roles if role.kind == "site"}
        for mark in marks[place + 1 :]:
            said = {role.item for role in mark.roles if role.kind in ("context", "alone")}
            told = {role.item for role in mark.roles if role.kind in ("value", "abnormal")}
            said &= told
            if not told.isdisjoint(candidates):
                return False  # "tongue wasted"
            if said:
                return "" in own or not own.isdisjoint(said)
            if mark.number is not None or not mark.has("side", "site", "conj", "comma", "filler", "severity"):
                return False
        return False

    def _stands_behind(
        self, marks: Sequence[Mark], place: int, candidates: tuple[str, ...], active: tuple[str, ...], nodes: list[Node]
    ) -> bool:
        """The body part stands right behind the item it is told of, without a preposition ("tone normal legs")."""
        owner = next((name for name in active if self.items[name].sited), "")
        if not owner:
            return False
        if self._told_of(marks[place + 1 : place + 4], owner, candidates):
            return True  # "clonus, right ankle two beats": what follows is said of the clonus
        follows = marks[place + 1] if place + 1 < len(marks) else None
        grade_follows = follows is not None and (
            (follows.number is not None and bool(follows.number.a_sign))
            or follows.has("grade")
            or any(follows.role(kind, "") is not None for kind in ("absent", "normal"))
            or any(r.item in candidates and r.kind in ("value", "abnormal") for r in follows.roles)
        )
        muscle = any(self.items[name].scale == "mrc" and not self.items[name].blanket for name in candidates)
        if muscle and self.items[owner].kind == "presence" and _plain_grade(marks[place + 1 : place + 3]):
            return False  # "no fasciculations right deltoid five"
        own = [n for n in reversed(nodes) if n.main == "item"]
        if own and any(n.main == "site" for n in nodes[nodes.index(own[0]) :]) and not grade_follows:
            return True  # "clonus right ankle sustained, left ankle three beats"
        closes = follows is None or follows.has("stop", "comma", "semicolon", "side")
        if (
            closes
            and own
            and all(
                n.main in ("side", "filler", "severity", "qualifier", "number", "value", "unit", "colon")
                for n in nodes[nodes.index(own[0]) + 1 :]
            )
        ):
            return True  # "tone normal legs."
        adjacent = bool(own) and all(
            n.main in ("side", "filler", "severity", "number", "colon") for n in nodes[nodes.index(own[0]) + 1 :]
        )
        return adjacent and not grade_follows

    def _told_of(self, after: Sequence[Mark], owner: str, candidates: tuple[str, ...]) -> bool:
        """Words behind the body part that only the item it would be a site of can be told by."""
        for mark in after:
            graded = mark.number is not None and bool(mark.number.a_sign) and self.items[owner].kind == "presence"
            if graded or mark.has("comma", "stop", "semicolon", "conj"):
                return False  # "clonus, left ankle 3 plus with 3 beats": a jerk
            of = {r.item for r in mark.roles if r.kind in ("unit", "qualifier", "value")}
            if owner in of and not of & set(candidates):
                return True
        return False

    def _number_before(self, nodes: list[Node], preposition: Node) -> bool:
        """ "2+ at the knees": a grade before the body part makes it a reflex, not a site."""
        place = nodes.index(preposition)
        if place == 0:
            return False
        number = nodes[place - 1].mark.number
        return (number is not None and bool(number.a_sign)) or bool(nodes[place - 1].mark.role("grade"))

    def _goes_on(self, marks: Sequence[Mark], place: int, candidates: tuple[str, ...], active: tuple[str, ...]) -> bool:
        """A plain "normal" behind another body part is of what was found in the last one, unless that was a grade."""
        if not all(self.items[name].sited and self.items[name].kind != "grade" for name in active):
            return False
        after = next((mark for mark in marks[place + 1 :] if not mark.has("filler")), None)
        said_of = {role.item for role in after.roles if role.kind == "normal"} if after is not None else set()
        if said_of & set(candidates) and not said_of & set(active):
            return False  # "V1 duller. Face strong."
        return after is not None and after.number is None and after.role("normal", "") is not None


def _none_there(marks: Sequence[Mark], place: int) -> bool:
    """ "Tongue none": nobody says so of the tongue itself."""
    after = next((mark for mark in marks[place + 1 : place + 3] if not mark.has("colon")), None)
    return marks[place].role("site", "") is not None and after is not None and after.text in ("none", "nil")


def _plain_grade(after: Sequence[Mark]) -> bool:
    """A number of strength, and not a count of something."""
    number = after[0].number if after else None
    counted = len(after) > 1 and after[1].has("unit", "filler", "word")
    return number is not None and not number.op and number.a <= _STRONGEST and not counted


def _told_before(nodes: list[Node], candidates: tuple[str, ...], active: tuple[str, ...]) -> bool:
    """Whether the word in front of it can only be said of what it names, and not of what was spoken of."""
    last = next((node for node in reversed(nodes) if node.main != "filler"), None)
    if last is None or last.main != "value" or not all(role.item for role in last.mark.roles):
        return False
    return any(map(last.value_roles, candidates)) and not any(map(last.value_roles, active))
