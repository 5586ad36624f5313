"""What the sound leaves open."""

from __future__ import annotations

import pytest
from by_hand import evidence

from dictate.checks import run_checks
from dictate.grammar import DoubtFile, Limit
from dictate.model import Remark, RemarkKind, Rival, Source, Stretch, Transcript, Word


@pytest.fixture
def doubting(grammar):
    """The small grammar with limits of its own."""
    limits = {"number": Limit(at=3.0, why="own"), "lean": Limit(at=3.0, why="own")}
    return grammar.model_copy(update={"doubt": DoubtFile(limits=limits)})


def test_rival_readings_must_be_asked(said, ask):
    """A value that may be another is asked about, the taken one first."""
    (query,) = ask("unsure-hearing", said("strength_deltoid", "measured", "4-", side="left", readings=("4+",)))
    assert (query.severity, query.suggestions) == ("must", ("4-", "4+"))


def test_a_sure_hearing_is_left_alone(said, ask):
    """No rivals, no query."""
    assert ask("unsure-hearing", said("strength_deltoid", "measured", "4-", side="left")) == ()


def doubted(said, margin, *, heard="180", other="118", value="180/62"):
    """A pressure whose systolic has a rival."""
    rival = Rival(kind="number", heard=heard, other=other, margin=margin, word=0)
    return said("blood_pressure", "measured", value, rivals=(rival,))


@pytest.mark.parametrize(("margin", "asked"), [(1.0, True), (-2.0, True), (7.5, False)])
def test_a_number_that_may_be_another_is_asked(said, exam, doubting, margin, asked):
    """Both values are suggested, what was heard first; a clear number is left alone."""
    queries = run_checks(exam(doubted(said, margin)), doubting)
    found = [query for query in queries if query.code == "unsure-hearing"]
    assert [query.suggestions for query in found] == ([("180/62 mmHg", "118/62 mmHg")] if asked else [])


def test_a_rival_that_cannot_be_counts_less(said, exam, doubting):
    """A diastolic above the systolic is no rival, unless the sound leaves nothing else."""
    finding = doubted(said, 1.0, heard="62", other="260")
    assert not [query for query in run_checks(exam(finding), doubting) if query.code == "unsure-hearing"]


def test_words_that_are_none_are_asked_with_their_terms(exam, grammar):
    """The terms are the suggestions."""
    heard = Remark(kind=RemarkKind.MISHEARD, evidence=evidence("apexia"), readings=("apraxia", "ataxia"))
    (query,) = [one for one in run_checks(exam(remarks=(heard,)), grammar) if one.code == "unsure-hearing"]
    assert query.suggestions == ("apraxia", "ataxia", "neither")


def test_mended_words_are_looked_at(said, ask):
    """What was heard is named."""
    (query,) = ask("repaired-hearing", said("nystagmus", "absent", detail=("heard as mist agnes",)))
    assert query.severity == "look"
    assert "mist agnes" in query.message


def test_speech_without_words_must_be_asked_at_its_time(exam, grammar):
    """One query for every stretch, with its times, in its place among the words."""
    words = (Word(text="one", start_s=1.0, end_s=1.5), Word(text="two", start_s=200.0, end_s=201.0))
    recording = Source(name="a.wav", kind="recording", sha256="0" * 64)
    gaps = (Stretch(start_s=102.0, end_s=104.0), Stretch(start_s=150.0, end_s=151.0))
    queries = run_checks(exam(transcript=Transcript(words=words, sources=(recording,), untranscribed=gaps)), grammar)
    assert [(query.code, query.start_s, query.end_s) for query in queries] == [
        ("speech-not-transcribed", 102.0, 104.0),
        ("speech-not-transcribed", 150.0, 151.0),
    ]
    assert "1:42" in queries[0].message


def test_the_recording_is_named_where_there_are_several(exam, grammar):
    """The time alone would not tell which recording is meant."""
    sources = tuple(Source(name=name, kind="recording", sha256="0" * 64) for name in ("a.wav", "b.wav"))
    gap = Stretch(start_s=2.0, end_s=4.0, source=1)
    (query,) = run_checks(exam(transcript=Transcript(sources=sources, untranscribed=(gap,))), grammar)
    assert "recording 2" in query.message
