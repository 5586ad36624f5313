"""Two talkers on a channel each; one voice, however it is recorded, is one."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from hearing.sounds import noise, write_sound
from hearing.test_pitch import voice

from dictate.hearing.audio import RATE_HZ, Recording, Samples
from dictate.hearing.chunks import Span
from dictate.hearing.quality import Quality
from dictate.hearing.sides import alone

PAUSE = np.zeros(RATE_HZ, np.float32)


def turns(bleed: float, *, second: float = 1.0) -> Samples:
    """Three turns of 2 s each by two voices of one pitch, each heard on the other's channel at that share."""
    hiss = 0.0003 * np.random.default_rng(1).normal(size=(2, 18 * RATE_HZ))
    one, other = voice(110.0, 2.0), second * voice(110.0, 2.0)
    left = [part for _ in range(3) for part in (one, PAUSE, bleed * other, PAUSE)]
    right = [part for _ in range(3) for part in (bleed * one, PAUSE, other, PAUSE)]
    return np.stack([np.concatenate(left), np.concatenate(right)]).astype(np.float32) + hiss.astype(np.float32)


def single() -> Samples:
    """One voice in six phrases, 18 s."""
    return np.concatenate([part for _ in range(6) for part in (voice(110.0, 2.0), PAUSE)])


@pytest.mark.parametrize("bleed", [0.0, 0.05, 0.15])
def test_two_talkers_are_told_by_their_channels(bleed: float) -> None:
    """Their pitch is the same; the stretches are theirs within a window."""
    left, right = alone(turns(bleed), RATE_HZ)
    assert [start for start, _ in left] == pytest.approx([0.0, 6.0, 12.0], abs=0.26)
    assert [start for start, _ in right] == pytest.approx([3.0, 9.0, 15.0], abs=0.26)
    assert [end - start for start, end in left + right] == pytest.approx([2.0] * 6, abs=0.3)


def room(samples: Samples, seed: int) -> Samples:
    """An echo that falls for 0.4 s."""
    length = int(0.4 * RATE_HZ)
    echo = np.random.default_rng(seed).normal(size=length) * np.exp(-np.arange(length) / (0.08 * RATE_HZ))
    echo[0] = 8
    return (np.convolve(samples, echo)[: len(samples)] / 10).astype(np.float32)


def one_voice() -> dict[str, tuple[Samples, Samples]]:
    """Ways in which one voice comes onto two channels."""
    said = single()
    hiss = 0.001 * np.random.default_rng(3).normal(size=len(said)).astype(np.float32)
    walk = 0.5 + 0.5 * np.sin(np.arange(len(said)) / RATE_HZ)
    knocks = np.zeros_like(said)
    for start in range(0, len(said) - RATE_HZ, 3 * RATE_HZ):
        knocks[start + RATE_HZ // 2 : start + RATE_HZ // 2 + 1600] = 0.5
    return {
        "dual mono": (said, said),
        "one channel silent": (said, 0 * said),
        "noise on the other": (said, noise(18.0)),
        "off-axis": (said + hiss, 0.4 * np.roll(said, 12) + hiss),
        "room": (room(said, 1) + hiss, room(said, 2) + hiss),
        "far from one": (said + hiss, 0.1 * room(said, 1) + hiss),
        "walks past": (said * (0.25 + 0.75 * walk), said * (1 - 0.75 * walk)),
        "opposite phase": (said, -said),
        "knocks on the other": (said, knocks + hiss),
    }


@pytest.mark.parametrize("way", one_voice())
def test_one_voice_is_one(way: str) -> None:
    left, right = alone(np.stack(one_voice()[way]).astype(np.float32), RATE_HZ)
    assert not left or not right


def test_one_channel_and_no_sound() -> None:
    assert alone(single()[None], RATE_HZ) == ([], [])
    assert alone(np.zeros((2, 0), np.float32), RATE_HZ) == ([], [])
    assert alone(np.zeros((2, RATE_HZ), np.float32), RATE_HZ) == ([], [])


def other_channel(sound: Samples, path: Path) -> tuple[tuple[float, float], ...]:
    """What the recording's quality says of a file."""
    quality = Quality()
    for block in Recording(write_sound(path, sound)).blocks():
        quality.add(block, [Span(0, len(block.samples))])
    found = quality.sound()
    assert found is not None
    return found.other_channel


def test_the_talker_who_says_less_is_the_other(tmp_path: Path) -> None:
    """Two turns against three; a lone stretch, and bursts of noise, are nobody."""
    sound = turns(0.05)
    sound[1, 14 * RATE_HZ :] = 0
    assert [start for start, _ in other_channel(sound, tmp_path / "two.wav")] == pytest.approx([3.0, 9.0], abs=0.26)
    sound[1, 8 * RATE_HZ :] = 0
    assert other_channel(sound, tmp_path / "once.wav") == ()
    bursts = turns(0.0)
    bursts[1] = np.where(np.abs(bursts[1]) > 0.01, np.random.default_rng(2).normal(0, 0.2, bursts.shape[1]), 0)
    assert other_channel(bursts, tmp_path / "bursts.wav") == ()


def test_the_quieter_of_two_talkers_is_not_left_out(tmp_path: Path) -> None:
    """A fifth as loud, on a channel of his own: the louder channel alone would lose his words."""
    (block,) = Recording(write_sound(tmp_path / "two.wav", turns(0.0, second=0.2))).blocks()
    turn = block.samples[int(3.2 * RATE_HZ) : int(4.8 * RATE_HZ)]
    assert float(np.std(turn)) > 0.05 * float(np.std(block.samples))
