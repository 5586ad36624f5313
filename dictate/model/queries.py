"""Query, Severity, Decision."""

from __future__ import annotations

from enum import StrEnum

from dictate.model.base import Frozen
from dictate.model.findings import Component, Side


class Severity(StrEnum):
    """must: settled before signing. look: passed over once."""

    MUST = "must"
    LOOK = "look"


class Query(Frozen):
    """One doubt that the examiner has to see."""

    code: str
    severity: Severity
    message: str
    component: Component | None = None
    item: str = ""
    side: Side | None = None
    suggestions: tuple[str, ...] = ()
    quote: str = ""
    start_s: float | None = None
    end_s: float | None = None
    findings: tuple[int, ...] = ()  # places in Examination.findings that it concerns


class Decision(Frozen):
    """What the examiner decided about one query."""

    query: int  # place in Examination.queries
    answer: str
