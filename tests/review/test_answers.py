"""What each suggestion of each check means."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from dictate.checks import catalogue
from dictate.grammar import Grammar
from dictate.model import Action, Decision, Examination, RemarkKind, Stretch
from dictate.review import Refused, apply, in_order
from dictate.review.answers import __doc__ as table

Exam = Callable[..., Examination]
Answer = Callable[..., Examination]
Rows = Callable[[Examination], list[str]]

SILENCE = (Stretch(start_s=0.6, end_s=2.0),)
TWO_READINGS = "Left knee jerk three plus. Gait normal. Left knee jerk one plus."
INTACT = "Cranial nerves two to twelve intact. Nystagmus on left gaze."
COMA = "Eyes four, verbal five, motor six, coma scale fourteen."
REST = "Gait normal. The rest of the examination is normal."
NEXT = "Gait normal. Next patient. Knee jerk two plus on the right."
LYING = "Blood pressure lying 140 over 80. Gait normal. Blood pressure 118 over 70."
STANDING = "Blood pressure lying 140 over 80, standing 102 over 66."
PLURAL = "Knee jerks two plus. Gait normal. Right knee jerk three plus."
NO_TREMOR = "No tremor. Gait normal. Rest tremor of the right hand."
SPOKEN_REFERENCE = "Patient number four seven one. Gait normal."

# words, what else is known, code, suggestion, findings that come, findings that go
SUGGESTIONS: list[tuple[str, dict[str, Any], str, str, set[str], set[str]]] = [
    (
        "Biceps reflex two plus.",
        {},
        "side-missing",
        "left",
        {"reflex_biceps left measured 2+"},
        {"reflex_biceps measured 2+"},
    ),
    (
        "Biceps reflex two plus.",
        {},
        "side-missing",
        "both",
        {"reflex_biceps both measured 2+"},
        {"reflex_biceps measured 2+"},
    ),
    (
        LYING,
        {},
        "position-missing",
        "standing",
        {"blood_pressure standing measured 118/70 mm[Hg]"},
        {"blood_pressure measured 118/70 mm[Hg]"},
    ),
    (
        STANDING,
        {},
        "time-missing",
        "3 min",
        {"blood_pressure standing 3min measured 102/66 mm[Hg]"},
        {"blood_pressure standing measured 102/66 mm[Hg]"},
    ),
    ("Weight seventy one.", {}, "unit-missing", "[lb_av]", {"weight measured 71 [lb_av]"}, {"weight measured 71"}),
    (
        "Blood pressure 76 over 132.",
        {},
        "value-implausible",
        "132/76",
        {"blood_pressure measured 132/76 mm[Hg]"},
        {"blood_pressure measured 76/132 mm[Hg]"},
    ),
    (
        "Left deltoid four minus to four.",
        {},
        "unsure-hearing",
        "4",
        {"strength_deltoid left measured 4"},
        {"strength_deltoid left measured 4-"},
    ),
    ("Left deltoid four minus to four.", {}, "unsure-hearing", "4-", set(), set()),
    ("Nostagmus on left gaze.", {"heard": True}, "repaired-hearing", "on left gaze present", set(), set()),
    (TWO_READINGS, {}, "values-conflict", "1+", set(), {"reflex_patellar left measured 3+"}),
    (PLURAL, {}, "values-conflict", "3+", {"reflex_patellar left measured 2+"}, {"reflex_patellar measured 2+"}),
    (PLURAL, {}, "values-conflict", "2+", set(), {"reflex_patellar right measured 3+"}),
    (INTACT, {}, "contradiction", "nystagmus on left gaze present", set(), {"cranial_nerves_2_12 normal"}),
    (INTACT, {}, "contradiction", "cranial nerves II to XII normal", set(), {"nystagmus present on left gaze"}),
    (
        INTACT,
        {},
        "contradiction",
        "cranial nerves II to XII normal except nystagmus on left gaze present",
        set(),
        set(),
    ),
    (NO_TREMOR, {}, "contradiction", "tremor right hand rest present", set(), {"tremor absent"}),
    (NO_TREMOR, {}, "contradiction", "tremor absent", set(), {"tremor right hand present rest"}),
    (COMA, {}, "total-mismatch", "15", {"gcs_total measured 15"}, {"gcs_total measured 14"}),
    (COMA, {}, "total-mismatch", "14", set(), set()),
    (
        "Gait normal. Reflexes.",
        {"silent": SILENCE},
        "speech-not-transcribed",
        "nothing that belongs in the note",
        set(),
        set(),
    ),
    (REST, {}, "blanket-unbounded", "motor", {"motor_all normal"}, set()),
    (REST, {}, "blanket-unbounded", "none further", set(), set()),
    (NEXT, {}, "several-patients", "same patient", set(), set()),
    (NEXT, {}, "several-patients", "another patient from here on", set(), {"reflex_patellar right measured 2+"}),
    (SPOKEN_REFERENCE, {"patient": "472"}, "patient-mismatch", "the note's patient", set(), set()),
    ("Gait normal. Wugs are blicket.", {}, "not-placed", "leave out", set(), set()),
    ("Gait normal. Wugs are blicket.", {}, "not-placed", "keep the words", set(), set()),
    (
        STANDING,
        {"scope": "dizziness"},
        "scope-item-missing",
        "not examined",
        {
            "heart_rate not_examined",
            "orthostatic_symptoms not_examined",
            "heart_rhythm not_examined",
            "carotid_bruit not_examined",
            "ears not_examined",
        },
        set(),
    ),
    ("Can you see one pen or two? No double vision.", {}, "whose-words", "yes, a finding", set(), set()),
]


@pytest.mark.parametrize(
    ("words", "known", "code", "suggestion", "come", "go"),
    SUGGESTIONS,
    ids=[f"{row[2]}: {row[3]}" for row in SUGGESTIONS],
)
def test_suggestion_changes_what_it_says(
    exam: Exam, answer: Answer, rows: Rows, words: str, known: dict[str, Any], code: str, suggestion: str,
    come: set[str], go: set[str],
) -> None:  # fmt: skip
    """The suggestion is offered, changes these findings and no other, and settles the query."""
    before = exam(words, **known)
    asked = next(before.queries[at] for at in in_order(before) if before.queries[at].code == code)
    assert suggestion in asked.suggestions
    after = answer(before, code, suggestion)
    assert set(rows(after)) - set(rows(before)) == come
    assert set(rows(before)) - set(rows(after)) == go
    assert len(rows(after)) == len(rows(before)) + len(come) - len(go)
    assert asked.message not in {query.message for query in after.open_queries}


def test_every_code_has_a_suggestion_here_and_a_row_in_the_table() -> None:
    """A new check needs both."""
    every = {one.code for one in catalogue()}
    assert {row[2] for row in SUGGESTIONS} | {"odd-sound"} == every  # sound: see test_heard.py
    assert not [code for code in every if f"| `{code}` |" not in (table or "")]


def test_component_not_examined_is_each_of_its_items(exam: Exam, answer: Answer) -> None:
    """The items stand as words of their own, typed and no part of what was heard."""
    before = exam(STANDING, scope="dizziness")
    after = answer(before, "scope-item-missing", "not examined")
    added = after.findings[len(before.findings) :]
    assert {finding.quote for finding in added} >= {"heart rate not examined.", "ears not examined."}
    for finding in added:
        assert after.transcript.quote(finding.evidence[0].first, finding.evidence[0].last) == finding.quote


def test_exception_settles_without_loss(exam: Exam, answer: Answer) -> None:
    """Blanket and exception both stand, and the note is asked no more."""
    after = answer(
        exam(INTACT), "contradiction", "cranial nerves II to XII normal except nystagmus on left gaze present"
    )
    assert [finding.excepted for finding in after.findings] == [False, True]


def test_value_not_chosen_stays_in_view(exam: Exam, answer: Answer) -> None:
    """Its words are a remark, its value is kept with the one that was chosen."""
    after = answer(exam(TWO_READINGS), "values-conflict", "1+")
    assert after.findings[-1].corrected == ("3+",)
    assert [(one.kind, one.evidence.quote) for one in after.remarks] == [
        (RemarkKind.CORRECTED, "Left knee jerk three plus.")
    ]


def test_third_value_takes_the_place_of_both(exam: Exam, answer: Answer, rows: Rows) -> None:
    """Neither was right: a typed value replaces the two."""
    after = answer(exam(TWO_READINGS), "values-conflict", "2+")
    assert rows(after) == ["gait normal", "reflex_patellar left measured 2+"]
    assert after.findings[1].corrected == ("1+", "3+")


def test_unplaced_words_become_a_finding(exam: Exam, answer: Answer, rows: Rows) -> None:
    """Typed as it should have been said; the words heard and the words typed are both its evidence."""
    after = answer(exam("Gait normal. Wugs are blicket."), "not-placed", "heel to shin normal on the left")
    assert rows(after) == ["gait normal", "heel_shin left normal"]
    assert after.findings[1].quote == "Wugs are blicket. ... heel to shin normal on the left"
    assert not after.remarks


@pytest.mark.parametrize(("word", "kind"), [("keep the words", RemarkKind.KEPT), ("leave out", RemarkKind.LEFT_OUT)])
def test_unplaced_words_are_kept_or_left_out(exam: Exam, answer: Answer, word: str, kind: RemarkKind) -> None:
    """Either way they stay in the examination."""
    after = answer(exam("Gait normal. Wugs are blicket."), "not-placed", word)
    assert [(one.kind, one.evidence.quote) for one in after.remarks] == [(kind, "Wugs are blicket.")]


HISTORY = "HISTORY: BP 120/80, HR 80, RR 14, SpO2 97%, temperature 37.1, GCS 15.\nEXAMINATION: gait normal."


def test_a_history_that_measures_may_stay_one(exam: Exam, answer: Answer, rows: Rows) -> None:
    """The suggestion settles it; a phrase typed instead adds a finding and leaves it; "not said" leaves it out."""
    asked = exam(HISTORY)
    left = answer(asked, "not-placed", "leave as history")
    assert ([one.kind for one in left.remarks], rows(left), left.open_musts) == (
        [RemarkKind.HISTORY],
        ["gait normal"],
        (),
    )
    typed = answer(asked, "not-placed", "heel to shin normal on the left")
    assert ([one.kind for one in typed.remarks], rows(typed)) == (
        [RemarkKind.HISTORY],
        ["gait normal", "heel_shin left normal"],
    )
    gone = answer(asked, "not-placed", action=Action.REMOVE)
    assert [one.kind for one in gone.remarks] == [RemarkKind.LEFT_OUT]


def test_lost_speech_can_be_typed(exam: Exam, answer: Answer, rows: Rows) -> None:
    """What was said there is typed as a phrase."""
    after = answer(
        exam("Gait normal. Reflexes.", silent=SILENCE), "speech-not-transcribed", "left knee jerk three plus"
    )
    assert rows(after) == ["gait normal", "reflex_patellar left measured 3+"]


def test_several_parts_may_have_been_examined(exam: Exam, answer: Answer, rows: Rows) -> None:
    """ "The rest is normal" is spelled out part by part, each with the words that said so."""
    after = answer(exam(REST), "blanket-unbounded", "motor, sensory")
    assert rows(after) == ["gait normal", "motor_all normal", "sensory_all normal"]
    assert after.findings[1].quote == "The rest of the examination is normal."


def test_unchanged_needs_what_was_found(exam: Exam, answer: Answer, rows: Rows) -> None:
    """Nothing is suggested, for nothing is known."""
    after = answer(exam("Gait unchanged."), "blanket-unbounded", "normal")
    assert rows(after) == ["gait normal"]


def test_time_of_examination_is_typed(exam: Exam, answer: Answer) -> None:
    """It is the examiner's word, as an option would be; anything else is refused."""
    before = exam("Gait normal.")
    after = answer(before, "time-missing", "2026-03-04 14:30")
    assert after.examined_at is not None
    assert (after.examined_at.isoformat(), after.examined_at_from) == ("2026-03-04T14:30:00", "option")
    with pytest.raises(Refused, match="is no time"):
        answer(before, "time-missing", "yesterday")


