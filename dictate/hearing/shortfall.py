"""Stretches of speech that last longer than their words take to say: a phrase may be missing."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from dictate.grammar.sounds import sounds
from dictate.model.words import Word

# Set on 306 spans and 310 cuts of five synthetic voices, see docs/doubt.md: phrases 95% at 0% false alarms.
LEAST_MISSING_S = 0.45  # speech that the words do not account for
SLACK = 0.1  # share of the speech by which a speaker may be slower than usual
EDGE_S = 0.1  # of every span, before the first and after the last sound
MOST_SPANS = 5  # looked at together: the words around a lost phrase are spread over its time
WIDEST_PAUSE_S = 2.0  # between them
LEAST_SOUNDS = 8  # shorter spans tell nothing of the speaker's pace
LEAST_SPANS = 4  # as do too few

_ONES = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen "
    "eighteen nineteen".split()
)
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
_SPOKEN = {"kg": "kilograms", "cm": "centimeters", "mm": "millimeters", "m": "meters", "%": "percent", "/": "over"}


@dataclass(frozen=True)
class Thin:
    """Speech that its words do not fill, in seconds of the recording."""

    start_s: float
    end_s: float
    missing: float  # sounds that could have been said in the time left


def thin_stretches(spans: Sequence[tuple[float, float]], words: Sequence[Word]) -> list[Thin]:
    """Runs of spans (start, end in seconds) with far more time than their words need, the worst first."""
    if not spans:
        return []
    said = _sounds_of(spans, words)
    voiced = np.array([end - start for start, end in spans])
    telling = said > LEAST_SOUNDS
    if telling.sum() < LEAST_SPANS:
        return []
    pace = float(np.median((voiced[telling] - EDGE_S) / said[telling]))  # seconds a sound
    left = voiced * (1 - SLACK) - EDGE_S - said * pace
    found: list[Thin] = []
    taken: set[int] = set()
    for missing_s, first, last in sorted(_runs(spans, left), reverse=True):
        if not taken & set(range(first, last + 1)):
            taken |= set(range(first, last + 1))
            found.append(Thin(spans[first][0], spans[last][1], missing_s / pace))
    return found


def _runs(spans: Sequence[tuple[float, float]], left: np.ndarray) -> list[tuple[float, int, int]]:
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


def _sounds_of(spans: Sequence[tuple[float, float]], words: Sequence[Word]) -> np.ndarray:
    """Sounds of the words of each span; a word over several spans is shared out by time."""
    said = np.zeros(len(spans))
    for word in words:
        if word.start_s is None or word.end_s is None:
            continue
        shares = np.array([max(0.0, min(end, word.end_s) - max(start, word.start_s)) for start, end in spans])
        if not shares.any():
            nearest = [min(abs(start - word.end_s), abs(end - word.start_s)) for start, end in spans]
            shares[int(np.argmin(nearest))] = 1.0
        said += count_sounds(word.text) * shares / shares.sum()
    return said


@lru_cache(maxsize=4096)
def count_sounds(text: str) -> int:
    """How many sounds a written word has when it is spoken."""
    plain = re.sub(r"\d+", lambda found: f" {_spell(int(found.group()[:6]))} ", text.lower())
    return sum(len(sounds(_SPOKEN.get(part, part))) for part in re.findall(r"[a-z]+|[%/]", plain))


def _spell(number: int) -> str:
    """A number as it is dictated: one forty two, one oh eight."""
    if number < 20:
        return _ONES[number]
    if number < 100:
        return _TENS[number // 10 - 2] + (f" {_ONES[number % 10]}" if number % 10 else "")
    if number < 1000:
        rest = number % 100
        middle = "" if rest >= 10 else " hundred"
        return _ONES[number // 100] + middle + (f" {_spell(rest)}" if rest else "")
    return " ".join(_ONES[int(digit)] for digit in str(number))
