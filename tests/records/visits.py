"""Examinations and recordings to be kept, and ways to change what was kept behind the program's back."""

from __future__ import annotations

import contextlib
import hashlib
import sqlite3
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

from by_hand import examination, finding, query, reflex

from dictate.model import Component, Examination, Severity, Side, Source, Status, Transcript, Word
from dictate.records import Records, Stored
from dictate.records.migrations import GUARDS
from dictate.records.place import DATABASE

START = datetime.fromisoformat("2026-03-04T14:00:00+01:00")
BY = "A. Examiner"


def visit(patient: str = "P-1", **more: object) -> Examination:
    """A small examination."""
    gait = finding(Component.COORDINATION_GAIT, "gait", Status.NORMAL)
    return examination(reflex("reflex_biceps", "3+", side=Side.LEFT), gait, patient=patient, **more)


def doubtful(*severities: Severity, **more: object) -> Examination:
    """An examination with open queries."""
    queries = tuple(query(message=f"doubt {n}?", severity=one) for n, one in enumerate(severities, 1))
    return visit(queries=queries, **more)


def recording(folder: Path, name: str = "visit.flac", content: bytes = b"a recording" * 50) -> Path:
    """A file that is taken for a recording: the records never listen to it."""
    path = folder / name
    path.write_bytes(content)
    return path


def heard(*paths: Path, patient: str = "P-1") -> Examination:
    """An examination that was dictated in these recordings."""
    sources = tuple(
        Source(name=path.name, kind="recording", sha256=hashlib.sha256(path.read_bytes()).hexdigest()) for path in paths
    )
    return visit(patient, transcript=Transcript(words=(Word(text="as"), Word(text="said")), sources=sources))


def note_of(exam: Examination) -> str:
    """A note that shows who signed."""
    return f"Signed by {exam.signed_by}\n{len(exam.findings)} findings of {exam.patient}\n"


def signed(records: Records, **more: object) -> Stored:
    """A record that was saved and signed."""
    one = records.save(visit(**more), who=BY, why="dictated")  # type: ignore[arg-type]
    return records.sign(one.key, by=BY, note=note_of)


@contextlib.contextmanager
def tampering(folder: Path) -> Iterator[sqlite3.Connection]:
    """Somebody with another program: the guards are taken off, and put back afterwards."""
    with contextlib.closing(sqlite3.connect(folder / DATABASE, isolation_level=None)) as db:
        for name in GUARDS:
            db.execute(f"DROP TRIGGER IF EXISTS {name}")
        yield db
        for guard in GUARDS.values():
            db.execute(guard)


def everything(folder: Path) -> bytes:
    """All bytes of all files of the folder."""
    return b"".join(path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file())
