"""The other process: asks for sound, hears phrases as they end, weighs what is asked, hears the whole again."""

from __future__ import annotations

import functools
import logging
import signal
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from typing import TYPE_CHECKING

from dictate.errors import DictateError
from dictate.model import Hints, Stretch, Transcript, Word

if TYPE_CHECKING:
    from dictate.hearing.hear import Listener
    from dictate.hearing.live_phrases import PhraseHearer

RATE_HZ = 16_000
BYTES_PER_SAMPLE = 2
AT_ONCE_BYTES = 2 * RATE_HZ * BYTES_PER_SAMPLE  # more sound than this waiting: no time to hear anything ahead


@dataclass(frozen=True)
class Heard:
    """One phrase: its words, its voiced stretches without words; seconds of the session's sound."""

    words: tuple[Word, ...]
    lost: tuple[Stretch, ...]
    start_s: float
    end_s: float
    done: int  # sample up to which all sound was heard
    order: str | None = None  # to the program itself, that fits the sound; empty: none; None: cannot tell


@dataclass(frozen=True)
class More:
    """Asks for more sound; all before sample `first` was heard. pressing: it is no time for a question."""

    first: int
    pressing: bool = False


@dataclass(frozen=True)
class Ready:
    """The model is loaded."""


@dataclass(frozen=True)
class Finished:
    """All sound handed over was heard."""


@dataclass(frozen=True)
class Whole:
    """A whole recording heard again."""

    transcript: Transcript


@dataclass(frozen=True)
class Failed:
    """A whole recording could not be heard; one line."""

    reason: str


@dataclass(frozen=True)
class EngineMaker:
    """What an engine is made from, in the other process."""

    model: str = ""
    device: str = "auto"
    offline: bool = False

    def __call__(self) -> Listener:
        """Load the model."""
        from dictate.hearing import Engine

        engine = Engine(model=self.model or None, device=self.device, offline=self.offline)
        engine.load()
        return engine


@dataclass(frozen=True)
class Weigh:
    """How well does each text fit a stretch of the sound? `sha256`: of a whole recording; empty: of the phrases."""

    sha256: str
    start_s: float
    end_s: float
    texts: tuple[str, ...]


@dataclass(frozen=True)
class Knows:
    """Is it a word of English, as far as the recogniser can tell?"""

    word: str


@dataclass(frozen=True)
class Answer:
    """To a Weigh or a Knows; `to` None: there is nobody to ask."""

    to: Weigh | Knows | None = None
    weighed: tuple[float, ...] = ()
    known: bool = False


def hear_for(there: Connection, make: Callable[[], Listener], hints: Hints, first: int, orders: Sequence[str]) -> None:
    """The other process: asks for sound, hears phrases, says what they were; ends when nobody asks any more."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    logging.captureWarnings(capture=True)
    try:
        try:
            engine = make()
        except DictateError as fault:
            there.send(fault)
            return
        there.send(Ready())
        _hear_on(there, engine, hints, first, orders)
    except (EOFError, OSError):
        return  # the program that asked is gone


def _hear_on(there: Connection, engine: Listener, hints: Hints, first: int, orders: Sequence[str] = ()) -> None:
    from dictate.hearing.live_phrases import SOON_MS, PhraseCutter, PhraseHearer
    from dictate.hearing.microphone import to_samples
    from dictate.live.spoken import fitting_order

    cutter = PhraseCutter(engine.spans, first=first, quick=functools.partial(engine.spans, silence_ms=SOON_MS))
    hearer = PhraseHearer(engine, hints)
    while True:
        there.send(More(cutter.first, cutter.pressing))
        asked = there.recv()
        if asked is None:
            return
        if isinstance(asked, Path):
            there.send(_whole(engine, asked, hints))
            continue
        if isinstance(asked, Weigh | Knows):
            there.send(_answer(engine, hearer, asked))
            continue
        pcm, ended = asked
        cutter.add(to_samples(pcm))
        while phrase := cutter.take(ended=ended):
            words, lost = hearer.hear(phrase)
            order = fitting_order(words, orders, functools.partial(_fit, engine, hearer, phrase.start_s, phrase.end_s))
            there.send(Heard(tuple(words), tuple(lost), phrase.start_s, phrase.end_s, cutter.first, order))
        if ended:
            there.send(Finished())
        elif len(pcm) < AT_ONCE_BYTES and (soon := cutter.soon()):
            hearer.hear_ahead(soon)


def _fit(engine: Listener, hearer: PhraseHearer, start_s: float, end_s: float, texts: list[str]) -> list[float]:
    """How well each text fits a stretch of the latest phrases; empty: cannot tell."""
    name = hearer.name_of(start_s, end_s)
    return engine.weigh(name, start_s, end_s, texts) if name else []


def _whole(engine: Listener, path: Path, hints: Hints) -> Whole | Failed:
    from dictate.hearing.hear import hear_recording

    try:
        return Whole(hear_recording(engine, path, hints=hints))
    except DictateError as fault:
        return Failed(str(fault))


def _answer(engine: Listener, hearer: PhraseHearer, asked: Weigh | Knows) -> Answer:
    if isinstance(asked, Knows):
        return Answer(asked, known=engine.knows(asked.word))
    name = asked.sha256 or hearer.name_of(asked.start_s, asked.end_s)
    return Answer(asked, tuple(engine.weigh(name, asked.start_s, asked.end_s, asked.texts)) if name else ())
