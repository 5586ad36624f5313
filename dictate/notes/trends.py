"""Three visits and more: each compared with the one before, and what was said of one thing at every visit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.grammar.claims import SILENT
from dictate.model import Component, Examination, Finding, Pressure, Quantity, Score, Side, Status
from dictate.notes.compare import Comparison, compare
from dictate.notes.directions import timed
from dictate.notes.phrases import stands_out, statement
from dictate.notes.slots import (
    Slot,
    cover,
    covers_place,
    place_order,
    slot_name,
    slot_of,
    slot_text,
    split_items,
)
from dictate.notes.tying import values_beside


@dataclass(frozen=True)
class Point:
    """What one visit said; numbers: systolic and diastolic, or the one number, where there is one."""

    text: str
    numbers: tuple[float, ...] = ()


@dataclass(frozen=True)
class Trend:
    """One thing over all visits, in their order."""

    component: Component
    slot: Slot
    name: str
    unit: str
    points: tuple[Point, ...]

    @property
    def is_drawn(self) -> bool:
        """Whether three visits or more gave a number."""
        return sum(1 for point in self.points if point.numbers) > 2


def compare_all(exams: Sequence[Examination], grammar: Grammar) -> tuple[Comparison, ...]:
    """Every visit with the one before it; what was said to be unchanged counts with the value it is tied to."""
    found = []
    before, places = exams[0], tuple(range(len(exams[0].findings)))
    for later in exams[1:]:
        rows = compare(before, later, grammar).rows
        told = (tuple(dict.fromkeys(places[at] for at in row.earlier_at)) for row in rows)
        found.append(Comparison(tuple(replace(row, earlier_at=at) for row, at in zip(rows, told, strict=True))))
        before, places = tied(before, later, grammar)
    return tuple(found)


def tied(earlier: Examination, later: Examination, grammar: Grammar) -> tuple[Examination, tuple[int, ...]]:
    """The later examination with the earlier values in the place of "unchanged", and where each finding stood in it."""
    findings: list[tuple[int, Finding]] = []
    for at, finding in enumerate(later.findings):
        if finding.status is not Status.UNCHANGED:
            findings.append((at, finding))
        elif not values_beside(finding, later, grammar):
            values = [
                one.model_copy(update={"evidence": finding.evidence})
                for one in earlier.findings
                if one.item == finding.item
                and one.status not in SILENT
                and covers_place(finding, slot_of(one, one.side, grammar), grammar)
                and not _stated(later, one, grammar)
            ]
            findings += [(at, one) for one in values or [finding]]
    said = tuple(one for _, one in findings)
    whole = later.model_copy(update={"findings": said, "queries": (), "decisions": (), "figures": ()})
    return whole, tuple(at for at, _ in findings)


def trends(exams: Sequence[Examination], grammar: Grammar) -> tuple[Trend, ...]:
    """What was said at two visits or more, and not the same every time."""
    chain: list[Examination] = []
    for later in exams:
        chain.append(tied(chain[-1] if chain else later, later, grammar)[0])
    split = split_items(chain)
    visits = [_by_slot(exam, split, grammar) for exam in chain]
    slots = list(dict.fromkeys(slot for visit in visits for slot in visit))
    spoken_for: set[Slot] = set()  # wide statements that stand in a narrower row already
    found = []
    for slot in slots:
        real = [one for visit in visits for one in visit.get(slot, []) if one.status not in SILENT]
        if not real:
            continue
        told = []
        for exam, visit in zip(chain, visits, strict=True):
            at = None if slot in visit else cover(slot, real[0], exam, grammar)
            if at is not None and exam.findings[at].item == slot.item:
                spoken_for.add(slot_of(exam.findings[at], exam.findings[at].side, grammar))
            told.append(visit.get(slot) or ([] if at is None else [exam.findings[at]]))
        points = [_point(said, grammar) for said in told]
        if _differ(told, slot, grammar):
            name = slot_name(slot, real, grammar)
            walked = {value.note for value in (timed(one.value) for one in real) if isinstance(value, Quantity)}
            if len(walked) > 1:  # 10 m in 12 s and 6 m in 8 s: no line leads from one to the other
                points = [replace(point, numbers=()) for point in points]
            found.append(Trend(real[0].component, slot, name, real[0].unit, tuple(points)))
    found = [one for one in found if one.slot not in spoken_for]
    order = {slot.item: at for at, slot in reversed(list(enumerate(slots)))}
    components = list(Component)
    return tuple(
        sorted(found, key=lambda one: (components.index(one.component), order[one.slot.item], place_order(one.slot)))
    )


def _differ(told: Sequence[Sequence[Finding]], slot: Slot, grammar: Grammar) -> bool:
    """Whether the visits said different things: in whose words a normal was told, of it or of the whole, is none."""
    own = [[one for one in said if one.item == slot.item] for said in told]
    if any(stands_out(one, grammar) for said in own for one in said):
        return len({_point(said, grammar).text for said in told if said}) > 1
    return len({tuple(statement(one, grammar) for one in said) for said in own if said}) > 1


def _stated(exam: Examination, other: Finding, grammar: Grammar) -> bool:
    """Whether the visit also says something else of the same thing."""
    wanted = slot_of(other, other.side, grammar)
    return any(
        slot_of(one, one.side, grammar) == wanted and one.status is not Status.UNCHANGED for one in exam.findings
    )


def _by_slot(exam: Examination, split: set[str], grammar: Grammar) -> dict[Slot, list[Finding]]:
    found: dict[Slot, list[Finding]] = {}
    for finding in exam.findings:
        both = finding.side is Side.BOTH and finding.item in split
        for side in (Side.RIGHT, Side.LEFT) if both else (finding.side,):
            found.setdefault(slot_of(finding, side, grammar), []).append(finding)
    return found


def _point(said: Sequence[Finding], grammar: Grammar) -> Point:
    if not said:
        return Point(words.NOTHING)
    texts = (slot_text(one, grammar) for one in said)
    return Point(words.AND_ALSO.join(dict.fromkeys(texts)), _numbers(said[0]) if len(said) == 1 else ())


def _numbers(finding: Finding) -> tuple[float, ...]:
    value = timed(finding.value)
    if finding.status is not Status.MEASURED or finding.is_bound:
        return ()
    if isinstance(value, Pressure):
        return (value.systolic,) if value.diastolic is None else (value.systolic, value.diastolic)
    if isinstance(value, Quantity) and value.then is None and value.upto is None:
        return (value.number,)
    return (value.points,) if isinstance(value, Score) and value.points is not None else ()
