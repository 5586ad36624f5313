"""`dictate batch`: a folder of recordings and transcripts → result files, batch.csv, a report."""

from __future__ import annotations

import contextlib
import functools
import os
import signal
import sys
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from dictate.cli.asked import (
    OPEN_QUERIES,
    Brief,
    Device,
    KeepAudio,
    ModelName,
    OnDevice,
    OwnGrammar,
    ScopeName,
    Strict,
    cleared_up,
    conventions,
    known_scope,
    on_one_line,
    open_grammar,
    time_of,
)
from dictate.cli.export import Format, rendered
from dictate.errors import InputError

if TYPE_CHECKING:
    from dictate.batch import Asked, Found, Keeping, Setting, Tally, Watched
    from dictate.batch.jobs import Render

FAULT = 1
PAUSE_S = 10.0  # between two looks into a folder that fills
MOST_WORKERS = 512  # of one machine; a number typed wrongly must not fill its memory
EACH_BYTES = 1 << 30  # memory of a worker with the default model, with room to spare
Workers = Annotated[int | None, typer.Option(min=1, max=MOST_WORKERS, help="Processes on this machine.")]


def batch(
    folder: Annotated[
        str, typer.Argument(metavar="[FOLDER]", help="Folder or fsspec address of recordings and .txt transcripts.")
    ] = "",
    out: Annotated[Path | None, typer.Option(metavar="DIR", help="Write all results there.")] = None,
    report: Annotated[Path | None, typer.Option(metavar="DIR", help="Only report on the results in DIR.")] = None,
    only: Annotated[list[str] | None, typer.Option(metavar="PATTERN", help="Only such names or paths: *.flac.")] = None,
    skip: Annotated[list[str] | None, typer.Option(metavar="PATTERN", help="Not such names or paths.")] = None,
    together: Annotated[bool, typer.Option("--together", help="Files of a sub-folder are one examination.")] = False,
    arrivals: Annotated[bool, typer.Option("--arrivals", help="Keep looking for new ones until stopped.")] = False,
    workers: Workers = None,
    threads: Annotated[int, typer.Option(min=1, help="Processor threads of each worker.")] = 1,
    cluster: Annotated[str, typer.Option(metavar="ADDRESS", help="Dask scheduler whose workers do it.")] = "",
    patient: Annotated[
        str, typer.Option(metavar="REF", help="Your reference, where all are of one patient.", callback=on_one_line)
    ] = "",
    examined_at: Annotated[str, typer.Option(metavar="TIME", help="Time of examination, the same for all.")] = "",
    age: Annotated[float | None, typer.Option(min=0, max=130, help="Age in years, the same for all.")] = None,
    height: Annotated[float | None, typer.Option(min=20, max=280, help="Height in cm, the same for all.")] = None,
    scope: ScopeName = "",
    format: Annotated[list[Format] | None, typer.Option(help="Also write this, for each.")] = None,
    brief: Brief = False,
    model: ModelName = "",
    device: OnDevice = Device.auto,
    grammar: OwnGrammar = None,
    strict: Strict = False,
    save: Annotated[bool, typer.Option("--save", help="Keep each in the records, as a draft.")] = False,
    keep_audio: Annotated[KeepAudio, typer.Option(help="How long saved recordings stay.")] = KeepAudio.until_signed,
) -> None:
    """Turn a folder of dictated examinations into notes; started again, it does only what is missing.

    Example: dictate batch recordings --out notes
    """
    from dictate.batch import Asked, Watched, find

    if report is not None:
        return _report(report)
    if not folder or out is None:
        raise typer.BadParameter("name a FOLDER and --out DIR, or --report DIR")
    cleared_up()
    asked = Asked(patient=patient, examined_at=time_of(examined_at), age=age, height=height, scope=scope, brief=brief)
    setting = _setting(asked, model, device, threads, grammar, further=_further(format or (), brief=brief))
    look = functools.partial(find, folder, only=only or (), skip=skip or (), together=together, out=out)
    _warn_of_plain(cluster)
    found = look()
    watched = Watched(look, PAUSE_S) if arrivals else None
    with _stopped_as_by_hand(), _records(save, keep_audio) as keeping:
        count = _crew_of(workers, threads, found, watched)
        tally = _run(setting, found, watched, out, keeping, cluster=cluster, workers=count)
    return _end(tally, strict=strict)


@contextlib.contextmanager
def _stopped_as_by_hand() -> Iterator[None]:
    """What a service sends to end a program ends a batch as Ctrl-C does: workers first, and nothing left behind."""

    def stop(number: int, frame: object) -> None:
        signal.signal(number, signal.SIG_IGN)  # once is enough: what is being put away is not broken off
        raise KeyboardInterrupt

    before = {number: signal.signal(number, stop) for number in (signal.SIGTERM, signal.SIGHUP)}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def _end(tally: Tally, *, strict: bool) -> None:
    sys.stderr.flush()
    if tally.failed:
        raise typer.Exit(FAULT)
    if strict and tally.musts:
        raise typer.Exit(OPEN_QUERIES)


def _warn_of_plain(cluster: str) -> None:
    if cluster and not cluster.startswith(("tls://", "tcp://127.", "tcp://localhost")):
        print("words and sound travel unencrypted: see Dask's TLS, and use a tls:// address", file=sys.stderr)


