"""The changes an answer is made of."""

from __future__ import annotations

import pytest
from by_hand import evidence, examination, finding

from dictate.grammar import Grammar
from dictate.model import Component, Query, Remark, RemarkKind, Severity, Status
from dictate.review.changes import added, remark_of, taken_out
from dictate.review.typed import Refused


def test_typed_phrase_gives_findings_behind_the_others(grammar: Grammar) -> None:
    """With its words, which join the transcript."""
    effect = added(examination(), "Gait unsteady.", grammar)
    assert [(one.at, one.finding.item) for one in effect.changes if one.finding] == [(None, "gait")]
    assert effect.typed == "Gait unsteady."


def test_words_of_a_finding_taken_out_stay_in_view() -> None:
    """As corrected words."""
    exam = examination(finding(Component.COORDINATION_GAIT, "gait", Status.NORMAL))
    gone, kept = taken_out(exam, 0)
    assert (gone.at, gone.finding) == (0, None)
    assert kept.remark is not None
    assert kept.remark.kind is RemarkKind.CORRECTED


def test_words_that_are_gone_are_refused() -> None:
    """The question is older than the examination."""
    query = Query(code="not-placed", severity=Severity.LOOK, message="?", quote="wug")
    exam = examination(remarks=(Remark(kind=RemarkKind.NOT_PLACED, evidence=evidence("wug")),))
    assert remark_of(exam, query, RemarkKind.NOT_PLACED) == 0
    with pytest.raises(Refused):
        remark_of(examination(), query, RemarkKind.NOT_PLACED)
