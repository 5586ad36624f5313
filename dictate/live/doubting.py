"""Slower doubts: what was taken from a phrase is weighed against the sound while the dictation goes on."""

from __future__ import annotations

import queue
import threading
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from dictate.live.recogniser import Answer, Knows, Weigh
from dictate.live.taken import Phrase, Taken, Taker

Ask = Callable[[Weigh | Knows], Answer]
MOST_REMEMBERED = 2_000
AT_ONCE = 3  # texts: a tenth of a second, so that a phrase that ends meanwhile hardly waits


@dataclass(frozen=True)
class Doubted:
    """What weighing a phrase changed."""

    start_s: float
    taken: Taken


class AskedWeigher:
    """The recogniser's weighing, asked of its process; what it once told is remembered."""

    def __init__(self, ask: Ask) -> None:
        self._ask = ask
        self._told: dict[Weigh | Knows, Answer] = {}

    def weigh(self, sha256: str, start_s: float, end_s: float, texts: Sequence[str]) -> list[float]:
        """Log-probability of each text for a stretch of the sound; empty: cannot tell."""
        found: list[float] = []
        for first in range(0, len(texts), AT_ONCE):
            part = tuple(texts[first : first + AT_ONCE])
            weighed = self._answer(Weigh(sha256, start_s, end_s, part)).weighed
            if len(weighed) < len(part):
                return []
            found += weighed
        return found

    def knows(self, word: str) -> bool:
        """Whether it is a word of English; a recogniser that gives no answer doubts none."""
        answer = self._answer(Knows(word))
        return answer.known or answer.to is None

    def forget(self) -> None:
        """Let go of what was told."""
        self._told.clear()

    def _answer(self, question: Weigh | Knows) -> Answer:
        if question not in self._told:
            answer = self._ask(question)
            if answer.to is None:
                return answer
            if len(self._told) >= MOST_REMEMBERED:
                self._told.clear()
            self._told[question] = answer
        return self._told[question]


class Doubter(threading.Thread):
    """Weighs one phrase after the other; those that wait are weighed together, with the latest."""

    def __init__(self, taker: Taker, ask: Ask, events: queue.SimpleQueue[Any]) -> None:
        super().__init__(name="doubter", daemon=True)
        self._taker, self._ask, self._events = taker, ask, events
        self._over = threading.Event()
        self._weigher = AskedWeigher(self._asked)
        self._more = threading.Condition()
        self._waiting: tuple[float, Phrase] | None = None  # since when, and what it was read with

    def add(self, phrase: Phrase) -> None:
        """Weigh a phrase when there is time; the answer is a Doubted."""
        with self._more:
            since_s = self._waiting[0] if self._waiting else phrase.start_s
            self._waiting = since_s, phrase
            self._more.notify()

    def end(self) -> None:
        """No more will be asked, not even about the phrase in hand."""
        with self._more:
            self._over.set()
            self._more.notify()

    def run(self) -> None:
        """Until `end`."""
        while True:
            with self._more:
                self._more.wait_for(lambda: self._waiting or self._over.is_set())
                if self._waiting is None or self._over.is_set():
                    return
                (start_s, phrase), self._waiting = self._waiting, None
            taken = self._taker.doubts(phrase, from_s=start_s, weigher=self._weigher)
            if not taken.empty and not self._over.is_set():
                self._events.put(Doubted(start_s, taken))

    def _asked(self, question: Weigh | Knows) -> Answer:
        return Answer() if self._over.is_set() else self._ask(question)