def test_other_patient_has_to_be_named(exam: Exam, answer: Answer) -> None:
    """The reference typed becomes the note's; it fits what was spoken, so nothing is asked any more."""
    before = exam(SPOKEN_REFERENCE, patient="472")
    with pytest.raises(Refused, match="type the reference"):
        answer(before, "patient-mismatch", "another patient")
    after = answer(before, "patient-mismatch", "471")
    assert after.patient == "471"
    assert "patient-mismatch" not in {query.code for query in after.open_queries}


def test_wrong_reference_is_asked_about_again(exam: Exam, answer: Answer) -> None:
    """A reference that does not fit the spoken one either leaves the question open."""
    after = answer(exam(SPOKEN_REFERENCE, patient="472"), "patient-mismatch", "999")
    assert after.patient == "999"
    assert "patient-mismatch" in {query.code for query in after.open_queries}


def test_answer_that_means_nothing_is_refused(exam: Exam, answer: Answer, grammar: Grammar) -> None:
    """The examination stays as it was, and the refusal says what would be understood."""
    before = exam("Biceps reflex two plus.")
    with pytest.raises(Refused, match=r"a grade, 0 trace 1\+ .*left, right or both"):
        answer(before, "side-missing", "blicket")
    with pytest.raises(Refused, match="nothing was typed"):
        answer(before, "side-missing", "  ")
    with pytest.raises(Refused, match="settled before"):
        apply(before, Decision(query=99, answer="left"), grammar)


def test_words_of_another_patient_are_left_out_and_kept(exam: Exam, answer: Answer) -> None:
    """They are no part of this note, and no word is lost."""
    after = answer(exam(NEXT), "several-patients", "another patient from here on")
    assert [(one.kind, one.evidence.quote) for one in after.remarks] == [
        (RemarkKind.LEFT_OUT, "Next patient."),
        (RemarkKind.LEFT_OUT, "Knee jerk two plus on the right."),
    ]