def _setting(
    asked: Asked, model: str, device: Device, threads: int, grammar: Path | None, *, further: dict[str, Render]
) -> Setting:
    from importlib.metadata import version

    from dictate.batch import Setting
    from dictate.hearing import Engine
    from dictate.settings import PROGRAM

    knowledge = open_grammar(grammar)
    known_scope(asked.scope, knowledge)
    return Setting(
        grammar=knowledge,
        program=version(PROGRAM),
        asked=asked,
        conventions=conventions(),
        make_engine=functools.partial(Engine, model or None, device=device.value, threads=threads),
        further=further,
    )


def _further(formats: Iterable[Format], *, brief: bool) -> dict[str, Render]:
    """Ending → what writes it, for the formats that are not among the files of every examination."""
    endings = {Format.html: "note.html", Format.pdf: "note.pdf", Format.fhir: "fhir.json"}
    return {
        endings[form]: functools.partial(rendered, form=form, brief=brief) for form in formats if form in endings
    }  # fmt: skip


@contextlib.contextmanager
def _records(save: bool, keep_audio: KeepAudio) -> Iterator[Keeping | None]:
    """The records, opened before anything is heard; None without --save."""
    if not save:
        yield None
        return
    from dictate.batch import Keeping
    from dictate.cli.earlier import tied_to_last
    from dictate.cli.saving import account, opened_records

    with opened_records() as records:
        yield Keeping(records, who=account(), keep_audio=keep_audio.value, tie=tied_to_last)


def _run(
    setting: Setting, found: Found, watched: Watched | None, out: Path, keeping: Keeping | None, *, cluster: str,
    workers: int,
) -> Tally:  # fmt: skip
    from dictate.batch import Batch, Ledger, open_crew
    from dictate.batch.run import TABLE
    from dictate.batch.table import COLUMNS
    from dictate.cli.files import must_begin_so, write_files

    must_begin_so(out / TABLE, COLUMNS[0])
    with Ledger(out) as ledger, open_crew(setting, cluster=cluster, workers=workers) as crew:
        ledger.forget_failed({candidate.source for candidate in found.candidates})
        total = None if watched else sum(candidate.size for candidate in found.candidates)
        with _bar(total, len(found.candidates)) as watch:
            run = Batch(setting, crew, ledger, write=write_files, watch=watch, keeping=keeping)
            try:
                run.run(watched or found.candidates)
            except KeyboardInterrupt:
                _summary(run.tally, found, out, stopped=bool(watched))
                if not watched:
                    raise  # which is told as that of every command
                return run.tally
    _summary(run.tally, found, out)
    return run.tally


def _crew_of(asked: int | None, threads: int, found: Found, watched: Watched | None) -> int:
    """As many processes as were asked for, else as there is room for; never more than there can be work for."""
    count = asked or _workers(threads)
    return count if watched else max(1, min(count, len(found.candidates)))


def _workers(threads: int) -> int:
    """As many processes as there are processors for their threads, and memory for their models."""
    usable = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    held = os.sysconf("SC_PHYS_PAGES") * os.sysconf("SC_PAGE_SIZE") if hasattr(os, "sysconf") else usable * EACH_BYTES
    return max(1, min(usable // threads, held // EACH_BYTES))


def _report(folder: Path) -> None:
    from dictate.batch import report_csv, report_of, report_text
    from dictate.batch.report import COLUMNS
    from dictate.cli.files import must_begin_so, write_files

    if not folder.is_dir():
        raise InputError(f"--report {folder}: no such folder: name the --out of a batch")
    lines = report_of(folder)
    text = report_text(lines)
    must_begin_so(folder / "report.csv", COLUMNS[0])
    must_begin_so(folder / "report.txt", text.partition("\n")[0])
    write_files(folder, {"report.csv": report_csv(lines), "report.txt": text})
    sys.stdout.write(text)


def _summary(tally: Tally, found: Found, out: Path, *, stopped: bool = False) -> None:
    """How it went, on stderr; no name of a source."""

    def say(line: str) -> None:
        print(line, file=sys.stderr)

    say(f"{'stopped: ' if stopped else ''}{tally.done} done, {tally.before} done before, {tally.failed} failed")
    if tally.reviewed:
        say(f"{tally.reviewed} of those before reviewed since, and left as they are, not read anew")
    if tally.done:
        say(f"{tally.sound_s / 60:.1f} min of sound, {tally.findings} findings, {tally.musts} must, {tally.looks} look")
    if tally.same:
        say(f"{tally.same} with the same content as another, not taken again: same_as in batch.csv")
    if found.others:
        say(f"{found.others} other {'file' if found.others == 1 else 'files'} left aside")
    if found.loops:
        say(f"{found.loops} {'link leads' if found.loops == 1 else 'links lead'} back to folders already entered")
    if found.results:
        folders = "a folder" if found.results == 1 else f"{found.results} folders"
        say(f"{folders} with results of a batch passed over, dictations in it, too: name it itself to have them heard")
    if tally.failed:
        say(f"what failed and why: {out / 'batch.csv'}; run again when it is mended")


@contextlib.contextmanager
def _bar(total: int | None, count: int) -> Iterator[Callable[[Tally], None]]:
    """One bar with the time left, when somebody is looking; by bytes, for they are known beforehand."""
    if not sys.stderr.isatty():
        yield lambda tally: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn, TimeRemainingColumn

    left = TimeElapsedColumn() if total is None else TimeRemainingColumn()
    columns = (TextColumn("{task.description}"), BarColumn(), left)
    with Progress(*columns, console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task("listening", total=total)

        def watch(tally: Tally) -> None:
            of = "" if total is None else f" of {count}"
            failed = f", {tally.failed} failed" if tally.failed else ""
            bar.update(task, completed=tally.size_done, description=f"{tally.settled}{of}{failed}")

        yield watch
