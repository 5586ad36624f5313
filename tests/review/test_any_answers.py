"""Whatever is answered, in whatever order: nothing breaks, nothing heard is lost, all of it can be taken back."""

from __future__ import annotations

import random

import pytest
from by_hand import DEMOS

from dictate.grammar import Grammar
from dictate.model import Action, Decision, Examination
from dictate.notes import exam_json, findings_csv, queries_csv, write_note
from dictate.pipeline import Typed, examine
from dictate.review import Refused, apply, in_order, undo
from dictate.review.questions import card_of, question_of

TYPED = (
    "2+", "4-", "left", "right", "both", "standing", "3 min", "142/84", "absent", "normal", "not examined", "T4",
    "8 s", "knee jerk three plus on the left", "no tremor", "wugs are blicket", "2026-03-04 14:30", "motor, sensory",
    "0", "-1", "abnormal: like a wug", "20/30", "99999999999999999999", "four minus to four",
    "é \U0001f9e0", "%s {0}", "' OR 1=1",
)  # fmt: skip
FEW, MANY = 12, 400  # answers


def any_decision(exam: Examination, chance: random.Random) -> Decision:
    """A suggestion, a typed word, or any action, on any question or finding, even such as there are not."""
    order = in_order(exam)
    query = chance.choice(order) if order and chance.random() < 0.6 else None
    finding = chance.randrange(-1, len(exam.findings) + 1) if query is None else None
    suggestions = exam.queries[query].suggestions if query is not None else ()
    answer = chance.choice(suggestions) if suggestions and chance.random() < 0.6 else chance.choice(TYPED)
    action = Action.ANSWER if chance.random() < 0.7 else chance.choice(list(Action))
    return Decision(query=query, finding=finding, answer=answer, action=action)


def check(exam: Examination, before: Examination) -> None:
    """What must hold after every answer."""
    heard = len(before.transcript.words)
    assert exam.transcript.words[:heard] == before.transcript.words
    for finding in exam.findings:
        for piece in finding.evidence:
            assert exam.transcript.quote(piece.first, piece.last) == piece.quote
    for query in exam.queries:
        assert all(0 <= at < len(exam.findings) for at in query.findings)
    places = [one.query for one in exam.decisions if one.query is not None]
    assert places == list(range(len(places)))
    said = {
        at
        for piece in (
            *(piece for finding in exam.findings for piece in finding.evidence),
            *(remark.evidence for remark in exam.remarks),
        )
        for at in range(piece.first, piece.last + 1)
    }
    once = {
        at
        for piece in (
            *(piece for finding in before.findings for piece in finding.evidence),
            *(remark.evidence for remark in before.remarks),
        )
        for at in range(piece.first, piece.last + 1)
    }
    assert once <= said  # words that were a finding or a remark still are one


@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("count", [FEW, pytest.param(MANY, marks=pytest.mark.slow)])
def test_any_answers_in_any_order(grammar: Grammar, seed: int, count: int) -> None:
    """Only refusals, never a fault; the files can be written; undo gives back what was read."""
    chance = random.Random(seed)
    text = (DEMOS / "noisy-queries.txt").read_text(encoding="utf-8") + " Next patient. Gait normal."
    before = examine([Typed("noisy", text)], engine=None, grammar=grammar, patient="P-17", scope="dizziness")
    exam = before
    for number in range(count):
        try:
            exam = apply(exam, any_decision(exam, chance), grammar)
        except Refused:
            continue
        check(exam, before)
        if number % 10 == 0:
            order = in_order(exam)
            if order:
                question_of(exam, chance.choice(order), grammar)
            if exam.findings:
                card_of(exam, chance.randrange(len(exam.findings)), grammar)
            if exam.decisions and chance.random() < 0.5:
                exam = undo(exam, grammar)
    for write in (exam_json, findings_csv, queries_csv):
        write(exam)
    write_note(exam, grammar)
    assert Examination.model_validate_json(exam.model_dump_json()) == exam
    if exam.decisions:
        assert undo(exam, grammar, count=len(exam.decisions)) == before
