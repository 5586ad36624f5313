"""Open queries and words not placed, numbered as the note lists them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from dictate.catalogue import note as words
from dictate.model import Examination, Query, Remark, RemarkKind, Severity
from dictate.notes.phrases import one_line


@dataclass(frozen=True)
class NotPlaced:
    """Words heard that became nothing, and the number of the query that asks about them."""

    quote: str
    start_s: float | None = None
    query: int | None = None

    @property
    def text(self) -> str:
        """The words as the note lists them, without the number."""
        at = "" if self.start_s is None else f" {words.AT_TIME.format(time=clock(self.start_s))}"
        return f'"{self.quote}"{at}'


def clock(time_s: float) -> str:
    """Seconds as m:ss."""
    return f"{int(time_s) // 60}:{int(time_s) % 60:02d}"


def numbered(exam: Examination) -> dict[int, Query]:
    """Open queries under the numbers that the note gives them."""
    return dict(enumerate(exam.open_queries, 1))


def marks_of(exam: Examination) -> dict[int, tuple[int, ...]]:
    """Place of a finding → numbers of the open queries that concern it."""
    marks: dict[int, tuple[int, ...]] = {}
    for number, query in numbered(exam).items():
        for at in query.findings:
            marks[at] = (*marks.get(at, ()), number)
    return marks


def not_placed(exam: Examination) -> tuple[NotPlaced, ...]:
    """Words that became nothing, in the order dictated."""
    free = {number: query for number, query in numbered(exam).items() if query.code == RemarkKind.NOT_PLACED.value}
    found = []
    for remark in exam.remarks:
        if remark.kind is not RemarkKind.NOT_PLACED:
            continue
        number = next((number for number, query in free.items() if _asks_about(query, remark)), None)
        free.pop(number or 0, None)
        found.append(NotPlaced(one_line(remark.evidence.quote), remark.evidence.start_s, number))
    return tuple(found)


def listed(exam: Examination, severity: Severity) -> dict[int, Query]:
    """Queries of one severity as the note lists them; those to look at of words not placed stand with the words."""
    placed = set() if severity is Severity.MUST else {one.query for one in not_placed(exam)}
    return {n: query for n, query in numbered(exam).items() if query.severity is severity and n not in placed}


def query_text(exam: Examination, query: Query) -> str:
    """A query in one line, without its number."""
    parts = [one_line(query.message)]
    if query.suggestions:
        offered = (_unit(one) if query.code == "unit-missing" else one_line(one) for one in query.suggestions)
        parts.append(f"({' | '.join(offered)})")
    if query.quote:
        parts.append(words.HEARD.format(quote=one_line(query.quote)))
    if query.start_s is not None:
        parts.append(f"{words.AT_TIME.format(time=clock(query.start_s))}{_source_of(exam, query)}")
    return " ".join(parts)


def _unit(code: str) -> str:
    """A unit as it is read: `[degF]` → `°F`."""
    return words.UNITS.get(code, code).strip(" {}")


def sections(exam: Examination) -> Mapping[str, tuple[str, ...]]:
    """Heading → words spoken under it: history, impression, plan, outside the examination."""
    said = {
        heading: tuple(
            _below(heading, one_line(remark.evidence.quote)) for remark in exam.remarks if remark.kind is kind
        )
        for kind, heading in words.SECTIONS.items()
    }
    return {heading: quotes for heading, quotes in said.items() if quotes}


def _below(heading: str, quote: str) -> str:
    """The words below a heading, without the heading itself where it was spoken."""
    first, _, rest = quote.partition(" ")
    return rest if rest and first.strip(".,:;").lower() == heading.split()[0].lower() else quote


def _source_of(exam: Examination, query: Query) -> str:
    """Which recording, where there are several."""
    transcript = exam.transcript
    if len(transcript.sources) < 2 or not query.findings:
        return ""
    word = transcript.words[exam.findings[query.findings[0]].evidence[0].first]
    return words.OF_SOURCE.format(name=transcript.sources[word.source].name)


def _asks_about(query: Query, remark: Remark) -> bool:
    return query.start_s == remark.evidence.start_s and one_line(query.quote) == one_line(remark.evidence.quote)
