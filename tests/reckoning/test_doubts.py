"""Figures that rest on a doubtful value: each says so, as long as the doubt is open. Own rule."""

from __future__ import annotations

import pytest
from by_hand import examination, query
from reckoning.series import coma, finding, pressure

from dictate.model import Action, Certainty, Component, Decision, Grade, Quantity, Side
from dictate.pipeline import Typed, examine
from dictate.reckoning import reckon, with_doubts
from dictate.review.decisions import apply, undo


def texts(findings, queries, grammar, **more):
    """The sentences of all figures of an examination with these findings and questions."""
    exam = examination(*findings, queries=queries, figures=reckon(findings, grammar=grammar), **more)
    return [figure.text for figure in with_doubts(exam, grammar).figures]


def test_a_hedged_reading_is_named_wherever_it_was_used(grammar):
    """The figures of the other reading alone stay as they are."""
    readings = (
        pressure("140/80", "supine"),
        pressure("118/78", "standing", 3.0, certainty=Certainty.UNCERTAIN),
    )
    said = texts(readings, (), grammar)
    assert len(said) == 5
    assert [text.startswith("140/80") for text in said if "in doubt" not in text] == [True]
    assert all(text.endswith("; in doubt: standing at 3 min 118/78") for text in said[1:])


@pytest.mark.parametrize(
    "code", ["unsure-hearing", "values-conflict", "contradiction", "value-implausible", "unit-missing", "side-missing"]
)
def test_a_value_that_is_asked_about_is_in_doubt(grammar, code):
    """As long as the question is open."""
    walk = finding("timed_up_and_go", Quantity(number=12), component=Component.COORDINATION_GAIT, unit="s")
    (text,) = texts((walk,), (query(code, findings=(0,)),), grammar)
    assert text.endswith("in doubt: timed up and go 12")
    (plain,) = texts((walk,), (query("not-placed", findings=(0,)),), grammar)
    assert "doubt" not in plain


def test_a_settled_question_leaves_no_doubt(grammar):
    """What was asked and answered is not in doubt any more."""
    walk = finding("timed_up_and_go", Quantity(number=12), component=Component.COORDINATION_GAIT, unit="s")
    settled = (Decision(query=0, action=Action.AS_SAID, answer=""),)
    (text,) = texts((walk,), (query("value-implausible", findings=(0,)),), grammar, decisions=settled)
    assert "doubt" not in text


def test_another_total_is_named_once(grammar):
    """Not every part is called doubtful: one number of all is wrong, and which one is not known."""
    parts = coma(4, 5, 5, 15)
    (text,) = texts(parts, (query("total-mismatch", findings=(3, 0, 1, 2)),), grammar)
    assert text == "Coma scale sum: 14 of 15 (4 + 5 + 5); another total was dictated"


@pytest.mark.parametrize(("total", "told"), [(15, True), (13, True), (14, False)])
def test_a_total_left_beside_another_sum_is_told(grammar, total, told):
    """Settled or not: both stand in the note, and who reads it was not asked. (Own rule.)"""
    settled = (Decision(query=0, answer=str(total)),)
    asked = (query("total-mismatch", findings=(3, 0, 1, 2)),)
    said = texts(coma(4, 5, 5, total), asked, grammar, decisions=settled)
    assert any(text.endswith("; another total was dictated") for text in said) is told


def test_a_total_taken_out_is_told_no_more(grammar):
    """The sum stands alone."""
    gone = (query("total-mismatch", findings=(0, 1, 2)),)
    parts = coma(4, 5, 5, 15)[:3]
    (text,) = texts(parts, gone, grammar, decisions=(Decision(query=0, answer="", action=Action.REMOVE),))
    assert text == "Coma scale sum: 14 of 15 (4 + 5 + 5)"


def test_many_doubts_are_counted(grammar):
    """More than three are a number."""
    muscles = tuple(
        finding(
            f"strength_{muscle}", Grade(scale="mrc", grade="4"), component=Component.MOTOR, side=Side.RIGHT,
            certainty=Certainty.UNCERTAIN,
        )
        for muscle in ("deltoid", "biceps", "triceps", "iliopsoas")
    )  # fmt: skip
    (text,) = texts(muscles, (), grammar)
    assert text.endswith("; in doubt: 4 of its values")


def test_about_so_much_is_in_doubt(grammar):
    """ "About twelve" at a limit of twelve; a word that is about a place is none."""
    exam = examine([Typed("typed", "Timed up and go about twelve seconds.")], engine=None, grammar=grammar)
    assert exam.figures[0].text.endswith("; in doubt: timed up and go about 12")
    plain = examine([Typed("typed", "Timed up and go twelve seconds.")], engine=None, grammar=grammar)
    assert "doubt" not in plain.figures[0].text


def test_a_pressure_said_twice_is_refused_and_not_called_doubtful_as_well(grammar):
    """The line that names both readings says all."""
    readings = (pressure("140/80", "supine"), pressure("118/78", "standing", 3.0), pressure("128/78", "standing", 3.0))
    said = texts(readings, (query("values-conflict", findings=(1, 2)),), grammar)
    (refused,) = (text for text in said if "dictated twice" in text)
    assert "in doubt" not in refused


@pytest.mark.parametrize(("action", "answer"), [(Action.ANSWER, "12 s"), (Action.AS_SAID, "")])
def test_the_doubt_goes_when_the_value_is_settled_at_review(grammar, action, answer):
    """Another value typed in its place, or left as it was said; it comes back when the decision is taken back."""
    exam = examine([Typed("typed", "Timed up and go 1.2 seconds.")], engine=None, grammar=grammar)
    assert exam.figures[0].text.endswith("in doubt: timed up and go 1.2")
    place = next(at for at, one in enumerate(exam.queries) if one.code == "value-implausible")
    settled = apply(exam, Decision(query=place, action=action, answer=answer), grammar)
    assert settled.figures
    assert all("doubt" not in figure.text for figure in settled.figures)
    assert undo(settled, grammar).figures == exam.figures


def test_a_doubtful_rate_leaves_what_is_of_pressures_alone(grammar):
    """ "Pulse about 70": the fall of pressure is not in doubt, the rise of the rate is."""
    text = "Lying blood pressure 140 over 80, pulse about 70. Standing at three minutes 120 over 76, pulse 80."
    exam = examine([Typed("typed", text)], engine=None, grammar=grammar)
    doubtful = {figure.name for figure in exam.figures if "in doubt: heart rate supine about 70" in figure.text}
    assert doubtful == {"postural change", "postural heart-rate criterion", "rate to pressure ratio"}
