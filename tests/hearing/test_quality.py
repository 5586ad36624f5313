"""How good the sound is."""

from __future__ import annotations

import numpy as np
import pytest
from hearing.sounds import tone
from hearing.test_pitch import voice

from dictate.hearing.audio import RATE_HZ, Block
from dictate.hearing.chunks import Span
from dictate.hearing.quality import Quality
from dictate.model import Sound

SPANS = [Span(2 * RATE_HZ, 6 * RATE_HZ)]


def sound(samples: np.ndarray, languages: list[tuple[str, float]] | None = None) -> Sound:
    """Of a recording of eight seconds, voiced from the second to the sixth."""
    quality = Quality()
    quality.add(Block(0.0, samples.astype(np.float32)), SPANS)
    found = quality.sound(languages or [])
    assert found is not None
    return found


def speech(level: float, noise: float) -> np.ndarray:
    """A tone of that root mean square in noise of that one."""
    samples = np.random.default_rng(1).normal(0, noise, 8 * RATE_HZ)
    part = tone(4.0)
    samples[2 * RATE_HZ : 6 * RATE_HZ] += part * level / float(np.sqrt(np.mean(part**2)))
    return samples


@pytest.mark.parametrize("below_db", [5.0, 12.0, 30.0])
def test_noise_is_measured_in_the_pauses(below_db: float) -> None:
    """Speech at -20 dB, noise so far below it; the estimate is right within 1.5 dB."""
    found = sound(speech(0.1, 0.1 * 10 ** (-below_db / 20)))
    assert found.noise_db is not None
    assert found.level_db - found.noise_db == pytest.approx(below_db, abs=1.5)


def test_cut_off_peaks_are_counted() -> None:
    """A tone driven far into the limit is flat half of the time; a clean one never."""
    clean = speech(0.1, 0.001)
    assert sound(clean).clipped == 0
    assert sound(np.clip(8 * clean, -0.5, 0.5)).clipped > 0.1


def test_only_samples_that_lie_flat_in_a_row_are_cut_off() -> None:
    """Runs of three and of four at the top and of three at the very bottom of the block count; one of two does not."""
    samples = np.zeros(8 * RATE_HZ)
    for at, length, value in ((100, 3, 0.5), (200, 2, 0.5), (RATE_HZ, 4, 0.4999), (3 * RATE_HZ, 3, -0.6)):
        samples[at : at + length] = value
    assert sound(samples).clipped == round(10 / len(samples), 5)


def test_tones_in_the_pauses_are_told_from_noise() -> None:
    """Three notes 20 dB below the speech are found within 2 dB; as much noise holds next to no tones."""
    notes = sum(tone(8.0, hz=hz, loud=0.01 * (2 / 3) ** 0.5) for hz in (262.0, 330.0, 392.0))
    played, hissed = sound(speech(0.1, 0.0003) + notes), sound(speech(0.1, 0.01))
    assert played.tones_db is not None
    assert hissed.tones_db is not None
    assert played.level_db - played.tones_db == pytest.approx(20.0, abs=2.0)
    assert hissed.level_db - hissed.tones_db > 35.0


def test_a_second_voice_is_heard_by_its_height() -> None:
    """Ten phrases, four of them an octave higher; and ten of one."""
    low, high = voice(110.0), voice(220.0)
    spans = [Span(2 * at * RATE_HZ, (2 * at + 1) * RATE_HZ) for at in range(10)]
    for higher, apart in ((4, 12.0), (0, 0.0)):
        quality = Quality()
        said = [np.concatenate([high if at < higher else low, np.zeros(RATE_HZ, np.float32)]) for at in range(10)]
        quality.add(Block(0.0, np.concatenate(said)), spans)
        found = quality.sound()
        assert found is not None
        assert found.voices_apart == pytest.approx(apart, abs=0.3)
        assert found.second_voice == tuple((2.0 * at, 2.0 * at + 1) for at in range(higher))


def test_another_language_needs_more_than_half() -> None:
    """One odd chunk is none; robotic voices have some."""
    samples = speech(0.1, 0.001)
    assert sound(samples, [("en", 0.9), ("la", 0.54), ("en", 0.8)]).language == "en"
    assert sound(samples, [("de", 0.6), ("de", 0.9), ("en", 0.8)]).language == "de"
    assert sound(samples, [("de", 0.4)]).language == "en"


def test_nobody_spoke() -> None:
    """Nothing to measure."""
    quality = Quality()
    quality.add(Block(0.0, np.zeros(RATE_HZ, np.float32)), [])
    assert quality.sound() is None
