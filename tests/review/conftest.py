"""Examinations of typed or timed words, as the pipeline gives them."""

from __future__ import annotations

import functools
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from dictate.errors import MovedOn
from dictate.grammar import Grammar
from dictate.model import Decision, Examination, Finding, Source, Stretch, Transcript, Word
from dictate.pipeline import examine_transcript
from dictate.reading import transcript_of_text
from dictate.review import apply, in_order
from dictate.review.sitting import Sitting

WORD_S = 0.5  # a word's length where a test gives the words times
Exam = Callable[..., Examination]
Answer = Callable[..., Examination]


def timed(
    text: str, *, name: str = "visit.wav", sha256: str = "0" * 64, silent: tuple[Stretch, ...] = ()
) -> Transcript:
    """Words as a recogniser gives them, half a second each."""
    words = tuple(Word(text=word, start_s=at * WORD_S, end_s=(at + 1) * WORD_S) for at, word in enumerate(text.split()))
    source = Source(name=name, kind="recording", sha256=sha256, duration_s=len(words) * WORD_S)
    return Transcript(words=words, sources=(source,), untranscribed=silent)


@pytest.fixture(scope="session")
def exam(grammar: Grammar) -> Exam:
    """Text → examination; heard=True gives its words times."""

    @functools.cache  # examinations are frozen
    def read(text: str, *, heard: bool = False, silent: tuple[Stretch, ...] = (), **more: Any) -> Examination:
        transcript = timed(text, silent=silent) if heard or silent else transcript_of_text(text)
        return examine_transcript(transcript, grammar=grammar, **more)

    return read


@pytest.fixture(scope="session")
def answer(grammar: Grammar) -> Answer:
    """Answer the first open query of a code."""

    def give(exam: Examination, code: str, answer: str = "", **more: Any) -> Examination:
        at = next(at for at in in_order(exam) if exam.queries[at].code == code)
        return apply(exam, Decision(query=at, answer=answer, **more), grammar)

    return give


@pytest.fixture(scope="session")
def codes() -> Callable[[Examination], list[str]]:
    """Codes of the open queries, the most dangerous first, without the one about the time of examination."""
    return lambda exam: [
        exam.queries[at].code
        for at in in_order(exam)
        if exam.queries[at].code != "time-missing" or exam.queries[at].findings
    ]


@pytest.fixture(scope="session")
def rows() -> Callable[[Examination], list[str]]:
    """Each finding in one line: item, side, site, position, minutes, status, value, unit."""
    return lambda exam: [_row(finding) for finding in exam.findings]


def _row(one: Finding) -> str:
    minutes = "" if one.minutes is None else f"{one.minutes:g}min"
    value = "" if one.value is None else str(one.value)
    parts = (one.item, one.side, one.site, one.position, minutes, one.status, value, one.unit)
    return " ".join(str(part) for part in parts if part)


class MemoryShelf:
    """A record in memory, as the records room will have one; it counts what is kept."""

    name = "the record"

    def __init__(self, exam: Examination, *, sound: Path | None = None) -> None:
        self.exam, self.sound = exam, sound
        self.saved: list[tuple[str, str]] = []
        self.moved = False

    def open(self) -> Examination:
        """As it stands."""
        return self.exam

    def save(self, exam: Examination, *, who: str, why: str) -> None:
        """Keep it, unless it moved on."""
        if self.moved:
            raise MovedOn(self.name)
        self.exam = exam
        self.saved.append((who, why))

    def audio(self, source: int) -> Path | None:
        """The one recording."""
        return self.sound if source == 0 else None

    def moved_on(self) -> bool:
        """Whether somebody else changed it."""
        return self.moved


class SigningShelf(MemoryShelf):
    """One that can close a note."""

    state = "draft"
    printed = ""

    def sign(self, exam: Examination, *, who: str, countersign: str = "") -> None:
        """Close it."""
        self.exam = exam.model_copy(update={"signed_by": who, "countersigned_by": countersign})
        self.state, self.printed = "signed", f"Signed by {who}, countersigned by {countersign}\n"

    def text(self) -> str:
        """What was signed and added."""
        return self.printed

    def countersign(self, *, who: str) -> None:
        """A second name."""
        self.exam = self.exam.model_copy(update={"countersigned_by": who})
        self.printed = f"{self.printed}COUNTERSIGNED by {who}\n"

    def amend(self, text: str, *, who: str, why: str) -> None:
        """Add to it, unless it moved on."""
        if self.moved:
            raise MovedOn(self.name)
        self.state, self.printed = "amended", f"{self.printed}{who} ({why}): {text}\n"

    def withdraw(self, *, who: str, why: str) -> None:
        """Entered in error."""
        self.state, self.printed = "withdrawn", f"WITHDRAWN by {who} ({why})\n{self.printed}"


@pytest.fixture
def sitting_of(exam: Exam, grammar: Grammar, tmp_path: Path) -> Callable[..., Sitting]:
    """Text → a sitting over it, with a clock that stands still."""

    def open_sitting(text: str, *, signing: bool = False, sound: Path | None = None, **more: Any) -> Sitting:
        kind = SigningShelf if signing else MemoryShelf
        moment = datetime(2026, 3, 4, 14, 30, tzinfo=UTC)
        return Sitting(
            kind(exam(text, **more), sound=sound), grammar, who="Dr A", now=lambda: moment, own_folder=tmp_path / "own"
        )

    return open_sitting
