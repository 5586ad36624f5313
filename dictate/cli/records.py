"""`dictate records`: find records, print their notes, move and erase them, find what was changed unseen."""

from __future__ import annotations

import difflib
import sys
from collections.abc import Sequence
from datetime import date, datetime
from typing import TYPE_CHECKING, Annotated

import typer

from dictate.cli.asked import not_empty, on_one_line
from dictate.cli.opening import key_of
from dictate.errors import InputError, RecordError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.model import Query
    from dictate.records import Listed, Stored

FAULT = 1
DAY_LETTERS = len("2026-03-04")
Reason = Annotated[str, typer.Option("--reason", metavar="TEXT", help="Why; it is kept.")]
Record = Annotated[str, typer.Argument(metavar="RECORD", help="Key of the record.")]


def find(
    ctx: typer.Context,
    patient: Annotated[
        str | None, typer.Option(metavar="REF", help="Your reference for the patient.", callback=on_one_line)
    ] = None,
    last: Annotated[bool, typer.Option("--last", help="Print the last note before now.")] = False,
    since: Annotated[str, typer.Option(metavar="DATE", help="Examined on that day or later.")] = "",
    until: Annotated[str, typer.Option(metavar="DATE", help="Examined on that day or earlier.")] = "",
    item: Annotated[
        str | None, typer.Option(metavar="NAME", help="With a finding of this item.", callback=not_empty)
    ] = None,
    open_only: Annotated[bool, typer.Option("--open", help="Drafts with open queries.")] = False,
    show: Annotated[
        str | None, typer.Option(metavar="KEY", help="Print this record's note.", callback=not_empty)
    ] = None,
) -> None:
    """Find saved records, newest first.

    Example: dictate records --patient P-17 --last
    """
    if ctx.invoked_subcommand is not None:
        return
    from dictate.cli.asked import open_grammar
    from dictate.cli.saving import opened_records

    wanted = _item(item, open_grammar(None)) if item else None
    first, last_day = _day("--since", since), _day("--until", until)
    if first and last_day and first.isoformat()[:DAY_LETTERS] > last_day.isoformat()[:DAY_LETTERS]:
        raise InputError(f"--since {since}: is later than --until {until}: put them the other way round")
    with opened_records() as records:
        if show:
            print_note(records.open(key_of(show)))
            return
        found = records.find(
            patient=patient, since=first, until=last_day, item=wanted, open_only=open_only, last=last,
        )  # fmt: skip
        if not found:
            print("no record found", file=sys.stderr)
        elif last:
            print_note(records.open(found[0].key))
        else:
            sys.stdout.write("".join(f"{_line(one)}\n" for one in found))


def verify(
    head: Annotated[
        str | None, typer.Option(metavar="HASH", help="A head printed on a note: it must be there.", callback=not_empty)
    ] = None,
    mend_index: Annotated[bool, typer.Option("--mend-index", help="First make the index for finding anew.")] = False,
) -> None:
    """Find what was changed, lost or put in another order behind the program's back.

    Example: dictate records verify --head 845e94caf6c2
    """
    from dictate.cli.saving import opened_records

    with opened_records() as records:
        if mend_index:
            records.mend_index()
        faults = records.verify(head=head or "")
        count = 0 if faults else len(records.find())
    for fault in faults:
        print(fault)
    if faults:
        raise typer.Exit(FAULT)
    print(f"{count} {'record' if count == 1 else 'records'}, all as written")


def move(
    record: Record,
    patient: Annotated[
        str, typer.Option("--patient", metavar="REF", help="The reference it belongs to.", callback=on_one_line)
    ],
    reason: Reason,
    by: Annotated[str, typer.Option("--by", metavar="NAME", help="Who does it; else your account.")] = "",
) -> None:
    """Give a record to another reference. The text of a signed one stays, and says so at its top.

    Example: dictate records move k7q2mx --patient P-18 --reason "wrong reference given"
    """
    from dictate.checks import run_checks
    from dictate.cli.asked import open_grammar
    from dictate.cli.saving import account, opened_records

    with opened_records() as records:
        one = records.open(key_of(record))
        queries: Sequence[Query] = ()
        if one.state == "draft":  # a spoken reference may differ from the new one
            there = one.exam.model_copy(update={"patient": patient, "queries": (), "decisions": ()})
            asked = [(query.code, query.quote) for query in one.exam.open_queries]
            doubts = [query for query in run_checks(there, open_grammar(None)) if query.code == "patient-mismatch"]
            queries = [query for query in doubts if (query.code, query.quote) not in asked]
        moved = records.move(
            one.key, patient=patient, who=by or account(), why=reason, base=one.revision, queries=queries
        )
    print(f"moved: record {moved.key}, revision {moved.revision}", file=sys.stderr)


