"""Position, minutes and manoeuvre given to the readings of a sentence."""

from __future__ import annotations

import itertools
from dataclasses import replace

from dictate.model import Position
from dictate.reading.in_force.context import Context, Posture
from dictate.reading.in_force.posture_changes import events, minutes_near, posture_at
from dictate.reading.nodes import Node, between
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.drafts import Draft


class PostureGiver:
    """Gives readings the posture in force when they were said."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items

    def give(self, nodes: list[Node], drafts: list[Draft], context: Context) -> list[Node]:
        """Give the sentence's readings their position and minutes; returns the nodes that said them.

        A reading said of two positions at once is added to the drafts a second time.
        """
        covered: list[Node] = []
        positional = [d for d in drafts if self.items[d.item].positions]
        if context.posture_unknown:
            context.posture_open = context.after_pressure = context.after_pulse = False
            return covered
        found = events(nodes, context.posture)
        felt = context.after_pulse and all(self.items[d.item].kind == "presence" for d in positional)  # "No symptoms."
        carried = context.posture if context.posture_open or context.after_pressure or felt else None
        rhythm = any(d.item == "heart_rhythm" for d in drafts)  # "The heart is regular at 68.": of no posture
        carried = carried if context.posture_open or not rhythm else None
        first_pressure = next((d for d in positional if self.items[d.item].kind == "pressure"), None)
        if carried is not None and not context.posture_open and first_pressure is not None:
            carried = None
        anchors = [d.anchor for d in positional]
        given: list[tuple[Draft, Posture]] = []
        for draft in positional:
            posture = self._own_posture(draft, found, nodes) or posture_at(draft.anchor, nodes, anchors, carried, found)
            felt_after = posture is not None and self._is_of_both(draft, posture, found)
            if posture is not None and not felt_after and not self._of_later(draft, posture, nodes):
                given.append((draft, posture))
        given = self._without_former(given, nodes)
        last = given[-1][1] if given else None
        self._deal(given, _pairs(found, nodes), drafts)
        self._share(positional, nodes)
        if positional:
            covered.extend(node for _, posture in found for node in posture.nodes)
        if positional:
            context.posture = last
            was, kind = context.after_pressure, self.items[positional[-1].item].kind
            context.after_pressure = kind == "pressure" and last is not None
            context.after_pulse = was and kind == "quantity" and last is not None
            context.posture_open = False
        elif found and not drafts:
            context.posture, context.posture_open = found[-1][1], True
            covered.extend(found[-1][1].nodes)
        else:
            context.posture_open = context.after_pressure = context.after_pulse = False
        return covered

    def _is_of_both(self, draft: Draft, posture: Posture, found: list[tuple[int, Posture]]) -> bool:
        """ "Upright 112/70, flat it had been 139/80, and he didn't feel giddy": of getting up, or nobody knows."""
        felt = self.items[draft.item].kind == "presence" and posture.position is Position.SUPINE
        return felt and any(p.position is Position.STANDING and at < draft.anchor for at, p in found)

    def _of_later(self, draft: Draft, posture: Posture, nodes: list[Node]) -> bool:
        """ "Pulse 78 blood pressure lying 118/76", "pulse 78 vital capacity 3.1 sitting": of what came between."""
        start = min((node.mark.start for node in posture.nodes), default=0)
        said = [node for node in between(nodes, draft.anchor, start) if node.main != "filler"]
        names = [n for n in said if n.main == "item" and n.mark.number is None and draft.item not in n.candidates]
        named_last = bool(names) and said[-1] is names[-1]
        return named_last or any(not self.items[name].positions for node in names for name in node.candidates)

    def _without_former(self, given: list[tuple[Draft, Posture]], nodes: list[Node]) -> list[tuple[Draft, Posture]]:
        """ "142/86 falling to 110/70 on standing", "on standing it fell from 142/86 to 110/70": the first before."""
        former = [
            draft
            for (draft, one), (after, two) in itertools.pairwise(given)
            if one is two
            and draft.item == after.item
            and _changes_to(draft, after, nodes)
            and (_is_change(one) or _comes_behind(one, after) or any(p is not one for _, p in given))
        ]
        return [(draft, posture) for draft, posture in given if not any(draft is one for one in former)]

    def _share(self, positional: list[Draft], nodes: list[Node]) -> None:
        """ "110/70, pulse 64 lying": a pressure shares the position of the pulse named with it."""
        for pressure, pulse in itertools.pairwise(positional):
            kinds = (self.items[pressure.item].kind, self.items[pulse.item].kind)
            said = between(nodes, pressure.anchor, pulse.anchor)
            parted = any(n.main in ("semicolon", "stop", "position", "manoeuvre") for n in said)
            if kinds != ("pressure", "quantity") or pressure.site or parted:
                continue
            if pressure.position is None and not pressure.detail:
                pressure.position, pressure.minutes = pulse.position, pulse.minutes
            elif pressure.position is pulse.position and pressure.minutes is None:
                pressure.minutes = pulse.minutes  # "standing 110/70, pulse 80 at one minute"

    def _deal(
        self, given: list[tuple[Draft, Posture]], pairs: list[tuple[Posture, Posture]], drafts: list[Draft]
    ) -> None:
        """Give each draft its posture; of two said together, each its own reading, or both the only one.

        "Lying and standing 130/80 and 126/80"; "lying and standing 120/80" is two readings of one value.
        """
        for draft, posture in given:
            pair = next((pair for pair in pairs if any(one is posture for one in pair)), (posture,))
            alike = [one for one, its in given if one.item == draft.item and any(its is of_pair for of_pair in pair)]
            if len(pair) == len(alike) == 2:
                posture = pair[0] if alike[0] is draft else pair[-1]
            elif len(pair) == 2 and len(alike) == 1:
                other = replace(draft, spans=list(draft.spans), detail=list(draft.detail))
                self._give(other, pair[0])
                drafts.insert(next(place for place, one in enumerate(drafts) if one is draft), other)
                posture = pair[1]
            self._give(draft, posture)

    def _own_posture(self, draft: Draft, found: list[tuple[int, Posture]], nodes: list[Node]) -> Posture | None:
        """ "no dizziness on standing": a symptom's own words name its posture."""
        if self.items[draft.item].kind != "presence":
            return None
        at = next((i for i, n in enumerate(nodes) if n.main == "item" and n.mark.start == draft.anchor), 0)
        if nodes[at].main == "item" and (held := self.lexicon.position_in(nodes[at].text)):
            posture = Posture(position=Position(held), nodes=(nodes[at],))
            minutes_near(nodes, at, posture)  # "no symptoms on standing at two minutes"
            return posture
        end = max(e for _, e in draft.spans)
        return next(
            (p for at, p in found if end <= at <= end + 2 and p.nodes[0].text.startswith(("on ", "when ", "after "))),
            None,
        )

    def _give(self, draft: Draft, posture: Posture) -> None:
        draft.position = posture.position
        draft.minutes = posture.minutes
        if posture.manoeuvre and not draft.site:
            draft.site = posture.manoeuvre
        if posture.detail:
            draft.detail.append(posture.detail)
        draft.spans.extend((n.mark.start, n.mark.end) for n in posture.nodes if abs(n.mark.start - draft.anchor) < 15)


