"""What travels between a batch and its workers: Candidate, Job, Setting, Outcome."""

from __future__ import annotations

import hashlib
import json
import re
import uuid
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from typing import TYPE_CHECKING

from dictate.model import Conventions, Examination, ModelIdentity
from dictate.model.base import Frozen

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.pipeline import Hearer

Render = Callable[["Examination", "Grammar"], bytes]
LONGEST_STEM = 60  # of a result's name
CODE_DIGITS = 12  # of the digest that keeps two sources apart: one clash in ten thousand million pairs of one name


@dataclass(frozen=True)
class Place:
    """One file as it was seen: a path of this machine or a URL, its bytes, and a mark that changes with its content."""

    path: str
    size: int
    stamp: str


@dataclass(frozen=True)
class Candidate:
    """One examination that was found: its files in order of dictation. fault: why it cannot be taken."""

    source: str  # path below the folder, printable
    places: tuple[Place, ...]
    fault: str = ""

    @property
    def name(self) -> str:
        """First part of its result files' names: the source's own name, and a code that two sources never share."""
        code = hashlib.sha256(self.source.encode()).hexdigest()[:CODE_DIGITS]
        last = self.source.rstrip("/").rpartition("/")[2]
        stem = re.sub(r"[^\w.-]+", "-", re.sub(r"\.\w{1,5}$", "", last)).strip("-.")[:LONGEST_STEM]
        return f"{stem or 'dictation'}-{code}"

    @property
    def size(self) -> int:
        """Bytes of all its files."""
        return sum(place.size for place in self.places)


class Asked(Frozen):
    """What is asked of every examination of the batch; part of what decides whether one is done."""

    patient: str = ""
    examined_at: datetime | None = None
    age: float | None = None  # years
    height: float | None = None  # cm
    scope: str = ""
    brief: bool = False


@dataclass(frozen=True)
class Setting:
    """What a worker needs before its first job; given to every process once."""

    grammar: Grammar
    program: str  # version that the batch was started with
    asked: Asked
    conventions: Conventions
    make_engine: Callable[[], Hearer]
    further: dict[str, Render] = field(default_factory=dict)  # ending → what writes that file, beside the usual five
    run: str = field(default_factory=lambda: uuid.uuid4().hex)  # tells batches apart that a worker serves

    @property
    def key(self) -> str:
        """Digest of all but the engine."""
        said = (self.grammar.sha256, self.program, self.asked.model_dump_json(), self.conventions.model_dump_json())
        return hashlib.sha256(json.dumps(said).encode()).hexdigest()

    def key_of(self, contents: tuple[str, ...], model_sha256: str) -> str:
        """What must be the same for a finished examination not to be done again."""
        return hashlib.sha256(json.dumps([self.key, model_sha256, contents]).encode()).hexdigest()


@dataclass(frozen=True, repr=False)
class Job:
    """One examination for a worker. contents: digest or mark of each file. sent: their bytes, where sent along."""

    source: str
    name: str
    paths: tuple[str, ...]
    contents: tuple[str, ...]
    model_sha256: str = ""  # the model that the batch hears with; empty: only text
    sizes: tuple[int, ...] = ()  # bytes of each file as it was seen
    sent: tuple[bytes, ...] = ()

    def __repr__(self) -> str:
        """Nothing that names a source: schedulers write this into their logs."""
        return "Job"


@dataclass(frozen=True)
class Outcome:
    """What a worker made of a job: the texts of its files, and what batch.csv says of it."""

    files: dict[str, str | bytes] = field(default_factory=dict)  # ending → content
    findings: int = 0
    musts: int = 0
    looks: int = 0
    sound_s: float = 0.0
    seconds: float = 0.0
    model: ModelIdentity | None = None
    error: str = ""
    unseen: bool = False  # the worker cannot see the files: send them along


def printable(text: str) -> str:
    """A file's name without what no text file can hold."""
    return text.encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")