def erase(
    record: Record,
    reason: Reason,
    sound_only: Annotated[bool, typer.Option("--sound-only", help="Only its recordings.")] = False,
    by: Annotated[str, typer.Option("--by", metavar="NAME", help="Who does it; else your account.")] = "",
    yes: Annotated[bool, typer.Option("--yes", help="It is meant; for scripts.")] = False,
) -> None:
    """Remove what a record holds, or its recordings; that it was done, when, by whom and why stays.

    Example: dictate records erase k7q2mx --reason "asked for by the patient"
    """
    from dictate.cli.saving import account, opened_records

    with opened_records() as records:
        one = records.open(key_of(record))
        if one.state != "erased" and not yes:
            _must_be_meant(one, "its recordings" if sound_only else "all that it holds")
        erased = records.erase(one.key, who=by or account(), why=reason, sound_only=sound_only)
    print(f"erased: record {erased.key}, revision {erased.revision}", file=sys.stderr)


def _must_be_meant(one: Stored, what: str) -> None:
    """Whose record it is and of when, and a yes. Raises: RecordError without one."""
    if not sys.stdin.isatty():
        raise RecordError(f"record {one.key}: nobody can be asked whether to erase {what}: --yes says that it is meant")
    when = one.exam.examined_at
    day = f"examined {when.date().isoformat()}" if when else f"saved {one.saved_at.date().isoformat()}"
    patient = " ".join(one.exam.patient.split()) or "no reference given"
    print(f"record {one.key} ({one.state}), patient: {patient}, {day}: {what} will be gone for good", file=sys.stderr)
    print("type yes to erase; anything else stops: ", end="", file=sys.stderr, flush=True)
    if sys.stdin.readline().strip().lower() != "yes":
        raise RecordError(f"record {one.key}: stopped: nothing was erased")


def print_note(one: Stored) -> None:
    """The stored text of a signed note; a draft as it reads now."""
    from dictate.cli.asked import open_grammar
    from dictate.notes import write_note
    from dictate.review.earlier import put_right

    if one.note:
        sys.stdout.write(one.note)
    else:
        grammar = open_grammar(None)
        sys.stdout.write(write_note(put_right(one.exam, grammar), grammar))


def _line(one: Listed) -> str:
    when = one.examined_at or one.saved_at
    doubts = [f"{one.open_musts} to settle"] * bool(one.open_musts) + [f"{one.open_looks} to look at"] * bool(
        one.open_looks
    )
    patient = " ".join(one.patient.split()) or "no reference"
    parts = (one.key, f"{one.state:9}", when.isoformat(sep=" ", timespec="minutes")[:16], patient, ", ".join(doubts))
    return "  ".join(filter(None, parts))


def _day(option: str, text: str) -> date | None:
    if not text:
        return None
    try:
        return date.fromisoformat(text) if len(text) <= DAY_LETTERS else datetime.fromisoformat(text)
    except ValueError as fault:
        raise InputError(f"{option} {text}: is no date: write it as 2026-03-04") from fault


def _item(wanted: str, grammar: Grammar) -> str:
    """Id of the item that is meant by its id, its name or one of its terms."""
    names = {name: key for key, item in grammar.items.items() for name in (*item.terms, item.name.lower(), key)}
    found = names.get(wanted.strip().lower())
    if found is None:
        near = difflib.get_close_matches(wanted.lower(), names, 3)
        hint = f"did you mean {' or '.join(near)}?" if near else "use the name that the note has for it"
        raise InputError(f"--item {wanted}: no such item: {hint}")
    return found
