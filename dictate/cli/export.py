"""`dictate export` and `dictate compare`: an examination handed on, and what changed between visits."""

from __future__ import annotations

import itertools
import sys
from datetime import UTC, datetime
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from dictate.cli.asked import STANDARD_INPUT, OwnGrammar, open_grammar
from dictate.cli.opening import Opened, examination_in, is_file, opened
from dictate.errors import InputError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.model import Around, Examination
    from dictate.notes.fhir import State

FEWEST_VISITS = 2
PDF_START = b"%PDF-"
ENDING = ".exam.json"
NOTE_ENDING = "note.txt"


OutFile = Annotated[Path | None, typer.Option(metavar="FILE", help="Write there instead of to stdout.")]
Force = Annotated[bool, typer.Option("--force", help="Write over the FILE that is there.")]


class Format(StrEnum):
    """What an examination is written as."""

    text = "text"
    json = "json"
    csv = "csv"
    html = "html"
    pdf = "pdf"
    fhir = "fhir"


class ComparisonFormat(StrEnum):
    """What a comparison is written as."""

    text = "text"
    html = "html"
    csv = "csv"
    json = "json"


def export(
    record: Annotated[str, typer.Argument(metavar="RECORD", help="Key of a record, or an exam.json.")],
    format: Annotated[Format, typer.Option(help="What to write.")] = Format.text,
    brief: Annotated[bool, typer.Option("--brief", help="Plain findings share a line.")] = False,
    out: OutFile = None,
    force: Force = False,
    grammar: OwnGrammar = None,
) -> None:
    """Hand one examination on: text to paste, a page, a PDF, a table, JSON or a FHIR document.

    Example: dictate export notes/P-17.exam.json --format pdf --out P-17.pdf
    """
    _must_be_free(out, [record], force=force)
    knowledge = open_grammar(grammar)
    one = opened(record, knowledge)
    if one.note and format is Format.text:
        _hand_over(one.note.encode("utf-8"), out)  # what was signed is printed from its stored text
        return
    _hand_over(rendered(one.exam, knowledge, format, brief=brief, state=one.state, around=one.around), out)
    if format in (Format.csv, Format.json):
        _tell_what_is_missing(record, one, format)


def compare(
    records: Annotated[
        list[str],
        typer.Argument(metavar="EARLIER LATER...", help="Records or exam.json files of one patient, in order of time."),
    ],
    format: Annotated[ComparisonFormat, typer.Option(help="What to write.")] = ComparisonFormat.text,
    out: OutFile = None,
    force: Force = False,
    grammar: OwnGrammar = None,
) -> None:
    """Say item by item what changed between visits of one patient.

    Example: dictate compare spring.exam.json autumn.exam.json
    """
    from dictate.notes import compare_visits, comparison_csv, comparison_html, comparison_json, comparison_text

    if len(records) < FEWEST_VISITS:
        raise InputError(f"{records[0]}: is one visit only: name an earlier and a later one")
    _must_be_free(out, records, force=force)
    knowledge = open_grammar(grammar)
    visited = [opened(record, knowledge) for record in records]
    exams = [one.exam for one in visited]
    _one_patient(records, exams)
    visits = compare_visits(exams, knowledge, [one.state for one in visited])
    write = {
        ComparisonFormat.text: comparison_text,
        ComparisonFormat.html: comparison_html,
        ComparisonFormat.csv: comparison_csv,
        ComparisonFormat.json: comparison_json,
    }[format]
    _hand_over(write(visits).encode("utf-8"), out)
    if format is ComparisonFormat.csv:
        for record, one in zip(records, visited, strict=True):
            _tell_what_is_missing(record, one, format)


def rendered(
    exam: Examination,
    grammar: Grammar,
    form: Format,
    *,
    brief: bool,
    state: State | None = None,
    around: Around | None = None,
) -> bytes:
    """The examination in the form asked for. state: of its record. Raises: MachineError when an extra is missing."""
    from dictate.model import Around
    from dictate.notes import exam_json, findings_csv, note_fhir, note_html, note_pdf, write_note

    around = around or Around()
    if form is Format.pdf:
        return note_pdf(exam, grammar, brief=brief, around=around)
    if form is Format.fhir:
        text = note_fhir(exam, grammar, written_at=datetime.now(UTC), state=state, around=around)
    elif form is Format.html:
        text = note_html(exam, grammar, brief=brief, around=around)
    elif form is Format.json:
        text = exam_json(exam)
    elif form is Format.csv:
        text = findings_csv(exam)
    else:
        text = write_note(exam, grammar, brief=brief)
    return text.encode("utf-8")