def _changes_to(draft: Draft, after: Draft, nodes: list[Node]) -> bool:
    """Between the two numbers nothing but words stand, the last of them "to" or an arrow."""
    said = [n for n in between(nodes, draft.anchor, after.anchor) if n.main != "number"]
    return (
        bool(said)
        and said[-1].text.split()[-1] in ("to", "->")
        and all(n.main in ("filler", "word", "qualifier") for n in said)
    )


def _comes_behind(posture: Posture, draft: Draft) -> bool:
    """ "Falls from 140/80 to 110/70 after three minutes of standing": of the second, and of nothing before it."""
    return bool(posture.nodes) and posture.nodes[0].mark.start > draft.anchor


def _is_change(posture: Posture) -> bool:
    """ "On standing": a change of position, and no title of the readings that follow."""
    return bool(posture.nodes) and posture.nodes[0].text.startswith(("on ", "after ", "when ", "upon "))


def _pairs(found: list[tuple[int, Posture]], nodes: list[Node]) -> list[tuple[Posture, Posture]]:
    """Postures said together: nothing but a conjunction stands between their words."""
    pairs = []
    for (_, one), (start, two) in itertools.pairwise(found):
        if not one.nodes or one.position is two.position or None in (one.position, two.position):
            continue
        end = max(node.mark.end for node in one.nodes)
        said = [node.main for node in nodes if end <= node.mark.start < start and node.main != "filler"]
        if said == ["conj"]:
            pairs.append((one, two))
    return pairs
