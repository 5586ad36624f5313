"""The recogniser in a process of its own: it may die or fall behind, and the recording does not notice."""

from __future__ import annotations

import contextlib
import multiprocessing
import queue
import signal
import threading
from collections import deque
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from pathlib import Path
from typing import TYPE_CHECKING, Any

from dictate.errors import DictateError, MachineError
from dictate.live.recogniser import (
    BYTES_PER_SAMPLE,
    RATE_HZ,
    Answer,
    Failed,
    Finished,
    Heard,
    Knows,
    More,
    Weigh,
    Whole,
    hear_for,
)
from dictate.model import Hints

if TYPE_CHECKING:
    from dictate.hearing.hear import Listener

STEP_S = 0.1  # how often the recogniser asks for more sound
MOST_BYTES = 30 * RATE_HZ * BYTES_PER_SAMPLE  # handed over at once
MOST_DEATHS = 3  # in a row, without a phrase heard in between
HUNG_S = 60.0  # a phrase takes a second; a recogniser that says nothing for so long is started anew
WHOLE_TIMES = 5.0  # a whole recording may take so many times its length more


@dataclass(frozen=True)
class Died:
    """The recogniser ended by itself; it is started anew unless `for_good`."""

    reason: str
    for_good: bool = False


class _Hung(Exception):
    """The recogniser says nothing."""

    def __str__(self) -> str:
        return "the recogniser hung"


