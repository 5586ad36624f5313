"""The recording thread: sound goes to the disk first, then to the recogniser; nothing else may hold it up."""

from __future__ import annotations

import queue
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

from dictate.errors import DictateError
from dictate.hearing.microphone import Piece, Trouble
from dictate.live.ear import Ear
from dictate.live.level import Level
from dictate.live.safe_sound import RATE_HZ, SafeSound
from dictate.live.tones import Muting

AHEAD_S = 20.0  # a file played fast waits for the recogniser beyond this


class SoundSource(Protocol):
    """A microphone or a file."""

    plays: bool

    def pieces(self, stop: threading.Event) -> Iterator[Piece | Trouble]:
        """Blocks of sound until it ends."""


@dataclass(frozen=True)
class Notice:
    """Something the examiner has to know at once."""

    text: str


@dataclass(frozen=True)
class Gap:
    """No sound came for a time."""

    seconds: float


@dataclass(frozen=True)
class Ended:
    """No more sound comes; `fault`: one line, when it should have."""

    fault: str = ""


class Recorder(threading.Thread):
    """From the source to disk and recogniser until it is told to stop."""

    def __init__(
        self,
        source: SoundSource,
        ear: Ear,
        muting: Muting,
        events: queue.SimpleQueue[Any],
        *,
        next_piece: Callable[[], Path],
        sound: SafeSound,
        before: int,
        open_sound: Callable[[Path], SafeSound] = SafeSound,
        fast: bool = False,
        now: Callable[[], float] = time.time,  # it goes on while the machine sleeps
    ) -> None:
        super().__init__(name="recorder", daemon=True)
        self._source, self._ear, self._muting, self._events = source, ear, muting, events
        self._next_piece, self._open, self._fast = next_piece, open_sound, fast
        self.sound = sound
        self._before = before  # samples of earlier pieces
        self.level = Level()
        self.halt = threading.Event()
        self.taking = threading.Event()  # sound has come
        self.unsaved: list[SafeSound] = []  # closed, and yet not wholly on the disk
        self._faulty = False
        self._now = now
        self._taken_at = now()

    @property
    def now_s(self) -> float:
        """Seconds of sound taken in so far."""
        return (self._before + self.sound.samples) / RATE_HZ

    def run(self) -> None:
        """Until the source ends or `halt` is set."""
        fault = ""
        try:
            for piece in self._source.pieces(self.halt):
                if isinstance(piece, Trouble):
                    self._trouble(piece)
                else:
                    self._take(piece.pcm)
                    while self._fast and self._ear.behind_s > AHEAD_S and not self.halt.wait(0.02):
                        pass
        except DictateError as error:
            fault = str(error)
        self._muting.finish()
        self._close()
        self._events.put(Ended(fault))

    def _take(self, pcm: bytes) -> None:
        start_s, self._taken_at = self.now_s, self._now()
        self.sound.add(pcm)
        self.taking.set()
        if bool(self.sound.fault) != self._faulty:
            self._faulty = bool(self.sound.fault)
            self._events.put(
                Notice(
                    f"the sound cannot be written ({self.sound.fault}): it is held in memory, make room now"
                    if self._faulty
                    else "the sound is on the disk again"
                )
            )
        wrong = self.level.add(pcm)
        if wrong:
            self._events.put(Notice(wrong))
        self._ear.add(self._muting.clean(pcm, start_s=start_s))

    def _trouble(self, trouble: Trouble) -> None:
        self._events.put(Notice(trouble.text))
        if trouble.gap:
            self._events.put(Gap(max(0.0, self._now() - self._taken_at)))
            self._before += self.sound.samples
            self._close()
            try:
                self.sound = self._open(self._next_piece())
            except DictateError as fault:
                self._events.put(Notice(str(fault)))
                raise

    def _close(self) -> None:
        if not self.sound.close():
            self.unsaved.append(self.sound)