def _tell_what_is_missing(record: str, one: Opened, form: Format | ComparisonFormat) -> None:
    """What the records say of it, and neither the columns of a table nor an examination can hold."""
    from dictate.catalogue import note as words

    missing = [words.HANDED_ON_WITHDRAWN] if one.state == "withdrawn" else []
    missing += [words.HANDED_ON_ADDENDA] if one.addenda else []
    for line in missing:
        print(line.format(record=record, form=form.value, count=one.addenda), file=sys.stderr)


def print_bytes(content: bytes) -> None:
    """Write to stdout what may be no text. Raises: InputError when it is a PDF and somebody is looking."""
    if content.startswith(PDF_START) and sys.stdout.isatty():
        raise InputError("standard output: a terminal shows no PDF: write it to a file with > FILE")
    sys.stdout.flush()
    sys.stdout.buffer.write(content)
    sys.stdout.buffer.flush()


def _one_patient(records: list[str], exams: list[Examination]) -> None:
    known = {exam.patient for exam in exams if exam.patient}
    if len(known) > 1:
        raise InputError(f"{records[0]}: the examinations are of several patients: compare those of one")


def _must_be_free(out: Path | None, records: list[str], *, force: bool) -> None:
    """Raises: InputError when something would be lost that stands there; what is being read, whatever was said."""
    if out is None or not (out.exists() or out.is_symlink()):
        return
    if out.exists() and not out.is_file():
        kind = "a folder" if out.is_dir() else "no plain file"
        raise InputError(f"--out {out}: is {kind}: name a file, or leave --out away for standard output")
    if any(is_file(record) and Path(record).exists() and out.samefile(record) for record in records if out.exists()):
        raise InputError(f"--out {out}: is the examination itself: give another name")
    if not force:
        raise InputError(f"--out {out}: is there already: give another name, or --force to write over it")


def _hand_over(content: bytes, out: Path | None) -> None:
    from dictate.cli.files import write_file

    if out is None:
        print_bytes(content)
    else:
        write_file(out, content)
        print(f"written to {out}", file=sys.stderr)


def print_or_write(
    exam: Examination, grammar: Grammar, form: Format, out: Path | None, *, name: str, brief: bool
) -> None:
    """Print it, or write all files into a folder. Raises: MachineError."""
    if out is None:
        print_bytes(rendered(exam, grammar, form, brief=brief))
    else:
        _write(exam, grammar, out, name=name, brief=brief)


def _write(exam: Examination, grammar: Grammar, folder: Path, *, name: str, brief: bool) -> None:
    from dictate.cli.files import file_name, write_files
    from dictate.notes import FILES, write_note

    first = _free_name(folder, file_name(name), exam)
    files = {f"{first}.{NOTE_ENDING}": write_note(exam, grammar, brief=brief)}
    files |= {f"{first}.{ending}": write(exam) for ending, write in FILES.items()}
    write_files(folder, files)
    print(f"{len(files)} files written to {folder}", file=sys.stderr)


def _free_name(folder: Path, first: str, exam: Examination) -> str:
    """The name, or with a number behind it where another examination, or one that was reviewed, would be lost."""
    names = (first if number == 1 else f"{first}-{number}" for number in itertools.count(1))
    name = next(name for name in names if _may_be_replaced(folder / f"{name}{ENDING}", exam))
    if name != first:
        told = f"{folder}: {first} is of another examination, or was reviewed: it stays, this one is {name}"
        print(told, file=sys.stderr)
    return name


def _may_be_replaced(path: Path, exam: Examination) -> bool:
    """Nothing is there, or the same examination read before and not yet reviewed; a transcript may be corrected."""
    from dictate.notes import FILES

    if not path.exists():  # its other files alone are somebody's
        first = path.name.removesuffix(ENDING)
        return not any(path.with_name(f"{first}.{ending}").exists() for ending in (NOTE_ENDING, *FILES))
    try:
        old = examination_in(path)
    except InputError:
        return False
    if old.decisions or old.signed_at or (old.patient, old.examined_at) != (exam.patient, exam.examined_at):
        return False
    was, now = old.transcript.sources, exam.transcript.sources
    if [source.sha256 for source in was] == [source.sha256 for source in now]:
        return True
    files = all(source.kind == "text" and source.name != STANDARD_INPUT for source in (*was, *now))
    return files and [source.name for source in was] == [source.name for source in now]
