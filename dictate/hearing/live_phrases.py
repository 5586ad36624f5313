"""Sound as it comes → phrases, each ended by a pause; and the words of a phrase."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np

from dictate.hearing.audio import RATE_HZ, Block, Samples
from dictate.hearing.chunks import PAD_S, Chunk, Span, cut_chunks
from dictate.hearing.hear import Listener
from dictate.hearing.kept import MOST_RECORDINGS, Encoded, Views
from dictate.hearing.lost import fill_gaps
from dictate.hearing.passes import Memory, encode_chunks, hear_chunks
from dictate.model.words import Hints, Stretch, Word

END_S = 0.4  # a pause this long ends a phrase
SOON_S = 0.2  # after a pause this long a phrase is heard ahead; that is thrown away when speech goes on
SOON_MS = 100  # silence that closes a span in the search for such a pause
TAIL_S = 2.0  # of sound are searched for it
SAME_S = 0.15  # ends of a phrase, found sooner and later, differ by less
# Of the encoder, for phrases that fit: a third less work. Of 202 phrases by synthetic voices the 13 of the poorest that
# differ from those in 15 s differ either way; under 8 s one was doubled.
WINDOW_S = 10
BEAM = 2  # the second look at the end hears with a wider one
LONGEST_S = 14.0  # with its padding a phrase fits the recogniser's shortest window
KEPT_S = 1.0  # of silence in front of a phrase
STEP_S = 0.1  # the search for voice is worth repeating after so much more sound
REFRESH_S = 0.5  # in the midst of speech the whole phrase is searched this often, its tail at every step


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

    def is_same(self, other: Phrase) -> bool:
        """Whether the other holds the same speech."""
        return abs(self.start_s - other.start_s) <= SAME_S and abs(self.end_s - other.end_s) <= SAME_S


class PhraseCutter:
    """Takes sound in and hands out phrases as they end; `quick`: spans that a pause of SOON_MS closes."""

    def __init__(
        self, spans: Callable[[Samples], list[Span]], *, first: int = 0,
        quick: Callable[[Samples], list[Span]] | None = None,
    ) -> None:  # fmt: skip
        self._spans, self._quick = spans, quick
        self._sound: Samples = np.zeros(0, np.float32)
        self.first = first  # sample at which what is still held begins
        self._looked = self._searched = 0
        self._open: tuple[Span, ...] = ()  # of the phrase that has not ended
        self._voice_end: int | None = None  # in its tail

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
        self._looked = len(self._sound)
        if not ended and self._goes_on():
            return None
        spans = self._spans(self._sound)
        self._searched = len(self._sound)
        self._open = ()
        if not spans:
            self._drop(len(self._sound) - (0 if ended else int(KEPT_S * RATE_HZ)))
            return None
        count = self._complete(spans, ended=ended)
        if count:
            return self._cut(tuple(spans[:count]), spans[count].start if count < len(spans) else len(self._sound))
        if len(self._sound) - spans[0].start < LONGEST_S * RATE_HZ:
            gone = max(0, spans[0].start - int(KEPT_S * RATE_HZ))
            self._drop(gone)
            self._open = tuple(Span(span.start - gone, span.end - gone) for span in spans)
            return None
        (first, *_) = cut_chunks(spans, self._sound, longest_s=LONGEST_S)
        last = first.pieces[-1].end
        held = tuple(Span(s.start, min(s.end, last)) for s in spans if s.start < last)
        return self._cut(held, last, joined=True)

    @property
    def pressing(self) -> bool:
        """Whether a phrase may be about to end: nothing else should be begun."""
        pause_s = self._pause_s()
        return bool(self._open) and (pause_s is None or pause_s >= SOON_MS / 1000)

    def soon(self) -> Phrase | None:
        """The phrase that has ended if no more is said; None: nothing is held, or speech goes on."""
        pause_s = self._pause_s()
        if pause_s is None or pause_s < SOON_S:
            return None
        *before, last = self._open
        end = len(self._sound) - int(pause_s * RATE_HZ)
        return self._phrase((*before, Span(last.start, max(end, last.start + 1))), len(self._sound))

    def _pause_s(self) -> float | None:
        """Seconds without voice at the end of the phrase that has not ended; None: there is none, or no telling."""
        if self._quick is None or not self._open:
            return None
        if self._voice_end is None:
            start = max(self._open[-1].start, len(self._sound) - int(TAIL_S * RATE_HZ))
            found = self._quick(self._sound[start:])
            self._voice_end = start + found[-1].end if found else -1
        return None if self._voice_end < 0 else (len(self._sound) - self._voice_end) / RATE_HZ

    def _goes_on(self) -> bool:
        """Whether someone is speaking in the midst of a phrase, so that none can have ended."""
        self._voice_end = None
        if not self._open or len(self._sound) - self._searched >= REFRESH_S * RATE_HZ:
            return False
        pause_s = self._pause_s()
        return pause_s is not None and pause_s < SOON_S

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
        phrase = self._phrase(spans, following, joined=joined)
        self._drop(following if joined else spans[-1].end + int(PAD_S * RATE_HZ) // 2)
        self._looked = self._searched = 0  # what is left may hold the next one
        return phrase

    def _phrase(self, spans: tuple[Span, ...], following: int, *, joined: bool = False) -> Phrase:
        pad = int(PAD_S * RATE_HZ)
        start = max(0, spans[0].start - pad)
        end = following if joined else min(following, len(self._sound), spans[-1].end + pad)
        moved = tuple(Span(span.start - start, span.end - start) for span in spans)
        return Phrase(self.first + start, self._sound[start:end].copy(), moved)

    def _drop(self, count: int) -> None:
        if count > 0:
            self._sound = self._sound[count:].copy()
            self.first += count
            self._looked, self._searched, self._voice_end = self._looked - count, self._searched - count, None


Words = tuple[list[Word], list[Stretch]]


@dataclass
class _Hearing:
    """A phrase on its way to words: the encoder's views first, then what was heard."""

    phrase: Phrase
    block: Block
    chunks: list[Chunk]
    encoded: list[Encoded]
    memory: Memory  # as it is once the phrase was said
    words: Words | None = None


