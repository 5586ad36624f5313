"""A typed value is taken by its kind, or refused with what would be understood."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dictate.grammar import Grammar
from dictate.model import Component, Examination, Finding, RemarkKind
from dictate.review.typed import LONGEST, Refused, clean, expected, phrase_findings, reworded

Exam = Callable[..., Examination]

KNEE = "Left knee jerk three plus."
DELTOID = "Left deltoid four."
PRESSURE = "Blood pressure lying 140 over 80."
TAKEN = [
    (PRESSURE, "142/84", "value", "142/84"),
    (PRESSURE, "one forty two over eighty four", "value", "142/84"),
    (PRESSURE, "120 over palpable", "value", "120/palpable"),
    (PRESSURE, "standing", "position", "standing"),
    (PRESSURE, "3 min", "minutes", "3.0"),
    (PRESSURE, "three minutes", "minutes", "3.0"),
    (PRESSURE, "immediately", "minutes", "0.0"),
    (PRESSURE, "right", "side", "right"),
    (KNEE, "2+", "value", "2+"),
    (KNEE, "two plus", "value", "2+"),
    (KNEE, "absent", "value", "0"),
    (KNEE, "right", "side", "right"),
    (KNEE, "both sides", "side", "both"),
    (DELTOID, "4-", "value", "4-"),
    (DELTOID, "four minus", "value", "4-"),
    (DELTOID, "4/5", "value", "4"),
    ("Visual acuity right 20/30.", "20/40", "value", "20/40"),
    ("Recall two of three.", "3/3", "value", "3/3"),
    ("Coma scale fourteen.", "15", "value", "15"),
    ("Plantar response flexor on the left.", "extensor", "value", "extensor"),
    ("Sensory level at T4.", "T10", "value", "T10"),
    ("Weight 71 kilos.", "72", "value", "72"),
    ("Weight 71 kilos.", "154 lb", "unit", "[lb_av]"),
    ("Vibration six seconds at the right great toe.", "8 s", "value", "8"),
    ("Rest tremor of the right hand.", "absent", "status", "absent"),
    ("Gait normal.", "abnormal", "status", "abnormal"),
    ("Gait normal.", "wide based", "value", "wide based"),
    ("Gait normal.", "abnormal: like a wug", "value", "like a wug"),
    ("Gait normal.", "not examined", "status", "not_examined"),
    ("Gait normal.", "not assessable", "status", "not_assessable"),
]


@pytest.mark.parametrize(("words", "text", "field", "wanted"), TAKEN, ids=[f"{row[0]} {row[1]}" for row in TAKEN])
def test_typed_words_change_one_thing(
    exam: Exam, grammar: Grammar, words: str, text: str, field: str, wanted: str
) -> None:
    """The field typed is changed, item, place and evidence are not."""
    before = exam(words).findings[0]
    after = reworded(before, text, grammar)
    assert str(getattr(after, field)) == wanted
    assert (after.item, after.component, after.evidence) == (before.item, before.component, before.evidence)
    for other in {"side", "position", "minutes", "site"} - {field}:
        assert getattr(after, other) == getattr(before, other)


REFUSED = [
    (KNEE, "142/84"),
    (KNEE, "2/3"),
    (KNEE, "2+ or 3+"),
    (KNEE, "standing"),
    (DELTOID, "four minus to four"),
    (PRESSURE, "142"),
    (PRESSURE, "12/8"),
    (PRESSURE, "left knee jerk two plus"),
    ("Weight 71 kilos.", "left"),
    ("Gait normal.", "blicket"),
    ("Gait normal.", "?"),
    ("Heel walking normal.", "7"),
    ("Digit span six forward.", "5-"),
    ("Weight 71 kilos.", "-3"),
    ("Pulse 70.", "5-"),
    (DELTOID, "no"),
    ("Pupils react briskly on both sides.", "midline"),
    ("No cardiac murmur.", "?"),
    ("No cardiac murmur.", "7"),
    ("Weight 71 kilos.", "72 mmHg"),
    ("Plantar response flexor on the left.", "4+"),
    ("Rest tremor of the right hand.", "midline"),
]


@pytest.mark.parametrize(("words", "text"), REFUSED, ids=[f"{row[0]} {row[1]}" for row in REFUSED])
def test_what_the_item_cannot_be_is_refused(exam: Exam, grammar: Grammar, words: str, text: str) -> None:
    """Never half taken, never taken of another item."""
    with pytest.raises(Refused):
        reworded(exam(words).findings[0], text, grammar)


def test_what_was_said_before_stays(exam: Exam, grammar: Grammar) -> None:
    """Value, side and position that were replaced are kept as corrected, in order."""
    finding = exam(PRESSURE).findings[0]
    for text in ("142/84", "standing", "left", "right"):
        finding = reworded(finding, text, grammar)
    assert finding.corrected == ("140/80 mmHg", "supine", "left")


def test_typed_word_leaves_no_other_reading(exam: Exam, grammar: Grammar) -> None:
    """What the examiner types is no longer open."""
    finding = exam("Left deltoid four minus to four.").findings[0]
    assert finding.readings
    assert reworded(finding, "4", grammar).readings == ()


def test_item_the_grammar_lost_is_refused(exam: Exam, grammar: Grammar) -> None:
    """An examination read with another grammar can still be opened."""
    finding: Finding = exam(KNEE).findings[0].model_copy(update={"item": "gone"})
    with pytest.raises(Refused, match="knows no such item"):
        reworded(finding, "2+", grammar)


def test_phrase_gives_findings_behind_the_words(exam: Exam, grammar: Grammar) -> None:
    """Evidence counts on from the transcript's words."""
    before = exam("Gait normal.")
    findings, loose = phrase_findings("knee jerk two plus right, three plus left", before, grammar)
    assert [(str(one.side), str(one.value), one.evidence[0].first) for one in findings] == [
        ("right", "2+", 2),
        ("left", "3+", 2),
    ]
    assert not loose


