"""What was asked on day 1 is not asked on day 30, and never for a number, a side or a negation."""

from __future__ import annotations

import stat
from collections.abc import Callable
from pathlib import Path

import pytest
from by_hand import ROOT

from dictate.examples import run_examples
from dictate.grammar import Grammar, load_grammar
from dictate.grammar.load import LEARNT
from dictate.model import Action, Component, Decision, Examination
from dictate.pipeline import examine_transcript
from dictate.review import apply, in_order
from dictate.review.learning import Lesson, forget, learn, learnt, lessons_of
from dictate.review.sitting import Sitting

Exam = Callable[..., Examination]
Rows = Callable[[Examination], list[str]]
Codes = Callable[[Examination], list[str]]

MENDED = "Nostagmus on left gaze. Gait normal."
BY_HAND = "# mine\nitems:\n  reflex_patellar:\n    terms: [quadro jerk]\n"
MENDED_NEVER = (("wright", "right"), ("tin", "ten"), ("knot", "not"), ("nun", "none"))
OWN_PHRASE = "Reflexes. Wug blicket three plus on the left. Gait normal."


def answered(exam: Examination, code: str, answer: str, grammar: Grammar, **more: Action) -> Examination:
    """The first query of the code, answered."""
    at = next(at for at in in_order(exam) if exam.queries[at].code == code)
    return apply(exam, Decision(query=at, answer=answer, **more), grammar)


@pytest.fixture(scope="module")
def mending(grammar: Grammar) -> Grammar:
    """The grammar, mending words towards numbers, sides and negations."""
    misheard = {**grammar.common.misheard, **{meant: (heard,) for heard, meant in MENDED_NEVER}}
    common = grammar.common.model_copy(update={"misheard": misheard})
    return grammar.model_copy(update={"common": common, "sha256": "mending"})


def test_what_was_asked_on_day_1_is_not_asked_on_day_30(
    exam: Exam, sitting_of: Callable[..., Sitting], codes: Codes, rows: Rows
) -> None:
    """Two things are settled and kept at review; said again they are read so unasked. A side left out is asked for."""
    sitting = sitting_of(f"{MENDED} {OWN_PHRASE}", heard=True)
    day_1 = sitting.exam
    assert sorted(codes(day_1)) == ["not-placed", "repaired-hearing"]
    for code, typed, line in (
        ("repaired-hearing", "on left gaze present", "common.yaml: trusted > nystagmus: nostagmus"),
        (
            "not-placed",
            "knee jerk three plus on the left",
            "reflexes.yaml: items > reflex_patellar > terms: wug blicket",
        ),
    ):
        at = next(at for at in sitting.open_places() if sitting.exam.queries[at].code == code)
        sitting.decide(Decision(query=at, answer=typed))
        assert [lesson.line for lesson in sitting.lessons()] == [line]
        assert line not in [lesson.line for lesson in sitting.learnt()]  # shown before anything is written
        sitting.learn()

    assert sitting.own_folder is not None
    (sitting.own_folder / "reflexes.yaml").write_text(BY_HAND, encoding="utf-8")
    taught = load_grammar(sitting.own_folder)
    assert {"quadro jerk", "wug blicket", "knee jerk"} <= set(taught.item("reflex_patellar").terms)
    day_30 = examine_transcript(day_1.transcript, grammar=taught)
    assert codes(day_30) == []
    assert sorted(rows(day_30)) == sorted(rows(sitting.exam))
    other = examine_transcript(exam("Reflexes. Wug blicket one plus.").transcript, grammar=taught)
    assert (codes(other), rows(other)) == (["side-missing"], ["reflex_patellar measured 1+"])
    assert not [one for one in run_examples(taught, [Component.REFLEXES]) if one.faults]


