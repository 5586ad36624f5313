"""Shelf: where an examination under review is kept; FileShelf keeps it in an exam.json."""

from __future__ import annotations

import contextlib
import hashlib
import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Protocol, runtime_checkable

from pydantic import ValidationError

from dictate.errors import InputError, MovedOn
from dictate.grammar import Grammar
from dictate.model import Examination
from dictate.notes import FILES, write_note

ENDING = ".exam.json"
MOVED_ON = "{name}: was changed by another window or person: open it again; nothing was overwritten"
Write = Callable[[Path, Mapping[str, str]], None]  # folder, name → content: all of them or none


class Shelf(Protocol):
    """One record: opened, saved, and its sound."""

    name: str  # said in messages; never names a patient

    def open(self) -> Examination:
        """The examination as it stands there now. Raises InputError."""

    def save(self, exam: Examination, *, who: str, why: str) -> None:
        """Keep the examination. Raises MovedOn when the record changed since it was opened."""

    def audio(self, source: int) -> Path | bytes | None:
        """The recording of that source; None when it is not at hand."""

    def moved_on(self) -> bool:
        """Whether the record changed since it was opened or saved here."""


@runtime_checkable
class Signing(Protocol):
    """A shelf that can close a note, and add to a closed one."""

    state: str  # draft, signed, amended or withdrawn

    def sign(self, exam: Examination, *, who: str, countersign: str = "") -> None:
        """Sign the note. Raises DictateError while it cannot be signed."""

    def countersign(self, *, who: str) -> None:
        """Put a second name under the signed note. Raises DictateError."""

    def text(self) -> str:
        """The note as it was signed, with all that was added; empty for a draft."""

    def amend(self, text: str, *, who: str, why: str) -> None:
        """Add to the signed note. Raises DictateError."""

    def withdraw(self, *, who: str, why: str) -> None:
        """Mark the signed note as entered in error. Raises DictateError."""


class FileShelf:
    """An exam.json; saved whole or not at all, and the files that `--out` wrote beside it with it."""

    def __init__(
        self,
        path: Path,
        grammar: Grammar,
        *,
        write: Write,
        recordings: Sequence[Path] = (),
        fresh: Examination | None = None,
    ) -> None:
        """recordings: files or folders to look for the sound in. fresh: what to begin with where no file is yet."""
        self.path = path
        self.name = "the examination"
        self._grammar, self._write, self._fresh = grammar, write, fresh
        self._recordings = (*recordings, path.parent)
        self._digest: str | None = None
        self._sources: tuple[tuple[str, str], ...] = ()

    def open(self) -> Examination:
        """Read the file. Raises InputError when it is none."""
        if self._fresh is not None and not self.path.exists():
            exam = self._fresh
        else:
            content = _read(self.path)
            self._digest = hashlib.sha256(content).hexdigest()
            exam = read_examination(content, self.path.name)
        self._sources = tuple((one.name, one.sha256) for one in exam.transcript.sources if one.kind == "recording")
        self._kinds = tuple(one.kind for one in exam.transcript.sources)
        return exam

    def save(self, exam: Examination, *, who: str, why: str) -> None:
        """Write the file anew. Raises MovedOn, MachineError."""
        with _alone(self.path.parent):
            if self.moved_on():
                raise MovedOn(MOVED_ON.format(name=self.name))
            content = FILES["exam.json"](exam)
            first = self.path.name.removesuffix(ENDING)
            files = {self.path.name: content}
            if self.path.name.endswith(ENDING):
                beside = {f"{first}.{ending}": write for ending, write in FILES.items() if ending != "exam.json"}
                files |= {name: write(exam) for name, write in beside.items() if (self.path.parent / name).is_file()}
                note = f"{first}.note.txt"
                if (self.path.parent / note).is_file():
                    files[note] = write_note(exam, self._grammar)
            self._write(self.path.parent, files)
            self._digest = hashlib.sha256(content.encode()).hexdigest()

    def moved_on(self) -> bool:
        """Whether the file is another than the one opened or saved here."""
        if not self.path.exists():
            return self._digest is not None
        return hashlib.sha256(_read(self.path)).hexdigest() != self._digest

    def audio(self, source: int) -> Path | None:
        """A file with the source's name and its very bytes, among the recordings or beside the examination."""
        if not 0 <= source < len(self._kinds) or self._kinds[source] != "recording":
            return None
        name, sha256 = self._sources[self._kinds[:source].count("recording")]
        for place in self._recordings:
            path = place / Path(name).name if place.is_dir() else place
            with contextlib.suppress(OSError):
                if path.is_file() and _digest(path) == sha256:
                    return path
        return None


def read_examination(content: bytes, name: str) -> Examination:
    """An examination from its JSON. Raises InputError."""
    try:
        return Examination.model_validate_json(content)
    except ValidationError as fault:
        first = fault.errors()[0]
        where = ".".join(map(str, first["loc"])) or "the file"
        raise InputError(f"{name}: is no examination this version can open: {where}: {first['msg'].lower()}") from fault


def _read(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except FileNotFoundError as fault:
        raise InputError(f"{path}: no such record: check the name") from fault
    except OSError as fault:
        reason = (fault.strerror or str(fault)).lower()
        raise InputError(f"{path}: cannot be read: {reason}: check its permissions") from fault


def _digest(path: Path) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


@contextlib.contextmanager
def _alone(folder: Path) -> Iterator[None]:
    """Two programs that save at once do so one after the other."""
    try:
        import fcntl
    except ImportError:  # no such locks on this system: the check before saving remains
        yield
        return
    if not folder.is_dir():
        yield
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)
