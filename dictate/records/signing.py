"""Sign, amend, withdraw: who may do what to which record; what is signed never changes."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from dictate.errors import InputError, MovedOn, OpenQueries, RecordError
from dictate.model import Decision, Examination, Query, Severity
from dictate.records.kept import Stored

REVIEW = "`dictate review {where}` settles them"
RETYPE = "say it again, or type it with --text"
PASSED_OVER = "passed over"
LINE_ENDS = "\r\n"
SIGNED_STATES = ("signed", "amended")
INSTEAD = {
    "draft": "it is a draft: `dictate sign` closes it",
    "signed": "it is signed: `dictate amend` adds to it",
    "amended": "it is signed: `dictate amend` adds to it",
    "withdrawn": "it was withdrawn: what was signed stays as it is",
    "erased": "it was erased: only a note of that is left",
}


def must_be(one: Stored, states: Sequence[str], what: str) -> None:
    """Raises: RecordError when a record in this state cannot be treated so."""
    if one.state not in states:
        raise RecordError(f"record {one.key}: cannot be {what}: {INSTEAD[one.state]}")


def must_be_newest(one: Stored, base: int | None) -> None:
    """Raises: MovedOn when the record has newer revisions than the one that was seen."""
    if base is not None and base != one.revision:
        at = one.saved_at.isoformat(sep=" ", timespec="minutes")
        raise MovedOn(
            f"record {one.key}: has moved on to revision {one.revision} (by {one.who}, {at}) since revision {base} was "
            "opened: open it again; nothing was overwritten"
        )


def must_be_said(text: str, what: str) -> str:
    """The text without blanks around it and letters that steer a terminal. Raises: InputError when nothing is left."""
    kept = "".join(letter for letter in text.replace("\t", " ") if letter.isprintable() or letter in LINE_ENDS).strip()
    if not kept:
        raise InputError(f"{what}: is empty: say it")
    return kept


def must_be_another(name: str, one: Stored | None, by: str) -> str:
    """Who countersigns. Raises: InputError for the one who signed; RecordError when it was done before."""
    if " ".join(name.lower().split()) == " ".join(by.lower().split()):
        raise InputError(f"{name} signed the note: somebody else countersigns it")
    if one is not None and one.exam.countersigned_by:
        raise RecordError(f"record {one.key}: was countersigned by {one.exam.countersigned_by} before")
    return name


def must_be_draft(exam: Examination) -> None:
    """Raises: InputError for an examination that says it is signed already: only `sign` signs."""
    if exam.signed_by or exam.signed_at or exam.countersigned_by:
        raise InputError("the examination says that it is signed already: only `dictate sign` signs a record")


def open_looks(exam: Examination) -> list[tuple[int, Query]]:
    """Open queries to look at, each with its place in Examination.queries."""
    settled = {decision.query for decision in exam.decisions}
    return [
        (at, query) for at, query in enumerate(exam.queries) if at not in settled and query.severity is Severity.LOOK
    ]


def pass_over(exam: Examination, places: Sequence[int]) -> Examination:
    """The examination with a decision for each of these queries: seen, and left as it is."""
    passed = tuple(Decision(query=at, answer=PASSED_OVER) for at in places)
    return exam.model_copy(update={"decisions": (*exam.decisions, *passed)})


def must_be_settled(exam: Examination, where: str, instead: str, *, passed: Sequence[int] = ()) -> None:
    """instead: how to settle them; passed: places of queries just passed over. Raises: OpenQueries, which names them.

    They are numbered as in the note of the draft.
    """
    settled = {decision.query for decision in exam.decisions}
    left = [(at, query) for at, query in enumerate(exam.queries) if at not in settled]
    said = {at: f"[?{number}] {' '.join(query.message.split())}" for number, (at, query) in enumerate(left, 1)}
    musts = [said[at] for at, query in left if query.severity is Severity.MUST]
    if musts:
        raise OpenQueries(
            f"{where}: {_count(len(musts))} must be settled before signing: {'; '.join(musts)}: {instead}"
        )
    looks = [said[at] for at, query in left if query.severity is Severity.LOOK and at not in passed]
    if looks:
        raise OpenQueries(
            f"{where}: {_count(len(looks))} must be looked at before signing: {'; '.join(looks)}: "
            "see them, or pass them over with --passed-over"
        )


def signed(
    exam: Examination, *, by: str, countersign: str, examined_by: str, dictated_by: str, at: datetime
) -> Examination:
    """The examination with its signatures."""
    people = {"examined_by": examined_by.strip(), "dictated_by": dictated_by.strip()}
    return exam.model_copy(
        update={"signed_by": by, "countersigned_by": countersign.strip(), "signed_at": at}
        | {field: name for field, name in people.items() if name}
    )


def _count(number: int) -> str:
    return "1 query" if number == 1 else f"{number} queries"
