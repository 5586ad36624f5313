"""Two talkers, each on a channel of their own: where only one of the two channels sounds."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Turn = tuple[float, float]  # from, to in seconds

WINDOW_S = 0.25
OWN_DB = 14.0  # a channel sounds alone when it is this much louder than the other: five times as near to its microphone
ABOVE_DB = 12.0  # and this much louder than its own quietest tenth: a steady noise is no talker
LEAST_DB = -65.0  # quieter than this says nothing, however silent the pauses are
LEAST_WINDOWS = 3  # in a row; a knock is shorter


def alone(sound: npt.NDArray[np.float32], rate_hz: int) -> tuple[list[Turn], list[Turn]]:
    """Of the left and of the right channel (2, n): the stretches where it sounds and the other is far quieter."""
    size = int(WINDOW_S * rate_hz)
    count = sound.shape[1] // size
    if sound.shape[0] != 2 or not count:
        return [], []
    windows = sound[:, : count * size].reshape(2, count, size)
    power = 10 * np.log10(np.maximum(np.var(windows, axis=2), 1e-12))
    floor = np.percentile(power, 10, axis=1, keepdims=True)
    own = (power > np.maximum(floor + ABOVE_DB, LEAST_DB)) & (power - power[::-1] > OWN_DB)
    return _runs(own[0]), _runs(own[1])


def _runs(own: npt.NDArray[np.bool_]) -> list[Turn]:
    """Runs of windows that are long enough."""
    steps = np.flatnonzero(np.diff(np.concatenate(([0], own.astype(np.int8), [0]))))
    runs = [(int(start), int(end)) for start, end in zip(steps[::2], steps[1::2], strict=True)]
    return [(start * WINDOW_S, end * WINDOW_S) for start, end in runs if end - start >= LEAST_WINDOWS]
