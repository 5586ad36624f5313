"""Sound as it comes → phrases, each ended by a pause; and the words of a phrase."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from dictate.hearing.audio import RATE_HZ, Block, Samples
from dictate.hearing.chunks import PAD_S, Span, cut_chunks
from dictate.hearing.hear import Listener
from dictate.hearing.lost import fill_gaps
from dictate.hearing.passes import Memory, hear_chunks
from dictate.model.words import Hints, Stretch, Word

END_S = 0.4  # a pause this long ends a phrase
LONGEST_S = 14.0  # with its padding a phrase fits the recogniser's shortest window
KEPT_S = 1.0  # of silence in front of a phrase
STEP_S = 0.1  # the search for voice is worth repeating after so much more sound


@dataclass(frozen=True)
class Phrase:
    """Voiced sound between two pauses.

    first: sample at which `samples` begins, counted from the start. spans: where voice is in `samples`.
    """

    first: int
    samples: Samples
    spans: tuple[Span, ...]

    @property
    def start_s(self) -> float:
        """Where voice begins."""
        return (self.first + self.spans[0].start) / RATE_HZ

    @property
    def end_s(self) -> float:
        """Where voice ends."""
        return (self.first + self.spans[-1].end) / RATE_HZ


class PhraseCutter:
    """Takes sound in and hands out phrases as they end."""

    def __init__(self, spans: Callable[[Samples], list[Span]], *, first: int = 0) -> None:
        self._spans = spans
        self._sound: Samples = np.zeros(0, np.float32)
        self.first = first  # sample at which what is still held begins
        self._looked = 0

    def add(self, samples: Samples) -> None:
        """More sound, joined to what came before."""
        self._sound = np.concatenate([self._sound, samples])

    @property
    def end(self) -> int:
        """Sample after the last one taken in."""
        return self.first + len(self._sound)

    def take(self, *, ended: bool = False) -> Phrase | None:
        """The next phrase that has ended; None: go on listening. `ended`: no more sound will come."""
        if len(self._sound) - self._looked < STEP_S * RATE_HZ and not ended:
            return None
        spans = self._spans(self._sound)
        self._looked = len(self._sound)
        if not spans:
            self._drop(len(self._sound) - (0 if ended else int(KEPT_S * RATE_HZ)))
            return None
        count = self._complete(spans, ended=ended)
        if count:
            return self._cut(tuple(spans[:count]), spans[count].start if count < len(spans) else len(self._sound))
        if len(self._sound) - spans[0].start < LONGEST_S * RATE_HZ:
            self._drop(spans[0].start - int(KEPT_S * RATE_HZ))
            return None
        (first, *_) = cut_chunks(spans, self._sound, longest_s=LONGEST_S)
        last = first.pieces[-1].end
        held = tuple(Span(s.start, min(s.end, last)) for s in spans if s.start < last)
        return self._cut(held, last, joined=True)

    def _complete(self, spans: list[Span], *, ended: bool) -> int:
        """How many of the first spans make a phrase that ended; 0: none."""
        for count in range(1, len(spans) + 1):
            if spans[count - 1].end - spans[0].start > LONGEST_S * RATE_HZ:
                return 0
            following = spans[count].start if count < len(spans) else len(self._sound)
            if following - spans[count - 1].end >= END_S * RATE_HZ or (ended and count == len(spans)):
                return count
        return 0

    def _cut(self, spans: tuple[Span, ...], following: int, *, joined: bool = False) -> Phrase:
        pad = int(PAD_S * RATE_HZ)
        start = max(0, spans[0].start - pad)
        end = following if joined else min(following, len(self._sound), spans[-1].end + pad)
        moved = tuple(Span(span.start - start, span.end - start) for span in spans)
        phrase = Phrase(self.first + start, self._sound[start:end].copy(), moved)
        self._drop(end if joined else spans[-1].end + pad // 2)
        return phrase

    def _drop(self, count: int) -> None:
        if count > 0:
            self._sound = self._sound[count:].copy()
            self.first += count
            self._looked = 0


def hear_phrase(engine: Listener, phrase: Phrase, hints: Hints, memory: Memory) -> tuple[list[Word], list[Stretch]]:
    """Words of a phrase, and its voiced stretches without words; times from the start of the sound."""
    block = Block(phrase.first / RATE_HZ, phrase.samples)
    chunks = cut_chunks(phrase.spans, block.samples, block_start_s=block.start_s)
    return fill_gaps(engine, block, phrase.spans, hear_chunks(engine, block, chunks, hints, memory))
