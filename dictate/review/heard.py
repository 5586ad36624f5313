"""What an answer changes where the sound left something open: another value, another term, words that are none."""

from __future__ import annotations

from dictate.catalogue.queries import NEITHER
from dictate.checks.expected import with_rival
from dictate.checks.heard import as_said
from dictate.checks.wording import said
from dictate.grammar import Grammar
from dictate.model import Change, Evidence, Examination, Finding, Query, RemarkKind
from dictate.review.changes import Effect, added, as_kind, remark_of
from dictate.review.typed import Refused, reworded


def of_finding(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    """The finding asked about, with what was answered in its place. Raises Refused."""
    if not query.findings:
        return added(exam, line, grammar, under=query.component)
    at = query.findings[0]
    finding = exam.findings[at]
    if line == said(finding):  # it is right as it stands: no other reading stays open
        open_still = finding.readings or finding.rivals
        return Effect((Change(at=at, finding=_settled(finding)),) if open_still else ())
    return Effect((Change(at=at, finding=_settled(reworded(finding, line, grammar))),))


def unsure(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    """What was heard, told by the examiner: the finding as it was or its rival; or words read anew. Raises Refused."""
    if not query.findings:
        return _misheard(exam, query, line, grammar)
    at = query.findings[0]
    finding = exam.findings[at]
    for rival in finding.rivals:
        if as_said(finding, rival) == line:
            other = with_rival(finding, rival)
            if other is None:
                raise Refused("what it would be with that word cannot be told: type the value that was meant")
            corrected = (*finding.corrected, said(finding))
            return Effect((Change(at=at, finding=_settled(other.model_copy(update={"corrected": corrected}))),))
    return of_finding(exam, query, line, grammar)


def read_with_care(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    """A recording that was hard to hear: nothing changes by reading the note with that in mind."""
    return Effect()


def _settled(finding: Finding) -> Finding:
    """No other reading stays open."""
    return finding.model_copy(update={"readings": (), "rivals": ()})


def _misheard(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    """Words that are none: left as they are, or what they stand in read anew with the term that was said."""
    at = remark_of(exam, query, RemarkKind.MISHEARD)
    gone = as_kind(exam, at, RemarkKind.LEFT_OUT)
    if line == NEITHER:
        return Effect((gone,))
    words = exam.remarks[at].evidence
    around = next(
        (
            place
            for place, one in enumerate(exam.remarks)
            if one.kind is RemarkKind.NOT_PLACED and _holds(one.evidence, words)
        ),
        None,
    )
    if around is None:
        read = added(exam, line, grammar)
        return Effect((gone, *read.changes), typed=read.typed)
    read = added(exam, exam.remarks[around].evidence.quote.replace(words.quote, line, 1), grammar)
    return Effect((gone, as_kind(exam, around, RemarkKind.LEFT_OUT), *read.changes), typed=read.typed)


def _holds(whole: Evidence, part: Evidence) -> bool:
    return whole.first <= part.first and part.last <= whole.last
