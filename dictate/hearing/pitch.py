"""How high a voice is, and whether stretches of speech fall into two voices."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from dictate.hearing.audio import RATE_HZ, Samples

WINDOW = RATE_HZ // 25  # holds three periods of the lowest voice
STEP = WINDOW // 2
LOWEST_HZ, HIGHEST_HZ = 70, 400
LEAST_LIKE = 0.6  # likeness of a window to itself a period later, from which on it is voiced
OCTAVE = 0.9  # the shortest period that is so much as likely as the best: two periods are as alike as one
LEAST_LOUD = 0.05  # share of the usual power of a stretch: below it there is breath
LEAST_FRAMES = 10  # voiced, of 20 ms each: less says nothing
LEAST_STRETCHES = 2  # of either voice
# Distance of the two means against the spread within: one voice, cut at its best, gives 1.9 to 4.0 (45 recordings).
LEAST_CLEARNESS = 4.5
LEAST_OF_EACH = 3.0  # the same for the wider group alone: one odd stretch and a usual one are no second voice
LEAST_SPREAD = 0.3  # semitones; a synthetic voice has next to none


@dataclass(frozen=True)
class Height:
    """The middle pitch of a stretch, in semitones above 1 Hz, and how many voiced windows it was taken from."""

    semitones: float
    frames: int


def height(samples: Samples) -> Height | None:
    """The pitch of a stretch of speech by autocorrelation; None where too little of it is voiced."""
    if len(samples) < WINDOW:
        return None
    windows = np.lib.stride_tricks.sliding_window_view(samples, WINDOW)[::STEP]
    windows = windows - windows.mean(axis=1, keepdims=True)
    power = np.mean(np.square(windows), axis=1)
    usual = float(np.median(power[power >= np.median(power)]))
    periods, likeness = _periods(windows[power > LEAST_LOUD * usual])
    pitches = RATE_HZ / periods[likeness > LEAST_LIKE]
    if len(pitches) < LEAST_FRAMES:
        return None
    return Height(float(12 * np.log2(np.median(pitches))), len(pitches))


def _periods(windows: Samples) -> tuple[npt.NDArray[np.int64], Samples]:
    """Of each window: the samples of a period, and how alike it is to itself that much later."""
    first, longest = RATE_HZ // HIGHEST_HZ, RATE_HZ // LOWEST_HZ
    shape = np.hanning(WINDOW).astype(np.float32)
    alike, fading = _alike(windows * shape, longest), _alike(shape[None], longest)
    alike = alike / np.maximum(alike[:, :1], 1e-9) / (fading / fading[:, :1])
    lags = alike[:, first:]
    best = lags.max(axis=1, initial=0.0)
    peaks = np.zeros(lags.shape, bool)
    peaks[:, 1:-1] = (lags[:, 1:-1] >= lags[:, :-2]) & (lags[:, 1:-1] >= lags[:, 2:])
    good = peaks & (lags >= OCTAVE * best[:, None])
    return np.where(good.any(axis=1), good.argmax(axis=1), lags.argmax(axis=1)) + first, best


def _alike(windows: Samples, longest: int) -> Samples:
    """Of each window: its products with itself, moved by 0 to `longest` samples, added up."""
    size = 1 << (WINDOW + longest - 1).bit_length()  # so long that its end does not meet its beginning
    spectrum = np.fft.rfft(windows, size)
    products = np.fft.irfft(np.square(spectrum.real) + np.square(spectrum.imag), size)[:, :longest]
    return np.asarray(products, np.float32)


def parted(heights: Sequence[Height]) -> tuple[float, list[int]]:
    """Semitones between two groups of stretches, cut where they differ most, and the stretches of the one heard less.

    0 and none where they are no two clear groups.
    """
    order = sorted(range(len(heights)), key=lambda at: heights[at].semitones)
    tones = np.array([heights[at].semitones for at in order])
    weights = np.array([heights[at].frames for at in order], float)
    cuts = range(LEAST_STRETCHES, len(order) - LEAST_STRETCHES + 1)
    cut = min(cuts, key=lambda at: _cut(tones, weights, at), default=0)
    if not cut:
        return 0.0, []
    within, widest, distance = _cut(tones, weights, cut)
    if distance < max(LEAST_CLEARNESS * max(within, LEAST_SPREAD), LEAST_OF_EACH * widest):
        return 0.0, []
    low_is_less = weights[:cut].sum() < weights[cut:].sum()
    return distance, sorted(order[:cut] if low_is_less else order[cut:])


def _cut(tones: npt.NDArray[np.float64], weights: npt.NDArray[np.float64], cut: int) -> tuple[float, float, float]:
    """Spread within the two groups below and above a cut, that of the wider one, and the distance of their means."""
    groups = [(tones[:cut], weights[:cut]), (tones[cut:], weights[cut:])]
    means = [float(np.average(group, weights=weight)) for group, weight in groups]
    squares = [float(np.sum(weight * (group - mean) ** 2)) for (group, weight), mean in zip(groups, means, strict=True)]
    widest = max(square / float(weight.sum()) for square, (_, weight) in zip(squares, groups, strict=True)) ** 0.5
    return (sum(squares) / float(weights.sum())) ** 0.5, widest, means[1] - means[0]