def test_phrase_is_read_under_the_component_named(exam: Exam, grammar: Grammar) -> None:
    """ "Left biceps five" under the motor heading is strength; "biceps two plus" under reflexes is the reflex."""
    before = exam("Gait normal.")
    (strength,), _ = phrase_findings("left biceps five", before, grammar, under=Component.MOTOR)
    (reflex,), _ = phrase_findings("left biceps two plus", before, grammar, under=Component.REFLEXES)
    assert (strength.component, reflex.component) == (Component.MOTOR, Component.REFLEXES)
    assert strength.evidence[0].first == reflex.evidence[0].first == 2


def test_words_of_a_phrase_that_became_nothing_are_kept(exam: Exam, grammar: Grammar) -> None:
    """They will be asked about."""
    _, loose = phrase_findings("left knee jerk two plus. wugs are blicket", exam("Gait normal."), grammar)
    assert [(one.kind, one.evidence.quote) for one in loose] == [(RemarkKind.NOT_PLACED, "wugs are blicket")]


def test_phrase_without_finding_is_refused(exam: Exam, grammar: Grammar) -> None:
    """Nothing is made up."""
    with pytest.raises(Refused, match="gives no finding"):
        phrase_findings("wugs are blicket", exam("Gait normal."), grammar)


@pytest.mark.parametrize("text", ["not examined", "-1", "normal", "3+"])
def test_no_heading_is_made_up(text: str, exam: Exam, grammar: Grammar) -> None:
    """Words that name nothing are said of no component that nobody chose."""
    with pytest.raises(Refused, match="gives no finding"):
        phrase_findings(text, exam("Gait normal."), grammar)


def test_heading_that_was_chosen_is_no_word_that_was_typed(exam: Exam, grammar: Grammar) -> None:
    """It may be what the words are about; the evidence is the words alone. A number below zero is none."""
    (finding,), _ = phrase_findings("not examined", exam("Gait normal."), grammar, under=Component.REFLEXES)
    assert (finding.item, str(finding.status)) == ("reflexes_all", "not_examined")
    (piece,) = finding.evidence
    assert (piece.first, piece.last, piece.quote) == (2, 3, "not examined")
    with pytest.raises(Refused, match="gives no finding"):
        phrase_findings("-1", exam("Gait normal."), grammar, under=Component.REFLEXES)


def test_answers_have_a_length() -> None:
    """One line, not empty, not a dictation."""
    assert clean("  4  -\n") == "4 -"
    assert clean("4\x00-\x1b[2J") == "4 - [2J"
    for text in ("", " \n", "x" * (LONGEST + 1)):
        with pytest.raises(Refused):
            clean(text)


def test_hint_names_the_grades_of_the_scale(grammar: Grammar) -> None:
    """And what else may be typed."""
    assert expected(grammar.item("reflex_patellar"), grammar).startswith("a grade, 0 ")
    assert "supine, sitting or standing" in expected(grammar.item("blood_pressure"), grammar)
    assert "left" not in expected(grammar.item("weight"), grammar)
