"""Words that may be the patient's. No source: how people talk to each other at the bedside is common practice."""

from __future__ import annotations

import pytest

from dictate.grammar import load_grammar
from dictate.model import Examination, Sound, Source, Transcript, Word
from dictate.pipeline import Typed, examine, examine_transcript

GRAMMAR = load_grammar()
TALK = "Eye movements full. Can you see one pen or two? No double vision. Gait normal."


def read(text: str) -> Examination:
    """A typed transcript."""
    return examine([Typed("x", text)], engine=None, grammar=GRAMMAR)


def asked(exam: Examination) -> list[str]:
    """Items whose words may be the patient's."""
    return [query.item for query in exam.queries if query.code == "whose-words"]


def spoken(text: str, apart: float, second: tuple[tuple[float, float], ...]) -> Examination:
    """A word each second, in a recording in which two voices are so far apart."""
    words = tuple(
        Word(text=word, start_s=float(at), end_s=at + 0.8, probability=1.0) for at, word in enumerate(text.split())
    )
    sound = Sound(level_db=-20.0, voices_apart=apart, second_voice=second)
    source = Source(name="a.wav", kind="recording", sha256="0" * 64, sound=sound)
    return examine_transcript(Transcript(words=words, sources=(source,)), grammar=GRAMMAR)


def test_the_other_channel_is_asked_about_whatever_the_pitch() -> None:
    """What is said there, and nothing else."""
    words = tuple(
        Word(text=word, start_s=float(at), end_s=at + 0.8, probability=1.0)
        for at, word in enumerate("Gait normal. No double vision. Tone normal.".split())
    )
    sound = Sound(level_db=-20.0, other_channel=((1.9, 4.9), (9.0, 10.0)))
    source = Source(name="a.wav", kind="recording", sha256="0" * 64, sound=sound)
    exam = examine_transcript(Transcript(words=words, sources=(source,)), grammar=GRAMMAR)
    assert len(exam.findings) > 1
    assert asked(exam) == ["diplopia"]


@pytest.mark.parametrize(
    ("text", "item"),
    [
        (TALK, "diplopia"),
        ("Can you see one pen or two. No double vision. Gait normal.", "diplopia"),
        ("Do you see double? No. No double vision. Gait normal.", "diplopia"),
        ("Pinprick normal on the right. Is it the same here? Reduced on the left.", "pinprick"),
        ("Is your hearing worse on one side? Hearing is worse on the right.", "hearing"),
        ("Do you have any weakness? Weakness in the left arm. Gait normal.", "strength_upper_limb"),
        ("Do you hear this? Yes, hearing normal on the left. Gait normal.", "hearing"),
    ],
)
def test_an_answer_is_asked_about(text: str, item: str) -> None:
    """It begins as answers do, or does not name what it is about; a question mark may be missing."""
    exam = read(text)
    assert item in {finding.item for finding in exam.findings}
    assert asked(exam) == [item]


@pytest.mark.parametrize(
    "text",
    [
        "Can you follow my finger? Eye movements full. No nystagmus.",
        "Deltoid four on the left. No pronator drift. Gait normal.",
        "Babinski positive on the left? No clonus. Gait normal.",
        "Can you push against me? Good. Deltoid five on the left.",
        "How is your head? Gait normal. It is wide based.",
        "Is there any tremor at rest? Pupils equal. No ptosis.",
    ],
)
def test_dictation_is_not_asked_about(text: str) -> None:
    """A finding by its name behind a question; a denial behind a finding, or behind the examiner's own doubt."""
    assert asked(read(text)) == []


def test_another_voice_is_asked_about_wherever_it_speaks() -> None:
    """With no question before it; the examiner's own words are not, even behind a question."""
    text = "Eye movements full. Knee jerk two plus on the right. Gait normal."
    assert asked(spoken(text, 9.0, ((3.0, 9.5),))) == ["reflex_patellar"]
    assert asked(spoken(TALK, 9.0, ())) == []
    assert asked(spoken(TALK, 9.0, ((10.0, 13.0),))) == ["diplopia"]


def test_voices_that_are_not_clearly_apart_tell_nothing() -> None:
    """The words decide."""
    text = "Eye movements full. Knee jerk two plus on the right. Gait normal."
    assert asked(spoken(text, 3.0, ((3.0, 9.5),))) == []
    assert asked(spoken(TALK, 3.0, ())) == ["diplopia"]
