"""Ears that hear what a test tells them, in place of a model."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from dictate.hearing.audio import RATE_HZ
from dictate.hearing.engine import Decoded, Timed


def heard(text: str, *, mean_logprob: float = -0.2, no_speech: float = 0.0) -> Decoded:
    """A decoder's answer."""
    return Decoded(text, tuple(range(len(text.split()))), mean_logprob, no_speech)


class FakeEars:
    """Answers by `say(length of the chunk in s, prompt terms, window)`; words are spread evenly."""

    def __init__(
        self, say: Callable[[float, tuple[str, ...], int | None], Decoded], *, knows_trade: bool = True
    ) -> None:
        self.knows_trade = knows_trade
        self.say = say
        self.prompts: list[tuple[str, ...]] = []
        self._asked: list[tuple[str, ...]] = []

    def encode(self, samples: np.ndarray, *, window_s: int | None = None) -> np.ndarray:
        """Length and window, kept for the decoder."""
        return np.array([len(samples) / RATE_HZ, window_s or 0], np.float32)

    def prompt(self, terms: Sequence[str], *, fill: Sequence[str] = (), length: int | None = None) -> list[int]:
        """The number of the list of terms."""
        self._asked.append(tuple(terms))
        return [len(self._asked) - 1]

    def decode(self, encoded: Sequence[np.ndarray], prompts: Sequence[list[int]], *, beam: int = 5) -> list[Decoded]:
        """What the test wants to be heard."""
        answers = []
        for view, (number,) in zip(encoded, prompts, strict=True):
            self.prompts.append(self._asked[number])
            answers.append(self.say(float(view[0]), self._asked[number], int(view[1]) or None))
        return answers

    def align(
        self, encoded: Sequence[np.ndarray], decoded: Sequence[Decoded], seconds: Sequence[float]
    ) -> list[list[Timed]]:
        """Words of equal length from the start to the end of the chunk."""
        timed = []
        for text, length in zip(decoded, seconds, strict=True):
            words = text.text.split()
            step = length / max(1, len(words))
            timed.append([Timed(f" {word}", at * step, (at + 1) * step, 0.9) for at, word in enumerate(words)])
        return timed
