"""The lines of the note that a decision changes, before and after it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from dictate.catalogue import note as note_words
from dictate.grammar import Grammar
from dictate.model import Examination, Finding
from dictate.notes import Line, note_lines
from dictate.notes.phrases import STAY, item_of, one_line, phrase

MARK = re.compile(r"[ \N{NO-BREAK SPACE}]\[\?\d+\]")


@dataclass(frozen=True, slots=True)
class Difference:
    """Lines that go and lines that come; both empty: the note reads as before."""

    before: tuple[str, ...]
    after: tuple[str, ...]


def difference(before: Examination, after: Examination, grammar: Grammar) -> Difference:
    """What a reader of the note would see change, without the numbers of the queries."""
    old, new = list(_texts(before, grammar)), list(_texts(after, grammar))
    return Difference(
        tuple(line for line in dict.fromkeys(old) if line not in new),
        tuple(line for line in dict.fromkeys(new) if line not in old),
    )


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


def _texts(exam: Examination, grammar: Grammar) -> Iterator[str]:
    if exam.examined_at is not None:
        yield f"Time of examination: {exam.examined_at.isoformat(sep=' ', timespec='minutes')}"
    yield f"Patient: {one_line(exam.patient)}" if exam.patient else note_words.NO_PATIENT
    for lines in note_lines(exam, grammar).values():
        for line in lines:
            yield _plain(line.text)
            yield from (note_words.COMPUTED.format(text=one_line(figure)) for figure in line.computed)
    for kind, heading in note_words.SECTIONS.items():
        yield from (f"{heading}: {one_line(r.evidence.quote)}" for r in exam.remarks if r.kind is kind)


def _plain(text: str) -> str:
    return MARK.sub("", text).replace(STAY, " ")
