"""What a file holds: its digest, and whether it stood still while it was read."""

from __future__ import annotations

import hashlib
import os
import shutil
import stat
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from dictate.batch.found import URL, file_system
from dictate.batch.jobs import Place, printable
from dictate.errors import InputError
from dictate.settings import temporary_folder

CHANGED = "changed while it was read: run again when it is complete"


def content_of(place: Place) -> str:
    """SHA-256 of a file; of an address a mark made of it and of what its storage says, for nothing is fetched.

    Raises: InputError, one line, when it cannot be read.
    """
    if URL.match(place.path):
        return "mark:" + hashlib.sha256(f"{place.path}\0{place.stamp}".encode()).hexdigest()
    return digest_of(place.path)


def digest_of(path: str) -> str:
    """SHA-256 of a file of this machine. Raises: InputError."""
    name = printable(os.path.basename(path))
    try:
        if not stat.S_ISREG(os.stat(path).st_mode):
            raise InputError(f"{name}: not a regular file: name a recording")
        with open(path, "rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except FileNotFoundError as fault:
        raise InputError(f"{name}: no such file, or a link to nothing: check it") from fault
    except OSError as fault:
        raise InputError(f"{name}: cannot be read: {(fault.strerror or str(fault)).lower()}") from fault


def bytes_of(path: str, size: int) -> bytes:
    """The whole of a file of this machine, or of an address. size: as it was seen. Raises: InputError."""
    if URL.match(path):
        with at_hand([path], (), [size]) as (fetched,):
            return fetched.read_bytes()
    try:
        return Path(path).read_bytes()
    except OSError as fault:
        raise InputError(f"{printable(Path(path).name)}: cannot be read: {(fault.strerror or '').lower()}") from fault


def standing(paths: Sequence[Path]) -> list[tuple[int, int, int]]:
    """How files of this machine stand: what changes when they are written to. Raises: InputError."""
    try:
        seen = [os.stat(path) for path in paths]
    except OSError as fault:
        raise InputError(f"{paths[0].name}: cannot be read: {(fault.strerror or str(fault)).lower()}") from fault
    return [(one.st_size, one.st_mtime_ns, one.st_ino) for one in seen]


def must_stand(paths: Sequence[Path], before: Sequence[tuple[int, int, int]]) -> None:
    """Raises: InputError when one was written to since."""
    for path, was, now in zip(paths, before, standing(paths), strict=True):
        if was != now:
            raise InputError(f"{path.name}: {CHANGED}")


@contextmanager
def at_hand(paths: Sequence[str], sent: Sequence[bytes], sizes: Sequence[int] = ()) -> Iterator[list[Path]]:
    """The files as paths that can be opened here: in place, fetched, or as they were sent along; removed afterwards.

    sizes: bytes of each as it was seen; what is fetched must have as many. Raises: InputError.
    """
    with temporary_folder() as folder:
        ready = []
        for number, path in enumerate(paths):
            clean = printable(os.path.basename(path.rstrip("/")))
            target = Path(folder) / str(number) / clean
            if sent:
                target.parent.mkdir()
                target.write_bytes(sent[number])
            elif URL.match(path):
                target.parent.mkdir()
                _fetch(path, target, sizes[number] if sizes else 0)
            elif clean != os.path.basename(path):  # a name that no text can hold
                target.parent.mkdir()
                target.symlink_to(os.path.abspath(path))
            else:
                target = Path(path)
            ready.append(target)
        yield ready


def _fetch(url: str, target: Path, size: int) -> None:
    files, path = file_system(url)
    try:
        with files.open(path, "rb") as there, target.open("wb") as here:
            shutil.copyfileobj(there, here, 1 << 20)
    except (OSError, ValueError) as fault:
        raise InputError(f"{target.name}: cannot be fetched: {str(fault)[:120]}") from fault
    if size and target.stat().st_size != size:  # a storage that tells no size says 0
        raise InputError(f"{target.name}: {CHANGED}")
