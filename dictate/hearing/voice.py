"""Where voice is heard in samples: low recordings are raised and narrow ones widened for the search."""

from __future__ import annotations

import numpy as np

from dictate.hearing.audio import RATE_HZ, Samples
from dictate.hearing.chunks import Span
from dictate.hearing.narrow import is_narrow, widened

SILENCE_MS = 300
MAX_GAIN = 30.0
USUAL_PEAK = 0.3
LEAST_S = 0.01


def find_voice(samples: Samples, *, silence_ms: int = SILENCE_MS) -> list[Span]:
    """Spans of voice, without padding; spans are apart by so much silence."""
    from faster_whisper.vad import VadOptions, get_speech_timestamps

    if len(samples) < LEAST_S * RATE_HZ:
        return []
    peak = float(np.quantile(np.abs(samples[:: max(1, len(samples) // 1_000_000)]), 0.995))
    gain = min(MAX_GAIN, USUAL_PEAK / peak) if peak > 0 else 1.0
    sought = widened(samples) if is_narrow(samples) else samples
    options = VadOptions(min_silence_duration_ms=silence_ms, speech_pad_ms=0)
    found = get_speech_timestamps(sought * max(1.0, gain), options)
    return [Span(each["start"], min(each["end"], len(samples))) for each in found]
