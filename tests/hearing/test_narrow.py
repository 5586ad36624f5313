"""Telephone sound."""

from __future__ import annotations

import numpy as np
import pytest

from dictate.hearing.audio import RATE_HZ, Samples
from dictate.hearing.narrow import is_narrow, widened


def pulses(seconds: float = 4.0, hertz: int = 125) -> Samples:
    """A voice without mouth: a pulse at the pitch, all harmonics alike."""
    samples = np.zeros(int(seconds * RATE_HZ), np.float32)
    samples[:: RATE_HZ // hertz] = 0.5
    return samples


def band(samples: Samples, low: float, high: float) -> Samples:
    """What lies between two frequencies."""
    spectrum = np.fft.rfft(samples)
    hertz = np.fft.rfftfreq(len(samples), 1 / RATE_HZ)
    spectrum[(hertz < low) | (hertz > high)] = 0
    return np.fft.irfft(spectrum, len(samples)).astype(np.float32)


@pytest.mark.parametrize(("high", "narrow"), [(3400, True), (8000, False), (5500, False)])
def test_a_telephone_is_told_from_a_microphone(high: float, narrow: bool) -> None:
    """Nothing above 3.4 kHz; a microphone of 5.5 kHz is none."""
    assert is_narrow(band(pulses(), 300, high)) is narrow


def test_silence_and_nothing_at_all_are_not_narrow() -> None:
    """No speech, so no band."""
    assert not is_narrow(np.zeros(RATE_HZ, np.float32))
    assert not is_narrow(np.zeros(10, np.float32))


def test_the_pitch_and_the_sibilants_come_back() -> None:
    """Rectifying gives the pitch at 125 Hz again, and sound above 4 kHz; what was there stays as it was."""
    narrow = band(pulses(), 300, 3400)
    wide = widened(narrow)
    before, after = np.abs(np.fft.rfft(narrow)) ** 2, np.abs(np.fft.rfft(wide)) ** 2
    hertz = np.fft.rfftfreq(len(wide), 1 / RATE_HZ)
    pitch, high, kept = (hertz > 120) & (hertz < 130), hertz > 4000, (hertz > 400) & (hertz < 3300)
    assert after[pitch].sum() > 100 * before[pitch].sum()
    assert after[high].sum() > 100 * before[high].sum()
    assert after[kept].sum() == pytest.approx(before[kept].sum(), rel=1e-3)
    assert len(wide) == len(narrow)


def test_long_sound_is_widened_in_pieces() -> None:
    """Seventy seconds: three pieces, no sample lost; and none of none."""
    assert len(widened(pulses(70.0))) == 70 * RATE_HZ
    assert len(widened(np.zeros(0, np.float32))) == 0
