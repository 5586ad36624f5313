"""`dictate sign`, `amend` and `withdraw`: close a note, add to a signed one, mark one as entered in error."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from dictate.cli.asked import KeepAudio, examined, open_grammar
from dictate.cli.note import STDIN, source_of
from dictate.cli.opening import examination_in, is_file, key_of
from dictate.cli.records import Reason, Record
from dictate.errors import InputError, OpenQueries, RecordError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.model import Examination
    from dictate.records import Records, Stored

By = Annotated[str, typer.Option("--by", metavar="NAME", help="Who does it.")]
PassedOver = Annotated[bool, typer.Option("--passed-over", help="Every query to look at was seen; for scripts.")]


def sign(
    record: Annotated[str, typer.Argument(metavar="RECORD", help="Key of a record, or an exam.json.")],
    by: Annotated[str, typer.Option("--by", metavar="NAME", help="Who signs.")] = "",
    countersign: Annotated[
        str, typer.Option(metavar="NAME", help="Who countersigns, for trainees; alone: a note that is signed already.")
    ] = "",
    examined_by: Annotated[str, typer.Option(metavar="NAME", help="Who examined, if another.")] = "",
    dictated_by: Annotated[str, typer.Option(metavar="NAME", help="Who dictated, if another.")] = "",
    passed_over: PassedOver = False,
) -> None:
    """Close a note: every `must` settled, every `look` seen once. It never changes afterwards.

    Example: dictate sign k7q2mx --by "A. Examiner"
    """
    from dictate.cli.saving import account, opened_records
    from dictate.notes import write_note

    if countersign and not by:
        _countersign(record, countersign)
        return
    if not by:
        raise typer.BadParameter("name who signs", param_hint="--by")
    grammar = open_grammar(None)
    given = examination_in(Path(record)) if is_file(record) else None
    with opened_records() as records:
        one = None if given else records.open(key_of(record))
        exam = one.exam if one else given
        if exam is None or (one is not None and one.state != "draft"):
            raise RecordError(f"record {record}: is no draft: what was signed, withdrawn or erased is not signed again")
        right = _put_right(exam, grammar, record, passed_over=passed_over)
        places = _seen(right, record, one.key if one else "", passed_over=passed_over)
        if one is None:
            _must_be_new(right, record, records)
            one = records.save(right, who=account(), why="from a file")
        elif right != exam:
            one = records.save(right, who=account(), why="put right", base=one.revision, key=one.key)
        signed = records.sign(
            one.key, by=by, note=lambda written: write_note(written, grammar), base=one.revision, passed=places,
            countersign=countersign, examined_by=examined_by, dictated_by=dictated_by,
        )  # fmt: skip
    _tell(signed, "signed")
    if given:
        _show(f"{record}: stays the draft it is; the record is what was signed")


def amend(
    record: Record,
    by: By,
    reason: Reason,
    sources: Annotated[
        list[str] | None, typer.Argument(metavar="[SOURCE...]", help="Further recordings or .txt; - is typed text.")
    ] = None,
    text: Annotated[str, typer.Option(metavar="TEXT", help="What to add.")] = "",
    keep_audio: Annotated[KeepAudio, typer.Option(help="Whether further recordings stay.")] = KeepAudio.until_signed,
    passed_over: PassedOver = False,
) -> None:
    """Add a dated addendum to a signed note: typed, or from a further dictation. What was signed stays.

    Example: dictate amend k7q2mx --by "A. Examiner" --reason "forgotten" --text "Jaw jerk normal."
    """
    from dictate.cli.saving import opened_records
    from dictate.pipeline import is_text

    if bool(text) == bool(sources):
        raise InputError("amend: give either --text or a source: - is text on stdin")
    with opened_records() as records:
        one = records.open(key_of(record))
        if one.state not in ("signed", "amended"):
            raise RecordError(f"record {one.key}: is {one.state}, not signed: only a signed note is amended")
        further = None if sources in (None, [STDIN]) else _further(sources or [], one, passed_over=passed_over)
        words = _words(further) if further else text or _stdin()
        keep = keep_audio is KeepAudio.always and further is not None
        audio = [Path(name) for name in sources or [] if not is_text(Path(name))] if keep else []
        amended = records.amend(one.key, by=by, why=reason, text=words, base=one.revision, exam=further, audio=audio)
    _tell(amended, "amended")


def withdraw(record: Record, by: By, reason: Reason) -> None:
    """Mark a signed note as entered in error; it stays, and says so at its top.

    Example: dictate withdraw k7q2mx --by "A. Examiner" --reason "another patient's"
    """
    from dictate.cli.saving import opened_records

    with opened_records() as records:
        withdrawn = records.withdraw(key_of(record), by=by, why=reason)
    _tell(withdrawn, "withdrawn")


def _put_right(exam: Examination, grammar: Grammar, where: str, *, passed_over: bool) -> Examination:
    """A draft of an earlier version as review shows it. Raises: OpenQueries while nobody saw what that changes."""
    from dictate.review.earlier import put_right
    from dictate.review.effects import difference

    right = put_right(exam, grammar)
    change = difference(exam, right, grammar)
    if change.before or change.after:
        told = "; ".join((*(f"comes: {line}" for line in change.after), *(f"goes: {line}" for line in change.before)))
        name = where if is_file(where) else f"record {where}"
        _show(f"{name}: an undo of an earlier version changed more than was meant; put right: {told}")
        if not passed_over:
            if not sys.stdin.isatty():
                raise OpenQueries(f"{name}: what was put right must be seen first: --passed-over says it was")
            _enter("enter: seen; anything else stops: ", where)
    return right


def _countersign(record: str, by: str) -> None:
    """A second name under a note that is signed already."""
    from dictate.cli.saving import opened_records

    with opened_records() as records:
        one = records.open(key_of(record))
        _show(f"record {one.key}, patient: {one.exam.patient or 'no reference given'}")
        countersigned = records.countersign(one.key, by=by, base=one.revision)
    _tell(countersigned, "countersigned")


def _must_be_new(exam: Examination, where: str, records: Records) -> None:
    """Raises: RecordError when the dictation is a record of the patient already: signed twice, it would count twice."""
    heard = {source.sha256 for source in exam.transcript.sources}
    for listed in records.find(patient=exam.patient):
        if listed.state in ("withdrawn", "erased"):
            continue
        if heard == {source.sha256 for source in records.open(listed.key).exam.transcript.sources}:
            instead = f"`dictate sign {listed.key}` signs it" if listed.state == "draft" else "it is not signed again"
            raise RecordError(f"{where}: is in record {listed.key} ({listed.state}) already: {instead}")


def _seen(exam: Examination, where: str, key: str, *, passed_over: bool) -> list[int]:
    """Places of the queries to look at, each shown once. Raises: OpenQueries when something must be settled first."""
    from dictate.records import REVIEW, must_be_settled, open_looks

    looks = open_looks(exam)
    places = [at for at, _ in looks]
    must_be_settled(exam, f"record {key}" if key else where, REVIEW.format(where=where), passed=places)
    _show(f"{f'record {key}' if key else where}, patient: {exam.patient or 'no reference given'}")
    if not passed_over and not sys.stdin.isatty():
        must_be_settled(exam, f"record {key}" if key else where, "")
    for number, (_, query) in enumerate(looks, 1):
        said = f' (heard "{" ".join(query.quote.split())}")' if query.quote else ""
        _show(f"look {number} of {len(looks)}: {' '.join(query.message.split())}{said}")
        if not passed_over:
            _enter("enter: passed over; anything else stops: ", where)
    return places


def _further(sources: list[str], one: Stored, *, passed_over: bool) -> Examination:
    """A further dictation, read and checked; its doubts must be gone before it is added, for that closes it."""
    from dictate.records import RETYPE, must_be_settled, open_looks, pass_over

    exam = examined([source_of(source) for source in sources], open_grammar(None), patient=one.exam.patient)
    places = [at for at, _ in open_looks(exam)]
    must_be_settled(exam, f"addendum to record {one.key}", RETYPE, passed=places)
    _show(f"record {one.key}, patient: {one.exam.patient or 'no reference given'}")
    _show(f"to be added: {_words(exam)}")
    for _, query in open_looks(exam):
        if query.findings or query.code != "time-missing":  # when the patient was examined, the signed note says
            _show(f"look: {' '.join(query.message.split())}")
    if not passed_over:
        if not sys.stdin.isatty():
            raise OpenQueries(
                f"addendum to record {one.key}: its words must be seen first: --passed-over says they were"
            )
        _enter("enter: add these words; anything else stops: ", one.key)
    return pass_over(exam, places)


def _words(exam: Examination) -> str:
    """Everything that was dictated."""
    return exam.transcript.quote(0, len(exam.transcript.words))


def _stdin() -> str:
    try:
        return sys.stdin.buffer.read().decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        raise InputError("standard input: is no UTF-8 text: type the addendum") from fault


def _enter(prompt: str, where: str) -> None:
    print(prompt, end="", file=sys.stderr, flush=True)
    answer = sys.stdin.readline()
    if answer.strip() or not answer:
        raise RecordError(f"record {where}: stopped: nothing was changed")


def _show(line: str) -> None:
    print(line, file=sys.stderr)


def _tell(one: Stored, what: str) -> None:
    """The note as it is printed from now on, and where it is."""
    sys.stdout.write(one.note)
    _show(f"{what}: record {one.key}, revision {one.revision}")
