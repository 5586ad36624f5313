"""@check, Doubt, run_checks(): every check registers where it stands, and its doubts become queries in order."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal

from dictate.grammar import Grammar
from dictate.model import Component, Evidence, Examination, Finding, Query, Severity

SeverityWord = Literal["must", "look"]


@dataclass(frozen=True, slots=True)
class Doubt:
    """What one check is unsure about; `None` and empty fields are filled from the finding."""

    finding: Finding | None  # None: a doubt about words, sound, or the whole examination
    message: str
    suggestions: tuple[str, ...] = ()
    severity: SeverityWord | None = None  # None: the check's own
    others: tuple[Finding, ...] = ()  # further findings it concerns
    component: Component | None = None
    item: str = ""
    evidence: Evidence | None = None  # None: the finding's own
    start_s: float | None = None  # of sound without words
    end_s: float | None = None
    at: int | None = None  # place among the words; None: the evidence's, else the end


Ask = Callable[[Examination, Grammar], Iterator[Doubt]]


@dataclass(frozen=True, slots=True)
class Check:
    """One registered check; `ask.__doc__` is its entry in the manual."""

    code: str
    severity: SeverityWord
    ask: Ask


_CHECKS: dict[str, Check] = {}


def check(code: str, *, severity: SeverityWord) -> Callable[[Ask], Ask]:
    """Register a function as the check of that code. Raises ValueError when the code is taken."""

    def register(ask: Ask) -> Ask:
        if code in _CHECKS:
            raise ValueError(f"two checks have the code {code}: give one of them another")
        _CHECKS[code] = Check(code, severity, ask)
        return ask

    return register


def catalogue() -> tuple[Check, ...]:
    """All checks, by code."""
    return tuple(_CHECKS[code] for code in sorted(_CHECKS))


def run_checks(exam: Examination, grammar: Grammar) -> tuple[Query, ...]:
    """Every doubt about the examination, in the order of the words it is about: one query per finding and code."""
    placed: list[tuple[int, int, Query]] = []
    asked: set[tuple[str, int]] = set()
    standing: dict[int, list[int]] = {}  # by identity: the same may be said twice, and is two findings
    for at, finding in enumerate(exam.findings):
        standing.setdefault(id(finding), []).append(at)
    for number, one in enumerate(catalogue()):
        for doubt in one.ask(exam, grammar):
            places = _places(standing, doubt)
            if doubt.finding is not None:
                key = (one.code, places[0])
                if key in asked:
                    continue
                asked.add(key)
            placed.append((_word_place(exam, doubt), number, _query(one, doubt, places)))
    return tuple(query for _, _, query in sorted(placed, key=lambda entry: entry[:2]))


def _places(standing: dict[int, list[int]], doubt: Doubt) -> tuple[int, ...]:
    """Where the doubt's findings stand, its own first. standing: identity of a finding → its places."""
    wanted = [*filter(None, (doubt.finding,)), *doubt.others]
    return tuple(at for one in wanted for at in standing.get(id(one), ()))


def _word_place(exam: Examination, doubt: Doubt) -> int:
    """The first word the doubt is about; behind the last word when it is about none."""
    if doubt.at is not None:
        return doubt.at
    if doubt.evidence is not None:
        return doubt.evidence.first
    if doubt.finding is not None:
        return doubt.finding.evidence[0].first
    return len(exam.transcript.words)


def _query(one: Check, doubt: Doubt, places: tuple[int, ...]) -> Query:
    finding, evidence = doubt.finding, doubt.evidence
    start_s, end_s, quote = doubt.start_s, doubt.end_s, ""
    if evidence is not None:
        quote, start_s, end_s = evidence.quote, evidence.start_s, evidence.end_s
    elif finding is not None:
        quote = finding.quote
        start_s, end_s = finding.evidence[0].start_s, finding.evidence[-1].end_s
    return Query(
        code=one.code,
        severity=Severity(doubt.severity or one.severity),
        message=doubt.message,
        component=finding.component if finding is not None else doubt.component,
        item=finding.item if finding is not None else doubt.item,
        side=finding.side if finding is not None else None,
        suggestions=tuple(dict.fromkeys(filter(None, doubt.suggestions))),
        quote=quote,
        start_s=start_s,
        end_s=end_s,
        findings=places,
    )
