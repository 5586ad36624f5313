"""The lines of the note that a decision changes, before and after it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from dictate.catalogue import note as note_words
from dictate.grammar import Grammar
from dictate.model import Component, Examination, Figure, Finding
from dictate.notes import Line, note_lines
from dictate.notes.layout import lay_out
from dictate.notes.phrases import STAY, item_of, one_line, phrase

MARK = re.compile(r"[ \N{NO-BREAK SPACE}]\[\?\d+\]")


@dataclass(frozen=True, slots=True)
class Difference:
    """Lines that go and lines that come; both empty: the note reads as before."""

    before: tuple[str, ...]
    after: tuple[str, ...]


def difference(before: Examination, after: Examination, grammar: Grammar) -> Difference:
    """What a reader of the note would see change, without the numbers of the queries."""
    return Lines(before, grammar).until(Lines(after, grammar))


class Lines:
    """The lines of a note without the numbers of its queries, each component laid out when it is asked for."""

    def __init__(self, exam: Examination, grammar: Grammar) -> None:
        self._exam, self._grammar = exam, grammar
        self._laid: dict[Component, tuple[str, ...]] = {}

    def until(self, after: Lines) -> Difference:
        """The lines that go and come. A component whose findings and figures stay is not laid out."""
        parts = [part for part in Component if self._told(part) != after._told(part)]
        old = dict.fromkeys((*_around(self._exam), *(line for part in parts for line in self._of(part))))
        new = dict.fromkeys((*_around(after._exam), *(line for part in parts for line in after._of(part))))
        return Difference(
            tuple(line for line in old if line not in new), tuple(line for line in new if line not in old)
        )

    def _told(self, part: Component) -> tuple[list[Finding], list[str]]:
        """All that the lines of a component are made of."""
        findings = [one for one in self._exam.findings if one.component is part]
        return findings, [figure.text for figure in self._figures(part)]

    def _figures(self, part: Component) -> tuple[Figure, ...]:
        """Figures that the note puts under a line of this component: the last that holds one of their readings."""
        findings, order = self._exam.findings, tuple(Component)
        return tuple(
            figure
            for figure in self._exam.figures
            if part is max((findings[at].component for at in figure.inputs), key=order.index, default=None)
        )

    def _of(self, part: Component) -> tuple[str, ...]:
        if part not in self._laid:
            alone = self._exam.model_copy(update={"figures": self._figures(part)})
            self._laid[part] = tuple(_texts(lay_out(alone, self._grammar, parts=(part,)).components[part]))
        return self._laid[part]


def lines_with(exam: Examination, places: tuple[int, ...], grammar: Grammar) -> tuple[str, ...]:
    """The lines of the note that hold these findings, as they stand."""
    groups = note_lines(exam, grammar).values()
    return tuple(_plain(line.text) for lines in groups for line in lines if set(line.findings) & set(places))


def values_of(line: Line, exam: Examination, grammar: Grammar) -> list[tuple[int, str]]:
    """Each finding of a line with its place and its own words."""
    return [(at, own_words(exam.findings[at], grammar)) for at in line.findings]


def own_words(finding: Finding, grammar: Grammar) -> str:
    """What the note says of one finding, without the item's name."""
    item = item_of(grammar, finding.item)
    text = phrase(
        finding, grammar, with_circumstances=item is None or not item.positions or finding.position is not None
    )
    return text.replace(STAY, " ")


def _around(exam: Examination) -> Iterator[str]:
    """What a note says besides its components."""
    if exam.examined_at is not None:
        yield f"Time of examination: {exam.examined_at.isoformat(sep=' ', timespec='minutes')}"
    yield f"Patient: {one_line(exam.patient)}" if exam.patient else note_words.NO_PATIENT
    for kind, heading in note_words.SECTIONS.items():
        yield from (f"{heading}: {one_line(r.evidence.quote)}" for r in exam.remarks if r.kind is kind)


def _texts(lines: Sequence[Line]) -> Iterator[str]:
    for line in lines:
        yield _plain(line.text)
        yield from (note_words.COMPUTED.format(text=one_line(figure)) for figure in line.computed)


def _plain(text: str) -> str:
    return MARK.sub("", text).replace(STAY, " ")
