"""Examination → the lines of its note in fixed order of components, before they become text or a page."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.model import Certainty, Component, Examination, Finding, Position, Status
from dictate.notes.phrases import (
    capital,
    circumstances,
    is_blanket,
    item_of,
    nerve_label,
    nerve_order,
    nerve_sorted,
    phrase,
    place,
    short_title,
    stands_out,
    title,
    where_of,
)
from dictate.notes.questions import marks_of

SIDE_ORDER = (*words.SIDES, None)
PLAIN_LISTS = {  # statuses that --brief puts on one line each
    Status.NORMAL: words.NORMAL_LIST,
    Status.ABSENT: words.ABSENT_LIST,
    Status.NOT_EXAMINED: words.NOT_EXAMINED_LIST,
}
Stance = tuple[Position | None, float | None]


@dataclass(frozen=True)
class Part:
    """What a line says of one finding, and the numbers of the queries about it."""

    text: str
    at: int  # place in Examination.findings
    marks: tuple[int, ...] = ()


@dataclass(frozen=True)
class Line:
    """One line of the note before wrapping."""

    label: str
    parts: tuple[Part, ...] = ()
    between: str = ", "
    depth: int = 1
    computed: tuple[str, ...] = ()  # figures that belong under it

    @property
    def text(self) -> str:
        """The line without the numbers of its queries."""
        return f"{self.label} {self.between.join(part.text for part in self.parts)}".strip()

    @property
    def findings(self) -> tuple[int, ...]:
        """Places of the findings it holds."""
        return tuple(part.at for part in self.parts)


@dataclass(frozen=True)
class Layout:
    """The lines of every component; figures that belong to no line."""

    components: dict[Component, tuple[Line, ...]]
    loose: tuple[str, ...] = ()


def lay_out(
    exam: Examination, grammar: Grammar, *, brief: bool = False, parts: Iterable[Component] = Component
) -> Layout:
    """The lines of the note. brief: plain normal, absent and not examined findings share a line each.

    parts: those asked for; figures of others are then loose.
    """
    laying = _Laying(exam, grammar)
    groups = {component: laying.lines(component, brief=brief) for component in parts}
    loose = _place_figures(exam, groups)
    return Layout({component: tuple(lines) for component, lines in groups.items()}, tuple(loose))


def note_lines(exam: Examination, grammar: Grammar) -> dict[Component, tuple[Line, ...]]:
    """The lines of each component, with their findings and the figures under them."""
    return lay_out(exam, grammar).components


class _Laying:
    """The examination with what every line asks for."""

    def __init__(self, exam: Examination, grammar: Grammar) -> None:
        self.exam = exam
        self.grammar = grammar
        self.marks = marks_of(exam)

    def lines(self, component: Component, *, brief: bool) -> list[Line]:
        places = [at for at, finding in enumerate(self.exam.findings) if finding.component is component]
        telling = {self.exam.findings[at].item for at in places if not (brief and self._is_plain(at))}
        plain = [at for at in places if self.exam.findings[at].item not in telling]
        series = self._series(places)
        in_series = {at for line in series for at in line.findings}
        by_title: dict[tuple[str, str], list[int]] = {}
        for at in places:
            if at not in in_series and at not in plain:
                finding = self.exam.findings[at]
                by_title.setdefault((finding.item, title(finding, self.grammar)), []).append(at)
        lines = [self._item_line(*named, group) for named, group in by_title.items()]
        if nerve_sorted(component):
            lines.sort(key=self._nerve_place)
        first_series = min(in_series, default=0)
        before = sum(1 for line in lines if line.findings[0] < first_series)
        lines[before:before] = series
        return [*lines, *self._plain_lines(plain)]

    def _nerve_place(self, line: Line) -> tuple[int, int]:
        """Blankets first, then by nerve, then what belongs to no single nerve."""
        finding = self.exam.findings[line.findings[0]]
        if is_blanket(self.grammar, finding):
            return 0, line.findings[0]
        return nerve_order(nerve_label(self.grammar, finding.item)) or 99, line.findings[0]

    def _item_line(self, item: str, name: str, group: list[int]) -> Line:
        findings = self.exam.findings
        sites = list(dict.fromkeys(findings[at].site for at in group))
        group = sorted(group, key=lambda at: (sites.index(findings[at].site), SIDE_ORDER.index(findings[at].side)))
        parts = tuple(self._part(at, phrase(findings[at], self.grammar)) for at in group)
        between = "; " if any("," in part.text for part in parts) else ", "
        nerve = nerve_label(self.grammar, item) if nerve_sorted(findings[group[0]].component) else ""
        return Line(f"{nerve} {capital(name)}:".strip(), parts, between)

    def _part(self, at: int, text: str) -> Part:
        return Part(text, at, self.marks.get(at, ()))

    def _series(self, places: list[int]) -> list[Line]:
        """Readings in several positions or at several times: one line each, in the order dictated."""
        stances: dict[Stance, list[int]] = {}
        for at in places:
            finding = self.exam.findings[at]
            item = item_of(self.grammar, finding.item)
            if item is not None and item.positions and finding.position is not None:
                stances.setdefault((finding.position, finding.minutes), []).append(at)
        if len(stances) < 2:
            return []
        return [Line(f"{words.POSTURAL}:"), *(self._stance_line(group) for group in stances.values())]

    def _stance_line(self, group: list[int]) -> Line:
        findings = [self.exam.findings[at] for at in group]
        shared = [part for part in findings[0].detail if len(group) > 1 and all(part in one.detail for one in findings)]
        parts = []
        for at, finding in zip(group, findings, strict=True):
            own = finding.model_copy(update={"detail": tuple(part for part in finding.detail if part not in shared)})
            said = phrase(own, self.grammar, with_circumstances=False)
            parts.append(self._part(at, f"{short_title(finding, self.grammar)} {said}"))
        stance = circumstances(findings[0]) + (f" ({'; '.join(shared)})" if shared else "")
        return Line(f"{stance}:", tuple(parts), depth=2)

    def _is_plain(self, at: int) -> bool:
        """Normal, absent or not examined, certain, without anything more to say, and nothing that stands out."""
        finding = self.exam.findings[at]
        return (
            finding.status in PLAIN_LISTS
            and finding.certainty is Certainty.STATED
            and finding.value is None
            and not finding.detail
            and finding.position is None
            and at not in self.marks
            and not is_blanket(self.grammar, finding)
            and not stands_out(finding, self.grammar)
        )

    def _plain_lines(self, plain: list[int]) -> Iterator[Line]:
        for status, label in PLAIN_LISTS.items():
            group = tuple(
                Part(self._named(self.exam.findings[at]), at)
                for at in plain
                if self.exam.findings[at].status is status
            )  # fmt: skip
            if group:
                yield Line(label, group)

    def _named(self, finding: Finding) -> str:
        where = where_of(finding, self.grammar) if finding.status is Status.ABSENT else place(finding)
        return " ".join(filter(None, (title(finding, self.grammar), where)))


def _place_figures(exam: Examination, groups: dict[Component, list[Line]]) -> list[str]:
    """Put each figure under the last line that holds one of its readings; return those without a reading."""
    loose: list[str] = []
    for figure in exam.figures:
        where = [
            (lines, at)
            for lines in groups.values()
            for at, line in enumerate(lines)
            if set(line.findings) & set(figure.inputs)
        ]
        if not where:
            loose.append(figure.text)
            continue
        lines, at = where[-1]
        lines[at] = replace(lines[at], computed=(*lines[at].computed, figure.text))
    return loose
