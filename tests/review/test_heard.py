"""Answers to doubts about what was heard."""

from __future__ import annotations

from by_hand import evidence, examination, finding

from dictate.checks.heard import as_said
from dictate.grammar import Grammar
from dictate.model import (
    Component,
    Grade,
    Query,
    Remark,
    RemarkKind,
    Rival,
    Severity,
    Side,
    Status,
    Transcript,
    Word,
)
from dictate.review.heard import NEITHER, read_with_care, unsure

RIVAL = Rival(word=0, kind="side", heard="left", other="right", margin=1.0)
DELTOID = finding(
    Component.MOTOR, "strength_deltoid", Status.MEASURED, side=Side.LEFT, value=Grade(scale="mrc", grade="4-")
)


def asked(**more: object) -> Query:
    """A doubt about what was heard."""
    return Query(code="unsure-hearing", severity=Severity.MUST, message="?", **more)  # type: ignore[arg-type]


def test_rival_taken_stands_in_the_place_of_what_was_heard(grammar: Grammar) -> None:
    """What was heard stays as corrected, and nothing is left open."""
    exam = examination(DELTOID.model_copy(update={"rivals": (RIVAL,)}))
    answer = as_said(exam.findings[0], RIVAL)
    (change,) = unsure(exam, asked(findings=(0,)), answer, grammar).changes
    assert change.finding is not None
    assert (change.at, change.finding.side, change.finding.rivals) == (0, Side.RIGHT, ())
    assert change.finding.corrected == ("4-",)


def test_heard_right_closes_the_doubt(grammar: Grammar) -> None:
    """The finding stays, without its rivals."""
    exam = examination(DELTOID.model_copy(update={"rivals": (RIVAL,)}))
    (change,) = unsure(exam, asked(findings=(0,)), "4-", grammar).changes
    assert change.finding == DELTOID


def test_words_that_are_none_are_read_anew_with_the_term(grammar: Grammar) -> None:
    """In the words around them; neither leaves them out."""
    words = tuple(Word(text=text, start_s=float(at), end_s=at + 0.5) for at, text in enumerate(("No", "stagmus.")))
    piece = evidence("stagmus.").model_copy(update={"first": 1, "last": 1, "start_s": 1.0, "end_s": 1.5})
    whole = piece.model_copy(update={"first": 0, "quote": "No stagmus.", "start_s": 0.0})
    remarks = (
        Remark(kind=RemarkKind.MISHEARD, evidence=piece, readings=("nystagmus",)),
        Remark(kind=RemarkKind.NOT_PLACED, evidence=whole),
    )
    exam = examination(remarks=remarks, transcript=Transcript(words=words))
    query = asked(quote="stagmus.", start_s=1.0, end_s=1.5)
    effect = unsure(exam, query, "nystagmus", grammar)
    assert [(one.finding.item, one.finding.status) for one in effect.changes if one.finding] == [
        ("nystagmus", Status.ABSENT)
    ]
    (left_out,) = unsure(exam, query, NEITHER, grammar).changes
    assert left_out.remark is not None
    assert left_out.remark.kind is RemarkKind.LEFT_OUT


def test_odd_sound_changes_nothing(grammar: Grammar) -> None:
    """It asks for care, not for an answer."""
    query = Query(code="odd-sound", severity=Severity.LOOK, message="?", suggestions=("read",))
    assert read_with_care(examination(), query, "read", grammar).changes == ()
