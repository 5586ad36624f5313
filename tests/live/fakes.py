"""Sentences as beeps, and an engine that knows which beep is which sentence: a whole session without a model."""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import numpy.typing as npt

from dictate.errors import MachineError
from dictate.hearing.audio import RATE_HZ
from dictate.hearing.chunks import Span
from dictate.hearing.engine import Decoded, Timed
from dictate.model import ModelIdentity

Sound = npt.NDArray[np.float32]
FIRST_HZ, STEP_HZ = 400, 40
PAUSE_S = 0.6
LOUD = 0.3
HUSH = 0.02
FRAME = RATE_HZ // 100


def spoken(sentences: Sequence[str], known: Sequence[str], *, pause_s: float = PAUSE_S) -> Sound:
    """The sentences as beeps with pauses between, before and behind."""
    parts = [np.zeros(int(pause_s * RATE_HZ), np.float32)]
    for sentence in sentences:
        seconds = max(0.6, len(sentence.split()) / 3.5)
        at = np.arange(int(seconds * RATE_HZ)) / RATE_HZ
        parts.append((LOUD * np.sin(2 * np.pi * (FIRST_HZ + STEP_HZ * known.index(sentence)) * at)).astype(np.float32))
        parts.append(np.zeros(int(pause_s * RATE_HZ), np.float32))
    return np.concatenate(parts)


@dataclass(frozen=True)
class BeepMaker:
    """Makes the engine in the other process; `die_at`: a sentence at which it dies once, `mark` remembers that."""

    known: tuple[str, ...]
    die_at: str = ""
    mark: str = ""
    missing: bool = False

    def __call__(self) -> BeepEngine:
        if self.missing:
            raise MachineError("model none: is not on this machine: install one")
        return BeepEngine(self.known, self.die_at, self.mark)


class BeepEngine:
    """Hears the sentence that belongs to a beep's pitch."""

    knows_trade = True
    identity = ModelIdentity(name="beeps", sha256="0" * 64)

    def __init__(self, known: Sequence[str], die_at: str = "", mark: str = "") -> None:
        self.known, self.die_at, self.mark = known, die_at, mark
        self.kept: set[str] = set()

    def spans(self, samples: Sound, *, silence_ms: int = 0) -> list[Span]:
        """Where it is loud, if for a tenth of a second."""
        frames = len(samples) // FRAME
        loud = np.abs(samples[: frames * FRAME]).reshape(frames, FRAME).max(axis=1, initial=0) > HUSH
        edges = np.flatnonzero(np.diff(np.concatenate(([0], loud.astype(int), [0]))))
        found = [Span(int(a) * FRAME, int(b) * FRAME) for a, b in zip(edges[::2], edges[1::2], strict=True)]
        return [span for span in found if span.end - span.start >= RATE_HZ // 10]

    def encode(self, samples: Sound, *, window_s: int | None = None) -> Sound:
        """Number, start and end of each sentence in the chunk."""
        rows = []
        for span in self.spans(samples):
            piece = samples[span.start : span.end].astype(np.float64)
            hz = np.argmax(np.abs(np.fft.rfft(piece))) * RATE_HZ / len(piece)
            number = round((hz - FIRST_HZ) / STEP_HZ)
            if 0 <= number < len(self.known):
                rows.append((number, span.start / RATE_HZ, span.end / RATE_HZ))
        return np.array(rows, np.float32).reshape(-1, 3)

    def keep(self, sha256: str, views: object) -> None:
        """What can be weighed."""
        self.kept.add(sha256)

    def weigh(self, sha256: str, start_s: float, end_s: float, texts: Sequence[str]) -> list[float]:
        """The first text a little better than the rest: all are in doubt."""
        return [-1.0 - 0.01 * at for at, _ in enumerate(texts)] if sha256 in self.kept else []

    def knows(self, word: str) -> bool:
        """Every word."""
        return True

    def forget(self) -> None:
        """Nothing was kept."""

    def language(self, view: object) -> tuple[str, float]:
        """Always the same."""
        return "en", 1.0

    def prompt(self, terms: Sequence[str], *, fill: Sequence[str] = (), length: int | None = None) -> list[int]:
        """Nothing to expect."""
        return []

    def decode(self, encoded: Sequence[Sound], prompts: Sequence[list[int]], *, beam: int = 5) -> list[Decoded]:
        """Sentences by their numbers."""
        texts = [" ".join(self.known[int(number)] for number, _, _ in view) for view in encoded]
        if self.die_at and any(self.die_at in text for text in texts) and not Path(self.mark).exists():
            Path(self.mark).touch()
            os._exit(9)
        return [Decoded(text, tuple(range(len(text.split()))), -0.1, 0.0) for text in texts]

    def align(
        self, encoded: Sequence[Sound], decoded: Sequence[Decoded], seconds: Sequence[float]
    ) -> list[list[Timed]]:
        """Words of a sentence evenly from start to end of its beep."""
        return [[word for row in view for word in self._timed(*row)] for view in encoded]

    def _timed(self, number: float, start_s: float, end_s: float) -> list[Timed]:
        words = self.known[int(number)].split()
        step = (end_s - start_s) / len(words)
        return [Timed(f" {w}", start_s + at * step, start_s + (at + 1) * step, 0.9) for at, w in enumerate(words)]


class Lines:
    """A screen that remembers its lines."""

    def __init__(self) -> None:
        self.lines: list[str] = []
        self.views: list[object] = []

    def line(self, text: str) -> None:
        self.lines.append(text)

    def show(self, view: object) -> None:
        self.views = [view]

    def close(self) -> None:
        self.lines.append("closed")

    @property
    def text(self) -> str:
        return "\n".join(self.lines)
