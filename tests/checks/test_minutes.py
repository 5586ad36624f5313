"""Minutes by the clock of the recording."""

from __future__ import annotations

import pytest
from by_hand import examination, finding

from dictate.checks import run_checks
from dictate.checks.minutes import minutes_by_clock
from dictate.grammar import load_grammar
from dictate.model import Component, Evidence, Position, Pressure, Status, Transcript, Word


def timed(text: str) -> Transcript:
    """Words written as `lying@0 120@1`: each starts at that second and takes half a second; `|` starts a source."""
    words, source = [], 0
    for part in text.split():
        if part == "|":
            source += 1
            continue
        spoken, _, start = part.partition("@")
        at = float(start) if start else None
        words.append(Word(text=spoken, start_s=at, end_s=None if at is None else at + 0.5, source=source))
    return Transcript(words=tuple(words))


def reading(transcript: Transcript, place: int, position: Position, minutes: float | None = None):
    """A pressure said with one word."""
    word = transcript.words[place]
    said = Evidence(first=place, last=place, quote=word.text, start_s=word.start_s, end_s=word.end_s)
    return finding(
        Component.GENERAL,
        "blood_pressure",
        Status.MEASURED,
        value=Pressure(systolic=120 + place, diastolic=80),
        position=position,
        minutes=minutes,
        evidence=(said,),
    )


def asked(text: str, *, minutes: float | None = None) -> tuple[int, float] | None:
    """Lying at word 1; the standing reading is the last word, with one said for `minutes` at word 3 before it."""
    transcript = timed(text)
    last = reading(transcript, len(transcript.words) - 1, Position.STANDING)
    found = [reading(transcript, 1, Position.SUPINE), last]
    if minutes is not None:
        found.insert(1, reading(transcript, 3, Position.STANDING, minutes))
    return minutes_by_clock(examination(*found, transcript=transcript), last)


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("lying@0 120/80@1 standing@20 110/70@79.5", 1),
        ("lying@0 120/80@1 standing@20 110/70@199.5", 3),
        ("lying@0 120/80@1 stands@20 110/70@50", 1),
    ],
)
def test_the_gap_between_standing_and_the_reading_is_suggested(text, minutes):
    """In whole minutes."""
    found = asked(text)
    assert found is not None
    assert found[0] == minutes


@pytest.mark.parametrize(
    "text",
    [
        "lying@0 120/80@1 standing@20 110/70@22",
        "lying@0 120/80@1 then@20 110/70@80",
        "standing@0 120/80@1 then@20 110/70@80",
        "lying 120/80 standing 110/70",
        "lying@0 120/80@1 standing@20 | 110/70@80",
        "lying@0 120/80@1 standing@20 110/70@2020",
    ],
)
def test_nothing_is_suggested_without_a_gap(text):
    """One breath, no word of standing, one before the lying reading, typed text, another recording, half an hour."""
    assert asked(text) is None


def test_a_timed_reading_before_it_starts_the_count():
    """One minute said, then two more by the clock."""
    found = asked("lying@0 120/80@1 standing@20 115/75@22 and@100 110/70@142", minutes=1)
    assert found == (3, pytest.approx(120))


def test_the_minutes_stand_first_among_the_suggestions():
    """The question says where they come from; the finding stays without."""
    transcript = timed("lying@0 120/80@1 standing@20 110/70@199.5")
    found = (reading(transcript, 1, Position.SUPINE), reading(transcript, 3, Position.STANDING))
    exam = examination(*found, transcript=transcript)
    (query,) = [one for one in run_checks(exam, load_grammar()) if one.code == "time-missing"]
    assert query.suggestions == ("3 min", "0 min", "1 min", "5 min")
    assert "The recording ran 3:00 since standing" in query.message
    assert exam.findings[1].minutes is None
