"""A recording that was hard to hear."""

from __future__ import annotations

import pytest

from dictate.checks import run_checks
from dictate.grammar import DoubtFile, Limit
from dictate.model import Severity, Sound, Source, Transcript

LIMITS = {"noise": 12.0, "level": -55.0, "clipped": 0.005, "tones": 26.0, "voices": 6.0}


@pytest.fixture
def queries_of(exam, grammar):
    """Queries about recordings of these sounds."""
    doubt = DoubtFile(limits={name: Limit(at=at, why="own") for name, at in LIMITS.items()})

    def run(*sounds):
        sources = tuple(Source(name="a.wav", kind="recording", sha256="0" * 64, sound=one) for one in sounds)
        queries = run_checks(exam(transcript=Transcript(sources=sources)), grammar.model_copy(update={"doubt": doubt}))
        return [query for query in queries if query.code == "odd-sound"]

    return run


@pytest.fixture
def asked(queries_of):
    """Their messages."""
    return lambda *sounds: [query.message for query in queries_of(*sounds)]


@pytest.mark.parametrize(
    ("sound", "words"),
    [
        (Sound(level_db=-23.0, noise_db=-31.0), "8 dB above the noise"),
        (Sound(level_db=-60.0, noise_db=-100.0), "very low, 60 dB below full scale"),
        (Sound(level_db=-10.0, clipped=0.02), "2.0% of it cut off"),
        (Sound(level_db=-23.0, noise_db=-43.0, tones_db=-44.0), "tones in the pauses 21 dB below speech"),
        (
            Sound(level_db=-23.0, noise_db=-72.0, voices_apart=9.1),
            "two people seem to speak, their voices 9 semitones apart",
        ),
        (
            Sound(level_db=-23.0, other_channel=((1.0, 2.0), (4.0, 5.0))),
            "two people seem to speak, one on each channel",
        ),
        (Sound(level_db=-23.0, language="de"), "The recording seems to be in another language (German)"),
        (Sound(level_db=-23.0, language="ur"), 'another language ("ur")'),
    ],
)
def test_what_is_wrong_is_said(asked, sound, words):
    """One query, with the figure."""
    (message,) = asked(sound)
    assert words in message


def test_a_good_recording_and_a_typed_text_are_left_alone(asked):
    """Nothing to say."""
    assert asked(Sound(level_db=-23.0, noise_db=-72.0, tones_db=-93.0, voices_apart=4.0), None) == []
    assert asked(Sound(level_db=-23.0, noise_db=-53.0, tones_db=-54.0)) == []  # music far below the speech
    assert asked(Sound(level_db=-23.0, noise_db=-36.0, tones_db=-48.0)) == []  # noise, with what stands out of any


def test_the_recording_is_named_where_there_are_several(asked):
    """By its number."""
    (message,) = asked(Sound(level_db=-23.0), Sound(level_db=-60.0))
    assert message.startswith("Recording 2")


def test_another_language_must_be_settled(queries_of):
    """English findings were made of French and German without any doubt of their own; noise is only to be seen."""

    def severities(sound):
        return [query.severity for query in queries_of(sound)]

    assert severities(Sound(level_db=-23.0, language="fr")) == [Severity.MUST]
    assert severities(Sound(level_db=-23.0, noise_db=-26.0)) == [Severity.LOOK]
    assert severities(Sound(level_db=-23.0, noise_db=-26.0, language="fr")) == [Severity.MUST, Severity.LOOK]
