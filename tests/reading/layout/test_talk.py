"""Talk about another time or another person: set aside, never read as findings."""

from __future__ import annotations

import pytest

from dictate.reading.layout.talk import silence_talk


@pytest.mark.parametrize(
    ("phrase", "findings", "remark"),
    [
        (
            "Left deltoid four, his father had tremor.",
            ["strength_deltoid left measured 4"],
            "talk: his father had tremor.",
        ),
        ("Gait normal. His gait used to be wide based.", ["gait normal"], "talk: His gait used to be wide based."),
        ("Last week pupils three millimetres.", [], "talk: Last week pupils three millimetres."),
        ("She reports numbness in the left hand.", [], "talk: She reports numbness in the left hand."),
        ("He takes levodopa three times a day.", [], "talk: He takes levodopa three times a day."),
        ("His mother had a tremor of the right hand; gait normal.", ["gait normal"], "talk: His mother had"),
    ],
)
def test_another_time_or_person_gives_no_finding(rows, remarks, phrase, findings, remark):
    """The clause is kept in view; the clauses beside it are read."""
    assert rows(phrase) == findings
    assert next(one for one in remarks(phrase) if one.startswith("talk")).startswith(remark)


@pytest.mark.parametrize(
    "said",
    [
        "Can you look over here, please.", "Is it the same on both sides?", "Any double vision?", "Does that hurt?",
        "Any weakness.",
        "Push against me.", "That's good.", "No pain.", "It's weaker on the left.", "No, it's weaker on the left.",
        "I can't feel that side.", "My left leg is weak.", "My back hurts when I walk.", "Which way is it going?",
    ],
)  # fmt: skip
@pytest.mark.parametrize("before", ["Deltoid four on the left.", "Gait wide based.", "Pupils equal."])
def test_the_room_gives_no_finding(rows, before, said):
    """What the examiner says to the patient, and what the patient answers; what was dictated stays."""
    assert rows(f"{before} {said} Tone normal.") == rows(f"{before} Tone normal.")


def test_a_question_is_shown_as_not_placed(remarks):
    """A recogniser may write a question mark behind a finding: nothing is lost."""
    assert "not-placed: no drift?" in remarks("Deltoid four on the left. Has no drift? Tone normal.")


@pytest.mark.parametrize("said", ["Do you see one pen or two?", "Is it the same here?", "What colour is your tie?"])
def test_a_question_to_the_patient_is_talk(remarks, said):
    """Nothing to settle: it was put to somebody."""
    assert remarks(f"Gait normal. {said} Tone normal.") == [f"talk: {said}"]


def test_a_doubt_is_no_question_to_anybody(rows):
    """A question mark behind a finding is the examiner's own."""
    assert rows("Babinski positive on the left?") == ["plantar_response left abnormal extensor ?"]


def test_a_clause_without_talk_stays_as_it_is(marks):
    """Nothing is silenced."""
    found = marks("gait normal, tone normal")
    assert silence_talk(found) == (found, [])


def test_only_the_clause_with_talk_is_silenced(marks):
    """Up to its commas."""
    found = marks("gait normal, his father had tremor, tone normal")
    silenced, spans = silence_talk(found)
    assert [mark.text for mark in silenced if mark.has("item")] == ["gait", "tone"]
    assert len(spans) == 1


def test_talk_that_names_nothing_examined_is_no_remark_of_its_own(marks):
    """ "As discussed" needs no room in the review."""
    _, spans = silence_talk(marks("as discussed, gait normal"))
    assert spans == []


def test_speech_that_runs_on_is_silenced_only_near_the_talk(marks):
    """Without commas a clause has no end: the names far from the talk stay."""
    found = marks(
        "gait normal tone normal bulk normal power five throughout plantars flexor romberg negative gag present "
        "jaw jerk normal neck supple lungs clear heart sounds normal and last week she had a fall"
    )
    silenced, _ = silence_talk(found)
    assert "gait" in [mark.text for mark in silenced if mark.has("item")]
    assert [mark.text for mark in silenced if mark.has("talk")]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Last visit (Feb): gait normal, no ptosis.\nPulse 72.", ["heart_rate measured 72"]),
        ("Yesterday for comparison: E1 M2, left pupil 5 mm. Pulse 72.", ["heart_rate measured 72"]),
        ("Previous exam: knee jerks absent. Pulse 72.", ["heart_rate measured 72"]),
        ("Brother, seen in the same hour: knees absent, plantars flexor. Pulse 72.", ["heart_rate measured 72"]),
        ("GP last wk: knee jerks 2+ R, 3+ L. Pulse 72.", ["heart_rate measured 72"]),
        ("Unchanged from last visit: right deltoid 4.", ["strength_deltoid right measured 4"]),
        ("Gait: normal. Pulse: 72.", ["gait normal", "heart_rate measured 72"]),
    ],
)
def test_a_title_of_another_time_or_person(rows, text, wanted):
    """What stands behind it, to the end of the sentence, is none of today's findings. Common practice, no source."""
    assert rows(text) == wanted