def test_lesson_can_be_taken_back(exam: Exam, grammar: Grammar, tmp_path: Path) -> None:
    """As if it had never been learnt: the file goes with its last line, and nothing is left to load."""
    done = answered(exam(MENDED, heard=True), "repaired-hearing", "seen", grammar, action=Action.SEEN)
    (lesson,) = lessons_of(done, done.decisions[-1], grammar)
    learn(lesson, tmp_path)
    (kept,) = learnt(tmp_path)
    assert kept.line == lesson.line
    forget(kept, tmp_path)
    assert learnt(tmp_path) == ()
    assert not list((tmp_path / LEARNT).iterdir())


NEVER = [
    ("Reflexes. Wug blicket. Gait normal.", "knee jerk three plus on the left"),  # number and side were not said
    ("Wug blicket three plus on the left. Gait normal.", "knee jerk two plus on the left"),  # another number
    ("Wug blicket three plus on the left. Gait normal.", "knee jerk three plus on the right"),  # another side
    ("Carotids wug. Gait normal.", "no carotid bruit"),  # a negation
    ("Wug blicket. Gait normal.", "no tremor"),
    ("Wug three plus left blicket. Gait normal.", "knee jerks two plus right, three plus left"),  # several findings
]


@pytest.mark.parametrize(("words", "typed"), NEVER, ids=[f"{row[0]} → {row[1]}" for row in NEVER])
def test_number_side_and_negation_are_never_learnt(exam: Exam, grammar: Grammar, words: str, typed: str) -> None:
    """Whatever the words gave by hand, nothing is offered."""
    before = exam(words)
    at = next(at for at in in_order(before) if before.queries[at].code == "not-placed")
    done = apply(before, Decision(query=at, answer=typed), grammar)
    assert lessons_of(done, done.decisions[-1], grammar) == ()


@pytest.mark.parametrize("heard", [heard for heard, _ in MENDED_NEVER])
def test_mended_number_side_or_negation_is_never_learnt(exam: Exam, mending: Grammar, heard: str) -> None:
    """Even where the grammar mends such a word, it is asked about every time."""
    day_1 = exam("Nostagmus on left gaze.", heard=True)
    finding = day_1.findings[0].model_copy(update={"detail": (f"heard as {heard}",)})
    day_1 = day_1.model_copy(update={"findings": (finding,)})
    done = answered(day_1, "repaired-hearing", "seen", mending, action=Action.SEEN)
    assert done.decisions[-1].key
    assert lessons_of(done, done.decisions[-1], mending) == ()


def test_mended_word_that_was_wrong_is_not_learnt(exam: Exam, grammar: Grammar) -> None:
    """Only what was confirmed; other answers teach nothing."""
    before = exam(MENDED, heard=True)
    done = answered(before, "repaired-hearing", "-", grammar, action=Action.REMOVE)
    assert lessons_of(done, done.decisions[-1], grammar) == ()
    done = answered(exam("Biceps reflex two plus."), "side-missing", "left", grammar)
    assert lessons_of(done, done.decisions[-1], grammar) == ()


def test_files_written_by_hand_are_left_alone(tmp_path: Path) -> None:
    """What is learnt stands in files of its own, which only the user can read."""
    by_hand = tmp_path / "reflexes.yaml"
    by_hand.write_text(BY_HAND, encoding="utf-8")
    lesson = Lesson("reflexes.yaml", ("items", "reflex_patellar", "terms"), "wug blicket", "")
    learn(lesson, tmp_path)
    learn(lesson, tmp_path)  # twice is once
    assert by_hand.read_text(encoding="utf-8") == BY_HAND
    written = tmp_path / LEARNT / "reflexes.yaml"
    assert stat.S_IMODE(written.stat().st_mode) == 0o600
    assert written.read_text(encoding="utf-8").count("wug blicket") == 1


def test_packaged_grammar_trusts_nothing(grammar: Grammar) -> None:
    """Only the user can decide not to be shown a mended word."""
    assert grammar.common.trusted == {}
    assert "trusted" not in (ROOT / "grammars" / "common.yaml").read_text(encoding="utf-8")
