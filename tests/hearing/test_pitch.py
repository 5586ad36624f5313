"""How high a voice is, and whether there are two."""

from __future__ import annotations

import numpy as np
import pytest

from dictate.hearing.audio import RATE_HZ, Samples
from dictate.hearing.pitch import Height, height, parted


def voice(hertz: float, seconds: float = 1.0) -> Samples:
    """Twelve harmonics, falling like those of a voice."""
    time = np.arange(int(seconds * RATE_HZ)) / RATE_HZ
    return (0.1 * sum(np.sin(2 * np.pi * k * hertz * time) / k for k in range(1, 13))).astype(np.float32)


@pytest.mark.parametrize("hertz", [85.0, 120.0, 210.0, 330.0])
def test_the_pitch_is_found_and_not_its_double(hertz: float) -> None:
    """Within half a semitone, twelve to the octave (by definition)."""
    found = height(voice(hertz))
    assert found is not None
    assert found.semitones == pytest.approx(12 * np.log2(hertz), abs=0.5)


def test_noise_and_next_to_nothing_have_no_pitch() -> None:
    """Neither hiss nor a click counts."""
    assert height(np.random.default_rng(1).normal(0, 0.1, RATE_HZ).astype(np.float32)) is None
    assert height(np.zeros(5, np.float32)) is None
    assert height(np.zeros(RATE_HZ, np.float32)) is None


def heights(middle: float, spread: float, count: int, seed: int = 1) -> list[Height]:
    """Stretches of one voice."""
    return [Height(float(tone), 60) for tone in np.random.default_rng(seed).normal(middle, spread, count)]


def apart(some: list[Height]) -> float:
    """Semitones between two voices."""
    return parted(some)[0]


def test_one_lively_voice_is_one() -> None:
    """Its stretches differ by two semitones and more, without falling into two groups."""
    for seed in range(50):
        assert apart(heights(82.0, 2.0, 40, seed)) < 6.0


@pytest.mark.parametrize("phrases", [2, 5, 40])
def test_a_second_voice_is_told_from_few_phrases(phrases: int) -> None:
    """A man's and a woman's, nine semitones apart."""
    assert apart(heights(82.0, 0.8, 30) + heights(91.0, 0.8, phrases, 2)) == pytest.approx(9.0, abs=1.2)


def test_too_little_says_nothing() -> None:
    """One odd phrase is no second voice."""
    assert apart(heights(82.0, 0.5, 1) + heights(95.0, 0.5, 1)) == 0.0
    assert apart([*heights(82.0, 0.5, 60), *heights(95.0, 0.5, 1)]) < 6.0


def test_the_voice_heard_less_is_told() -> None:
    """Whether it is the lower or the higher one, by the time it speaks and not by the number of its stretches."""
    examiner, patient = [Height(82.0 + at / 10, 90) for at in range(4)], [Height(91.0 + at / 10, 20) for at in range(5)]
    assert parted([*examiner, *patient])[1] == [4, 5, 6, 7, 8]
    assert parted([*patient, *examiner])[1] == [0, 1, 2, 3, 4]
    assert parted(examiner)[1] == []
