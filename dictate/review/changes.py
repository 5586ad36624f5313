"""What an answer does to an examination, and the changes it is made of."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from dictate.grammar import Grammar
from dictate.model import Change, Component, Examination, Query, Remark, RemarkKind
from dictate.review.typed import Refused, clean, phrase_findings


@dataclass(frozen=True, slots=True)
class Effect:
    """What one answer does to the examination."""

    changes: tuple[Change, ...] = ()
    typed: str = ""  # words that join the transcript
    patient: str | None = None
    examined_at: datetime | None = None


def added(exam: Examination, text: str, grammar: Grammar, *, under: Component | None = None) -> Effect:
    """Findings from a typed phrase, put behind the others; words that became nothing are asked about."""
    findings, loose = phrase_findings(text, exam, grammar, under=under)
    changes = [Change(finding=finding) for finding in findings]
    changes += [Change(remarks=True, remark=remark) for remark in loose]
    return Effect(tuple(changes), typed=clean(text))


def taken_out(exam: Examination, at: int, kind: RemarkKind = RemarkKind.CORRECTED) -> tuple[Change, ...]:
    """The finding goes; its words stay among the remarks, so that nothing said is lost."""
    finding = exam.findings[at]
    kept = [
        Change(
            remarks=True,
            remark=Remark(kind=kind, evidence=piece, component=finding.component, item=finding.item),
        )
        for piece in finding.evidence
    ]
    return (Change(at=at), *kept)


WORDS = (  # what `not-placed` asks about
    RemarkKind.NOT_PLACED,
    RemarkKind.HISTORY,
    RemarkKind.TALK,
    RemarkKind.IMPRESSION,
    RemarkKind.PLAN,
)


def remark_of(exam: Examination, query: Query, *kinds: RemarkKind) -> int:
    """Place of the remark the query asks about. Raises Refused when it is gone."""
    for at, remark in enumerate(exam.remarks):
        if remark.kind in kinds and (remark.evidence.quote, remark.evidence.start_s) == (query.quote, query.start_s):
            return at
    raise Refused("the words it asks about are no longer open: go on to the next question")


def as_kind(exam: Examination, at: int, kind: RemarkKind) -> Change:
    """The remark, kept as one of another kind."""
    return Change(remarks=True, at=at, remark=exam.remarks[at].model_copy(update={"kind": kind}))
