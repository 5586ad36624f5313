"""A question as it is put: keys, answers, and what each would change."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dictate.checks import catalogue
from dictate.grammar import Grammar
from dictate.model import Action, Examination
from dictate.review import Refused, in_order
from dictate.review.questions import TITLES, card_of, question_of

Exam = Callable[..., Examination]


def test_answers_have_keys_and_show_their_line(exam: Exam, grammar: Grammar) -> None:
    """Suggestions are numbered; the line is shown as it would read."""
    before = exam("Biceps reflex two plus.")
    question = question_of(before, in_order(before)[0], grammar)
    assert [(one.key, one.label, one.change.after) for one in question.choices] == [
        ("1", "left", ("Biceps reflex: left 2+",)),
        ("2", "right", ("Biceps reflex: right 2+",)),
        ("3", "both", ("Biceps reflex: both sides 2+",)),
    ]
    assert [(one.key, one.label) for one in question.others] == [
        ("x", "was not examined"),
        ("r", "not said: remove"),
        ("l", "leave as said"),
    ]
    assert question.now == ("Biceps reflex: 2+",)
    assert (question.must, question.number, question.title) == (True, 1, "Side")


def test_look_is_passed_over_with_one_key(exam: Exam, grammar: Grammar) -> None:
    """And cannot be taken for something to settle."""
    before = exam("Gait normal. Wugs are blicket.")
    question = question_of(before, in_order(before)[0], grammar)
    assert [(one.key, one.decision.action) for one in question.others] == [("p", Action.SEEN)]
    assert not question.must


def test_settled_question_is_refused(exam: Exam, grammar: Grammar) -> None:
    """It was asked once."""
    with pytest.raises(Refused):
        question_of(exam("Gait normal."), 5, grammar)


def test_finding_offers_what_its_item_can_be(exam: Exam, grammar: Grammar) -> None:
    """Sides and grades of a reflex; what it is already is left out."""
    card = card_of(exam("Left knee jerk two plus."), 0, grammar)
    labels = [one.label for one in card.choices]
    assert {"right", "both", "3+", "0"} <= set(labels)
    assert not {"left", "2+", "sitting"} & set(labels)
    with pytest.raises(Refused):
        card_of(exam("Left knee jerk two plus."), 7, grammar)


def test_answer_says_what_it_would_ask_next(exam: Exam, grammar: Grammar) -> None:
    """A doubt that only the answer brings; one that was there before is not new."""
    before = exam("Left knee jerk two plus. Right knee jerk three plus. Gait normal.")
    card = card_of(before, 0, grammar)
    right = next(one for one in card.choices if one.label == "right")
    assert right.raises
    assert "which is right?" in right.raises[0]
    seven = exam("Right knee jerk seven plus.")
    assert not any(one.raises for one in card_of(seven, 0, grammar).choices if one.label == "left")


def test_every_code_has_a_title() -> None:
    """In words, not as a code."""
    assert set(TITLES) == {one.code for one in catalogue()}