class Ear:
    """Hands sound to the recogniser's process and its answers to `events`; starts it anew when it dies."""

    def __init__(
        self, make: Callable[[], Listener], hints: Hints, events: queue.SimpleQueue[Any], *, first: int = 0,
        orders: Sequence[str] = (),
    ) -> None:  # fmt: skip
        self._make, self._hints, self._events, self._orders = make, hints, events, tuple(orders)
        self._sound: deque[tuple[int, bytes]] = deque()  # (first sample, sound) not heard to the end yet
        self._end = self._done = first
        self._more = threading.Condition()
        self._closing = self._ended = self._finished = self._lost = False
        self._whole: Path | None = None
        self._question: Weigh | Knows | None = None
        self._patience_s: float | None = None  # that it may say nothing; None: as long as it takes
        self._answers: queue.SimpleQueue[Answer] = queue.SimpleQueue()
        self._one_question = threading.Lock()
        self.process: BaseProcess | None = None
        self._thread = threading.Thread(target=self._serve, name="ear", daemon=True)
        self._thread.start()

    @property
    def behind_s(self) -> float:
        """Seconds of sound that were not heard yet."""
        return (self._end - self._done) / RATE_HZ

    def add(self, pcm: bytes) -> None:
        """More sound; returns at once."""
        with self._more:
            self._sound.append((self._end, pcm))
            self._end += len(pcm) // BYTES_PER_SAMPLE
            self._more.notify()

    def end(self) -> None:
        """No more sound will come: hear what is left, then say Finished."""
        with self._more:
            self._ended = True
            self._more.notify()

    def whole(self, path: Path) -> None:
        """After Finished: hear a whole recording; the answer is Whole or Failed."""
        with self._more:
            self._whole = path
            self._more.notify()

    def ask(self, question: Weigh | Knows) -> Answer:
        """Wait for an answer, given when no phrase is held up by it; an empty one when there is nobody to ask."""
        with self._one_question:
            with self._more:
                while not self._answers.empty():
                    self._answers.get()
                self._question = question
                self._more.notify()
            while not self._lost:
                with contextlib.suppress(queue.Empty):
                    answer = self._answers.get(timeout=STEP_S)
                    if answer.to in (question, None):  # any other is of a recogniser that died
                        return answer
            return Answer()

    def close(self) -> None:
        """Let the recogniser go."""
        with self._more:
            self._closing = True
            self._more.notify()
        if self.process is not None and self.process.pid is not None:
            self.process.terminate()
            self.process.join(2)
            self.process.kill()  # one that hangs does not hear the first
        self._thread.join(5)

    def _serve(self) -> None:
        try:
            self._live_on()
        finally:
            self._lost = True
            self._answers.put(Answer())

    def _live_on(self) -> None:
        if hasattr(signal, "pthread_sigmask"):  # Ctrl-C ends the dictation, not the recogniser under it
            signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
        deaths, reached = 0, self._done
        while not self._closing:
            try:
                self._one_life()
                return
            except (EOFError, OSError, _Hung) as fault:
                deaths = deaths + 1 if self._done == reached else 1
                reached = self._done
                said = str(fault) if isinstance(fault, _Hung) else "the recogniser ended by itself"
                if not self._closing:
                    self._events.put(Died(said, for_good=deaths >= MOST_DEATHS))
                if deaths >= MOST_DEATHS:
                    return
            except MachineError as fault:
                self._events.put(Died(str(fault), for_good=True))
                return

    def _one_life(self) -> None:
        """Start a process and answer its questions until it dies or is let go."""
        context = multiprocessing.get_context("spawn")
        here, there = context.Pipe()
        life = (there, self._make, self._hints, self._done, self._orders)
        process = context.Process(target=hear_for, args=life, daemon=True)
        process.start()
        self.process, self._patience_s = process, None  # a model may have to be fetched first
        there.close()
        given = self._done
        try:
            while not self._closing:
                message = self._next(here)
                if isinstance(message, More):
                    self._forget(message.first)
                    given = self._answer(here, given, pressing=message.pressing)
                elif isinstance(message, DictateError):
                    raise message
                elif isinstance(message, Answer):
                    self._question = None
                    self._answers.put(message)
                else:
                    self._note(message)
                    self._events.put(message)
            with contextlib.suppress(OSError):
                here.send(None)
        except _Hung:
            process.kill()
            raise
        finally:
            self._question = None
            self._answers.put(Answer())  # whoever asked need not wait for the next life
            here.close()
            process.join(2)
            if process.is_alive():
                process.kill()
            process.join()

    def _forget(self, sample: int) -> None:
        with self._more:
            self._done = max(self._done, min(sample, self._end))
            while self._sound and self._sound[0][0] + len(self._sound[0][1]) // BYTES_PER_SAMPLE <= self._done:
                self._sound.popleft()

    def _next(self, here: Connection) -> Any:
        """What the recogniser says next. Raises: _Hung when it says nothing for too long."""
        if self._patience_s is not None and not here.poll(self._patience_s):
            raise _Hung
        return here.recv()

    def _answer(self, here: Connection, given: int, *, pressing: bool) -> int:
        """Send what came after sample `given`; wait for it when nothing did. A question waits for sound and phrases."""
        with self._more:
            least = int(STEP_S * RATE_HZ)
            self._more.wait_for(lambda: self._closing or self._due(pressing) or self._end - given >= least)
            asked = None if pressing or self._whole or self._end - given >= least else self._question
            pcm = b"" if asked else self._after(given)
            reached = given + len(pcm) // BYTES_PER_SAMPLE
            last = self._ended and reached == self._end
        self._patience_s = HUNG_S
        if self._closing:
            here.send(None)
        elif asked is not None:
            here.send(asked)
        elif self._finished and self._whole is not None:
            self._patience_s += WHOLE_TIMES * self._whole.stat().st_size / (RATE_HZ * BYTES_PER_SAMPLE)
            here.send(self._whole)
        else:
            here.send((pcm, last))
        return reached

    def _due(self, pressing: bool) -> bool:
        """Whether there is something to be done without more sound."""
        if self._question is not None and not pressing:
            return True
        return self._whole is not None if self._finished else self._ended

    def _note(self, message: object) -> None:
        """What an answer changes here."""
        if isinstance(message, Heard):
            self._forget(message.done)
        elif isinstance(message, Finished):
            self._finished = True
            self._forget(self._end)
        elif isinstance(message, Whole | Failed):
            self._whole = None

    def _after(self, sample: int) -> bytes:
        parts, size = [], 0
        for first, pcm in self._sound:
            skip = max(0, sample - first) * BYTES_PER_SAMPLE
            if skip < len(pcm):
                parts.append(pcm[skip:])
                size += len(parts[-1])
            if size >= MOST_BYTES:
                break
        return b"".join(parts)
