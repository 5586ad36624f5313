"""Marks of one sentence → nodes: which phrases name an item here, given their neighbours and the heading in force."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.cells.reasons import bare_reason, opens_reason
from dictate.reading.in_force.context import Context
from dictate.reading.in_force.vital_signs import read_vital_signs
from dictate.reading.marks import Mark
from dictate.reading.nodes import ITEM_VALUE_KINDS, VALUE_KINDS, Node, plain_part, says_where
from dictate.reading.phrases.bare import BareNumbers
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.senses.company import beside_limb, found_on, measured, opens_other, plain_word, qualifies_next
from dictate.reading.senses.places import SiteFinder
from dictate.reading.senses.remainder import Remainder
from dictate.reading.senses.settling import settle
from dictate.reading.senses.shortnames import ShortNames
from dictate.reading.statements.tasks import SUBJECTS, closes_task, opens_task

_ASIDE = ("examination_conditions",)
_REPORTS = frozenset({"felt", "noted", "noticed", "found", "heard", "seen", "had"})
_INFERENCES = frozenset({"so", "therefore", "hence"})
_SERVICES = frozenset("clinic clinics service team society nurse unit ward symptoms specialist".split())
_STRENGTHS = frozenset({"power", "strength"})
_HEAD_NOUNS = ("reflex", "reflexes")


class Labeller:
    """Decides the part each mark of a sentence plays."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items
        self.sites = SiteFinder(lexicon.items)
        self.short = ShortNames(lexicon)
        self.bare = BareNumbers(lexicon)
        self.rest = Remainder(lexicon)

    def label(self, marks: Sequence[Mark], context: Context) -> list[Node]:
        """Nodes of one sentence, given the heading in force and the items last spoken of."""
        nodes: list[Node] = []
        active = listed = context.active  # listed: whose list goes on behind "intubated", "on oxygen"
        in_reason = False
        here = (self._component_of(active, context.component), context.component)
        marks = list(marks)
        place = -1
        while (place := place + 1) < len(marks):
            mark = marks[place]
            while mark.inner and (in_reason or not self._concerns(marks, place, here, active, nodes)):
                marks[place : place + 1] = mark.inner
                mark = marks[place]
            mark = marks[place] = plain_word(marks, place)
            node = Node(mark, plain_part(mark))
            if mark.text in _INFERENCES and nodes and nodes[-1].main != "negation":
                node.main = "contrast"  # what follows a "so" is not under the "not" before it
            in_reason = in_reason and not measured(marks, place)
            if node.is_break or node.main in ("number", "correction", "strike") or mark.text in _INFERENCES:
                in_reason = in_reason and node.main == "number"
            if (mark.text.startswith("too ") and opens_reason(nodes, mark)) or bare_reason(marks, place, nodes):
                node.main, in_reason = "reason", True  # "cannot do joint position, too drowsy"
            candidates = () if in_reason else self._candidates(marks, place, here, listed, nodes)
            if node.main == "value" and not candidates:
                node.main = "qualifier" if qualifies_next(marks, place) else self._of_what(marks, place, active)
            if node.main in ("qualifier", "word") and self._site_of(marks, place, active):
                node.main = "site"
            elif node.main == "site" and not self._site_here(marks, place, active):
                node.main = "word"
            spoken = () if context.left and active is context.active else active
            self._name(node, candidates, marks, place, spoken, nodes, placed=context.placed)
            if node.main == "value" and mark.text in _REPORTS and nodes and nodes[-1].text in SUBJECTS:
                node.main = "filler"  # "she felt woozy": the verb of a sentence, no word for how it was
            if node.main == "item" and nodes and nodes[-1].main == "item" and self._is_head_noun(mark, nodes[-1]):
                # "gag-shrug reflexes", "leg abduction strength": the noun of the name before, whose words it shares
                node.main, node.candidates = "filler", ()
                nodes[-1].mark = replace(nodes[-1].mark, end=mark.end)
            if node.main == "item":
                active = node.candidates
                listed = listed if listed and active == _ASIDE else active
                here = (self.lexicon.component[active[0]].value, here[1])
            if mark.has("heading") and (node.main == "heading" or node.main == "item"):
                here = (node.key("heading"), node.key("heading"))
            if node.main == "reason":
                in_reason = opens_reason(nodes, mark)
                node.main = "reason" if in_reason else "filler"
            nodes.append(node)
        settle(nodes, self.items, context.told_side)
        read_vital_signs(nodes, self.items, self.lexicon.grammar.common)
        return nodes

    def _component_of(self, active: tuple[str, ...], heading: str) -> str:
        """Of what is being told: standing with eyes closed is told with the gait as often."""
        told_under = active == ("romberg",) and heading == "coordination_gait"
        return heading if told_under else self.lexicon.component[active[0]].value if active else ""

    def _is_head_noun(self, mark: Mark, before: Node) -> bool:
        """ "Sternomastoid power", "biceps reflex": says of what kind the name before it is."""
        graded = {self.items[name].scale for name in before.candidates if not self.items[name].blanket}
        return mark.text in _HEAD_NOUNS or (mark.text in _STRENGTHS and self.items["strength_all"].scale in graded)

    def _concerns(
        self, marks: Sequence[Mark], place: int, here: tuple[str, str], active: tuple[str, ...], nodes: list[Node]
    ) -> bool:
        """Whether an item-bound phrase is of an item spoken of here."""
        if self._candidates(marks, place, here, active, nodes):
            return True
        near = {
            r.item
            for later in marks[place + 1 : place + 4]
            for r in later.roles
            if r.kind in ("item", "sign", "context")
        }
        scales = {self.items[name].scale for name in {*active, *near} if name in self.items}
        return any(r.item in (scales if r.kind == "grade" else {*active, *near}) for r in marks[place].roles)

    def _site_of(self, marks: Sequence[Mark], place: int, active: tuple[str, ...]) -> bool:
        """A site of the item named next or last, though a qualifier of others ("cervical adenopathy")."""
        named = {
            r.item for later in marks[place + 1 : place + 2] for r in later.roles if r.kind in ("item", "sign", "alone")
        }
        named |= {*active}
        roles = marks[place].roles
        return any(r.kind == "site" and r.item in named for r in roles) and not any(
            r.kind == "qualifier" and r.item in named for r in roles
        )

    def _site_here(self, marks: Sequence[Mark], place: int, active: tuple[str, ...]) -> bool:
        """A body part that only certain items know, and one of them is spoken of."""
        sites = [r.item for r in marks[place].roles if r.kind == "site"]
        return not all(sites) or any(name in sites for name in self._spoken_of(marks, place, active))

    def _spoken_of(self, marks: Sequence[Mark], place: int, active: tuple[str, ...]) -> set[str]:
        near = {
            r.item
            for later in marks[place + 1 : place + 6]
            for r in itertools.chain(later.roles, *(part.roles for part in later.inner))
            if r.kind in ("item", "sign", "context", "alone")
        }
        return {*active, *near}

    def _of_what(self, marks: Sequence[Mark], place: int, active: tuple[str, ...]) -> str:
        """A word that is a value of certain items only: a value here, a qualifier, or nothing to these items."""
        mark = marks[place]
        if any(not r.item or r.kind == "grade" for r in mark.roles):
            return "value"
        names = self._spoken_of(marks, place, active)
        if any(r.item in names and r.kind in ("value", "normal", "abnormal", "sign") for r in mark.roles):
            return "value"
        if any(r.item in names and r.kind == "qualifier" for r in mark.roles):
            return "qualifier"
        return "unit" if any(r.kind == "unit" and r.item in names for r in mark.roles) else "word"

    def _name(
        self,
        node: Node,
        candidates: tuple[str, ...],
        marks: Sequence[Mark],
        place: int,
        active: tuple[str, ...],
        nodes: list[Node],
        *,
        placed: bool,
    ) -> None:
        """Make the node an item name, a site or a value."""
        mark = node.mark
        if candidates and not self._is_value_here(marks, place, candidates, active, nodes):
            if mark.has("site") and self.sites.is_site(marks, place, candidates, active, nodes, placed=placed):
                told = any(r.kind == "value" and r.item in candidates for r in mark.roles)
                node.main = "value" if told else "site"
                return
            node.main, node.candidates = "item", candidates
            named = any(r.kind in ("item", "context") and r.item in candidates for r in mark.roles)
            node.sign = not named and not self._is_heading(mark, candidates)
        elif mark.has("ability"):
            told = opens_task(marks, place, self.items) or closes_task(marks, place, nodes, self.items)
            node.main = "value" if told else "filler"
        elif candidates and node.main not in ("value", "qualifier", "number", "heading", "side", "site"):
            node.main = "value"
        elif node.main in (
            "filler",
            "word",
            "severity",
            "side",
            "site",
            "comparison",
            "hedge",
            "equal",
            "unit",
            "direction",
            "position",
        ):
            spoken = next((n.candidates for n in reversed(nodes) if n.main == "item"), active)
            names = [c for c in spoken if node.main != "position" or not self.items[c].positions]
            if node.main == "hedge" and opens_other(marks, place, names):
                return  # "tandem fine. Possible right carotid bruit"
            if any(r.item in names and r.kind in ("value", "normal", "abnormal") for r in mark.roles):
                node.main = "value"
            elif mark.text.startswith("at ") and any(r.kind == "qualifier" and r.item in names for r in mark.roles):
                node.main = "qualifier"  # "tremor at rest"

    def _is_heading(self, mark: Mark, candidates: tuple[str, ...]) -> bool:
        return (
            mark.number is None
            and (mark.has("heading") or mark.has("rest"))
            and not any(r.item in candidates for r in mark.roles)
        )

    def _candidates(
        self, marks: Sequence[Mark], place: int, here: tuple[str, str], active: tuple[str, ...], nodes: list[Node]
    ) -> tuple[str, ...]:
        """Items the phrase may name here; those of the component last spoken of come first."""
        mark = marks[place]
        if place + 1 < len(marks) and marks[place + 1].text in _SERVICES:
            return ()
        if nodes and nodes[-1].main == "number" and any(r.kind == "unit" and r.item in active for r in mark.roles):
            return ()  # "pull test two steps": what was counted
        strong = self.short.full_names(marks, place, here)
        weak = [r.item for r in mark.roles if r.kind == "context"]
        accepted = [name for name in weak if self.short.holds(name, marks, place, here, active)]
        found = list(dict.fromkeys([*strong, *accepted]))
        if not found and mark.number is not None:
            return self.bare.of_unit(marks, place, here, nodes) or self.bare.of_number(marks, place, here, nodes)
        if not found and mark.role("rest"):
            return self.rest.items_of(marks, place, here, nodes)
        heading = mark.role("heading")
        if not found and heading is not None and f"{heading.key}_all" in self.items and not says_where(nodes):
            return (f"{heading.key}_all",)
        return tuple(
            sorted(
                found,
                key=lambda name: (
                    not (self.items[name].group and any(self.items[a].group == self.items[name].group for a in active)),
                    self.lexicon.component[name].value != here[0],
                    self.lexicon.component[name].value != here[1],
                ),
            )
        )

    def _is_value_here(
        self,
        marks: Sequence[Mark],
        place: int,
        candidates: tuple[str, ...],
        active: tuple[str, ...],
        nodes: list[Node],
    ) -> bool:
        """The phrase describes the item spoken of, rather than naming one of its own."""
        mark = marks[place]
        named = any(r.kind == "item" and r.item in candidates for r in mark.roles)
        whole = all(self.items[c].blanket for c in candidates)
        if not named and found_on(marks, place, whole=whole):
            return True
        last = next((node for node in reversed(nodes) if node.main == "item"), None)
        for name in last.candidates if last else ():
            if any(r.item == name and r.kind in ITEM_VALUE_KINDS for r in mark.roles):
                if name in candidates:
                    return not named and not (last and last.sign and not _is_title(last, nodes))
                return not named or not self._has_own_value(marks, place)
            if last and not last.sign and not named and any(r.item == name and r.kind == "sign" for r in mark.roles):
                behind = itertools.takewhile(lambda n: n is not last, reversed(nodes))
                return not any(n.main in ("value", "negation") for n in behind)
        spoken_of = any(r.item in active and r.kind in ITEM_VALUE_KINDS for r in mark.roles)
        whole = whole and not set(active) & set(candidates)  # "Sensory. No sensory loss.": it is spoken of already
        graded = any(self.items[a].scale and not self.items[a].blanket for a in active)
        going_on = last is None and not named and spoken_of and whole
        if going_on and not (graded and beside_limb(marks, place)):
            return all(n.main != "rest" for n in nodes)  # "Finger nose normal. Mild dysmetria on the left."
        for later in marks[place + 1 : place + 3]:
            owners = [r.item for r in later.roles if r.kind in ("item", "sign", "context")]
            if any(r.item in owners and r.kind in ITEM_VALUE_KINDS for r in mark.roles) and not named:
                return bool(later.role("item") or later.role("sign"))
            if owners or later.number is not None:
                break
        return False

    def _has_own_value(self, marks: Sequence[Mark], place: int) -> bool:
        after = marks[place + 1] if place + 1 < len(marks) else None
        return after is not None and (after.number is not None or (after.has(*VALUE_KINDS) and not after.has("side")))


def _is_title(node: Node, nodes: Sequence[Node]) -> bool:
    """ "Rigidity: right arm cogwheel": a sign in front of a colon, and what stands behind tells of it."""
    place = next(i for i, one in enumerate(nodes) if one is node)
    return any(one.main == "colon" for one in nodes[place + 1 : place + 2])
