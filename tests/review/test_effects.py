"""The lines that change, and only those."""

from __future__ import annotations

from collections.abc import Callable

from dictate.grammar import Grammar
from dictate.model import Action, Decision, Examination
from dictate.notes import note_lines
from dictate.review import apply
from dictate.review.effects import difference, lines_with, values_of

Exam = Callable[..., Examination]
Answer = Callable[..., Examination]

TEXT = "Right knee jerk seven plus. Left knee jerk two plus. Gait normal."


def test_line_before_and_after(exam: Exam, answer: Answer, grammar: Grammar) -> None:
    """The line of the item, without the numbers of the queries, and what is computed from it; nothing else."""
    before = exam(TEXT)
    change = difference(before, answer(before, "value-implausible", "3+"), grammar)
    assert change.before == ("Knee jerk: right 7+, left 2+",)
    assert change.after == (
        "Knee jerk: right 3+, left 2+",
        "Computed: Reflexes differ: knee jerk right 3+, left 2+ (L2-4)",
    )


def test_as_said_changes_no_line(exam: Exam, answer: Answer, grammar: Grammar) -> None:
    """The mark of the query goes, and it is no part of the line."""
    before = exam(TEXT)
    change = difference(before, answer(before, "value-implausible", "-", action=Action.AS_SAID), grammar)
    assert (change.before, change.after) == ((), ())


def test_figures_time_and_kept_words_are_lines_too(exam: Exam, answer: Answer, grammar: Grammar) -> None:
    """Whatever a reader of the note would see."""
    before = exam("Blood pressure right sitting 86 over 142. Wugs are blicket.")
    change = difference(before, answer(before, "value-implausible", "142/86"), grammar)
    assert any(line.startswith("Computed: 142/86") for line in change.after)
    change = difference(before, answer(before, "not-placed", "keep the words"), grammar)
    assert change.after == ("REMARKS (as dictated): Wugs are blicket.",)
    change = difference(before, answer(before, "time-missing", "2026-03-04 14:30"), grammar)
    assert change.after == ("Time of examination: 2026-03-04 14:30",)


def test_lines_of_findings(exam: Exam, grammar: Grammar) -> None:
    """The line that holds a finding, and each of its values with its place."""
    before = exam(TEXT)
    assert lines_with(before, (1,), grammar) == ("Knee jerk: right 7+, left 2+",)
    line = next(line for lines in note_lines(before, grammar).values() for line in lines if 0 in line.findings)
    assert values_of(line, before, grammar) == [(0, "right 7+"), (1, "left 2+")]


def test_added_finding_is_a_line(exam: Exam, grammar: Grammar) -> None:
    """Nothing goes for it."""
    before = exam("Gait normal.")
    after = apply(before, Decision(action=Action.ADD, answer="left knee jerk two plus"), grammar)
    change = difference(before, after, grammar)
    assert (change.before, change.after) == ((), ("Knee jerk: left 2+",))
