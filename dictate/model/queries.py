"""Query, Severity; Decision, Action, Change: what was asked, what was answered, and what that changed."""

from __future__ import annotations

from datetime import datetime
from enum import StrEnum

from dictate.model.base import Frozen
from dictate.model.findings import Component, Finding, Remark, Side


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


class Action(StrEnum):
    """What kind of decision it is."""

    ANSWER = "answer"  # a suggestion taken, or a value or phrase typed instead
    NOT_EXAMINED = "not-examined"
    REMOVE = "remove"  # it was not said
    AS_SAID = "as-said"  # it stays as it was said
    SEEN = "seen"  # a look, passed over
    ADD = "add"  # findings from a typed phrase


class Change(Frozen):
    """A finding or remark put in another's place; neither given: what stood there was taken out."""

    remarks: bool = False  # among the remarks, else among the findings
    at: int | None = None  # its place before the decision; None: put behind the others
    finding: Finding | None = None
    remark: Remark | None = None


class Decision(Frozen):
    """What the examiner decided, about a query or by himself, and everything needed to do it again."""

    query: int | None = None  # place in Examination.queries; None: about no query
    answer: str
    action: Action = Action.ANSWER
    finding: int | None = None  # place in Examination.findings when the decision was made; None: the query's
    component: Component | None = None  # heading under which a typed phrase is read
    who: str = ""
    at: datetime | None = None
    asked: Query | None = None  # the query as it stood; None: about no query, or not yet carried out
    key: str = ""  # names the doubt that was accepted as it is; empty: the doubt is gone
    changes: tuple[Change, ...] = ()
    typed: str = ""  # words added to the transcript
    patient: str | None = None  # None: unchanged
    examined_at: datetime | None = None  # None: unchanged
