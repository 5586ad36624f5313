"""Stretches of speech that last longer than their words take to say: a phrase may be missing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from dictate.grammar.sounds import sounds
from dictate.hearing.aloud import aloud
from dictate.model.words import Word

# Set on 862 spans and 664 cuts of seven synthetic voices, see docs/doubt.md: phrases 97% at 1.5% false alarms.
LEAST_MISSING_S = 0.35  # speech that the words do not account for
SLACK = 0.1  # share of the speech by which a speaker may be slower than usual
EDGE_S = 0.1  # of every span, before the first and after the last sound
PAUSE_S = 0.2  # behind a mark within a span: shorter than the silence that would end the span
MARKS = (".", ",", ";", ":", "?", "!")
MOST_SPANS = 5  # looked at together: the words around a lost phrase are spread over its time
WIDEST_PAUSE_S = 2.0  # between them
LEAST_SOUNDS = 8  # shorter spans tell nothing of the speaker's pace
LEAST_SPANS = 4  # as do too few

Floats = npt.NDArray[np.float64]
Seconds = tuple[float, float]


@dataclass(frozen=True)
class Thin:
    """Speech that its words do not fill, in seconds of the recording."""

    start_s: float
    end_s: float
    missing: float  # sounds that could have been said in the time left


@dataclass(frozen=True)
class Pace:
    """How fast somebody speaks, and whether 113 is "one hundred and thirteen" to them or "one thirteen"."""

    sound_s: float
    hundreds: bool
    over_s: Floats  # of each span: the time it takes longer than its words need

    def short_s(self, word: Word) -> float:
        """Seconds by which the time of a word is too short for its sounds; the aligner ends numerals early."""
        if word.start_s is None or word.end_s is None:
            return 0.0
        return max(0.0, count_sounds(word.text, hundreds=self.hundreds) * self.sound_s - (word.end_s - word.start_s))


def pace_of(spans: Sequence[Seconds], words: Sequence[Word]) -> Pace | None:
    """The speaker's pace, by the way of saying hundreds that fits the time better; None: too little was said."""
    voiced = np.array([end - start for start, end in spans]) - EDGE_S - PAUSE_S * _marks_within(spans, words)
    paces = []
    for hundreds in (True, False):
        said = _sounds_of(spans, words, hundreds=hundreds)
        telling = said > LEAST_SOUNDS
        if telling.sum() >= LEAST_SPANS:
            sound_s = float(np.median(voiced[telling] / said[telling]))
            paces.append(Pace(sound_s, hundreds, voiced - said * sound_s))
    return min(paces, key=lambda pace: float(np.abs(pace.over_s).sum()), default=None)


def thin_stretches(spans: Sequence[Seconds], words: Sequence[Word]) -> list[Thin]:
    """Runs of spans (start, end in seconds) with far more time than their words need, the worst first."""
    pace = pace_of(spans, words)
    if pace is None:
        return []
    left = pace.over_s - SLACK * np.array([end - start for start, end in spans])
    found: list[Thin] = []
    taken: set[int] = set()
    for missing_s, first, last in sorted(_runs(spans, left), reverse=True):
        if not taken & set(range(first, last + 1)):
            taken |= set(range(first, last + 1))
            found.append(Thin(spans[first][0], spans[last][1], missing_s / pace.sound_s))
    return found


def _runs(spans: Sequence[Seconds], left: Floats) -> list[tuple[float, int, int]]:
    """Runs of neighbouring spans with too much time left: (seconds, first span, last span)."""
    runs = []
    for first in range(len(spans)):
        total = 0.0
        for last in range(first, min(len(spans), first + MOST_SPANS)):
            if last > first and spans[last][0] - spans[last - 1][1] > WIDEST_PAUSE_S:
                break
            total += float(left[last])
            if total > LEAST_MISSING_S:
                runs.append((total, first, last))
    return runs


def _marks_within(spans: Sequence[Seconds], words: Sequence[Word]) -> Floats:
    """Marks of each span that have a word of the same span behind them."""
    counts = np.zeros(len(spans))
    starts = np.array([word.start_s or 0.0 for word in words])
    ends = np.array([word.end_s or 0.0 for word in words])
    marked = np.array([word.text.endswith(MARKS) for word in words])
    for at, (start, end) in enumerate(spans):
        own = (starts < end) & (ends > start)
        counts[at] = marked[own][:-1].sum()
    return counts


def _sounds_of(spans: Sequence[Seconds], words: Sequence[Word], *, hundreds: bool) -> Floats:
    """Sounds of the words of each span; a word over several spans is shared out by time."""
    said = np.zeros(len(spans))
    starts, ends = np.array(spans, float).reshape(-1, 2).T
    for word in words:
        if word.start_s is None or word.end_s is None:
            continue
        shares = np.maximum(0.0, np.minimum(ends, word.end_s) - np.maximum(starts, word.start_s))
        if not shares.any():
            nearest = np.minimum(np.abs(starts - word.end_s), np.abs(ends - word.start_s))
            shares[int(np.argmin(nearest))] = 1.0
        said += count_sounds(word.text, hundreds=hundreds) * shares / shares.sum()
    return said


@lru_cache(maxsize=8192)
def count_sounds(text: str, *, hundreds: bool = False) -> int:
    """How many sounds a written word has when it is spoken; `hundreds`: 113 with "hundred and"."""
    return sum(len(sounds(part)) for part in aloud(text, hundreds=hundreds).split())
