"""Tones in the pauses of a recording: music, a machine, another voice further off."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from dictate.hearing.audio import RATE_HZ, Samples
from dictate.hearing.chunks import Span

WINDOW = 2048
MOST_WINDOWS = 60  # looked at of a block, from all over its pauses
BAND_HZ = (100, 5000)
NEAR = 41  # lines of the spectrum among which a tone stands out, 160 Hz to either side
STANDS_OUT = 12.0  # times the middle of those around it; a line of noise does so once in 4,000
WINDOWED = 0.375  # share of the power that the window lets through


def tones_in(samples: Samples, pauses: Sequence[Span]) -> tuple[float, int]:
    """Mean power of the tones in the pauses, and how many windows it was taken from."""
    starts = [at for pause in pauses for at in range(pause.start, pause.end - WINDOW + 1, WINDOW // 2)]
    starts = starts[:: -(-len(starts) // MOST_WINDOWS) or 1]
    powers = [_tonal_power(samples[at : at + WINDOW]) for at in starts]
    return (float(np.mean(powers)) if powers else 0.0), len(powers)


def _tonal_power(window: Samples) -> float:
    low, high = (round(hertz * WINDOW / RATE_HZ) for hertz in BAND_HZ)
    lines = np.abs(np.fft.rfft(window * np.hanning(WINDOW)))[low:high] ** 2
    around = np.lib.stride_tricks.sliding_window_view(np.pad(lines, NEAR // 2, mode="edge"), NEAR)
    middle = np.partition(around, NEAR // 2, axis=1)[:, NEAR // 2]
    tones = lines[lines > STANDS_OUT * middle]
    return float(2 * tones.sum() / (WINDOW * WINDOW * WINDOWED))  # by Parseval, both halves of the spectrum
