"""Options that several commands share, and what becomes of them: time, scope, grammar, conventions, an engine."""

from __future__ import annotations

import contextlib
import difflib
import logging
import sys
from collections.abc import Callable, Iterator, Sequence
from datetime import datetime
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from dictate.errors import InputError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.model import Conventions, Examination
    from dictate.pipeline import Typed

OPEN_QUERIES = 3  # exit status with --strict
STANDARD_INPUT = "standard input"  # name of the source of what was typed there


class KeepAudio(StrEnum):
    """How long recordings stay."""

    no = "no"
    until_signed = "until-signed"
    always = "always"


class Device(StrEnum):
    """Where the model runs."""

    auto = "auto"
    cpu = "cpu"
    cuda = "cuda"


def on_one_line(reference: str | None) -> str | None:
    """A reference without line ends and letters that steer a terminal; None: not given."""
    if reference is None:
        return None
    return "".join(letter for letter in " ".join(reference.split()) if letter.isprintable())


def not_empty(text: str | None) -> str | None:
    """An option that says something when it is given: a script's empty variable is not the same as none."""
    if text is not None and not text.strip():
        raise typer.BadParameter("is empty: say it, or leave the option out")
    return text


Brief = Annotated[bool, typer.Option("--brief", help="Plain normal and absent findings on one line.")]
OutFolder = Annotated[Path | None, typer.Option(metavar="DIR", help="Write all files there instead.")]
Patient = Annotated[str, typer.Option(metavar="REF", help="Your reference for the patient.", callback=on_one_line)]
ExaminedAt = Annotated[str, typer.Option(metavar="TIME", help="Time of examination, 2026-03-04T14:30.")]
Age = Annotated[float | None, typer.Option(min=0, max=130, help="Age in years, for figures that need it.")]
Height = Annotated[float | None, typer.Option(min=20, max=280, help="Height in cm, where figures need it.")]
ScopeName = Annotated[str, typer.Option(metavar="NAME", help="Ask for what this complaint calls for.")]
ModelName = Annotated[str, typer.Option(metavar="NAME|PATH", help="Speech model.")]
OnDevice = Annotated[Device, typer.Option(help="Where the model runs.")]
OwnGrammar = Annotated[Path | None, typer.Option(metavar="FOLDER", help="Your own grammar files.")]
Strict = Annotated[bool, typer.Option("--strict", help="Exit with 3 when queries must be settled.")]


def cleared_up() -> None:
    """Remove temporary folders that a crash left, sound and all; what a full disk refused stays, and is named."""
    from dictate.settings import clear_temporary_folders

    for folder in clear_temporary_folders():
        print(f"sound rescued from a full disk is still in {folder}: move it, or delete it", file=sys.stderr)


def time_of(text: str) -> datetime | None:
    """The time given with --examined-at; None without. Raises: InputError, also for one that is still to come."""
    from dictate.settings import is_to_come

    if not text:
        return None
    try:
        moment = datetime.fromisoformat(text)
    except ValueError as fault:
        raise InputError(f"--examined-at {text}: is no time: write it as 2026-03-04T14:30") from fault
    if is_to_come(moment, datetime.now().astimezone()):
        raise InputError(f"--examined-at {text}: is still to come: give the time at which the patient was examined")
    return moment


def open_grammar(folder: Path | None) -> Grammar:
    """The packaged grammar with the user's own files: the folder given, else the usual one where it exists."""
    from dictate.grammar import load_grammar
    from dictate.settings import user_grammar_folder

    usual = user_grammar_folder()
    return load_grammar(folder or (usual if usual.is_dir() else None))


def known_scope(scope: str, grammar: Grammar) -> None:
    """Raises: InputError when there is no such scope."""
    if scope and scope not in grammar.scopes:
        near = difflib.get_close_matches(scope, grammar.scopes, 3, 0.5) or sorted(grammar.scopes)
        raise InputError(f"--scope {scope}: no such scope: did you mean {' or '.join(near)}?")


def conventions() -> Conventions:
    """What the user settled where sources of figures differ; defaults without such a file. Raises: InputError."""
    from pydantic import ValidationError

    from dictate.model import Conventions
    from dictate.settings import figures_file, figures_settings

    try:
        return Conventions.model_validate(figures_settings())
    except ValidationError as fault:
        first = fault.errors()[0]
        name = ".".join(map(str, first["loc"]))
        raise InputError(f"{figures_file()}: {name}: {first['msg'].lower()}") from fault


def examined(
    sources: Sequence[Path | Typed],
    grammar: Grammar,
    *,
    model: str = "",
    device: Device = Device.auto,
    scope: str = "",
    patient: str = "",
    examined_at: datetime | None = None,
    age: float | None = None,
    height: float | None = None,
) -> Examination:
    """Hear or read one examination, with a bar on stderr while there is something to hear.

    Raises: InputError, MachineError.
    """
    from dictate.hearing import Engine
    from dictate.pipeline import examine, is_text

    engine = None if all(map(is_text, sources)) else Engine(model=model or None, device=device.value)
    with _progress(shown=engine is not None) as progress:
        return examine(
            sources,
            engine=engine,
            grammar=grammar,
            scope=scope,
            patient=patient,
            examined_at=examined_at,
            age=age,
            height=height,
            conventions=conventions(),
            progress=progress,
        )


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
