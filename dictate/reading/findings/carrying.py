"""Sides and sites a sentence declares for all its statements, given to the findings that name none."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.model import Grade, Side
from dictate.reading.in_force.context import Context
from dictate.reading.marks import Mark
from dictate.reading.nodes import Node, limb_of
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.drafts import Draft, Said
from dictate.reading.statements.weights import Statement, Weigher

_LIMBS = ("limbs", "extremities")
_PUNCTUATION = ("comma", "colon", "stop", "semicolon")


class SideCarrier:
    """Takes sides from statements into the context, and from the context into findings."""

    def __init__(self, lexicon: Lexicon, weights: Weigher) -> None:
        self.items = lexicon.items
        self.plurals = frozenset(lexicon.grammar.common.plurals)
        self.weights = weights
        self.limbs = frozenset(limb for item in self.items.values() for limb in item.site_items.values())

    def adjective(self, statement: Statement, context: Context) -> None:
        """A bare side before a name holds for later names of the same scale in this sentence."""
        scale = self.items[statement.candidates[0]].scale
        before = statement.before
        sides = [(i, n) for i, n in enumerate(before) if n.main == "side"]
        said = [n for n in statement.nodes if n.main == "side"]
        whole = len(said) == 1 and all(
            self.items[name].blanket and named.sign for named in statement.names for name in named.candidates
        )
        if len(said) == 1 and self._only_opens(statement):
            context.adjective_side, context.adjective_scale = Side(said[0].key("side")), scale
        elif (
            sides
            and len({n.key("side") for n in said}) == 1
            and (_is_led(before, sides[-1][0]) or not self.weights.is_postposed(before, sides[-1][0]))
        ):
            context.adjective_side, context.adjective_scale = Side(sides[-1][1].key("side")), scale
        elif said:
            context.adjective_side, context.adjective_scale = Side(said[0].key("side")) if whole else None, ""
        if said:
            limb = statement.candidates[0] in self.limbs
            context.side_of_limbs = (limb or whole) and len(said) == 1

    def _only_opens(self, statement: Statement) -> bool:
        """ "Power on the right was": a component with its side, and nothing found yet."""
        blanket = all(self.items[name].blanket for name in statement.candidates)
        return blanket and not any(self.weights.is_value(n) or n.main == "negation" for n in statement.nodes)

    def over_lines(self, marks: Sequence[Mark], drafts: Sequence[Draft], context: Context) -> None:
        """At the end of a line. "Power, right arm" alone on it: the side of the muscles or jerks on the lines below.

        Any other line ends it: nobody knows how far such a title reaches.
        """
        context.heading_side = None
        scales = {self.items[draft.item].scale for draft in drafts if self._is_listed(draft)}
        alike = len(scales) == 1 and all(map(self._is_listed, drafts))
        if context.list_side is not None and alike and scales <= {context.list_scale or next(iter(scales))}:
            context.list_scale = scales.pop()
            for draft in drafts:
                draft.side = draft.side or context.list_side
            return
        context.list_side, context.list_scale = (None if drafts else self._side_title(marks)), ""

    def _is_listed(self, draft: Draft) -> bool:
        item = self.items[draft.item]
        return isinstance(draft.value, Grade) and item.sided == "paired" and not item.blanket

    def _side_title(self, marks: Sequence[Mark]) -> Side | None:
        """The one side of a line of nothing but titles and parts of the body."""
        parts = [part for mark in marks for part in (mark.inner or (mark,)) if not part.has("filler", *_PUNCTUATION)]
        sides = [role.key for part in parts if (role := part.role("side"))]
        rest = [part for part in parts if not part.has("side")]
        plain = all(part.has("heading", "site") or self._titles(part) for part in rest)
        return Side(sides[0]) if len(sides) == 1 and sides[0] in ("left", "right", "both") and plain else None

    def _titles(self, mark: Mark) -> bool:
        names = [role.item for role in mark.roles if role.kind == "item"]
        return bool(names) and all(self.items[name].blanket for name in names)

    def carry(self, draft: Draft, statement: Statement, context: Context, *, beside: Sequence[Draft] = ()) -> None:
        """Give the draft what its sentence, or a heading, said for it. beside: what its statement tells with it."""
        site = context.heading_site
        whole = self.items[draft.item].site_items
        part = whole.get(f"{limb_of(site)}_{draft.site}") if site and draft.site else None
        target = part or ((whole.get(site) or whole.get(limb_of(site))) if site else None)
        draft.site = "" if part else draft.site  # "Right arm. Power 4 proximally."
        item = self.items[target or draft.item]
        if target is not None:
            draft.item = target  # "Upper limbs: power normal"
            draft.spans.append(context.heading_span)
        elif site and not draft.site and (item.sited or (item.blanket and item.scale and not item.limb)):
            draft.site = site
            draft.spans.append(context.heading_span)
        meant = context.limb is None or context.limb.organ in ("", item.organ)  # "Left eye.": of what is of the eye
        limbs = self._is_plural(statement) or any(n.text.endswith(_LIMBS) for n in statement.names)
        plural = draft.item in self.limbs and not site and limbs  # "Left: ... Upper limbs 5."
        other = any(
            one.side not in (None, Side.BOTH, context.place_side)
            for one in itertools.takewhile(lambda one: one is not draft, beside)
        )
        meant = meant and not plural and not other
        if meant and draft.side is None and item.sided != "never" and context.place_side is not None:
            draft.side = context.place_side
            draft.spans.append(context.heading_span)
        if draft.side is None and draft.item in self.limbs and not limbs:
            # "right sided weakness, arm 4, leg 4+", "On the left: arm 3, leg 4"
            draft.side = context.adjective_side if context.side_of_limbs else context.heading_side
        if draft.side is not None or item.sided != "paired":
            return
        graded = item.kind == "grade" and not item.blanket
        if context.heading_side is not None and not other and (graded or not context.heading_of_grades):
            equal = any(n.mark.has("equal") for n in statement.nodes)  # behind "On the left, ...": of both again
            draft.side = Side.BOTH if equal else context.heading_side
        elif context.adjective_scale and not item.blanket and context.adjective_scale in (item.scale, item.listed_with):
            own = any(n.main == "side" for n in statement.nodes)
            draft.side = None if own or self._is_plural(statement) else context.adjective_side

    def _is_plural(self, statement: Statement) -> bool:
        """ "Right knee 3+, ankles 2+": both ankles are meant."""
        told = [*statement.names, *(node for node in statement.nodes if node.main == "site")]
        words = {word for name in told for word in name.text.lower().split()}
        return not words.isdisjoint(self.plurals)


def _is_led(before: Sequence[Node], place: int) -> bool:
    """ "4 in right shoulder abduction": of the name behind it, as at the start of a statement."""
    lead = [node.text for node in before[:place] if node.text != "the"]
    return not lead or lead[-1] in ("in", "of", "for")


def end_of_grades(nodes: Sequence[Node], context: Context) -> None:
    """A side said in a later sentence ends what "On the left, deltoid four." opened for grades; the other any title."""
    opened_here = context.place_side is not None
    sides = {node.key("side") for node in nodes if node.main == "side"}
    if not opened_here and sides and (context.heading_of_grades or sides - {context.heading_side}):
        context.heading_side = None


def go_on(
    drafts: Sequence[Draft], statement: Statement, said: Said, earlier: Sequence[Draft], items: Mapping[str, Item]
) -> None:
    """What goes on about a finding just told, in brackets or by a short name, is of its side and place."""
    _in_bracket(drafts, statement, said, items)
    _there(drafts, statement, said, items)
    _rated(drafts, statement, said, items)
    if _goes_on_by_name(statement, said):
        going_on(drafts, said, earlier)


def going_on(drafts: Sequence[Draft], said: Said, earlier: Sequence[Draft]) -> None:
    """ "Right pupil 3 mm. Brisk.": of the side just told, where the other side was not told right before it."""
    told = {draft.item for draft in said.drafts}
    sides = {draft.side for draft in [*earlier[-2:], *said.drafts] if draft.item in told}
    for draft in drafts:
        if len(sides) == 1 and draft.item not in told and draft.side is None:
            draft.side = next(iter(sides))


def _goes_on_by_name(statement: Statement, said: Said) -> bool:
    """ "Right pupil 3 mm, reaction brisk": by a short name for what the name before it may be, too."""
    short = all(node.mark.has("context") and not node.mark.has("item") for node in statement.names)
    return short and {*statement.candidates} <= {*said.candidates} and bool(said.drafts)


def _there(drafts: Sequence[Draft], statement: Statement, said: Said, items: Mapping[str, Item]) -> None:
    """ "Vibration absent at both great toes, joint position there is preserved": where the finding before it was."""
    named = statement.names[-1].mark.end if statement.names else -1
    there = any(node.text.partition(" ")[0] == "there" and node.mark.start == named for node in statement.nodes)
    if not there or not said.drafts or not said.drafts[-1].site:
        return
    for draft in drafts:
        if draft.side is None and not draft.site and items[draft.item].sited:
            draft.side, draft.site = said.drafts[-1].side, said.drafts[-1].site


def _rated(drafts: Sequence[Draft], statement: Statement, said: Said, items: Mapping[str, Item]) -> None:
    """ "Spastic in the right leg, Ashworth 2": a rating behind a comma, of the one place just told."""
    led = [node for node in statement.before if node.main != "filler"]
    told = said.drafts[-1] if len(said.drafts) == 1 else None
    if told is None or told.side is None or any(node.main != "comma" for node in led):
        return
    for draft in drafts[:1]:
        item = items[draft.item]
        rating = item.kind == "grade" and item.sited and not item.blanket and isinstance(draft.value, Grade)
        if rating and draft.side is None and not draft.site and items[told.item].sited:
            draft.side, draft.site = told.side, told.site


def _in_bracket(drafts: Sequence[Draft], statement: Statement, said: Said, items: Mapping[str, Item]) -> None:
    """ "Tone: left arm increased (Ashworth 1+)": what stands in brackets behind a place was found there."""
    opened = bool(statement.before) and statement.before[-1].text == "("
    if not opened or not said.drafts or not said.drafts[-1].site:
        return
    last = said.drafts[-1]
    for draft in drafts:
        if draft.side is None and not draft.site and items[draft.item].sited and items[last.item].sited:
            draft.side, draft.site = last.side, last.site


def told_of(drafts: Sequence[Draft], side: Side | None) -> tuple[bool, Side | None]:
    """Whether the last finding has a place, and the one side of all of them; `side` where they have none."""
    sides = {draft.side for draft in drafts if draft.side is not None}
    return bool(drafts[-1].site), side if not sides else sides.pop() if len(sides) == 1 else None
