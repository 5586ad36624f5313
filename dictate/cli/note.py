"""`dictate note`: recordings or transcripts of one examination → the note."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from dictate.cli.asked import (
    OPEN_QUERIES,
    STANDARD_INPUT,
    Age,
    Brief,
    Device,
    ExaminedAt,
    Height,
    KeepAudio,
    ModelName,
    OnDevice,
    OutFolder,
    OwnGrammar,
    Patient,
    ScopeName,
    Strict,
    examined,
    known_scope,
    open_grammar,
    time_of,
)
from dictate.cli.earlier import tied_to_record
from dictate.cli.export import Format, print_or_write
from dictate.errors import InputError

if TYPE_CHECKING:
    from dictate.pipeline import Typed

STDIN = "-"


def note(
    sources: Annotated[
        list[str],
        typer.Argument(metavar="SOURCE...", help="Recordings or .txt transcripts, in order of dictation; - is stdin."),
    ],
    format: Annotated[Format, typer.Option(help="What to print.")] = Format.text,
    brief: Brief = False,
    out: OutFolder = None,
    patient: Patient = "",
    examined_at: ExaminedAt = "",
    age: Age = None,
    height: Height = None,
    scope: ScopeName = "",
    model: ModelName = "",
    device: OnDevice = Device.auto,
    grammar: OwnGrammar = None,
    strict: Strict = False,
    save: Annotated[bool, typer.Option("--save", help="Keep it in the records, as a draft.")] = False,
    record: Annotated[str, typer.Option(metavar="KEY", help="Add to this unsigned record.")] = "",
    keep_audio: Annotated[KeepAudio, typer.Option(help="How long saved recordings stay.")] = KeepAudio.until_signed,
) -> None:
    """Turn one dictated examination into a note.

    Example: dictate note clinic.flac --patient P-17 --out notes
    """
    from dictate.cli.saving import keep, must_take_more

    if record:
        must_take_more(record, patient)
    time = time_of(examined_at)
    _each_once(sources)
    taken = [source_of(source) for source in sources]
    knowledge = open_grammar(grammar)
    known_scope(scope, knowledge)
    exam = examined(
        taken, knowledge, model=model, device=device, scope=scope, patient=patient, examined_at=time, age=age,
        height=height,
    )  # fmt: skip
    exam = exam if record else tied_to_record(exam, knowledge)
    try:
        if save or record:
            exam = keep(exam, taken, knowledge, record=record, keep_audio=keep_audio.value, age=age).exam
    finally:  # also when it could not be saved: what was heard is not lost
        print_or_write(exam, knowledge, format, out, name=patient or Path(sources[0]).stem, brief=brief)
    if strict and exam.open_musts:
        sys.stdout.flush()
        raise typer.Exit(OPEN_QUERIES)


def _each_once(sources: list[str]) -> None:
    """Raises: InputError when a source is named twice: its words would stand in the transcript twice."""
    seen: set[Path] = set()
    for source in sources:
        place = Path(source).resolve()
        if place in seen:
            raise InputError(f"{source}: is named twice: name each source once, in order of dictation")
        seen.add(place)


def source_of(source: str) -> Path | Typed:
    """A file, or the words on stdin for `-`. Raises: InputError."""
    from dictate.pipeline import Typed

    if source != STDIN:
        return Path(source)
    try:
        return Typed(STANDARD_INPUT, sys.stdin.buffer.read().decode("utf-8-sig"))
    except UnicodeDecodeError as fault:
        raise InputError("standard input: is no UTF-8 text: name a recording as a file") from fault
