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
from dictate.model import Action, Component, Decision, Examination, Transcript
from dictate.pipeline import examine_transcript
from dictate.review import apply, in_order
from dictate.review.learning import Lesson, forget, learn, learnt, lessons_of

Exam = Callable[..., Examination]
Rows = Callable[[Examination], list[str]]
Codes = Callable[[Examination], list[str]]

MENDED = "Nostagmus on left gaze. Gait normal."
MENDED_NEVER = (("wright", "right"), ("tin", "ten"), ("knot", "not"), ("nun", "none"))
OWN_PHRASE = "Reflexes. Wug blicket three plus on the left. Gait normal."


def answered(exam: Examination, code: str, answer: str, grammar: Grammar, **more: Action) -> Examination:
    """The first query of the code, answered."""
    at = next(at for at in in_order(exam) if exam.queries[at].code == code)
    return apply(exam, Decision(query=at, answer=answer, **more), grammar)


def day_30(transcript: Transcript, folder: Path) -> Examination:
    """The same words dictated again, read with what the folder holds."""
    return examine_transcript(transcript, grammar=load_grammar(folder))


@pytest.fixture(scope="module")
def own(exam: Exam, grammar: Grammar) -> tuple[Examination, Lesson]:
    """A name the grammar did not know, settled by typing it as it is known, and what that teaches."""
    done = answered(exam(OWN_PHRASE), "not-placed", "knee jerk three plus on the left", grammar)
    (lesson,) = lessons_of(done, done.decisions[-1], grammar)
    return done, lesson


@pytest.fixture(scope="module")
def mending(grammar: Grammar) -> Grammar:
    """The grammar, mending words towards numbers, sides and negations."""
    misheard = {**grammar.common.misheard, **{meant: (heard,) for heard, meant in MENDED_NEVER}}
    common = grammar.common.model_copy(update={"misheard": misheard})
    return grammar.model_copy(update={"common": common, "sha256": "mending"})


def test_mended_word_is_asked_once(exam: Exam, grammar: Grammar, codes: Codes, rows: Rows, tmp_path: Path) -> None:
    """Confirmed and kept on day 1; on day 30 it is read the same and not asked about."""
    day_1 = exam(MENDED, heard=True)
    assert codes(day_1) == ["repaired-hearing"]
    done = answered(day_1, "repaired-hearing", "on left gaze present", grammar)
    (lesson,) = lessons_of(done, done.decisions[-1], grammar)
    assert lesson.line == "common.yaml: trusted > nystagmus: nostagmus"
    assert not list(tmp_path.iterdir())  # shown before anything is written
    learn(lesson, tmp_path)
    later = day_30(day_1.transcript, tmp_path)
    assert codes(later) == []
    assert rows(later) == rows(day_1)


def test_own_phrase_is_asked_once(
    exam: Exam, own: tuple[Examination, Lesson], codes: Codes, rows: Rows, tmp_path: Path
) -> None:
    """Said with a number and a side: the name is learnt, they are not. The component's examples hold with it."""
    day_1 = exam(OWN_PHRASE)
    assert "not-placed" in codes(day_1)
    done, lesson = own
    assert lesson.line == "reflexes.yaml: items > reflex_patellar > terms: wug blicket"
    learn(lesson, tmp_path)
    later = day_30(day_1.transcript, tmp_path)
    assert codes(later) == []
    assert sorted(rows(later)) == sorted(rows(done))
    other = day_30(exam("Reflexes. Wug blicket one plus on the right.").transcript, tmp_path)
    assert rows(other) == ["reflex_patellar right measured 1+"]
    assert not [one for one in run_examples(load_grammar(tmp_path), [Component.REFLEXES]) if one.faults]


def test_lesson_can_be_taken_back(exam: Exam, grammar: Grammar, codes: Codes, tmp_path: Path) -> None:
    """As if it had never been learnt; the file goes with its last line."""
    done = answered(exam(MENDED, heard=True), "repaired-hearing", "seen", grammar, action=Action.SEEN)
    (lesson,) = lessons_of(done, done.decisions[-1], grammar)
    learn(lesson, tmp_path)
    (kept,) = learnt(tmp_path)
    assert kept.line == lesson.line
    forget(kept, tmp_path)
    assert learnt(tmp_path) == ()
    assert not list((tmp_path / LEARNT).iterdir())
    assert codes(day_30(done.transcript, tmp_path)) == ["repaired-hearing"]


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


def test_files_written_by_hand_are_left_alone(own: tuple[Examination, Lesson], tmp_path: Path) -> None:
    """What is learnt stands in files of its own, which only the user can read, and both are loaded."""
    by_hand = tmp_path / "reflexes.yaml"
    by_hand.write_text("# mine\nitems:\n  reflex_patellar:\n    terms: [quadro jerk]\n", encoding="utf-8")
    _, lesson = own
    learn(lesson, tmp_path)
    learn(lesson, tmp_path)  # twice is once
    assert by_hand.read_text(encoding="utf-8").startswith("# mine")
    written = tmp_path / LEARNT / "reflexes.yaml"
    assert stat.S_IMODE(written.stat().st_mode) == 0o600
    assert written.read_text(encoding="utf-8").count("wug blicket") == 1
    terms = load_grammar(tmp_path).item("reflex_patellar").terms
    assert {"quadro jerk", "wug blicket", "knee jerk"} <= set(terms)


def test_packaged_grammar_trusts_nothing(grammar: Grammar) -> None:
    """Only the user can decide not to be shown a mended word."""
    assert grammar.common.trusted == {}
    assert "trusted" not in (ROOT / "grammars" / "common.yaml").read_text(encoding="utf-8")
