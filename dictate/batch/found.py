"""FOLDER → candidates: which files are dictations, what belongs together, what cannot be read."""

from __future__ import annotations

import os
import re
import stat
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from fnmatch import fnmatch
from pathlib import Path
from typing import Any

from dictate.batch.jobs import Candidate, Job, Place, printable
from dictate.errors import InputError, MachineError

ENDINGS = (".wav", ".flac", ".mp3", ".m4a", ".aac", ".ogg", ".opus", ".webm", ".txt")
OWN = ".note.txt"  # a note that this program wrote is no dictation
LEDGER = ".batch.jsonl"  # a folder that holds one is the result of a batch
REPORT = "report.txt"
URL = re.compile(r"^[a-z][a-z0-9+.-]+://", re.IGNORECASE)


@dataclass
class Found:
    """What stands in the folder, in the order of names."""

    candidates: list[Candidate] = field(default_factory=list)
    others: int = 0  # files that are no dictation by their ending
    loops: int = 0  # folders reached a second time through a link
    results: int = 0  # folders passed over for the results of a batch in them, though they hold dictations


def find(
    folder: str, *, only: Sequence[str] = (), skip: Sequence[str] = (), together: bool = False, out: Path | None = None
) -> Found:
    """All dictations under a folder or URL; links are followed, each folder is entered once.

    only, skip: patterns of names or of paths below the folder. together: the files of a sub-folder are one examination.
    out: the folder of results, left aside, unless it is the folder itself. Raises: InputError, MachineError.
    """
    found = Found()
    listed = _of_url(folder) if URL.match(folder) else _of_folder(Path(folder), found, out)
    groups: dict[str, list[tuple[str, Place]]] = {}
    for below, place in listed:
        if place is None:
            found.candidates.append(Candidate(below, (), "folder cannot be read: check its permissions"))
        elif not _is_dictation(below):
            found.others += not below.endswith(OWN)
        elif _wanted(below, only, skip):
            parent = below.rpartition("/")[0] if together else ""
            groups.setdefault(parent + "/" if parent else below, []).append((below, place))
    for source, members in groups.items():
        ordered = sorted(members, key=lambda member: _natural(member[0]))
        found.candidates.append(Candidate(source, tuple(place for _, place in ordered)))
    found.candidates.sort(key=lambda candidate: _natural(candidate.source))
    return found


@dataclass
class Watched:
    """A folder that fills during the day: a file is taken when it stood unchanged from one look to the next."""

    look: Callable[[], Found]
    pause_s: float
    stopped: Callable[[], bool] = lambda: False
    clock: Callable[[], float] = time.monotonic

    def __iter__(self) -> Iterator[Candidate | None]:
        """Candidates as they settle; None when there is nothing at the moment."""
        before: dict[str, Candidate] = {}
        given: dict[str, Candidate] = {}
        due = self.clock()
        while not self.stopped():
            if self.clock() < due:
                yield None
                continue
            seen = {candidate.source: candidate for candidate in self.look().candidates}
            for source, candidate in seen.items():
                if candidate == before.get(source) and candidate != given.get(source):
                    given[source] = candidate
                    yield candidate
            before, due = seen, self.clock() + self.pause_s


def _of_folder(folder: Path, found: Found, out: Path | None) -> Iterator[tuple[str, Place | None]]:
    if not folder.is_dir():
        raise InputError(f"{folder}: no such folder: name a folder of recordings or transcripts")
    entered: set[tuple[int, int]] = set()
    aside = out.resolve() if out else None
    broken: list[str] = []
    for at, inner, names in os.walk(folder, followlinks=True, onerror=lambda fault: broken.append(fault.filename)):
        here = os.stat(at)
        again = (here.st_dev, here.st_ino) in entered
        holds_results = Path(at) != folder and (LEDGER in names or Path(at).resolve() == aside)
        if again or holds_results:
            found.loops += again
            found.results += not again and any(_is_dictation(name) and name != REPORT for name in names)
            inner.clear()
            continue
        entered.add((here.st_dev, here.st_ino))
        if LEDGER in names:  # somebody named it: what a batch wrote there is left out one by one
            names = [name for name in names if name != REPORT]
        inner[:] = sorted(name for name in inner if not name.startswith("."))
        for name in sorted(names):
            if not name.startswith("."):
                path = os.path.join(at, name)
                yield _below(path, folder), _place(path)
    yield from ((_below(path, folder) + "/", None) for path in broken)


def _below(path: str, folder: Path) -> str:
    return printable(os.path.relpath(path, folder).replace(os.sep, "/"))


def _place(path: str) -> Place:
    """As it stands; a file that cannot be asked has no size, and is said to be unreadable when it is taken."""
    try:
        seen = os.stat(path)
    except OSError:
        return Place(path, 0, "")
    return Place(path, seen.st_size if stat.S_ISREG(seen.st_mode) else 0, f"{seen.st_mtime_ns}-{seen.st_ino}")


def _of_url(url: str) -> Iterator[tuple[str, Place]]:
    """Files under an address, by fsspec: shared storage, object stores."""
    files, root = file_system(url)
    try:
        listed: dict[str, Any] = files.find(root, detail=True)
        for path in sorted(listed):
            stamp, size = str(files.ukey(path)), int(listed[path].get("size") or 0)
            yield path.removeprefix(root).lstrip("/"), Place(files.unstrip_protocol(path), size, stamp)
    except (OSError, ValueError) as fault:
        raise InputError(f"{url}: cannot be listed: {str(fault)[:120]}: check address and permissions") from fault


def of_address(job: Job) -> bool:
    """Whether its files stand at an address, and not in a folder."""
    return any(map(URL.match, job.paths))


def file_system(url: str) -> tuple[Any, str]:
    """The file system of an address, by fsspec, and the path in it. Raises: MachineError, InputError."""
    try:
        from fsspec.core import url_to_fs
    except ModuleNotFoundError as fault:
        raise MachineError('addresses need fsspec, which is not installed: pip install "dictate[cluster]"') from fault
    try:
        files, path = url_to_fs(url)
    except (ImportError, ValueError) as fault:
        raise InputError(f"{url}: {str(fault)[:120]}") from fault
    return files, path


def _is_dictation(below: str) -> bool:
    low = below.lower()
    return low.endswith(ENDINGS) and not low.endswith(OWN)


def _wanted(below: str, only: Sequence[str], skip: Sequence[str]) -> bool:
    def fits(pattern: str) -> bool:
        return fnmatch(below, pattern) or fnmatch(below.rpartition("/")[2], pattern)

    return (not only or any(map(fits, only))) and not any(map(fits, skip))


def _natural(name: str) -> list[tuple[int, str]]:
    """part2 before part10."""
    return [(int(part), "") if part.isdecimal() else (-1, part) for part in re.split(r"(\d+)", name) if part]
