"""The words a question is about, in their surroundings."""

from __future__ import annotations

from collections.abc import Callable

from dictate.grammar import Grammar
from dictate.model import Action, Decision, Examination, Stretch
from dictate.review import apply, in_order
from dictate.review.passages import AROUND, passages_of, passages_of_finding

Exam = Callable[..., Examination]


def test_words_of_the_finding_with_those_around(exam: Exam) -> None:
    """And the times between which they were heard."""
    before = exam("Gait normal. Right knee jerk seven plus. Wugs are blicket.", heard=True)
    query = next(query for query in before.queries if query.code == "value-implausible")
    (passage,) = passages_of(before, query)
    assert (passage.before, passage.words, passage.behind) == (
        "Gait normal.", "Right knee jerk seven plus.", "Wugs are blicket.",
    )  # fmt: skip
    assert (passage.start_s, passage.end_s, passage.name, passage.playable) == (1.0, 3.5, "visit.wav", True)


def test_no_more_than_some_words_around(exam: Exam) -> None:
    """A long dictation is not shown whole."""
    before = exam("Gait normal. " * 20 + "Right knee jerk seven plus. " + "Gait normal. " * 20, heard=True)
    query = next(query for query in before.queries if query.code == "value-implausible")
    (passage,) = passages_of(before, query)
    assert len(passage.before.split()) == len(passage.behind.split()) == AROUND


def test_both_statements_of_a_conflict(exam: Exam) -> None:
    """The one asked about first."""
    before = exam("Left knee jerk three plus. Gait normal. Left knee jerk one plus.")
    passages = passages_of(before, before.queries[in_order(before)[0]])
    assert [one.words for one in passages] == ["Left knee jerk one plus.", "Left knee jerk three plus."]
    assert not any(one.playable for one in passages)


def test_unplaced_words(exam: Exam) -> None:
    """The remark's own."""
    before = exam("Gait normal. Wugs are blicket.", heard=True)
    query = next(query for query in before.queries if query.code == "not-placed")
    assert [one.words for one in passages_of(before, query)] == ["Wugs are blicket."]


def test_sound_without_words_stands_between_its_neighbours(exam: Exam) -> None:
    """It can be played, and nothing is made up for it."""
    before = exam("Gait normal. Romberg negative.", silent=(Stretch(start_s=0.9, end_s=1.0),))
    query = next(query for query in before.queries if query.code == "speech-not-transcribed")
    (passage,) = passages_of(before, query)
    assert (passage.before, passage.words, passage.behind) == ("Gait normal.", "", "Romberg negative.")
    assert passage.playable


def test_typed_words_have_no_neighbours_in_the_recording(exam: Exam, grammar: Grammar) -> None:
    """What was typed was not said beside the last words."""
    before = exam("Gait normal.", heard=True)
    after = apply(before, Decision(action=Action.ADD, answer="left knee jerk two plus"), grammar)
    (passage,) = passages_of_finding(after, after.findings[1])
    assert (passage.before, passage.words, passage.name) == ("", "left knee jerk two plus", "typed at review")
    (heard,) = passages_of_finding(after, after.findings[0])
    assert heard.behind == ""
