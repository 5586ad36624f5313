"""`dictate listen`: an examination as it is spoken → the note."""

from __future__ import annotations

import contextlib
import signal
import sys
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from dictate.cli.asked import (
    OPEN_QUERIES,
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
    cleared_up,
    conventions,
    known_scope,
    open_grammar,
    time_of,
)
from dictate.cli.earlier import tied_to_record
from dictate.cli.export import Format, print_or_write
from dictate.cli.own_lines import own_lines_only
from dictate.errors import BrokenOff, DictateError, InputError, MachineError

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.hearing.microphone import FileSource, Microphone
    from dictate.live import Kept, Result, Session
    from dictate.live.kept import Facts
    from dictate.live.screen import Screen
    from dictate.model import Examination

KEEP_DAYS = 14.0
KeepSound = Annotated[KeepAudio, typer.Option(help="Sound after the note: delete it, keep it for a while, or keep it.")]
KeepDays = Annotated[
    float, typer.Option(min=0.1, metavar="DAYS", help="Sound of dictations older than this is deleted at a start.")
]


def listen(
    source: Annotated[Path | None, typer.Option(metavar="FILE", help="Play a recording through the same path.")] = None,
    fast: Annotated[bool, typer.Option("--fast", help="Play it as fast as it can be heard.")] = False,
    resume: Annotated[bool, typer.Option("--resume", help="Take up the dictation that was interrupted.")] = False,
    plain: Annotated[bool, typer.Option("--plain", help="Lines only, no screen.")] = False,
    quiet: Annotated[bool, typer.Option("--quiet", help="No tones, nothing read aloud.")] = False,
    microphone: Annotated[str, typer.Option(metavar="NAME", help="Part of its name; remembered.")] = "",
    format: Annotated[Format, typer.Option(help="What to print at the end.")] = Format.text,
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
    keep_audio: KeepSound = KeepAudio.until_signed,
    keep_days: KeepDays = KEEP_DAYS,
    strict: Strict = False,
    save: Annotated[bool, typer.Option("--save", help="Keep it in the records, as a draft.")] = False,
    record: Annotated[str, typer.Option(metavar="KEY", help="Add to this unsigned record.")] = "",
    review: Annotated[bool, typer.Option("--review", help="Save it, and settle its queries at once.")] = False,
) -> None:
    """Listen to an examination as it is spoken; write the note when it ends. Ctrl-C ends it, a second one breaks off.

    Example: dictate listen --patient P-17 --scope screening --out notes

    Say by itself, between two pauses: "pause dictation", "resume dictation", "end of dictation", "read that back",
    "what is still open", "start the clock". grammars/controls.yaml lists every way to say them; "strike that" and
    corrections are dictated as ever.

    Sound is on the disk before it is heard. What a crash interrupts is taken up with --resume.
    """
    knowledge = open_grammar(grammar)
    known_scope(scope, knowledge)
    facts = _facts(source, patient=patient, scope=scope, age=age, height=height, time=time_of(examined_at))
    kept = _taken_up(facts, record) if resume else _kept(facts, record, days=keep_days)
    with contextlib.closing(kept), own_lines_only():
        session = _begun(kept, knowledge, model, device, microphone=microphone, plain=plain, quiet=quiet, fast=fast)
        with _until_ctrl_c(session):
            result = session.run()
        keeping = keep_audio if save or review or record else None
        exam, saved = _ended(result, kept, knowledge, format, brief=brief, out=out, record=record, keeping=keeping)
        _after(kept, keep_audio, days=keep_days, whole=result.whole, saved=bool(saved))
    if review:
        _settle(saved, grammar)
    if strict and exam.open_musts:
        raise typer.Exit(OPEN_QUERIES)


def _begun(
    kept: Kept, grammar: Grammar, model: str, device: Device, *, microphone: str, plain: bool, quiet: bool, fast: bool
) -> Session:
    """The session; a dictation that cannot begin leaves nothing behind."""
    cleared_up()
    try:
        sound = _source(kept, fast=fast, microphone=microphone)
        return _session(kept, sound, grammar, model, device, plain=plain, quiet=quiet, fast=fast)
    except (InputError, MachineError):
        if not kept.samples():
            kept.remove()
        raise


def _ended(
    result: Result, kept: Kept, grammar: Grammar, form: Format, *, brief: bool, out: Path | None, record: str,
    keeping: KeepAudio | None,
) -> tuple[Examination, str]:  # fmt: skip
    """The examination, printed or written as `note` does, and the key of its record; `keeping` None: it gets none."""
    from dictate.cli.saving import keep

    for line in result.changed:
        print(f"hearing the whole again changed: {line}", file=sys.stderr)
    exam = result.exam if record else tied_to_record(result.exam, grammar)
    key, facts = "", kept.facts
    try:
        if keeping is not None:
            stored = keep(exam, result.sounds, grammar, record=record, keep_audio=keeping.value, age=facts.age)
            exam, key = stored.exam, stored.key
    finally:  # also when it could not be saved: what was dictated is not lost
        name = facts.patient or Path(facts.file or "dictation").stem
        print_or_write(exam, grammar, form, out, name=name, brief=brief)
    return exam, key


def _settle(key: str, grammar: Path | None) -> None:
    """Straight into the review of the record."""
    from dictate.cli.review import review

    sys.stdout.flush()
    review(key, grammar=grammar)


