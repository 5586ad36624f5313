"""Examination → the note as plain text, in fixed order of components."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from dataclasses import dataclass, field

from dictate.grammar import Grammar
from dictate.model import (
    Certainty,
    Component,
    Examination,
    Finding,
    Position,
    Query,
    Remark,
    RemarkKind,
    Status,
)
from dictate.notes import words
from dictate.notes.phrases import (
    STAY,
    age_line,
    capital,
    circumstances,
    is_blanket,
    item_name,
    item_of,
    nerve_label,
    nerve_order,
    nerve_sorted,
    one_line,
    phrase,
    place,
)

WIDTH = 100
SIDE_ORDER = (*words.SIDES, None)
Stance = tuple[Position | None, float | None]


@dataclass(frozen=True)
class Line:
    """One line of the note before wrapping, and the findings it holds."""

    text: str
    findings: tuple[int, ...] = ()  # places in Examination.findings
    depth: int = 1
    computed: tuple[str, ...] = field(default=())  # figures that belong under it


def write_note(exam: Examination, grammar: Grammar, *, brief: bool = False) -> str:
    """The note. brief: findings that are plainly normal or absent share one line, words not placed are left out."""
    note = _Note(exam, grammar)
    lines = [*note.head(), *note.components(brief=brief), *note.sections()]
    if not exam.signed_by:
        lines += note.queries(brief=brief)
        if not brief:
            lines += note.not_placed()
    lines += ["", *_wrap(words.CAUTION, depth=0)]
    return "\n".join(lines).replace(STAY, " ") + "\n"


def note_lines(exam: Examination, grammar: Grammar) -> dict[Component, list[Line]]:
    """The lines of each component before they are wrapped, with their findings and the figures under them."""
    note = _Note(exam, grammar)
    groups = {component: note._lines(component, brief=False) for component in Component}
    note._place_figures(groups)
    return groups


def clock(time_s: float) -> str:
    """Seconds as m:ss."""
    return f"{int(time_s) // 60}:{int(time_s) % 60:02d}"


class _Note:
    """The parts of one note; every part is a list of finished lines."""

    def __init__(self, exam: Examination, grammar: Grammar) -> None:
        self.exam = exam
        self.grammar = grammar
        self.open = dict(enumerate(exam.open_queries, 1))
        self.marks: dict[int, list[str]] = {}
        for number, query in self.open.items():
            for at in query.findings:
                self.marks.setdefault(at, []).append(f"[?{number}]")

    def head(self) -> list[str]:
        exam = self.exam
        count = len(self.open)
        queries = "1 query" if count == 1 else f"{count} queries"
        first = self._signature() if exam.signed_by else words.DRAFT.format(count=queries)
        people = ((form, getattr(exam, name)) for name, form in words.PEOPLE.items())
        who = [line for form, name in people if name for line in _wrap(form.format(name=one_line(name)), depth=0)]
        patient = words.PATIENT.format(patient=one_line(exam.patient)) if exam.patient else words.NO_PATIENT
        time = words.NOT_STATED
        if exam.examined_at is not None:
            stamp = exam.examined_at.isoformat(sep=" ", timespec="minutes")
            time = words.EXAMINED.format(time=stamp, origin=words.EXAMINED_FROM[exam.examined_at_from])
        return [first, *who, *_wrap(patient, depth=0), *_wrap(age_line(exam.person), depth=0), time]

    def _signature(self) -> str:
        at = self.exam.signed_at
        time = "" if at is None else words.SIGNED_AT.format(time=at.isoformat(sep=" ", timespec="minutes"))
        return words.SIGNED.format(name=one_line(self.exam.signed_by), time=time)

    def components(self, *, brief: bool) -> list[str]:
        groups = {component: self._lines(component, brief=brief) for component in Component}
        loose = self._place_figures(groups)
        out: list[str] = []
        for component, lines in groups.items():
            out += ["", words.COMPONENTS[component]]
            out += [text for line in lines for text in self._finish(line)] or _wrap(words.NOTHING, depth=1)
        for figure in loose:
            out += _wrap(words.COMPUTED.format(text=one_line(figure)), depth=1)
        return out

    def _finish(self, line: Line) -> Iterator[str]:
        yield from _wrap(line.text, depth=line.depth)
        for figure in line.computed:
            yield from _wrap(words.COMPUTED.format(text=one_line(figure)), depth=line.depth + 1)

    def _lines(self, component: Component, *, brief: bool) -> list[Line]:
        places = [at for at, finding in enumerate(self.exam.findings) if finding.component is component]
        telling = {self.exam.findings[at].item for at in places if not (brief and self._is_plain(at))}
        plain = [at for at in places if self.exam.findings[at].item not in telling]
        series = self._series(places)
        in_series = {at for line in series for at in line.findings}
        by_item: dict[str, list[int]] = {}
        for at in places:
            if at not in in_series and at not in plain:
                by_item.setdefault(self.exam.findings[at].item, []).append(at)
        lines = [self._item_line(item, group) for item, group in by_item.items()]
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

    def _item_line(self, item: str, group: list[int]) -> Line:
        findings = self.exam.findings
        sites = list(dict.fromkeys(findings[at].site for at in group))
        group = sorted(group, key=lambda at: (sites.index(findings[at].site), SIDE_ORDER.index(findings[at].side)))
        parts = [self._marked(at, phrase(findings[at], self.grammar)) for at in group]
        between = "; " if any("," in part for part in parts) else ", "
        name = capital(item_name(self.grammar, item))
        nerve = nerve_label(self.grammar, item) if nerve_sorted(findings[group[0]].component) else ""
        return Line(f"{nerve} {name}: {between.join(parts)}".strip(), tuple(group))

    def _marked(self, at: int, text: str) -> str:
        return STAY.join((text, *self.marks.get(at, ())))

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
            parts.append(self._marked(at, f"{item_name(self.grammar, finding.item)} {said}"))
        stance = circumstances(findings[0]) + (f" ({'; '.join(shared)})" if shared else "")
        return Line(f"{stance}: {', '.join(parts)}", tuple(group), depth=2)

    def _is_plain(self, at: int) -> bool:
        """Normal or absent, certain, without anything more to say."""
        finding = self.exam.findings[at]
        return (
            finding.status in (Status.NORMAL, Status.ABSENT)
            and finding.certainty is Certainty.STATED
            and finding.value is None
            and not finding.detail
            and finding.position is None
            and at not in self.marks
            and not is_blanket(self.grammar, finding)
        )

    def _plain_lines(self, plain: list[int]) -> Iterator[Line]:
        for status, words_of in ((Status.NORMAL, words.NORMAL_LIST), (Status.ABSENT, words.ABSENT_LIST)):
            group = tuple(at for at in plain if self.exam.findings[at].status is status)
            if group:
                yield Line(words_of.format(names=", ".join(self._named(self.exam.findings[at]) for at in group)), group)

    def _named(self, finding: Finding) -> str:
        return " ".join(filter(None, (item_name(self.grammar, finding.item), place(finding))))

    def _place_figures(self, groups: dict[Component, list[Line]]) -> list[str]:
        """Put each figure under the last line that holds one of its readings; return those without a reading."""
        loose: list[str] = []
        for figure in self.exam.figures:
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
            old = lines[at]
            lines[at] = Line(old.text, old.findings, old.depth, (*old.computed, figure.text))
        return loose

    def sections(self) -> list[str]:
        out: list[str] = []
        for kind, heading in words.SECTIONS.items():
            said = [one_line(remark.evidence.quote) for remark in self.exam.remarks if remark.kind is kind]
            if said:
                out += ["", heading, *(text for words_said in said for text in _wrap(words_said, depth=1))]
        return out

    def queries(self, *, brief: bool) -> list[str]:
        placed = set() if brief else set(self._not_placed_numbers().values())
        out: list[str] = []
        for severity, heading in words.QUERIES.items():
            shown = [n for n, query in self.open.items() if query.severity is severity and n not in placed]
            if shown:
                out += ["", heading, *(text for n in shown for text in self._query_lines(n, self.open[n]))]
        return out

    def _query_lines(self, number: int, query: Query) -> list[str]:
        parts = [f"[?{number}]", one_line(query.message)]
        if query.suggestions:
            parts.append(f"({' | '.join(query.suggestions)})")
        if query.quote:
            parts.append(f'heard "{one_line(query.quote)}"')
        if query.start_s is not None:
            parts.append(f"at {clock(query.start_s)}{self._source_of(query)}")
        return _wrap(" ".join(parts), depth=1)

    def _source_of(self, query: Query) -> str:
        """Which recording, where there are several."""
        transcript = self.exam.transcript
        if sum(source.kind == "recording" for source in transcript.sources) < 2 or not query.findings:
            return ""
        word = transcript.words[self.exam.findings[query.findings[0]].evidence[0].first]
        return f" of {transcript.sources[word.source].name}"

    def not_placed(self) -> list[str]:
        numbers = self._not_placed_numbers()
        out: list[str] = []
        for at, remark in enumerate(self.exam.remarks):
            if remark.kind is not RemarkKind.NOT_PLACED:
                continue
            parts = [f'"{one_line(remark.evidence.quote)}"']
            if remark.evidence.start_s is not None:
                parts.append(f"at {clock(remark.evidence.start_s)}")
            if at in numbers:
                parts.append(f"[?{numbers[at]}]")
            out += _wrap(" ".join(parts), depth=1)
        return ["", words.NOT_PLACED, *out] if out else []

    def _not_placed_numbers(self) -> dict[int, int]:
        """Place of a remark → number of the query that asks about its words."""
        free = {number: query for number, query in self.open.items() if query.code == RemarkKind.NOT_PLACED.value}
        found: dict[int, int] = {}
        for at, remark in enumerate(self.exam.remarks):
            if remark.kind is RemarkKind.NOT_PLACED:
                for number, query in free.items():
                    if _asks_about(query, remark) and number not in found.values():
                        found[at] = number
                        break
        return found


def _asks_about(query: Query, remark: Remark) -> bool:
    return query.start_s == remark.evidence.start_s and one_line(query.quote) == one_line(remark.evidence.quote)


def _wrap(text: str, *, depth: int) -> list[str]:
    indent = "  " * depth
    return textwrap.wrap(
        text,
        WIDTH,
        initial_indent=indent,
        subsequent_indent=indent + "    ",
        break_long_words=False,
        break_on_hyphens=False,
    )
