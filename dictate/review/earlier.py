"""Drafts that an earlier version saved after a further dictation: what undo starts from did not count decisions then.

Undo went back to what stood at the joining and carried the decisions made before it out once more, so that a finding
removed once took another with it. What such a decision left is in `Examination.as_read` already; by that it is known.
"""

from __future__ import annotations

from dictate.grammar import Grammar
from dictate.model import AsRead, Decision, Examination
from dictate.review.decisions import carried_out_again


def put_right(exam: Examination, grammar: Grammar) -> Examination:
    """The draft with its decisions counted, each carried out once; any other examination as it is."""
    before = exam.as_read
    if before is None or before.decisions or exam.signed_by:
        return exam
    held = [at for at, decision in enumerate(exam.decisions, 1) if _is_held(before, decision)]
    if not held:
        return exam
    count = held[-1]
    settled = sum(decision.query is not None for decision in exam.decisions[:count])
    counted = before.model_copy(update={"decisions": count, "queries": exam.queries[:settled]})
    exam = exam.model_copy(update={"as_read": counted})
    once = carried_out_again(exam, counted, exam.decisions[count:], grammar)
    same = (once.findings, once.remarks) == (exam.findings, exam.remarks)
    return exam if same else once


def _is_held(before: AsRead, decision: Decision) -> bool:
    """Whether what the decision put in place stands there already: it was made before."""
    findings = [change.finding for change in decision.changes if change.finding is not None]
    remarks = [change.remark for change in decision.changes if change.remark is not None]
    if not findings and not remarks:
        return False
    return all(one in before.findings for one in findings) and all(one in before.remarks for one in remarks)
