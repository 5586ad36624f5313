"""RECORD on the command line: the key of a record, or an exam.json file."""

from __future__ import annotations

import difflib
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from dictate.errors import InputError, RecordError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.model import Around, Examination
    from dictate.notes.fhir import State

JSON_ENDING = ".json"


@dataclass(frozen=True, slots=True)
class Opened:
    """An examination, and what the records say of it."""

    exam: Examination
    state: State | None = None  # None: from a file
    note: str = ""  # stored text of a signed note, addenda included
    around: Around | None = None  # what the records say of it, above and below
    addenda: int = 0  # how many were added after signing


def key_of(record: str) -> str:
    """The key as it is kept, however it was typed."""
    return record.strip().lower()


def is_file(record: str) -> bool:
    """Whether RECORD names a file rather than a record, whose key has neither ending nor folder."""
    path = Path(record)
    return path.is_file() or bool(path.suffix) or len(path.parts) > 1


def examination_in(path: Path) -> Examination:
    """The examination of an exam.json. Raises: InputError when it cannot be read or is none."""
    from dictate.review.shelf import ENDING, read_examination

    beside = sorted(one.name for one in path.parent.glob(f"*{ENDING}") if one != path)
    near = difflib.get_close_matches(path.name, beside, 1, 0.3)
    instead = f"did you mean {path.with_name(near[0])}?" if near else "`dictate note --out DIR` writes one"
    if path.is_dir() or (path.is_file() and path.suffix.lower() != JSON_ENDING):
        raise InputError(f"{path}: is no examination: name an {ENDING[1:]} or a record's key: {instead}")
    try:
        return read_examination(path.read_bytes(), path.name)
    except FileNotFoundError as fault:
        raise InputError(f"{path}: no such file: name an {ENDING[1:]} or a record's key: {instead}") from fault
    except OSError as fault:
        raise InputError(f"{path}: cannot be read: {(fault.strerror or str(fault)).lower()}: check its name") from fault


def opened(record: str, grammar: Grammar) -> Opened:
    """What RECORD names, a draft of an earlier version put right. Raises: InputError, RecordError."""
    from dictate.review.earlier import put_right

    if is_file(record):
        return Opened(put_right(examination_in(Path(record)), grammar))
    from dictate.cli.saving import opened_records

    with opened_records() as records:
        one = records.open(key_of(record))
    if one.state == "erased":
        raise RecordError(f"record {one.key}: was erased: nothing is left of it")
    return Opened(put_right(one.exam, grammar), one.state, one.note, one.around, len(one.addenda))
