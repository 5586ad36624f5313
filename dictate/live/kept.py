"""One dictation's folder: its sound, the phrases heard, what was asked; found again after a crash."""

from __future__ import annotations

import contextlib
import fcntl
import json
import os
import shutil
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path
from typing import Literal

from pydantic import ValidationError

from dictate.errors import InputError, MachineError
from dictate.live.safe_sound import BYTES_PER_S, repair
from dictate.model import Stretch, Word
from dictate.model.base import Frozen

FACTS, LOG, LOCK, ENDED = "dictation.json", "phrases.jsonl", "lock", "ended"
FOR_GOOD = "keep"
NAME = "%Y-%m-%dT%H-%M-%S"
Why = Literal["paused", "own voice", "own tone"]


class Facts(Frozen):
    """What the dictation was begun with."""

    started_at: datetime
    patient: str = ""
    scope: str = ""
    age: float | None = None
    height: float | None = None
    examined_at: datetime | None = None
    file: str = ""  # the recording that is played; empty: a microphone


class Said(Frozen):
    """One phrase as it was heard live; seconds of the dictation's sound."""

    kind: Literal["said"] = "said"
    words: tuple[Word, ...]
    lost: tuple[Stretch, ...] = ()
    start_s: float
    end_s: float
    done: int  # sample up to which all sound was heard
    control: str = ""  # said to the program, not for the note
    paused: bool = False


class Mute(Frozen):
    """A stretch that is no dictation."""

    kind: Literal["mute"] = "mute"
    start_s: float
    end_s: float
    why: Why


class Kept:
    """The folder of one dictation, held by one process at a time."""

    def __init__(self, folder: Path, facts: Facts) -> None:
        self.folder, self.facts = folder, facts
        self.last_sound_at: float | None = None  # of one that was interrupted: seconds since the epoch
        self._lock = _locked(folder)

    @classmethod
    def begin(cls, place: Path, facts: Facts) -> Kept:
        """A new folder, readable by its owner alone. Raises: MachineError."""
        try:
            place.mkdir(parents=True, exist_ok=True, mode=0o700)
            folder = _free(place / facts.started_at.strftime(NAME))
            _write(folder / FACTS, facts.model_dump_json())
        except OSError as fault:
            reason = (fault.strerror or str(fault)).lower()
            raise MachineError(
                f"{place}: sound cannot be kept there: {reason}: make room, or set DICTATE_SOUND to another folder"
            ) from fault
        return cls(folder, facts)

    @classmethod
    def interrupted(cls, place: Path) -> list[Path]:
        """Folders of dictations without a note that no process holds, oldest first."""
        return [folder for folder in _free_ones(place) if not (folder / ENDED).exists()]

    @classmethod
    def resume(cls, place: Path) -> Kept:
        """The latest interrupted dictation, its sound made whole. Raises: InputError when there is none."""
        waiting = cls.interrupted(place)
        if not waiting:
            raise InputError(f"{place}: no interrupted dictation: start without --resume")
        return cls.reopen(waiting[-1])

    @classmethod
    def reopen(cls, folder: Path) -> Kept:
        """One interrupted dictation. Raises: InputError."""
        try:
            facts = Facts.model_validate_json((folder / FACTS).read_text(encoding="utf-8"))
            paths = sorted(folder.glob("dictation-*.wav"))
            last_sound_at = max((path.stat().st_mtime for path in paths), default=None)
            for path in paths:
                repair(path)
        except (OSError, ValidationError) as fault:
            raise InputError(f"{folder}: the interrupted dictation cannot be read: play its .wav files") from fault
        kept = cls(folder, facts)
        kept.last_sound_at = last_sound_at
        return kept

    def pieces(self) -> list[Path]:
        """The sound, in order: sound of one piece joins, between two there is a gap."""
        return sorted(self.folder.glob("dictation-*.wav"))

    def next_piece(self) -> Path:
        """Name of a new piece."""
        return self.folder / f"dictation-{len(self.pieces()) + 1:03}.wav"

    def samples(self) -> int:
        """Samples of all pieces."""
        return sum(seconds_samples(path) for path in self.pieces())

    def log(self, entry: Said | Mute) -> None:
        """Add what happened; a full disk loses the entry, not the sound: it can be heard again."""
        line = entry.model_dump_json().encode() + b"\n"
        with contextlib.suppress(OSError):
            file = os.open(self.folder / LOG, os.O_WRONLY | os.O_CREAT | os.O_APPEND, 0o600)
            try:
                os.write(file, line)
            finally:
                os.close(file)

    def entries(self) -> Iterator[Said | Mute]:
        """What happened; a last line that was cut off is passed over."""
        path = self.folder / LOG
        for line in path.read_text(encoding="utf-8", errors="replace").splitlines() if path.is_file() else ():
            with contextlib.suppress(ValueError):  # pydantic's and json's faults are ValueErrors
                kind = Mute if json.loads(line).get("kind") == "mute" else Said
                yield kind.model_validate_json(line)

    def close(self) -> None:
        """Let another process take it up."""
        if self._lock is not None:
            os.close(self._lock)
            self._lock = None

    def finish(self) -> None:
        """Its note is written: it is not interrupted any more."""
        with contextlib.suppress(OSError):
            (self.folder / ENDED).touch(mode=0o600)
        self.close()

    def keep_for_good(self) -> Path:
        """Age does not delete it."""
        with contextlib.suppress(OSError):
            (self.folder / FOR_GOOD).touch(mode=0o600)
        return self.folder

    def remove(self) -> None:
        """Delete the sound and all else of it."""
        self.close()
        shutil.rmtree(self.folder, ignore_errors=True)


def remove_old(place: Path, *, days: float, now: datetime) -> int:
    """Delete interrupted or finished dictations begun more than `days` ago; how many."""
    count = 0
    for folder in _free_ones(place):
        with contextlib.suppress(ValueError):
            if not (folder / FOR_GOOD).exists() and now - datetime.strptime(folder.name[:19], NAME) > timedelta(
                days=days
            ):
                shutil.rmtree(folder, ignore_errors=True)
                count += 1
    return count


def seconds_samples(path: Path) -> int:
    """Samples in a piece."""
    return max(0, path.stat().st_size - 44) // 2


def length_s(folder: Path) -> float:
    """Seconds of sound in a dictation's folder."""
    return sum(max(0, path.stat().st_size - 44) for path in folder.glob("dictation-*.wav")) / BYTES_PER_S


def _free(wanted: Path) -> Path:
    for number in range(1, 100):
        folder = wanted if number == 1 else wanted.with_name(f"{wanted.name}-{number}")
        with contextlib.suppress(FileExistsError):
            folder.mkdir(mode=0o700)
            return folder
    raise OSError(f"{wanted}: too many dictations of one second")


def _write(path: Path, text: str) -> None:
    file = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    with open(file, "w", encoding="utf-8") as out:
        out.write(text)
        out.flush()
        os.fsync(out.fileno())


def _locked(folder: Path) -> int | None:
    file = os.open(folder / LOCK, os.O_RDWR | os.O_CREAT, 0o600)
    try:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as fault:
        os.close(file)
        raise InputError(f"{folder}: another `dictate listen` holds this dictation: end it first") from fault
    return file


def _free_ones(place: Path) -> list[Path]:
    """Folders of dictations that no process holds, oldest first."""
    if not place.is_dir():
        return []
    return sorted(each for each in place.iterdir() if (each / FACTS).is_file() and _is_free(each))


def _is_free(folder: Path) -> bool:
    try:
        file = _locked(folder)
    except (InputError, OSError):
        return False
    if file is not None:
        os.close(file)
    return True
