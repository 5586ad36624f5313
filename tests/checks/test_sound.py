"""A recording that was hard to hear."""

from __future__ import annotations

import pytest

from dictate.checks import run_checks
from dictate.grammar import DoubtFile, Limit
from dictate.model import Sound, Source, Transcript

LIMITS = {"noise": 12.0, "level": -55.0, "clipped": 0.005, "tones": 26.0, "voices": 6.0}


@pytest.fixture
def asked(exam, grammar):
    """Messages about recordings of these sounds."""
    doubt = DoubtFile(limits={name: Limit(at=at, why="own") for name, at in LIMITS.items()})

    def run(*sounds):
        sources = tuple(Source(name="a.wav", kind="recording", sha256="0" * 64, sound=one) for one in sounds)
        queries = run_checks(exam(transcript=Transcript(sources=sources)), grammar.model_copy(update={"doubt": doubt}))
        return [query.message for query in queries if query.code == "odd-sound"]

    return run


@pytest.mark.parametrize(
    ("sound", "words"),
    [
        (Sound(level_db=-23.0, noise_db=-31.0), "8 dB above the noise"),
        (Sound(level_db=-60.0, noise_db=-100.0), "very low"),
        (Sound(level_db=-10.0, clipped=0.02), "2.0% of it cut off"),
        (Sound(level_db=-23.0, noise_db=-43.0, tones_db=-44.0), "tones in the pauses 21 dB below speech"),
        (Sound(level_db=-23.0, noise_db=-72.0, voices_apart=9.1), "two voices seem to speak, 9 semitones apart"),
        (Sound(level_db=-23.0, language="de"), 'another language ("de")'),
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
    assert "recording 2" in message
