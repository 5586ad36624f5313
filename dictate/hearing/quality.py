"""How good the sound of a recording is: level, noise, clipping, tones, a second voice, another language."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

import numpy as np
import numpy.typing as npt

from dictate.hearing.audio import RATE_HZ, Block, Samples
from dictate.hearing.chunks import Span
from dictate.hearing.pitch import Height, height, parted
from dictate.hearing.sides import Turn
from dictate.hearing.tones import tones_in
from dictate.model.words import Sound

FRAME = RATE_HZ // 50
FLAT = 3  # samples in a row at the very top of the recording: the microphone's or the sound card's limit
NEAR_TOP = 0.999
LEAST_TOP = 0.2  # a recording that never gets louder than this is not clipped
EDGE_S = 0.3  # around speech, where breath and echo are no noise
LEAST_PAUSE_S = 0.5  # of pauses, to tell the noise by
QUIETEST_DB = -120.0
LEAST_TURNS = 2  # of either channel: one stretch alone may be a chair or a cough
OTHER_LANGUAGE = 0.5  # probability from which on a chunk counts as another language


class Quality:
    """Adds up what blocks of one recording say of its sound."""

    def __init__(self) -> None:
        self._voiced: list[npt.NDArray[np.float32]] = []
        self._pauses: list[npt.NDArray[np.float32]] = []
        self._heights: list[Height] = []
        self._times: list[Turn] = []  # of each height: where it was spoken, in seconds
        self._alone: tuple[list[Turn], list[Turn]] = ([], [])  # on either channel
        self._tones: list[tuple[float, int]] = []
        self._clipped = self._samples = 0

    def add(self, block: Block, spans: Sequence[Span]) -> None:
        """Take a block into account."""
        loud = np.zeros(len(block.samples) // FRAME, bool)
        near = np.zeros_like(loud)
        edge = int(EDGE_S * RATE_HZ)
        for span in spans:
            loud[span.start // FRAME : span.end // FRAME] = True
            near[max(0, span.start - edge) // FRAME : (span.end + edge) // FRAME + 1] = True
        power = np.mean(np.square(_frames(block.samples)), axis=1)
        self._voiced.append(power[loud].astype(np.float32))
        self._pauses.append(power[~near].astype(np.float32))
        for span in spans:
            if found := height(block.samples[span.start : span.end]):
                self._heights.append(found)
                self._times.append((block.start_s + span.start / RATE_HZ, block.start_s + span.end / RATE_HZ))
        for kept, found_alone in zip(self._alone, block.alone, strict=True):
            for start, end in found_alone:
                if height(block.samples[int(start * RATE_HZ) : int(end * RATE_HZ)]):
                    kept.append((block.start_s + start, block.start_s + end))
        self._tones.append(tones_in(block.samples, _runs(~near)))
        self._clipped += _clipped(block.samples)
        self._samples += len(block.samples)

    def sound(self, languages: Sequence[tuple[str, float]] = ()) -> Sound | None:
        """What is known at the end; None where nobody spoke.

        languages: of some chunks, the likeliest and its probability; another than English needs more than half.
        """
        voiced, pauses = np.concatenate([*self._voiced, []]), np.concatenate([*self._pauses, []])
        if not voiced.size:
            return None
        level = _decibels(float(np.mean(voiced)))
        noise = None
        if pauses.size * FRAME >= LEAST_PAUSE_S * RATE_HZ:
            noise = _decibels(float(np.mean(pauses)))
        heard = Counter(name if share >= OTHER_LANGUAGE else "en" for name, share in languages)
        language, times = (heard.most_common(1) or [("en", 0)])[0]
        count = sum(number for _, number in self._tones)
        tones = _decibels(sum(power * number for power, number in self._tones) / count) if count else None
        distance, second = parted(self._heights)
        return Sound(
            level_db=round(level, 1),
            noise_db=None if noise is None else round(noise, 1),
            tones_db=None if tones is None else round(tones, 1),
            voices_apart=round(distance, 1),
            second_voice=_rounded(self._times[at] for at in second),
            other_channel=_rounded(self._other_channel()),
            clipped=round(self._clipped / max(1, self._samples), 5),
            language=language if 2 * times > heard.total() else "en",
        )

    def _other_channel(self) -> list[Turn]:
        """Where the talker speaks whose channel speaks alone for less time; nothing where one channel never does."""
        less = min(self._alone, key=lambda stretches: sum(end - start for start, end in stretches))
        return less if len(less) >= LEAST_TURNS else []


def _rounded(turns: Iterable[Turn]) -> tuple[Turn, ...]:
    return tuple((round(start, 2), round(end, 2)) for start, end in turns)


def _runs(quiet: npt.NDArray[np.bool_]) -> list[Span]:
    """Samples of the runs of frames that are quiet."""
    steps = np.flatnonzero(np.diff(np.concatenate(([0], quiet.astype(np.int8), [0]))))
    return [Span(int(start) * FRAME, int(end) * FRAME) for start, end in zip(steps[::2], steps[1::2], strict=True)]


def _frames(samples: Samples) -> Samples:
    return samples[: len(samples) // FRAME * FRAME].reshape(-1, FRAME)


def _clipped(samples: Samples) -> int:
    """Samples that lie flat at the top or the bottom of the block."""
    top, bottom = samples.max(initial=0.0), samples.min(initial=0.0)
    high = np.flatnonzero(samples >= NEAR_TOP * top) if top >= LEAST_TOP else ()
    low = np.flatnonzero(samples <= NEAR_TOP * bottom) if bottom <= -LEAST_TOP else ()
    found = 0
    for places in (high, low):  # few, in a sound recording
        ends = np.flatnonzero(np.diff(places, append=-1) != 1)
        lengths = np.diff(ends, prepend=-1)
        found += int(lengths[lengths >= FLAT].sum())
    return found


def _decibels(power: float) -> float:
    return max(QUIETEST_DB, 10 * float(np.log10(max(power, 1e-12))))
