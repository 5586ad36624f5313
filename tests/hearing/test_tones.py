"""Tones in pauses."""

from __future__ import annotations

import numpy as np
import pytest
from hearing.sounds import noise, silence, tone

from dictate.hearing.audio import RATE_HZ
from dictate.hearing.chunks import Span
from dictate.hearing.tones import MOST_WINDOWS, tones_in

WHOLE = [Span(0, 4 * RATE_HZ)]


@pytest.mark.parametrize("hz", [131.0, 440.0, 1760.0])
def test_the_power_of_a_tone_is_found(hz: float) -> None:
    """A sine of amplitude 0.1 has a power of 0.005 (by definition), in noise 20 dB below it too."""
    power, count = tones_in(tone(4.0, hz=hz, loud=0.1) + noise(4.0, loud=0.007), WHOLE)
    assert power == pytest.approx(0.005, rel=0.1)
    assert 0 < count <= MOST_WINDOWS


def test_noise_and_silence_hold_none() -> None:
    """Of noise less than a hundredth stands out."""
    hiss = noise(4.0, loud=0.1)
    assert tones_in(hiss, WHOLE)[0] < 0.01 * float(np.mean(hiss**2))
    assert tones_in(silence(4.0), WHOLE)[0] == 0.0


def test_only_pauses_are_looked_at_and_short_ones_not() -> None:
    """A tone outside of the pauses does not count; a pause shorter than a window has none."""
    samples = np.concatenate([tone(2.0), silence(2.0)])
    assert tones_in(samples, [Span(2 * RATE_HZ, 4 * RATE_HZ)])[0] == 0.0
    assert tones_in(samples, [Span(0, 1000)]) == (0.0, 0)
    assert tones_in(samples, []) == (0.0, 0)


def test_long_pauses_are_sampled() -> None:
    """Two minutes of pauses cost no more than sixty windows."""
    assert tones_in(np.zeros(120 * RATE_HZ, np.float32), [Span(0, 120 * RATE_HZ)])[1] <= MOST_WINDOWS
