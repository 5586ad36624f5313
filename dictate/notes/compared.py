"""Comparisons of visits as text, as a table and as JSON."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.model import Component, Examination, number_text
from dictate.notes.compare import Comparison, Difference
from dictate.notes.directions import Kind
from dictate.notes.phrases import STAY, one_line, visible
from dictate.notes.tables import table
from dictate.notes.trends import Trend, compare_all, trends

COLUMNS = (
    "earlier", "later", "change", "component", "item", "side", "site", "position", "minutes", "earlier_value",
    "later_value", "difference", "reason", "scale", "condition",
)  # fmt: skip
FORMAT = "dictate/comparison"
FORMAT_VERSION = 1
WIDTH = 100


@dataclass(frozen=True)
class Visits:
    """Examinations of one patient in order, what became of every statement from one to the next, and the trends."""

    exams: tuple[Examination, ...]
    comparisons: tuple[Comparison, ...]
    trends: tuple[Trend, ...]  # empty for two visits
    states: tuple[str | None, ...] = ()  # of their records: draft, signed, amended, withdrawn

    @property
    def out_of_order(self) -> bool:
        """Whether the dates say that a later examination came first."""
        times = [exam.examined_at.replace(tzinfo=None) for exam in self.exams if exam.examined_at]
        return times != sorted(times)


def compare_visits(exams: Sequence[Examination], grammar: Grammar, states: Sequence[str | None] = ()) -> Visits:
    """Two examinations or more, in order of time. states: of their records, in the same order; None: from a file."""
    drawn = trends(exams, grammar) if len(exams) > 2 else ()
    return Visits(tuple(exams), compare_all(exams, grammar), drawn, tuple(states))


def visit_name(visits: Visits, at: int) -> str:
    """`visit 2, 2026-03-04 14:05`."""
    time = visits.exams[at].examined_at
    stamp = words.NOT_STATED_SHORT if time is None else time.isoformat(sep=" ", timespec="minutes")
    return words.VISIT.format(number=at + 1, time=stamp)


def from_to(visits: Visits, at: int) -> str:
    """Which two visits are compared; a time that was not stated stands at the top alone."""
    earlier, later = (_in_heading(visits, one) for one in (at, at + 1))
    return words.FROM_TO.format(earlier=earlier, later=later)


def _in_heading(visits: Visits, at: int) -> str:
    time = visits.exams[at].examined_at
    if time is None:
        return words.VISIT_SHORT.format(number=at + 1)
    return words.VISIT_OF.format(number=at + 1, time=time.isoformat(sep=" ", timespec="minutes"))


def row_text(row: Difference) -> str:
    """One row as `knee jerk left: 2+, now 3+ (reason)`."""
    if row.earlier and row.later and row.kind is not Kind.UNCHANGED:
        said = words.NOW.format(earlier=row.earlier, later=row.later)
    else:
        said = row.later or row.earlier
        if row.kind is Kind.UNCHANGED and row.reason:
            said = words.NOW.format(earlier=row.earlier, later=row.later)
    behind = "; ".join(filter(None, (row.difference, row.reason)))
    return f"{row.name}: {said}" + (f" ({behind})" if behind else "")


def row_texts(rows: Sequence[Difference]) -> list[str]:
    """All rows of one kind; of the unchanged, those that say the same stand together: `naming, repetition: normal`."""
    names: dict[tuple[str, int], list[str]] = {}
    for at, row in enumerate(rows):
        said = row_text(row).removeprefix(f"{row.name}: ")
        names.setdefault((said, -1 if row.kind is Kind.UNCHANGED else at), []).append(row.name)
    return [f"{', '.join(group)}: {said}" for (said, _), group in names.items()]


def by_kind(comparison: Comparison) -> dict[Kind, dict[Component, list[Difference]]]:
    """Rows under their headings, by component."""
    found: dict[Kind, dict[Component, list[Difference]]] = {}
    for kind in words.KINDS:
        rows = [row for row in comparison.rows if row.kind == kind]
        for row in rows:
            found.setdefault(Kind(kind), {}).setdefault(row.component, []).append(row)
    return found


def comparison_text(visits: Visits) -> str:
    """What changed, the same from visit to visit, and the trends; nothing is hidden, the unchanged stands last."""
    out = [words.COMPARISON, *head(visits)]
    for at, comparison in enumerate(visits.comparisons):
        if len(visits.exams) > 2:
            out += ["", from_to(visits, at)]
        if not comparison.changes:
            out += ["", words.NO_CHANGE]
        for kind, components in by_kind(comparison).items():
            out += ["", words.KINDS[kind]]
            for component, rows in components.items():
                out += _wrap(f"{words.NAMES[component]}: {'; '.join(row_texts(rows))}")
    if visits.trends:
        out += ["", words.TRENDS, *(line for trend in visits.trends for line in _wrap(trend_text(trend)))]
    out += ["", *textwrap.wrap(words.COMPARISON_CAUTION, WIDTH)]
    return visible("\n".join(out).replace(STAY, " ")) + "\n"


def head(visits: Visits) -> list[str]:
    """Patient and visits, and a word where the dates contradict the order."""
    patient = next((exam.patient for exam in visits.exams if exam.patient), "")
    lines = [words.PATIENT.format(patient=one_line(patient)) if patient else words.NO_PATIENT]
    lines += [visit_name(visits, at).capitalize() + _standing(visits, at) for at in range(len(visits.exams))]
    return [*lines, words.OUT_OF_ORDER] if visits.out_of_order else lines


def _standing(visits: Visits, at: int) -> str:
    """What the records say of a visit that its statements do not."""
    return words.VISIT_STATES.get((visits.states[at] if at < len(visits.states) else None) or "", "")


def trend_text(trend: Trend) -> str:
    """All visits of one thing in a line."""
    return f"{trend.name}: {words.TREND_STEP.join(point.text for point in trend.points)}"


def comparison_csv(visits: Visits) -> str:
    """One row per statement and pair of visits."""
    return table(COLUMNS, (_cells(at, row) for at, one in enumerate(visits.comparisons) for row in one.rows))


def comparison_json(visits: Visits) -> str:
    """All rows of every pair of visits, and the trends."""
    content = {
        "format": FORMAT,
        "version": FORMAT_VERSION,
        "visits": [
            {"patient": exam.patient, "examined_at": exam.examined_at and exam.examined_at.isoformat(),
             "state": visits.states[at] if at < len(visits.states) else None}  # None: from a file
            for at, exam in enumerate(visits.exams)
        ],
        "out_of_order": visits.out_of_order,
        "differences": [
            dict(zip(COLUMNS, cells, strict=True)) | {"earlier_at": row.earlier_at, "later_at": row.later_at}
            for row, cells in _all_cells(visits)
        ],
        "trends": [
            {"name": one.name, "component": one.component.value, "item": one.slot.item, "unit": one.unit,
             "values": [point.text.replace(STAY, " ") for point in one.points],
             "numbers": [point.numbers for point in one.points]}
            for one in visits.trends
        ],
    }  # fmt: skip
    return json.dumps(content, ensure_ascii=False, indent=1) + "\n"


def _all_cells(visits: Visits) -> Iterator[tuple[Difference, tuple[str, ...]]]:
    for at, one in enumerate(visits.comparisons):
        for row in one.rows:
            yield row, _cells(at, row)


def _cells(at: int, row: Difference) -> tuple[str, ...]:
    slot = row.slot
    return (
        str(at + 1),
        str(at + 2),
        row.kind.value,
        row.component.value,
        slot.item,
        slot.side.value if slot.side else "",
        slot.site,
        slot.position.value if slot.position else "",
        "" if slot.minutes is None else number_text(slot.minutes),
        *(text.replace(STAY, " ") for text in (row.earlier, row.later, row.difference, row.reason)),
        slot.scale,
        slot.condition,
    )


def _wrap(text: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent="  ", subsequent_indent="      ", break_long_words=False, break_on_hyphens=False
    )
