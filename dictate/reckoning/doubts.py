"""Figures that rest on a doubtful value say so: one that was hedged, said as about so much, or is asked about."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dictate.catalogue import figures as words
from dictate.grammar import Grammar
from dictate.grammar.rough import rough_word
from dictate.grammar.sums import points_of
from dictate.model import Certainty, Examination, Figure, Finding, Query
from dictate.reckoning.circumstances import MISSING
from dictate.reckoning.falls import FALL, INITIAL, LARGER, SITTING
from dictate.reckoning.postural import CHANGE
from dictate.reckoning.pressures import MEAN
from dictate.reckoning.readings import minutes_text

# Questions that leave the value itself open.
OF_VALUES = frozenset(
    {"unsure-hearing", "values-conflict", "contradiction", "value-implausible", "unit-missing", "side-missing"}
)
OF_TOTALS = "total-mismatch"
NAMED = 3  # doubtful values that are named; more are counted
PRESSURE, RATE = "blood_pressure", "heart_rate"
OF_PRESSURES = frozenset({FALL.name, LARGER.name, INITIAL.name, SITTING.name, MEAN.name})  # a rate decides nothing


def with_doubts(exam: Examination, grammar: Grammar) -> Examination:
    """The examination, each of its figures naming what of its inputs is in doubt. Own rule.

    The figures are those just computed, without such words; open queries count, settled ones do not: but a total that
    was left standing beside another sum is told, for both are in the note.
    """
    asked = exam.open_queries
    doubtful = {place for query in asked if query.code in OF_VALUES for place in query.findings}
    figures = tuple(_marked(figure, exam.findings, doubtful, exam.queries, grammar) for figure in exam.figures)
    return exam.model_copy(update={"figures": figures})


def _marked(
    figure: Figure, findings: tuple[Finding, ...], asked: set[int], queries: Iterable[Query], grammar: Grammar
) -> Figure:
    if figure.name == MISSING.name or (figure.name == CHANGE.name and figure.value is None):
        return figure  # names what is missing, or what was said twice
    doubts = list(dict.fromkeys(_doubts(figure, findings, asked, grammar)))
    if len(doubts) > NAMED:
        doubts = [words.SEVERAL_IN_DOUBT.format(count=len(doubts))]
    text = figure.text + (words.IN_DOUBT.format(values=", ".join(doubts)) if doubts else "")
    if figure.unit == "{score}" and any(_differs(query, figure, findings) for query in queries):
        text += words.OTHER_TOTAL
    return figure.model_copy(update={"text": text})


def _doubts(figure: Figure, findings: tuple[Finding, ...], asked: set[int], grammar: Grammar) -> Iterator[str]:
    for place in figure.inputs:
        finding = findings[place]
        if finding.item == RATE and figure.name in OF_PRESSURES:
            continue
        about = rough_word(finding)
        if finding.certainty is Certainty.UNCERTAIN or place in asked or about:
            yield _named(finding, grammar, about=about)


def _differs(query: Query, figure: Figure, findings: tuple[Finding, ...]) -> bool:
    """Whether a dictated total was asked about, and stands, that differs from this sum."""
    if query.code != OF_TOTALS or not set(figure.inputs) <= set(query.findings):
        return False
    totals = [points_of(findings[place]) for place in query.findings if place not in figure.inputs]
    return any(total not in (None, figure.value) for total in totals)


def _named(finding: Finding, grammar: Grammar, *, about: str) -> str:
    """`deltoid right 4-`, `standing at 3 min 118/78`, `timed up and go about 12`; a pressure needs no name."""
    item = grammar.items.get(finding.item)
    name = finding.item.replace("_", " ") if item is None else item.name.partition(" (")[0]
    position = "" if finding.position is None else words.POSITIONS[finding.position]
    parts = (
        "" if finding.item == PRESSURE and position else name,
        words.SIDES[finding.side] if finding.side else "",
        finding.site.replace("_", " "),
        position,
        "" if finding.minutes is None else minutes_text(finding.minutes),
        about,
        words.STATUSES[finding.status] if finding.value is None else str(finding.value),
    )
    return " ".join(filter(None, parts))
