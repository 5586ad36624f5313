"""The program's own sounds are never heard as dictation, and a voice beside them is."""

from __future__ import annotations

from typing import get_args

import numpy as np
import pytest
from by_hand import DEMOS

from dictate.hearing.audio import Recording
from dictate.hearing.engine import Engine
from dictate.hearing.microphone import to_pcm, to_samples
from dictate.live.kept import Mute
from dictate.live.tones import (
    RATE_HZ,
    TAIL_S,
    Muting,
    Sounds,
    Tone,
    cleaned,
    find_voice,
    render,
    shortened,
    without_tones,
)  # fmt: skip

BLOCK = 1600


def in_blocks(sound: np.ndarray) -> np.ndarray:
    """Cleaned as it is while it comes, a tenth of a second at a time."""
    return np.concatenate(
        [without_tones(sound[at : at + BLOCK]) for at in range(0, len(sound) // BLOCK * BLOCK, BLOCK)]
    )


@pytest.mark.parametrize("tone", get_args(Tone))
@pytest.mark.parametrize("late", [0, 137, 801, 1599])
def test_tone_is_taken_out(tone: Tone, late: int) -> None:
    """Whenever in a block it comes back: 20 dB at least, with the loudspeaker's double pitch in it."""
    sound = np.concatenate([np.zeros(late), render(tone), np.zeros(2 * BLOCK)])
    sound = (sound + 0.1 * sound * np.abs(sound) / np.abs(sound).max()).astype("<i2")
    left = in_blocks(sound).astype(float)
    assert np.square(left).sum() < 0.01 * np.square(sound.astype(float)).sum()


def test_tones_differ_and_are_soft() -> None:
    """No two are the same, all start and end in silence, none is loud."""
    sounds = [render(tone) for tone in get_args(Tone)]
    assert len({sound.tobytes() for sound in sounds}) == len(sounds)
    assert all(sound[0] == sound[-1] == 0 or abs(int(sound[-1])) < 40 for sound in sounds)
    assert all(np.abs(sound.astype(int)).max() < 0.2 * 32767 for sound in sounds)


def test_voice_is_kept_where_tones_are_taken_out() -> None:
    """Speech loses under a tenth of its energy."""
    (block,) = Recording(DEMOS / "postural-series.flac").blocks()
    speech = np.frombuffer(to_pcm(block.samples[: 10 * RATE_HZ]), "<i2")
    left = in_blocks(speech).astype(float)
    assert np.square(left).sum() > 0.9 * np.square(speech.astype(float)).sum()


def test_recogniser_hears_no_tone_and_the_speech_under_it(engine: Engine) -> None:
    """The real recogniser: tones alone are no voice; a number spoken under tones is heard as without them."""
    tones = np.concatenate([np.concatenate([render("doubtful"), np.zeros(8000, np.int16)]) for _ in range(4)])
    assert engine.spans(to_samples(cleaned(tones.tobytes(), ["own tone"]))) == []
    (block,) = Recording(DEMOS / "postural-series.flac").blocks()
    speech = block.samples[3 * RATE_HZ : 9 * RATE_HZ]
    mixed = speech.copy()
    for at in range(0, len(mixed) - 3000, 16_000):
        tone = to_samples(render("taken").tobytes())
        mixed[at : at + len(tone)] += tone
    clean = to_samples(in_blocks(np.frombuffer(to_pcm(mixed), "<i2")).tobytes())
    assert digits(engine, clean) == digits(engine, speech) != ""


def digits(engine: Engine, sound: np.ndarray) -> str:
    """Numbers that are heard."""
    (text,) = engine.decode([engine.encode(sound)], [engine.prompt(())], beam=2)
    return "".join(char for char in text.text if char.isdigit())


def test_muting_reaches_from_the_sound_to_its_echo() -> None:
    """Silent while the program speaks and a moment after; then the stretch is named."""
    muted: list[Mute] = []
    muting = Muting(on_mute=muted.append)
    block = b"\x10\x20" * BLOCK
    assert muting.clean(block, start_s=0.9) == block
    muting.begin("own voice", 60.0, now_s=1.0)
    assert muting.clean(block, start_s=1.0) == bytes(len(block))
    muting.end("own voice", now_s=2.0)
    assert muting.clean(block, start_s=2.0 + TAIL_S - 0.1) == bytes(len(block))
    assert muting.clean(block, start_s=2.0 + TAIL_S) == block
    assert muted == [Mute(start_s=1.0, end_s=2.0 + TAIL_S, why="own voice")]


def test_little_is_read_aloud() -> None:
    """While it speaks the program is deaf: the beginning, and that there is more."""
    assert shortened("Knee jerk right: 2+") == "Knee jerk right: 2+"
    assert shortened("finger-nose test, " * 30) == "finger-nose test, " * 9 + "finger-nose test, and more on the screen"


def test_it_tells_that_it_speaks() -> None:
    """Until its echo is gone."""
    muting = Muting(on_mute=lambda _: None)
    sounds = Sounds(muting, play=lambda _: None)
    assert not sounds.speaks
    muting.begin("own voice", 60.0, now_s=1.0)
    assert sounds.speaks
    muting.end("own voice", now_s=2.0)
    muting.clean(bytes(BLOCK * 2), start_s=2.0 + TAIL_S)
    assert not sounds.speaks


def test_muting_at_the_end() -> None:
    """A sound that still rings when the dictation ends is named too."""
    muted: list[Mute] = []
    muting = Muting(on_mute=muted.append)
    muting.begin("own tone", 0.1, now_s=1.0)
    muting.finish()
    muting.finish()
    assert [mute.why for mute in muted] == ["own tone"]


def test_microphone_is_told_before_the_tone_sounds() -> None:
    """Order matters: what comes back is muted already."""
    block = np.concatenate([render("taken"), np.zeros(BLOCK, np.int16)])[:BLOCK]
    muting = Muting(on_mute=lambda _: None)
    heard: list[bytes] = []
    sounds = Sounds(muting, play=lambda _: heard.append(muting.clean(block.tobytes(), start_s=5.0)))
    sounds.tone("taken", now_s=5.0)
    assert np.abs(np.frombuffer(heard[0], "<i2").astype(int)).max() < np.abs(block.astype(int)).max() / 10


def test_without_a_loudspeaker() -> None:
    """Nothing is played, nothing is muted."""
    muting = Muting(on_mute=lambda _: None)
    sounds = Sounds(muting, play=None, voice=find_voice())
    sounds.tone("taken", now_s=0.0)
    assert not sounds.read_aloud("Knee jerk right: 2+", now_s=lambda: 0.0)
    assert muting.clean(b"\x01\x01" * BLOCK, start_s=0.0) == b"\x01\x01" * BLOCK


def test_reading_aloud_is_muted_until_it_ends() -> None:
    """`true` says nothing and ends at once: the mute ends with it."""
    muted: list[Mute] = []
    muting = Muting(on_mute=muted.append)
    assert Sounds(muting, play=lambda _: None, voice="true").read_aloud("Gait: normal", now_s=lambda: 3.0)
    for _ in range(500):
        if muting.clean(b"\x01\x01" * BLOCK, start_s=3.0 + TAIL_S + 0.01) == b"\x01\x01" * BLOCK:
            break
        np.linalg.norm(np.ones(100_000))  # a moment
    assert [(mute.start_s, mute.why) for mute in muted] == [(3.0, "own voice")]
