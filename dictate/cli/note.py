"""`dictate note`: recordings or transcripts of one examination → the note."""

from __future__ import annotations

import contextlib
import difflib
import logging
import sys
from collections.abc import Callable, Iterator
from datetime import datetime
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from dictate.cli.export import Format
from dictate.errors import InputError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.model import Examination
    from dictate.pipeline import Hearer, Typed
    from dictate.reckoning import Conventions

STDIN = "-"
OPEN_QUERIES = 3  # exit status with --strict


class KeepAudio(StrEnum):
    """How long the records keep the recordings."""

    no = "no"
    until_signed = "until-signed"
    always = "always"


class Device(StrEnum):
    """Where the model runs."""

    auto = "auto"
    cpu = "cpu"
    cuda = "cuda"


def note(
    sources: Annotated[
        list[str],
        typer.Argument(metavar="SOURCE...", help="Recordings or .txt transcripts, in order of dictation; - is stdin."),
    ],
    format: Annotated[Format, typer.Option(help="What to print.")] = Format.text,
    brief: Annotated[bool, typer.Option("--brief", help="Plain normal and absent findings on one line.")] = False,
    out: Annotated[Path | None, typer.Option(metavar="DIR", help="Write all files there instead.")] = None,
    patient: Annotated[str, typer.Option(metavar="REF", help="Your reference for the patient.")] = "",
    examined_at: Annotated[str, typer.Option(metavar="TIME", help="Time of examination, 2026-03-04T14:30.")] = "",
    age: Annotated[float | None, typer.Option(min=0, max=130, help="Age in years, for figures that need it.")] = None,
    height: Annotated[float | None, typer.Option(min=20, max=280, help="Height in cm, where figures need it.")] = None,
    scope: Annotated[str, typer.Option(metavar="NAME", help="Ask for what this complaint calls for.")] = "",
    model: Annotated[str, typer.Option(metavar="NAME|PATH", help="Speech model.")] = "",
    device: Annotated[Device, typer.Option(help="Where the model runs.")] = Device.auto,
    grammar: Annotated[Path | None, typer.Option(metavar="FOLDER", help="Your own grammar files.")] = None,
    strict: Annotated[bool, typer.Option("--strict", help="Exit with 3 when queries must be settled.")] = False,
    save: Annotated[bool, typer.Option("--save", help="Keep it in the records, as a draft.")] = False,
    record: Annotated[str, typer.Option(metavar="KEY", help="Add to this unsigned record.")] = "",
    keep_audio: Annotated[KeepAudio, typer.Option(help="How long saved recordings stay.")] = KeepAudio.until_signed,
) -> None:
    """Turn one dictated examination into a note.

    Example: dictate note clinic.flac --patient P-17 --out notes
    """
    from dictate.cli.saving import keep, must_take_more
    from dictate.pipeline import examine, is_text

    if record:
        must_take_more(record, patient)
    time = _time(examined_at)
    taken = [_source(source) for source in sources]
    knowledge = open_grammar(grammar)
    _known_scope(scope, knowledge)
    engine = None if all(map(is_text, taken)) else _engine(model, device.value)
    with _progress(shown=engine is not None) as progress:
        exam = examine(
            taken, engine=engine, grammar=knowledge, scope=scope, patient=patient, examined_at=time, age=age,
            height=height, conventions=_conventions(), progress=progress,
        )  # fmt: skip
    try:
        if save or record:
            exam = keep(exam, taken, knowledge, record=record, keep_audio=keep_audio.value, age=age)
    finally:  # also when it could not be saved: what was heard is not lost
        _hand_over(exam, knowledge, format, out, name=patient or Path(sources[0]).stem, brief=brief)
    if strict and exam.open_musts:
        sys.stdout.flush()
        raise typer.Exit(OPEN_QUERIES)


def _hand_over(exam: Examination, grammar: Grammar, form: Format, out: Path | None, *, name: str, brief: bool) -> None:
    """Print it, or write all files."""
    from dictate.cli.export import print_bytes, rendered

    if out is None:
        print_bytes(rendered(exam, grammar, form, brief=brief))
    else:
        _write(exam, grammar, out, name=name, brief=brief)


def hear_and_read(sources: list[str], *, patient: str) -> Examination:
    """A further dictation with the usual model, grammar and device."""
    from dictate.pipeline import examine, is_text

    taken = [_source(source) for source in sources]
    engine = None if all(map(is_text, taken)) else _engine("", "auto")
    with _progress(shown=engine is not None) as progress:
        return examine(taken, engine=engine, grammar=open_grammar(None), patient=patient, progress=progress)


def open_grammar(folder: Path | None) -> Grammar:
    """The packaged grammar with the user's own files: the folder given, else the usual one where it exists."""
    from dictate.grammar import load_grammar
    from dictate.settings import user_grammar_folder

    usual = user_grammar_folder()
    return load_grammar(folder or (usual if usual.is_dir() else None))


def _source(source: str) -> Path | Typed:
    from dictate.pipeline import Typed

    if source != STDIN:
        return Path(source)
    try:
        return Typed("standard input", sys.stdin.buffer.read().decode("utf-8-sig"))
    except UnicodeDecodeError as fault:
        raise InputError("standard input: is no UTF-8 text: name a recording as a file") from fault


def _time(text: str) -> datetime | None:
    if not text:
        return None
    try:
        return datetime.fromisoformat(text)
    except ValueError as fault:
        raise InputError(f"--examined-at {text}: is no time: write it as 2026-03-04T14:30") from fault


def _conventions() -> Conventions:
    """What the user settled where sources of figures differ; defaults without such a file."""
    from pydantic import ValidationError

    from dictate.reckoning import Conventions
    from dictate.settings import figures_file, figures_settings

    try:
        return Conventions.model_validate(figures_settings())
    except ValidationError as fault:
        first = fault.errors()[0]
        name = ".".join(map(str, first["loc"]))
        raise InputError(f"{figures_file()}: {name}: {first['msg'].lower()}") from fault


def _known_scope(scope: str, grammar: Grammar) -> None:
    if scope and scope not in grammar.scopes:
        near = difflib.get_close_matches(scope, grammar.scopes, 3, 0.5) or sorted(grammar.scopes)
        raise InputError(f"--scope {scope}: no such scope: did you mean {' or '.join(near)}?")


def _engine(model: str, device: Literal["auto", "cpu", "cuda"]) -> Hearer:
    from dictate.hearing import Engine

    return Engine(model=model or None, device=device)


@contextlib.contextmanager
def _progress(*, shown: bool) -> Iterator[Callable[[float], None] | None]:
    """A bar with the time left on stderr, when somebody is looking."""
    logging.captureWarnings(capture=True)  # a library's warning is no message of this program
    if not shown or not sys.stderr.isatty():
        yield None
        return
    from rich.console import Console
    from rich.progress import BarColumn, Progress, TextColumn, TimeRemainingColumn

    columns = (TextColumn("{task.description}"), BarColumn(), TimeRemainingColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task("listening", total=1.0)
        yield lambda share: bar.update(task, completed=share)


def _write(exam: Examination, grammar: Grammar, folder: Path, *, name: str, brief: bool) -> None:
    from dictate.cli.files import file_name, write_files
    from dictate.notes import FILES, write_note

    first = file_name(name)
    files = {f"{first}.note.txt": write_note(exam, grammar, brief=brief)}
    files |= {f"{first}.{ending}": write(exam) for ending, write in FILES.items()}
    write_files(folder, files)
    print(f"{len(files)} files written to {folder}", file=sys.stderr)
