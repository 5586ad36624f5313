"""Unchanged since last visit: the patient's last record before this examination, and the findings tied to it."""

from __future__ import annotations

import sys
from collections.abc import Collection
from datetime import datetime
from typing import TYPE_CHECKING

from dictate.errors import DictateError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.model import Examination
    from dictate.records import Listed, Records, Stored

UNUSABLE = ("withdrawn", "erased")


def tied_to_record(exam: Examination, grammar: Grammar) -> Examination:
    """The examination, what it calls unchanged tied to the patient's last record; as it is without such a record."""
    from dictate.cli.saving import opened_records
    from dictate.notes.tying import wants_earlier
    from dictate.records.place import DATABASE
    from dictate.settings import records_folder

    if not (exam.patient and any(wants_earlier(one, grammar) for one in exam.findings)):
        return exam
    folder = records_folder()
    try:
        if (folder / DATABASE).is_file():
            with opened_records() as records:
                return tied_to_last(exam, grammar, records)
    except DictateError as fault:  # the note goes on without them: its queries ask
        _untied(str(fault))
    except OSError as fault:
        _untied(f"{folder}: cannot be read: {(fault.strerror or str(fault)).lower()}: check its permissions")
    return exam


def _untied(why: str) -> None:
    print(f'"unchanged" is tied to no earlier record: {why}', file=sys.stderr)


def tied_to_last(
    exam: Examination, grammar: Grammar, records: Records, *, apart_from: Collection[str] = ()
) -> Examination:
    """The same in records that are open. apart_from: keys of records that may not be of an earlier visit."""
    from dictate.notes.tying import tie
    from dictate.pipeline import reconsider

    last = _last(records, exam, apart_from) if exam.patient else None
    if last is None:
        return exam
    tied = tie(exam, last.exam, grammar, record=last.key)
    return reconsider(tied, grammar)


def _last(records: Records, exam: Examination, apart_from: Collection[str]) -> Stored | None:
    """The newest record of the patient that is earlier, and not of the same dictation."""
    heard = {source.sha256 for source in exam.transcript.sources}
    for listed in records.find(patient=exam.patient):
        if listed.key in apart_from or listed.state in UNUSABLE or not _is_earlier(listed, exam.examined_at):
            continue
        one = records.open(listed.key)
        if not heard & {source.sha256 for source in one.exam.transcript.sources}:
            return one
    return None


def _is_earlier(listed: Listed, examined_at: datetime | None) -> bool:
    """Whether it was examined before; where a time was not stated, all that was saved lies before."""
    if listed.examined_at is None or examined_at is None:
        return True
    return listed.examined_at.replace(tzinfo=None) < examined_at.replace(tzinfo=None)
