"""Decisions: settled stays settled, a new doubt is asked, everything can be taken back."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

import pytest
from by_hand import DEMOS

from dictate.grammar import Grammar
from dictate.model import Action, Component, Decision, Examination, RemarkKind, Severity, Stretch
from dictate.notes import write_note
from dictate.pipeline import Typed, examine
from dictate.review import Refused, apply, in_order, undo

Exam = Callable[..., Examination]
Answer = Callable[..., Examination]
Rows = Callable[[Examination], list[str]]
Codes = Callable[[Examination], list[str]]

SEVEN = "Right knee jerk seven plus. Deltoid four minus."


def settle_all(exam: Examination, grammar: Grammar) -> Examination:
    """The first suggestion of each question, else as said or passed over."""
    while order := in_order(exam):
        query = exam.queries[order[0]]
        passed = Action.AS_SAID if query.severity is Severity.MUST else Action.SEEN
        first = Decision(query=order[0], answer=query.suggestions[0]) if query.suggestions else None
        exam = apply(exam, first or Decision(query=order[0], action=passed, answer="passed"), grammar)
    return exam


@pytest.fixture(scope="module")
def noisy(grammar: Grammar) -> Examination:
    """The demonstration that holds a doubt of nearly every kind."""
    text = (DEMOS / "noisy-queries.txt").read_text(encoding="utf-8")
    return examine([Typed("noisy", text)], engine=None, grammar=grammar)


def test_decision_changes_one_finding_and_the_figures(exam: Exam, answer: Answer, rows: Rows) -> None:
    """Figures follow the value that was decided."""
    before = exam("Blood pressure right sitting 86 over 142. Gait normal.")
    after = answer(before, "value-implausible", "142/86")
    assert rows(after) == ["blood_pressure right sitting measured 142/86 mm[Hg]", "gait normal"]
    assert any("mean pressure 105" in figure.text for figure in after.figures)  # (142 + 2 * 86) / 3 = 104.7
    assert not any("mean pressure" in figure.text for figure in before.figures if "105" in figure.text)


def test_examination_given_is_not_changed(noisy: Examination, grammar: Grammar) -> None:
    """apply() is pure."""
    copy = noisy.model_copy(deep=True)
    settle_all(noisy, grammar)
    assert noisy == copy


def test_everything_can_be_settled_and_taken_back(noisy: Examination, grammar: Grammar) -> None:
    """All decisions taken back give the examination as it was read; one by one or at once."""
    done = settle_all(noisy, grammar)
    assert not done.open_queries
    assert "[?" not in write_note(done, grammar)
    one_by_one = done
    for _ in done.decisions:
        one_by_one = undo(one_by_one, grammar)
    assert undo(done, grammar, count=len(done.decisions)) == one_by_one == noisy
    assert write_note(one_by_one, grammar) == write_note(noisy, grammar)


def test_taking_one_back_is_as_if_it_was_never_made(noisy: Examination, grammar: Grammar) -> None:
    """Undo after n decisions gives what n - 1 gave, at every n."""
    steps = [noisy]
    while order := in_order(steps[-1]):
        query = steps[-1].queries[order[0]]
        answer = query.suggestions[0] if query.suggestions else ""
        action = Action.ANSWER if answer else Action.AS_SAID if query.severity is Severity.MUST else Action.SEEN
        steps.append(apply(steps[-1], Decision(query=order[0], answer=answer, action=action), grammar))
    for before, after in pairwise(steps):
        assert undo(after, grammar) == before


def test_undo_does_not_depend_on_the_grammar(exam: Exam, answer: Answer, grammar: Grammar, small: Grammar) -> None:
    """A typed phrase is not read again: what it gave is kept in the decision."""
    one = apply(exam("Gait normal."), Decision(action=Action.ADD, answer="left knee jerk two plus"), grammar)
    two = apply(one, Decision(action=Action.ADD, answer="right knee jerk three plus"), grammar)
    assert undo(two, small).findings == one.findings


def test_nothing_to_take_back_is_said(noisy: Examination, grammar: Grammar) -> None:
    """Before the first decision."""
    with pytest.raises(Refused, match="nothing was decided"):
        undo(noisy, grammar)


def test_decided_examination_survives_its_file(noisy: Examination, grammar: Grammar) -> None:
    """Written, read, taken back."""
    done = settle_all(noisy, grammar)
    again = Examination.model_validate_json(done.model_dump_json())
    assert again == done
    assert undo(again, grammar, count=99) == noisy


def test_new_doubt_of_a_typed_value_is_asked(exam: Exam, answer: Answer, codes: Codes) -> None:
    """A value that cannot be right either does not slip through."""
    after = answer(exam(SEVEN), "value-implausible", "8+")
    assert codes(after) == ["value-implausible", "side-missing"]
    assert "8+" in after.queries[in_order(after)[0]].message


def test_value_left_as_said_is_not_asked_again(exam: Exam, answer: Answer, codes: Codes, grammar: Grammar) -> None:
    """Not after other decisions either; but another value of the same finding is."""
    after = answer(exam(SEVEN), "value-implausible", "as said", action=Action.AS_SAID)
    after = answer(after, "side-missing", "left")
    assert codes(after) == []
    changed = apply(after, Decision(finding=0, answer="9+"), grammar)
    assert codes(changed) == ["value-implausible"]


def test_wrong_value_typed_back_is_asked_again(exam: Exam, answer: Answer, codes: Codes, grammar: Grammar) -> None:
    """A doubt that was settled by a change was never accepted as it was."""
    after = answer(exam(SEVEN), "value-implausible", "2+")
    assert "value-implausible" not in codes(after)
    assert "value-implausible" in codes(apply(after, Decision(finding=0, answer="7+"), grammar))


def test_added_finding_that_contradicts_is_asked(exam: Exam, codes: Codes, grammar: Grammar) -> None:
    """A typed phrase is checked like a spoken one."""
    before = exam("Left knee jerk two plus.")
    after = apply(before, Decision(action=Action.ADD, answer="left knee jerk three plus"), grammar)
    assert codes(after) == ["values-conflict"]


def test_settled_queries_keep_their_places(noisy: Examination, grammar: Grammar) -> None:
    """Each decision names its query, with the findings it is about where they stand now."""
    done = settle_all(noisy, grammar)
    for decision in done.decisions:
        assert decision.query is not None
        assert decision.asked is not None
        query = done.queries[decision.query]
        assert (query.code, query.message) == (decision.asked.code, decision.asked.message)
        for at in query.findings:
            assert done.findings[at].component is query.component or len(query.findings) > 1


def test_order_of_danger(exam: Exam, codes: Codes) -> None:
    """Whose note, then values, sides and negations, then lost sound, then position; looks last."""
    words = (
        "Patient number four seven one. Blood pressure lying 140 over 80. Biceps reflex two plus. Wugs are blicket. "
        "Gait normal. Blood pressure 118 over 70. Right knee jerk seven plus."
    )
    silent = (Stretch(start_s=1.0, end_s=2.0),)
    asked = codes(exam(words, silent=silent, patient="472"))
    assert asked[:5] == [
        "patient-mismatch", "side-missing", "value-implausible", "speech-not-transcribed", "position-missing",
    ]  # fmt: skip
    assert set(asked[5:]) == {"not-placed"}


def test_look_is_passed_over_and_must_is_not(exam: Exam, answer: Answer) -> None:
    """A must is answered or left as said."""
    before = exam("Gait normal. Wugs are blicket. Biceps reflex two plus.")
    with pytest.raises(Refused, match="settled before signing"):
        answer(before, "side-missing", "seen", action=Action.SEEN)
    after = answer(before, "not-placed", "seen", action=Action.SEEN)
    assert "not-placed" not in {query.code for query in after.open_queries}
    assert after.findings == before.findings


def test_whose_note_cannot_be_left_open(exam: Exam, answer: Answer) -> None:
    """Neither passed over nor left as said."""
    before = exam("Gait normal. Next patient. Knee jerk two plus on the right.")
    for action in (Action.SEEN, Action.AS_SAID, Action.REMOVE):
        with pytest.raises(Refused, match="whose examination"):
            answer(before, "several-patients", "-", action=action)


def test_not_examined_and_not_said(exam: Exam, answer: Answer, rows: Rows) -> None:
    """Not examined keeps the item without its value; not said takes it out and keeps its words."""
    before = exam("Biceps reflex two plus. Gait normal.")
    after = answer(before, "side-missing", "-", action=Action.NOT_EXAMINED)
    assert rows(after) == ["reflex_biceps not_examined", "gait normal"]
    assert after.findings[0].corrected == ("2+",)
    twice = exam("Right knee jerk two plus. Gait normal. Right knee jerk three plus.")
    after = answer(twice, "values-conflict", "-", action=Action.NOT_EXAMINED)
    assert sorted(rows(after)) == ["gait normal", "reflex_patellar right not_examined"]
    after = answer(before, "side-missing", "-", action=Action.REMOVE)
    assert rows(after) == ["gait normal"]
    assert [(one.kind, one.evidence.quote) for one in after.remarks] == [
        (RemarkKind.CORRECTED, "Biceps reflex two plus.")
    ]


def test_any_value_of_the_note_can_be_changed(exam: Exam, rows: Rows, grammar: Grammar) -> None:
    """Without a query; a finding that is gone is said to be."""
    before = exam("Left knee jerk two plus. Gait normal.")
    after = apply(before, Decision(finding=0, answer="right"), grammar)
    assert rows(after) == ["reflex_patellar right measured 2+", "gait normal"]
    with pytest.raises(Refused, match="no finding stands here"):
        apply(before, Decision(finding=2, answer="right"), grammar)


def test_typed_phrase_joins_the_transcript(exam: Exam, grammar: Grammar) -> None:
    """Its words are told apart by their source, and its findings point at them."""
    before = exam("Gait normal.", heard=True)
    phrase = Decision(action=Action.ADD, answer="biceps two plus on the left", component=Component.REFLEXES)
    after = apply(before, phrase, grammar)
    piece = after.findings[1].evidence[0]
    assert after.transcript.quote(piece.first, piece.last) == piece.quote == "biceps two plus on the left"
    assert [(one.name, one.kind) for one in after.transcript.sources] == [
        ("visit.wav", "recording"),
        ("typed at review", "text"),
    ]
    assert {word.source for word in after.transcript.words[2:]} == {1}
    assert undo(after, grammar).transcript == before.transcript


def test_examination_decided_by_an_earlier_version_opens() -> None:
    """A decision used to hold its query and its answer only."""
    assert Decision.model_validate_json('{"query": 0, "answer": "left"}').action is Action.ANSWER