def _facts(
    source: Path | None, *, patient: str, scope: str, age: float | None, height: float | None, time: datetime | None
) -> Facts:
    """What a dictation is begun with, now."""
    from dictate.live.kept import Facts

    return Facts(
        started_at=datetime.now().astimezone(), patient=patient, scope=scope, age=age, height=height, examined_at=time,
        file="" if source is None else str(source.resolve()),
    )  # fmt: skip


def _kept(facts: Facts, record: str, *, days: float) -> Kept:
    """The folder of this dictation; older ones are named, and deleted after `days`."""
    from dictate.cli.saving import must_take_more
    from dictate.live.kept import Kept, length_s, remove_old
    from dictate.settings import sound_folder

    if record:
        must_take_more(record, facts.patient)
    place = sound_folder()
    gone = remove_old(place, days=days, now=facts.started_at.replace(tzinfo=None))
    if gone:
        print(f"sound of {gone} dictations older than {days:g} days was deleted", file=sys.stderr)
    for waiting in Kept.interrupted(place):
        print(
            f"a dictation of {waiting.name[:16]} was interrupted ({length_s(waiting):.0f} s of sound): "
            "`dictate listen --resume` takes it up",
            file=sys.stderr,
        )
    return Kept.begin(place, facts)


def _taken_up(asked: Facts, record: str) -> Kept:
    """The folder of the interrupted dictation, whose options are remembered.

    Raises: InputError when it was of another file or patient than is asked now, or than the record.
    """
    from dictate.cli.saving import must_take_more
    from dictate.live.kept import Kept
    from dictate.settings import sound_folder

    kept = Kept.resume(sound_folder())
    try:
        if asked.file and kept.facts.file != asked.file:
            raise InputError(
                f"--source {asked.file}: the interrupted dictation was not of this file: leave --source out"
            )
        if asked.patient and kept.facts.patient != asked.patient:
            raise InputError("--patient: the interrupted dictation has another reference, or none: leave --patient out")
        if record:
            must_take_more(record, kept.facts.patient)
    except DictateError:
        kept.close()
        raise
    return kept


def _source(kept: Kept, *, fast: bool, microphone: str) -> FileSource | Microphone:
    from dictate.hearing.microphone import FileSource, Microphone
    from dictate.settings import microphone_file

    if kept.facts.file:
        return FileSource(Path(kept.facts.file), fast=fast, skip=kept.samples())
    if fast:
        raise InputError("--fast: a microphone is as fast as it is: name a recording with --source FILE")
    memory = microphone_file()
    with contextlib.suppress(OSError):
        if not microphone and memory.is_file():
            microphone = memory.read_text(encoding="utf-8").strip()
        elif microphone:
            memory.parent.mkdir(parents=True, exist_ok=True)
            memory.write_text(microphone + "\n", encoding="utf-8")
    return Microphone(microphone)


def _session(
    kept: Kept, sound: FileSource | Microphone, grammar: Grammar, model: str, device: Device, *, plain: bool,
    quiet: bool, fast: bool,
) -> Session:  # fmt: skip
    from dictate.live import Session
    from dictate.live.recogniser import EngineMaker
    from dictate.live.tones import Muting, Sounds, find_voice, loudspeaker

    def sounds(muting: Muting) -> Sounds:
        return Sounds(muting, play=loudspeaker(), voice=find_voice())

    screen = _screen(plain=plain)
    screen.line(f"source: {sound.name}")
    return Session(
        sound, kept, grammar, EngineMaker(model, device.value), screen, fast=fast, name=_name(kept),
        conventions=conventions(),
        sounds=sounds if sound.plays and not quiet else None,
        created_at=sound.created_at if kept.facts.file else kept.facts.started_at,
    )  # fmt: skip


def _name(kept: Kept) -> str:
    return Path(kept.facts.file).name if kept.facts.file else ""


def _screen(*, plain: bool) -> Screen:
    from dictate.live.screen import PlainScreen, WideScreen

    return PlainScreen() if plain or not sys.stderr.isatty() else WideScreen()


@contextlib.contextmanager
def _until_ctrl_c(session: Session) -> Iterator[None]:
    """Ctrl-C once ends the dictation properly, twice breaks off; a terminal that closes breaks off at once."""
    pressed = 0

    def end(_number: int, _frame: object) -> None:
        nonlocal pressed
        pressed += 1
        if pressed > 1:
            raise BrokenOff("broken off: the sound is kept: `dictate listen --resume` takes it up")
        session.stop()

    def break_off(_number: int, _frame: object) -> None:
        raise BrokenOff("ended from outside: the sound is kept: `dictate listen --resume` takes it up")

    before = {signal.SIGINT: signal.signal(signal.SIGINT, end)}
    for number in (signal.SIGTERM, signal.SIGHUP):
        before[number] = signal.signal(number, break_off)
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def _after(kept: Kept, keep: KeepAudio, *, days: float, whole: bool, saved: bool) -> None:
    """What becomes of the sound once the note is out; a record has its own copy, for as long as was asked."""
    if whole and (saved or keep is KeepAudio.no):
        kept.remove()
        return
    if not (whole or saved):  # what the whole would have given is still to be had
        kept.close()
        print(f"the sound stays in {kept.folder}: `dictate listen --resume` hears the whole again", file=sys.stderr)
        return
    kept.finish()
    if keep is KeepAudio.always:
        files = kept.keep_for_good()
        print(f"the sound stays in {files}", file=sys.stderr)
    else:
        print(f"the sound stays in {kept.folder} for {days:g} days", file=sys.stderr)
