"""Where voice is heard."""

from __future__ import annotations

import numpy as np
from hearing.sounds import Sound, noise
from hearing.test_narrow import band

from dictate.hearing.audio import RATE_HZ
from dictate.hearing.voice import find_voice


def seconds(samples: Sound) -> float:
    """Of voice found."""
    return sum(span.end - span.start for span in find_voice(samples)) / RATE_HZ


def test_low_and_telephone_speech_is_found_as_well(postural: Sound) -> None:
    """The same ten seconds 50 dB lower, and through a telephone (300 to 3400 Hz)."""
    usual = seconds(postural)
    assert usual > 5.0
    assert abs(seconds(postural * 0.003) - usual) < 0.5
    assert abs(seconds(band(postural, 300, 3400)) - usual) < 1.0


def test_no_voice_in_narrow_noise_and_hum() -> None:
    """What is widened does not become a voice; next to nothing has none either."""
    hum = sum(np.sin(2 * np.pi * 50 * k * np.arange(5 * RATE_HZ) / RATE_HZ) / k for k in range(1, 8))
    assert find_voice(band(noise(5.0), 300, 3400)) == []
    assert find_voice((0.05 * np.asarray(hum)).astype(np.float32)) == []
    assert find_voice(np.zeros(10, np.float32)) == []
