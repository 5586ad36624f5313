"""The folder of the records: its owner's alone, its files written whole, what a crash left behind put right."""

from __future__ import annotations

import contextlib
import hashlib
import os
import stat
from collections.abc import Iterable
from pathlib import Path

from dictate.errors import InputError, MachineError

DATABASE = "records.db"
SOUNDS = "sounds"
HEAD_FILE = "head"
PART = ".part"
FOLDER_MODE = 0o700
FILE_MODE = 0o600


def prepare(folder: Path) -> Path:
    """Make the folder (0700), its subfolder and the database file (0600); return the database's path.

    Raises: MachineError when it belongs to somebody else, is open to others and holds other files, or cannot be made.
    """
    try:
        _own(folder)
        sounds = folder / SOUNDS
        sounds.mkdir(mode=FOLDER_MODE, exist_ok=True)
        path = folder / DATABASE
        os.close(os.open(path, os.O_CREAT | os.O_RDWR, FILE_MODE))
        if stat.S_IMODE(path.stat().st_mode) & ~FILE_MODE:  # a back-up put back; SQLite's own files take this mode
            path.chmod(FILE_MODE)
    except OSError as fault:
        reason = (fault.strerror or str(fault)).lower()
        if fault.filename is not None and Path(fault.filename) in (folder / DATABASE, folder / SOUNDS):
            raise MachineError(f"{fault.filename}: cannot be used: {reason}: check its permissions") from fault
        raise MachineError(f"{folder}: the records cannot be kept there: {reason}: name another folder") from fault
    return path


def _own(folder: Path) -> None:
    if not folder.exists():
        folder.parent.mkdir(parents=True, exist_ok=True)
        folder.mkdir(mode=FOLDER_MODE, exist_ok=True)
    state = folder.stat()
    if hasattr(os, "geteuid") and state.st_uid != os.geteuid():
        raise MachineError(f"{folder}: belongs to another user of the machine: name a folder of your own")
    if stat.S_IMODE(state.st_mode) & ~FOLDER_MODE:
        if not (folder / DATABASE).exists() and any(folder.iterdir()):
            raise MachineError(f"{folder}: is open to others and holds other files: name a folder for records only")
        folder.chmod(FOLDER_MODE)


def write_whole(path: Path, content: bytes) -> None:
    """Write under a temporary name, to the disk, then rename."""
    aside = path.with_name(f"{path.name}.{os.getpid()}{PART}")
    _write(aside, content)
    aside.replace(path)
    _settle(path.parent)


def read_heads(folder: Path) -> list[str]:
    """Seal of the newest revision that was acknowledged, then those that went missing; empty when none is known."""
    with contextlib.suppress(OSError, UnicodeDecodeError):
        return (folder / HEAD_FILE).read_text(encoding="ascii").split()
    return []


def write_heads(folder: Path, newest: str, missing: Iterable[str]) -> None:
    """Remember the newest seal beside the database; after the commit, so that it is never ahead of it.

    missing: those that were remembered and are in the chain no more; a further saving must not hide that.
    """
    with contextlib.suppress(OSError):  # the records are saved; only a help to verify is not
        write_whole(folder / HEAD_FILE, "".join(f"{seal}\n" for seal in (newest, *missing)).encode())


def write_sound(folder: Path, name: str, content: bytes) -> None:
    """A recording under its temporary name; `keep_sounds` names it for good once the revision is saved."""
    _write(folder / SOUNDS / (name + PART), content)
    _settle(folder / SOUNDS)


def keep_sounds(folder: Path, names: Iterable[str]) -> None:
    """Give recordings of a saved revision their name."""
    for name in names:
        with contextlib.suppress(FileNotFoundError):  # another window, opening just now, has done it
            (folder / SOUNDS / (name + PART)).replace(folder / SOUNDS / name)


def drop_sounds(folder: Path, names: Iterable[str]) -> None:
    """Remove recordings that were erased, or whose revision was never saved."""
    for name in names:
        for path in (folder / SOUNDS / name, folder / SOUNDS / (name + PART)):
            path.unlink(missing_ok=True)


def sound_file(folder: Path, name: str) -> Path | None:
    """Where a recording lies; None: it is gone."""
    for path in (folder / SOUNDS / name, folder / SOUNDS / (name + PART)):
        if path.is_file():
            return path
    return None


def tidy(folder: Path, *, live: Iterable[str], erased: Iterable[str]) -> None:
    """Put right what a crash left; call it while nobody can be writing.

    Recordings of saved revisions get their name, those of revisions never saved and erased ones go.
    """
    keep_sounds(folder, live)
    drop_sounds(folder, erased)
    for part in (*folder.glob(f"*{PART}"), *(folder / SOUNDS).glob(f"*{PART}")):
        part.unlink(missing_ok=True)


def strays(folder: Path, known: Iterable[str]) -> list[str]:
    """Files among the recordings that no revision names."""
    named = set(known)
    return sorted(path.name for path in (folder / SOUNDS).iterdir() if path.name.removesuffix(PART) not in named)


def read_recording(path: Path) -> tuple[str, bytes]:
    """SHA-256 and bytes of a recording. Raises: InputError."""
    try:
        content = path.read_bytes()
    except OSError as fault:
        reason = (fault.strerror or str(fault)).lower()
        raise InputError(f"{path}: cannot be read: {reason}: nothing was saved") from fault
    return hashlib.sha256(content).hexdigest(), content


def _write(path: Path, content: bytes) -> None:
    handle = os.open(path, os.O_CREAT | os.O_WRONLY | os.O_TRUNC, FILE_MODE)
    with open(handle, "wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _settle(folder: Path) -> None:
    """Have the names of a folder on the disk, too, where the system can."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
