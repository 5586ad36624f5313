"""Earlier and later examination of one patient → item by item what became of every statement."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from math import inf

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.grammar.claims import SILENT
from dictate.grammar.walks import mean_walk
from dictate.model import Component, Examination, Finding, Side, Status
from dictate.notes.directions import Change, Kind, beside_whole, change
from dictate.notes.phrases import is_blanket, item_of, phrase, stands_out, title
from dictate.notes.slots import (
    Slot,
    cover,
    covers_place,
    place_order,
    slot_name,
    slot_of,
    slot_text,
    speaks_of_component,
    split_items,
    what_differs,
)
from dictate.notes.tying import claims_unchanged, values_beside


@dataclass(frozen=True)
class Difference:
    """What became of one statement, and the words of both visits; empty where one said nothing."""

    kind: Kind
    component: Component
    slot: Slot
    name: str  # of the item with place, position and time, as the comparison writes it
    earlier: str = ""
    later: str = ""
    difference: str = ""  # later less earlier, with unit
    reason: str = ""
    earlier_at: tuple[int, ...] = ()  # places in the findings of the earlier examination
    later_at: tuple[int, ...] = ()


@dataclass(frozen=True)
class Comparison:
    """All rows in the fixed order of components."""

    rows: tuple[Difference, ...]

    @property
    def changes(self) -> tuple[Difference, ...]:
        """Rows that say more than that nothing changed."""
        return tuple(row for row in self.rows if row.kind is not Kind.UNCHANGED)


@dataclass
class _Visit:
    """One examination by what its statements speak of."""

    exam: Examination
    grammar: Grammar
    slots: dict[Slot, list[int]] = field(default_factory=dict)
    used: set[int] = field(default_factory=set)  # wide statements that already spoke for narrower ones
    claimed: set[int] = field(default_factory=set)  # values said to be unchanged in the same breath
    claims: set[int] = field(default_factory=set)  # where that was said: it speaks of them, and of nothing else

    def fill(self, split: set[str]) -> None:
        for at, finding in enumerate(self.exam.findings):
            values = values_beside(finding, self.exam, self.grammar)
            self.claimed |= set(values)
            if values:
                self.claims.add(at)
                continue
            both = finding.side is Side.BOTH and finding.item in split
            for side in (Side.RIGHT, Side.LEFT) if both else (finding.side,):
                self.slots.setdefault(slot_of(finding, side, self.grammar), []).append(at)

    def said(self, slot: Slot) -> list[Finding]:
        return [self.exam.findings[at] for at in self.slots.get(slot, ())]


def compare(earlier: Examination, later: Examination, grammar: Grammar) -> Comparison:
    """What became of every statement of two examinations of one patient."""
    return _Comparing(earlier, later, grammar).result()


class _Comparing:
    def __init__(self, earlier: Examination, later: Examination, grammar: Grammar) -> None:
        self.grammar = grammar
        self.was, self.now = _Visit(earlier, grammar), _Visit(later, grammar)
        self.met: dict[bool, set[tuple[int, int]]] = {False: set(), True: set()}  # by flip: earlier place, later place
        split = split_items((earlier, later))
        self.was.fill(split)
        self.now.fill(split)

    def result(self) -> Comparison:
        slots = list(dict.fromkeys((*self.now.slots, *self.was.slots)))
        by_item: dict[tuple[str, str], list[Slot]] = {}  # and by scale: one says nothing of another
        for slot in sorted(slots, key=self._reach):  # narrow ones first: wide ones may have spoken for them
            by_item.setdefault((slot.item, slot.scale), []).append(slot)
        rows = [row for group in by_item.values() for row in self._item_rows(group)]
        order = {slot.item: at for at, slot in reversed(list(enumerate(slots)))}
        components = list(Component)
        rows.sort(key=lambda row: (components.index(row.component), order[row.slot.item], place_order(row.slot)))
        return Comparison(tuple(rows))

    def _reach(self, slot: Slot) -> tuple[bool, float, bool, bool]:
        """Whether it speaks of many items, of how many, or of an item without the scale or side that others name."""
        finding = (self.now.said(slot) or self.was.said(slot))[0]
        item = item_of(self.grammar, slot.item)
        named = len(item.covers) if item and item.covers else inf  # a whole component names none
        return is_blanket(self.grammar, finding), named, not slot.scale, slot.side is None

    def _item_rows(self, slots: list[Slot]) -> Iterator[Difference]:
        gone: list[Slot] = []
        come: list[Slot] = []
        for slot in slots:
            old, new = self.was.said(slot), self.now.said(slot)
            if old and new:
                yield self._both(slot, old, new)
            elif old:
                row = self._covered(slot, old, self.now, flip=False)
                yield from (row,) if row else ()
                gone += [] if row else [slot]
            else:
                row = self._covered(slot, new, self.was, flip=True)
                yield from (row,) if row else ()
                come += [] if row else [slot]
        gone, come = ([slot for slot in slots if not self._is_told(slot)] for slots in (gone, come))
        yield from self._left_over(gone, come)

    def _is_told(self, slot: Slot) -> bool:
        """Whether all that one visit says of it stood beside narrower statements of the other already."""
        return any(
            places and set(places) <= visit.used
            for visit, places in zip((self.was, self.now), self._places(slot), strict=True)
        )

    def _both(self, slot: Slot, old: list[Finding], new: list[Finding]) -> Difference:
        claimed = [one for one in new if one.status is Status.UNCHANGED]
        real = [one for one in new if one.status is not Status.UNCHANGED] or claimed
        trials = mean_walk(old), mean_walk(real)
        if _said(old) == _said(new):
            found = Change(Kind.UNCHANGED)
        elif trials[0] is not None and trials[1] is not None:
            found = self._change(trials[0], trials[1])
            if len(old) > 1 or len(real) > 1:
                reason = "; ".join(filter(None, (words.OF_TRIALS, found.reason)))
                found = Change(found.kind, found.difference, reason)
        elif len(_said(old)) > 1 or len(_said(real)) > 1:
            found = Change(Kind.NOT_COMPARABLE, reason=words.SAID_TWICE)
        else:
            found = self._change(old[0], real[0])
        if found == Change(Kind.UNCHANGED) and self._is_rest(self.was, old[0]) != self._is_rest(self.now, real[0]):
            found = Change(Kind.UNCHANGED, reason=words.OF_REST)
        if self._claims(slot, new) and real[0].status is not Status.UNCHANGED and old[0].status not in SILENT:
            found = self._checked(found)
        return self._row(slot, found, old, new)

    def _is_rest(self, visit: _Visit, wide: Finding) -> bool:
        """Whether a statement about many items stands beside one of them that stands out: then it is of the others."""
        item = item_of(self.grammar, wide.item)
        if item is None or not is_blanket(self.grammar, wide):
            return False
        told = (one for one in visit.exam.findings if one.item != wide.item and stands_out(one, self.grammar))
        return any(one.item in item.covers if item.covers else one.component is wide.component for one in told)

    def _checked(self, found: Change) -> Change:
        """A value that was said to be unchanged, held against the earlier one."""
        if found.kind is Kind.UNCHANGED:
            return Change(Kind.UNCHANGED, reason=words.TIED)
        return Change(Kind.NOT_SO, found.difference, words.SAID_UNCHANGED)

    def _claims(self, slot: Slot, new: list[Finding]) -> bool:
        """Whether this visit says that nothing changed here: in the same words, or of the whole item."""
        wide = {
            at
            for at, one in enumerate(self.now.exam.findings)
            if one.item == slot.item and one.status is Status.UNCHANGED and covers_place(one, slot, self.grammar)
        } - self.now.claims
        self.now.used |= wide
        said = any(claims_unchanged(one, self.grammar) for one in new)
        return said or bool(wide) or not self.now.claimed.isdisjoint(self.now.slots[slot])

    def _change(self, old: Finding, new: Finding) -> Change:
        if Status.UNCHANGED in (old.status, new.status):
            if old.status not in SILENT:
                return Change(Kind.UNCHANGED, reason=words.TIED)
            return Change(Kind.NOT_COMPARABLE, reason=words.NOTHING_TO_TIE)
        if old.status is new.status and new.status in SILENT:
            return Change(Kind.UNCHANGED)
        if old.status in SILENT and new.status in SILENT:
            return Change(Kind.CHANGED)
        if new.status is Status.NOT_EXAMINED:
            return Change(Kind.NOT_EXAMINED)
        if new.status is Status.NOT_ASSESSABLE:
            return Change(Kind.NOT_ASSESSABLE)
        if old.status is Status.NOT_EXAMINED:
            return Change(Kind.NOT_EXAMINED_BEFORE)
        if old.status is Status.NOT_ASSESSABLE:
            return Change(Kind.NOT_ASSESSABLE_BEFORE)
        return change(old, new, self.grammar)

    def _covered(self, slot: Slot, said: list[Finding], other: _Visit, *, flip: bool) -> Difference | None:
        """A statement that the other visit made only as part of a wider one; None when it did not."""
        at = cover(slot, said[0], other.exam, self.grammar, apart_from=other.claims)
        if at is None or len(_said(said)) > 1:
            return None
        wide = other.exam.findings[at]
        whole = wide.item == slot.item
        stand_in = wide.model_copy(update={"item": slot.item, "component": said[0].component, "side": slot.side})
        stand_in = stand_in.model_copy(
            update={"site": slot.site, "position": slot.position, "minutes": slot.minutes, "evidence": wide.evidence}
        )
        if wide.status is Status.NORMAL and said[0].status in (Status.PRESENT, Status.ABSENT):
            stand_in = stand_in.model_copy(update={"value": None})
        found = self._change(stand_in, said[0]) if flip else self._change(said[0], stand_in)
        if speaks_of_component(wide, self.grammar) and wide.status is Status.NORMAL and not whole:
            found = beside_whole(found, named_now=flip)
        told = (words.NOTHING_TO_TIE,) if whole else (words.NOTHING_TO_TIE, words.SAID_OTHERWISE)
        if found.kind is Kind.NOT_COMPARABLE and found.reason not in told:
            return None
        other.used.add(at)
        places = self._places(slot)
        pairs = {(at, mine) for mine in places[1]} if flip else {(mine, at) for mine in places[0]}
        if pairs <= self.met[not flip]:
            return None  # each speaks for the other: "both sides" and no side
        self.met[flip] |= pairs
        text = slot_text(wide, self.grammar, wide=not whole)
        earlier, later = (text, self._texts(said)) if flip else (self._texts(said), text)
        earlier_at, later_at = ((at,), places[1]) if flip else (places[0], (at,))
        return Difference(
            found.kind, said[0].component, slot, slot_name(slot, said, self.grammar), earlier, later, found.difference,
            found.reason, earlier_at, later_at,
        )  # fmt: skip

    def _left_over(self, gone: list[Slot], come: list[Slot]) -> Iterator[Difference]:
        """What only one visit speaks of: side by side where both speak of the item, and yet of other places."""
        if gone and come:
            old, new = self._all(self.was, gone), self._all(self.now, come)
            reason = _what_differs(list(what_differs(gone, come)))
            found = Change(Kind.NOT_COMPARABLE, reason=reason)
            slot = Slot(gone[0].item, scale=gone[0].scale)
            yield Difference(
                found.kind, new[0].component, slot, title(new[0], self.grammar), self._full(old),
                self._full(new), "", reason, _flat(self.was, gone), _flat(self.now, come),
            )  # fmt: skip
            return
        for slot in gone:
            yield self._row(slot, Change(Kind.NOT_DICTATED), self.was.said(slot), [])
        for slot in come:
            new = self.now.said(slot)
            claimed = all(one.status is Status.UNCHANGED for one in new)
            reason = words.NOTHING_TO_TIE if claimed else ""
            kind = Kind.NOT_COMPARABLE if claimed else Kind.NOT_DICTATED_BEFORE
            yield self._row(slot, Change(kind, reason=reason), [], new)

    def _all(self, visit: _Visit, slots: list[Slot]) -> list[Finding]:
        return [one for slot in slots for one in visit.said(slot)]

    def _row(self, slot: Slot, found: Change, old: list[Finding], new: list[Finding]) -> Difference:
        said = [*new, *old]
        earlier_at, later_at = self._places(slot)
        return Difference(
            found.kind, said[0].component, slot, slot_name(slot, said, self.grammar), self._texts(old),
            self._texts(new), found.difference, found.reason, earlier_at, later_at,
        )  # fmt: skip

    def _places(self, slot: Slot) -> tuple[tuple[int, ...], tuple[int, ...]]:
        return tuple(self.was.slots.get(slot, ())), tuple(self.now.slots.get(slot, ()))

    def _texts(self, said: Iterable[Finding]) -> str:
        return words.AND_ALSO.join(dict.fromkeys(slot_text(one, self.grammar) for one in said))

    def _full(self, said: Iterable[Finding]) -> str:
        return ", ".join(dict.fromkeys(phrase(one, self.grammar) for one in said))


def _said(findings: Iterable[Finding]) -> set[str]:
    """What was said, apart from where in the dictation."""
    return {one.model_copy(update={"evidence": one.evidence[:1], "side": None}).model_dump_json(
        exclude={"evidence", "corrected", "readings", "excepted", "earlier"}) for one in findings}  # fmt: skip


def _what_differs(parts: list[str]) -> str:
    """`side differs`, `side, position and condition differ`."""
    if len(parts) < 2:
        return words.PLACE_DIFFERS.format(what="".join(parts))
    return words.PLACES_DIFFER.format(what=", ".join(parts[:-1]), last=parts[-1])


def _flat(visit: _Visit, slots: Iterable[Slot]) -> tuple[int, ...]:
    return tuple(dict.fromkeys(at for slot in slots for at in visit.slots[slot]))
