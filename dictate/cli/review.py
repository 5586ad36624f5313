"""`dictate review`: settle queries and correct values, in the browser or in the terminal."""

from __future__ import annotations

import contextlib
import sys
import webbrowser
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from dictate.cli.asked import Device, OnDevice, OwnGrammar, cleared_up, examined, on_one_line, open_grammar
from dictate.cli.earlier import tied_to_record
from dictate.cli.opening import is_file, key_of
from dictate.cli.saving import account, opened_records
from dictate.errors import InputError, RecordError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.records import Records
    from dictate.review.shelf import FileShelf, Shelf
    from dictate.review.sitting import Sitting

JSON_ENDING = ".json"
EXAM_ENDING = ".exam.json"


def review(
    record: Annotated[
        str, typer.Argument(metavar="RECORD", help="Key of a record, an exam.json, a recording, or a .txt transcript.")
    ],
    terminal: Annotated[bool, typer.Option("--terminal", help="Ask in the terminal, not in the browser.")] = False,
    port: Annotated[int, typer.Option(min=0, max=65535, help="Port of the page; 0 takes a free one.")] = 0,
    no_open: Annotated[bool, typer.Option("--no-open", help="Print the page's address, open no browser.")] = False,
    who: Annotated[str, typer.Option(metavar="NAME", help="Who decides; your login name when left out.")] = "",
    recording: Annotated[
        list[Path] | None, typer.Option(metavar="PATH", help="The recording, or the folder it lies in.")
    ] = None,
    patient: Annotated[
        str, typer.Option(metavar="REF", help="Your reference, for a recording not yet read.", callback=on_one_line)
    ] = "",
    model: Annotated[str, typer.Option(metavar="NAME|PATH", help="Speech model, for a recording.")] = "",
    device: OnDevice = Device.auto,
    grammar: OwnGrammar = None,
) -> None:
    """Settle the queries of a note and correct its values; read a signed one, add to it, or withdraw it.

    Example: dictate review notes/P-17.exam.json
    """
    from dictate.review.sitting import Sitting
    from dictate.settings import user_grammar_folder

    cleared_up()
    knowledge = open_grammar(grammar)
    if terminal and not sys.stdin.isatty():
        raise InputError("--terminal: needs a terminal to ask in: leave it out for the page")
    with contextlib.ExitStack() as until_done:
        shelf: Shelf
        if is_file(record):
            path = Path(record)
            shelf = _shelf(path, knowledge, recordings=recording or [], patient=patient, model=model, device=device)
        else:
            shelf = _kept(until_done.enter_context(opened_records()), key_of(record), knowledge)
        sitting = Sitting(
            shelf,
            knowledge,
            who=who or account(unknown=""),
            now=lambda: datetime.now().astimezone(),
            own_folder=grammar or user_grammar_folder(),
        )
        _ask(sitting, terminal=terminal, port=port, opens=not no_open)
    count = len(sitting.exam.open_queries)
    print("1 query open" if count == 1 else f"{count} queries open", file=sys.stderr)


def _ask(sitting: Sitting, *, terminal: bool, port: int, opens: bool) -> None:
    if terminal:
        if sitting.state != "draft":
            raise RecordError(
                f"{sitting.shelf.name}: is {sitting.state}, no draft: `dictate amend` adds to a signed one"
            )
        from dictate.review.terminal import Terminal

        Terminal(sitting).run()
    else:
        _serve(sitting, port=port, opens=opens)


def _kept(records: Records, key: str, grammar: Grammar) -> Shelf:
    """A record: a draft to be settled, or what was signed to be read and added to."""
    from dictate.review.kept import RecordShelf

    return RecordShelf(records, key, grammar, account=account())


def _serve(sitting: Sitting, *, port: int, opens: bool) -> None:
    from dictate.review.server import serve

    def announce(address: str) -> None:
        print(f"Open once, here only: {address}\nEnd with Ctrl-C.", file=sys.stderr, flush=True)
        if opens:
            webbrowser.open(address)

    with contextlib.suppress(KeyboardInterrupt):
        serve(sitting, port=port, announce=announce)


def _shelf(
    path: Path, grammar: Grammar, *, recordings: list[Path], patient: str, model: str, device: Device
) -> FileShelf:
    """The examination in its file; a recording or transcript is examined first and then kept beside itself."""
    from dictate.cli.files import write_files
    from dictate.review.shelf import FileShelf

    if not path.exists():
        raise InputError(f"{path}: no such file: check the name, or name a record's key")
    if path.suffix.lower() == JSON_ENDING:
        return FileShelf(path, grammar, write=write_files, recordings=recordings)
    kept = path.with_name(path.stem + EXAM_ENDING)
    if kept.exists():
        raise InputError(f"{path.name}: was read before: review {kept.name}, which stands beside it")
    exam = tied_to_record(examined([path], grammar, patient=patient, model=model, device=device), grammar)
    return FileShelf(kept, grammar, write=write_files, recordings=[path, *recordings], fresh=exam)
