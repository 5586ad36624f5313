"""What is done: one line per examination, appended when its files stand; a kill loses the last line at most."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import IO, Literal

from pydantic import ValidationError

from dictate.batch.found import LEDGER
from dictate.batch.jobs import Outcome
from dictate.errors import MachineError
from dictate.model import Examination
from dictate.model.base import Frozen

REVIEWED = "was reviewed since: its files stay as they are; move them elsewhere to have it read anew"
LOCK = ".batch.lock"
Write = Callable[[Path, Mapping[str, str | bytes]], None]  # folder, name → content; whole or not at all


class Entry(Frozen):
    """One examination of the batch, as batch.csv shows it."""

    source: str
    name: str
    key: str  # digest of contents, grammar, model, program and options
    state: Literal["done", "failed", "same"]
    contents: tuple[str, ...] = ()
    findings: int = 0
    musts: int = 0
    looks: int = 0
    sound_s: float = 0.0
    seconds: float = 0.0
    model: str = ""
    error: str = ""
    same_as: str = ""  # another source with the same recording
    record: str = ""  # key of the record that it was saved as
    revision: int = 0  # of that record
    kept: str = ""  # `key` of what was saved there; another than `key`: what is here still has to be saved

    def with_outcome(self, outcome: Outcome) -> Entry:
        """What the worker made of it."""
        return self.model_copy(
            update={
                "state": "failed" if outcome.error else "done",
                "findings": outcome.findings,
                "musts": outcome.musts,
                "looks": outcome.looks,
                "sound_s": round(outcome.sound_s, 3),
                "seconds": round(outcome.seconds, 3),
                "model": outcome.model.name if outcome.model else "",
                "error": outcome.error,
            }
        )


class Ledger:
    """The entries of one folder of results; one batch at a time holds it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.entries: dict[str, Entry] = {}  # by name
        self._file: IO[str] | None = None
        self._lock: IO[str] | None = None

    def __enter__(self) -> Ledger:
        """Take the folder, clear what a kill left, read what is done. Raises: MachineError."""
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            self._lock = _private(self.folder / LOCK)
            _hold(self._lock, self.folder)
            for left in self.folder.glob(".*.part"):  # of a batch that was killed while writing
                left.unlink()
            self._read()
            self._write_anew()
        except MachineError:
            self.__exit__()
            raise
        except OSError as fault:
            self.__exit__()
            reason = (fault.strerror or str(fault)).lower()
            raise MachineError(f"{self.folder}: cannot be used: {reason}: give another folder to --out") from fault
        return self

    def __exit__(self, *_: object) -> None:
        """Give the folder back."""
        for file in (self._file, self._lock):
            if file:
                file.close()

    def record(self, entry: Entry) -> None:
        """Keep an entry; on the disk when this returns. Raises: MachineError."""
        self.entries[entry.name] = entry
        if self._file is None:
            raise MachineError(f"{self.folder}: is not open")
        try:
            self._file.write(entry.model_dump_json() + "\n")
            self._file.flush()
            os.fsync(self._file.fileno())
        except OSError as fault:
            reason = (fault.strerror or str(fault)).lower()
            raise MachineError(f"{self.folder}: cannot be written: {reason}: make room and run again") from fault

    def is_done(self, name: str, key: str) -> bool:
        """Whether the same was asked of the same content before, and its note is still there."""
        entry = self.entries.get(name)
        return entry is not None and entry.state == "done" and entry.key == key and self.has_files(name)

    def has_files(self, name: str) -> bool:
        """Whether results of that name stand in the folder."""
        endings = ("note.txt", "exam.json", "findings.csv", "queries.csv", "transcript.json")
        return all((self.folder / f"{name}.{ending}").is_file() for ending in endings)

    def is_reviewed(self, name: str) -> bool:
        """Whether somebody decided something about the results of that name: nothing is written over it."""
        try:
            exam = Examination.model_validate_json((self.folder / f"{name}.exam.json").read_bytes())
        except (OSError, ValidationError):
            return False
        return bool(exam.decisions or exam.signed_by)

    def stands_for(self, name: str, contents: tuple[str, ...]) -> bool:
        """Whether the results of that name are of these contents, by whatever grammar, program or options."""
        entry = self.entries.get(name)
        return entry is not None and entry.state == "done" and entry.contents == contents and self.has_files(name)

    def forget_failed(self, sources: set[str]) -> None:
        """Drop failures of sources that are gone; what was done stays."""
        for name, entry in list(self.entries.items()):
            if entry.state != "done" and entry.source not in sources:
                del self.entries[name]

    def _read(self) -> None:
        with contextlib.suppress(FileNotFoundError):
            for line in (self.folder / LEDGER).read_text(encoding="utf-8", errors="replace").splitlines():
                with contextlib.suppress(ValidationError):  # the line that a kill cut off
                    entry = Entry.model_validate_json(line)
                    self.entries[entry.name] = entry

    def _write_anew(self) -> None:
        """One line per entry, without earlier ones and half ones; then ready to append."""
        new = self.folder / f"{LEDGER}.part"
        self._file = _private(new)
        self._file.writelines(entry.model_dump_json() + "\n" for entry in self.entries.values())
        self._file.flush()
        os.fsync(self._file.fileno())
        new.replace(self.folder / LEDGER)


def _private(path: Path) -> IO[str]:
    """An empty file of its owner alone, open for writing."""
    return open(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600), "w", encoding="utf-8")


def _hold(lock: IO[str], folder: Path) -> None:
    """One batch per folder; the lock goes with the process, however it ends."""
    try:
        import fcntl
    except ModuleNotFoundError:  # a system without such locks
        return
    try:
        fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError as fault:
        raise MachineError(f"{folder}: another batch writes there: wait for it, or give another --out") from fault
