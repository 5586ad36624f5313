"""Open queries and words not placed, numbered as the note lists them."""

from __future__ import annotations

from by_hand import examination, query, reflex, remark

from dictate.model import Decision, RemarkKind, Severity
from dictate.notes.questions import clock, listed, marks_of, not_placed, numbered, query_text, sections


def test_numbers_follow_open_queries() -> None:
    """A settled query leaves no gap."""
    exam = examination(queries=(query("a"), query("b")), decisions=(Decision(query=0, answer="right"),))
    assert {number: one.code for number, one in numbered(exam).items()} == {1: "b"}


def test_a_finding_knows_its_queries() -> None:
    """Two doubts about one finding are two marks."""
    exam = examination(reflex("reflex_biceps", "2+"), queries=(query(findings=(0,)), query(findings=(0,))))
    assert marks_of(exam) == {0: (1, 2)}


def test_same_words_twice_have_a_query_each() -> None:
    """Two remarks with the same words never share a number."""
    kept = (remark(RemarkKind.NOT_PLACED, "bright"), remark(RemarkKind.NOT_PLACED, "bright"))
    asked = tuple(query("not-placed", "not placed", severity=Severity.LOOK, quote="bright") for _ in kept)
    assert [one.query for one in not_placed(examination(remarks=kept, queries=asked))] == [1, 2]


def test_what_stands_with_its_words_is_not_listed() -> None:
    """A query to look at, of words that were not placed."""
    exam = examination(
        remarks=(remark(RemarkKind.NOT_PLACED, "bright"),),
        queries=(query("not-placed", "not placed", severity=Severity.LOOK, quote="bright"),),
    )
    assert listed(exam, Severity.LOOK) == {}


def test_what_must_be_settled_is_always_listed() -> None:
    """Also where its words stand among those not placed."""
    exam = examination(
        remarks=(remark(RemarkKind.NOT_PLACED, "left sixth"),),
        queries=(query("not-placed", "an exception", severity=Severity.MUST, quote="left sixth"),),
    )
    assert list(listed(exam, Severity.MUST)) == [1]


def test_query_in_one_line() -> None:
    """Message, suggestions, words and time."""
    asked = query(message="which\nside?", suggestions=("left", "right"), quote="two plus", start_s=61)
    assert query_text(examination(queries=(asked,)), asked) == 'which side? (left | right) heard "two plus" at 1:01'


def test_units_are_offered_as_they_are_read() -> None:
    """No code of a unit stands in a note."""
    asked = query(code="unit-missing", message="in which unit?", suggestions=("Cel", "[degF]", "{words}", "kg"))
    assert query_text(examination(queries=(asked,)), asked) == "in which unit? (°C | °F | words | kg)"


def test_sections_hold_what_was_spoken_under_them() -> None:
    """A section nobody spoke of is none."""
    assert sections(examination(remarks=(remark(RemarkKind.PLAN, "scan"),))) == {"PLAN (as dictated)": ("scan",)}


def test_clock() -> None:
    """Minutes and seconds."""
    assert clock(83.9) == "1:23"
