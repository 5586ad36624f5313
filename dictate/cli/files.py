"""Result files written whole or not at all, readable by their owner alone."""

from __future__ import annotations

import contextlib
import functools
import os
import re
import tempfile
import time
from collections.abc import Iterator, Mapping
from pathlib import Path

from dictate.errors import InputError, MachineError

MODE = 0o600
ASIDE = ".dictate-"  # a file that is being written begins so
PART = ".part"
LEFT_OVER_S = 3600.0  # no writing takes as long: what is older was left by a crash
LONGEST_NAME = 80  # of a file's first part; file systems end at 255 bytes
FALLBACK_NAME = "dictation"


def file_name(wanted: str) -> str:
    """A reference or a source's name as the first part of a file name."""
    name = re.sub(r"[^\w.-]+", "-", wanted).strip("-.")[:LONGEST_NAME]
    return name or FALLBACK_NAME


def write_files(folder: Path, files: Mapping[str, str | bytes]) -> None:
    """Write all files under temporary names, then rename them; what stood there before stays until then.

    Raises: MachineError when the folder or a file cannot be written; nothing new is left then.
    """
    with _all_or_nothing(folder, "folder") as written:
        folder.mkdir(parents=True, exist_ok=True)
        _clear_left_over(folder)
        for name, content in files.items():
            binary = content.encode("utf-8") if isinstance(content, str) else content
            _write_aside(folder, folder / name, binary, written)


def write_file(target: Path, content: bytes) -> None:
    """Write one file the same way. Raises: MachineError when it cannot be written."""
    with _all_or_nothing(target, "name") as written:
        _write_aside(target.parent, target, content, written)


def must_begin_so(path: Path, start: str) -> None:
    """Raises: InputError when a file is there that does not begin as this program's does: it is somebody else's."""
    try:
        with path.open(encoding="utf-8", errors="replace") as file:
            foreign = file.read(len(start)) not in ("", start)
    except OSError:
        return  # not there; what cannot be read is said when it is written
    if foreign:
        raise InputError(f"{path}: is no result of a batch: move it, or name another folder")


@contextlib.contextmanager
def _all_or_nothing(place: Path, instead: str) -> Iterator[dict[Path, Path]]:
    """Temporary file → its target: renamed when all are written, gone when one cannot be. Raises: MachineError."""
    written: dict[Path, Path] = {}
    try:
        yield written
        for aside, target in written.items():
            aside.replace(target)
    except OSError as fault:
        for aside in written:
            with contextlib.suppress(OSError):
                aside.unlink()
        reason = (fault.strerror or str(fault)).lower()
        raise MachineError(
            f"{place}: cannot be written: {reason}: make room, or give another {instead} to --out"
        ) from fault


@functools.cache  # once a process: a batch writes thousands of times into one folder
def _clear_left_over(folder: Path) -> None:
    """Remove what a crash left half written: it holds an examination as much as the file it was to become."""
    for path in folder.glob(f"{ASIDE}*{PART}"):
        with contextlib.suppress(OSError):
            if time.time() - path.stat().st_mtime > LEFT_OVER_S:
                path.unlink()


def _write_aside(folder: Path, target: Path, content: bytes, written: dict[Path, Path]) -> None:
    handle, name = tempfile.mkstemp(prefix=ASIDE, suffix=PART, dir=folder)  # mode 0600 from the start
    written[Path(name)] = target
    with open(handle, "wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
