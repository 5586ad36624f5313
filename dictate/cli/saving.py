"""From the command line into the records: opened, saved, a further piece of dictation joined to what is there."""

from __future__ import annotations

import contextlib
import getpass
import os
import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from dictate.cli.earlier import tied_to_last
from dictate.errors import InputError, Locked, RecordError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.model import Examination, Query, Transcript
    from dictate.pipeline import Typed
    from dictate.records import Records, Stored

PASSPHRASE = "DICTATE_PASSPHRASE"
KeepAudio = Literal["no", "until-signed", "always"]


@contextlib.contextmanager
def opened_records() -> Iterator[Records]:
    """The user's records; asks for the passphrase where they are locked and somebody sits at the keyboard."""
    from dictate.records import open_records

    try:
        records = open_records(passphrase=os.environ.get(PASSPHRASE) or None)
    except Locked:
        if not sys.stdin.isatty():
            raise
        records = open_records(passphrase=getpass.getpass("passphrase of the records: "))
    with records:
        yield records


def account(unknown: str = "unknown account") -> str:
    """Name of the user's account; who saved something, where nobody said. unknown: where the machine has none."""
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):
        return unknown


def must_take_more(key: str, patient: str) -> None:
    """Raises: RecordError, InputError when the record is not there, closed, or another patient's."""
    with opened_records() as records:
        one = records.open(key)
    if one.state != "draft":
        raise RecordError(f"record {key}: is no draft any more: `dictate amend` adds to a signed one")
    if patient and patient != one.exam.patient:
        raise InputError(f"record {key}: has another reference than --patient: leave it out, or name the right record")


def keep(
    exam: Examination,
    sources: Sequence[Path | Typed],
    grammar: Grammar,
    *,
    record: str,
    keep_audio: KeepAudio,
    age: float | None,
) -> Stored:
    """Save the examination as a new draft, or join it to one; the record comes back."""
    from dictate.pipeline import is_text
    from dictate.review.earlier import put_right

    audio = [] if keep_audio == "no" else [one for one in sources if isinstance(one, Path) and not is_text(one)]
    how_long = "always" if keep_audio == "no" else keep_audio
    with opened_records() as records:
        if record:
            before = records.open(record)
            exam = joined(
                put_right(before.exam, grammar), exam.transcript, grammar, age=age,
                tied=lambda fresh: tied_to_last(fresh, grammar, records, apart_from=(record,)),
            )  # fmt: skip
            one = records.save(
                exam, who=account(), why="further dictation", base=before.revision, key=record, audio=audio,
                keep=how_long,
            )  # fmt: skip
        else:
            one = records.save(exam, who=account(), why="dictated", audio=audio, keep=how_long)
    print(f"saved: record {one.key}, revision {one.revision}", file=sys.stderr)
    return one


def joined(
    before: Examination, added: Transcript, grammar: Grammar, *, age: float | None,
    tied: Callable[[Examination], Examination] = lambda exam: exam,
) -> Examination:  # fmt: skip
    """An examination with a further piece of dictation; what was decided or corrected before stays.

    tied: ties what it calls unchanged to an earlier record.

    Raises: InputError when the piece is part of it already.
    """
    from dictate.pipeline import examine_transcript, join

    known = {source.sha256 for source in before.transcript.sources}
    for source in added.sources:
        if source.sha256 in known:
            raise InputError(f"{source.name}: is part of the record already: name only what was dictated since")
    whole = join([before.transcript, added])
    fresh = examine_transcript(
        whole, grammar=grammar, scope=before.scope, patient=before.patient, examined_at=before.examined_at, age=age,
        conventions=before.conventions,
    )  # fmt: skip
    fresh = tied(fresh)
    kept: dict[str, object] = {"examined_by": before.examined_by, "dictated_by": before.dictated_by}
    if before.examined_at is not None:
        kept["examined_at_from"] = before.examined_at_from
    if not before.decisions:
        return fresh.model_copy(update=kept)
    return _added(before, fresh.model_copy(update=kept), grammar)


def _added(before: Examination, fresh: Examination, grammar: Grammar) -> Examination:
    """What the further piece gave, behind what stands; all is checked together, and nothing is asked twice."""
    from dictate.pipeline import compute
    from dictate.reckoning import with_doubts

    first = len(before.transcript.words)
    findings = [one for one in fresh.findings if any(piece.last >= first for piece in one.evidence)]
    remarks = [one for one in fresh.remarks if one.evidence.last >= first]
    whole = fresh.model_copy(
        update={
            "findings": (*before.findings, *findings),
            "remarks": (*before.remarks, *remarks),
            "decisions": before.decisions,
        }
    )
    whole = compute(whole, grammar)
    asked = {_about(query) for query in before.queries}
    new = [query for query in whole.queries if _about(query) not in asked]
    return with_doubts(whole.model_copy(update={"queries": (*before.queries, *new)}), grammar)


def _about(query: Query) -> tuple[object, ...]:
    """What a query is about, whatever its words."""
    return query.code, query.component, query.item, query.side, query.findings, query.quote, query.start_s