@dataclass
class PhraseHearer:
    """Words of phrases, with what was heard in earlier ones in mind; views are kept for a weighing that follows."""

    engine: Listener
    hints: Hints
    _memory: Memory = field(default_factory=Memory)
    _kept: list[tuple[float, float, str]] = field(default_factory=list)  # start, end and name of the latest phrases
    _ahead: _Hearing | None = None

    def hear_ahead(self, phrase: Phrase) -> None:
        """The next step towards the words of a phrase that may have ended; between two it is seen if speech goes on."""
        if self._ahead is None or not self._ahead.phrase.is_same(phrase):
            self._ahead = self._begun(phrase)
        else:
            self._finish(self._ahead)

    def hear(self, phrase: Phrase) -> Words:
        """Words of a phrase that ended, and its voiced stretches without words; times from the start of the sound."""
        hearing, self._ahead = self._ahead, None
        if hearing is None or not hearing.phrase.is_same(phrase):
            hearing = self._begun(phrase)
        words = self._finish(hearing)
        self._memory = hearing.memory
        if self._memory.views is not None:
            name = f"phrase at {phrase.first}"
            self.engine.keep(name, self._memory.views)
            heard = hearing.phrase.start_s, hearing.phrase.end_s, name
            self._kept = [*self._kept[1 - MOST_RECORDINGS :], heard]
        return words

    def name_of(self, start_s: float, end_s: float) -> str:
        """Under what name the view of a stretch of the sound is kept; empty: not any more."""
        middle = (start_s + end_s) / 2
        return next((name for first, last, name in self._kept if first - PAD_S <= middle <= last + PAD_S), "")

    def _begun(self, phrase: Phrase) -> _Hearing:
        block = Block(phrase.first / RATE_HZ, phrase.samples)
        chunks = cut_chunks(phrase.spans, block.samples, block_start_s=block.start_s)
        encoded = encode_chunks(self.engine, block, chunks, short_s=WINDOW_S)
        return _Hearing(phrase, block, chunks, encoded, replace(self._memory, views=Views()))

    def _finish(self, hearing: _Hearing) -> Words:
        if hearing.words is None:
            words = hear_chunks(
                self.engine, hearing.block, hearing.chunks, self.hints, hearing.memory, beam=BEAM,
                encoded=hearing.encoded,
            )  # fmt: skip
            hearing.words = fill_gaps(self.engine, hearing.block, hearing.phrase.spans, words)
        return hearing.words
