"""From recordings or typed transcripts to the examination they describe: the README paragraph as code."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from importlib.metadata import version
from pathlib import Path
from typing import Protocol, runtime_checkable

from dictate.errors import InputError
from dictate.grammar import ComponentFile, Grammar
from dictate.model import (
    Conventions,
    Examination,
    Hints,
    Origin,
    Person,
    Remark,
    RemarkKind,
    Source,
    Stretch,
    Transcript,
    Word,
)
from dictate.settings import PROGRAM

FIRST_HINTS = 8  # terms of each component for the first pass: together they fit the recogniser's prompt
BREAK = "\n\n"  # between two sources: no statement runs on
TEXT_ENDING = ".txt"
Progress = Callable[[float], None]  # share done, 0..1


class Hearer(Protocol):
    """What is asked of an engine: one recording → words with times."""

    def hear(self, path: Path, *, hints: Hints, progress: Progress | None = None) -> Transcript:
        """Hear the whole recording."""


@runtime_checkable
class Weigher(Protocol):
    """What is asked of an engine that can tell how well other words fit a recording that it has heard."""

    def weigh(self, sha256: str, start_s: float, end_s: float, texts: Sequence[str]) -> list[float]:
        """Log-probability of each text for a stretch of the recording of that digest; empty: cannot tell."""

    def knows(self, word: str) -> bool:
        """Whether it is a word of English, as far as the engine can tell."""

    def forget(self) -> None:
        """Let go of what was kept of the recordings."""


@dataclass(frozen=True)
class Typed:
    """A transcript that is text already, and what to call it."""

    name: str
    text: str


def is_text(source: Path | Typed) -> bool:
    """Whether nothing has to be heard."""
    return isinstance(source, Typed) or source.suffix.lower() == TEXT_ENDING


def examine(
    sources: Sequence[Path | Typed],
    *,
    engine: Hearer | None,
    grammar: Grammar,
    scope: str = "",
    patient: str = "",
    examined_at: datetime | None = None,
    age: float | None = None,
    height: float | None = None,
    conventions: Conventions | None = None,
    progress: Progress | None = None,
) -> Examination:
    """Hear or read one examination, dictated in one or several pieces, and return it with its queries.

    sources: in order of dictation. engine: None when every source is text. age: years. height: cm.
    Raises: InputError, MachineError.
    """
    hints = hints_of(grammar)
    pieces = []
    for at, source in enumerate(sources):
        part = None if progress is None else _part_of(progress, at, len(sources))
        pieces.append(_take(source, engine=engine, hints=hints, progress=part))
    try:
        return examine_transcript(
            join(pieces),
            grammar=grammar,
            scope=scope,
            patient=patient,
            examined_at=examined_at,
            age=age,
            height=height,
            conventions=conventions,
            weigher=engine if isinstance(engine, Weigher) else None,
        )
    finally:
        if isinstance(engine, Weigher):
            engine.forget()


def examine_transcript(
    transcript: Transcript,
    *,
    grammar: Grammar,
    weigher: Weigher | None = None,
    scope: str = "",
    patient: str = "",
    examined_at: datetime | None = None,
    age: float | None = None,
    height: float | None = None,
    conventions: Conventions | None = None,
) -> Examination:
    """Words → findings → computed figures → queries. Opens no file and asks no clock.

    weigher: has heard the recordings; None: what was heard is not doubted.
    """
    from dictate.reading import Ears, read
    from dictate.reckoning import person_of

    ears = None if weigher is None else Ears(_weigh(transcript, weigher), weigher.knows)
    reading = read(transcript, grammar, ears=ears)
    person = person_of(transcript, reading.findings, age=age, height=height)
    time, origin = _time_of(transcript, examined_at)
    exam = Examination(
        program=version(PROGRAM),
        grammar_sha256=grammar.sha256,
        patient=patient,
        examined_at=time,
        examined_at_from=origin,
        scope=scope,
        transcript=transcript,
        findings=reading.findings,
        person=person,
        conventions=conventions or Conventions(),
        withheld=reading.withheld,
        remarks=tuple(remark for remark in reading.remarks if not _says_age(remark, person)),
    )
    return reconsider(exam, grammar)


def reconsider(exam: Examination, grammar: Grammar) -> Examination:
    """Figures and queries computed anew from the findings and remarks as they stand; decisions are not looked at.

    Where sources differ the examination's own conventions hold, whatever has been settled since. A figure that rests
    on a doubtful value says so.
    """
    from dictate.reckoning import with_doubts

    return with_doubts(compute(exam, grammar), grammar)


def compute(exam: Examination, grammar: Grammar) -> Examination:
    """The same for a caller that will take settled queries out: its figures say nothing of doubts yet."""
    from dictate.checks import run_checks, whole_queries
    from dictate.reckoning import reckon

    figures = reckon(
        exam.findings,
        grammar=grammar,
        age=exam.person.age_years,
        height=exam.person.height_cm,
        scope=exam.scope,
        conventions=exam.conventions,
    )
    exam = exam.model_copy(update={"figures": figures})
    return exam.model_copy(update={"queries": (*run_checks(exam, grammar), *whole_queries(exam))})


def hints_of(grammar: Grammar) -> Hints:
    """Terms of the trade for the recogniser: those with the longest words first, for they are misheard most."""
    by_component = {component.value: _terms(part) for component, part in grammar.components.items()}
    return Hints(
        first=tuple(term for terms in by_component.values() for term in terms[:FIRST_HINTS]),
        by_component=by_component,
        headings={component.value: part.headings for component, part in grammar.components.items()},
    )


def join(pieces: Sequence[Transcript]) -> Transcript:
    """Several transcripts of one examination as one; words and stretches know their source."""
    words: list[Word] = []
    sources: list[Source] = []
    speech: list[Stretch] = []
    untranscribed: list[Stretch] = []
    for piece in pieces:
        shift = len(sources)
        moved = [word.model_copy(update={"source": word.source + shift}) for word in piece.words]
        if words and moved:
            moved[0] = moved[0].model_copy(update={"lead": BREAK})
        words += moved
        sources += piece.sources
        speech += _moved(piece.speech, shift)
        untranscribed += _moved(piece.untranscribed, shift)
    model = next((piece.model for piece in pieces if piece.model), None)
    return Transcript(
        words=tuple(words),
        sources=tuple(sources),
        speech=tuple(speech),
        untranscribed=tuple(untranscribed),
        model=model,
    )


def _weigh(transcript: Transcript, weigher: Weigher) -> Callable[[int, float, float, Sequence[str]], Sequence[float]]:
    """The engine's weighing by the number of the source in the transcript."""
    digests = [source.sha256 for source in transcript.sources]
    return lambda source, start_s, end_s, texts: weigher.weigh(digests[source], start_s, end_s, texts)


def _take(source: Path | Typed, *, engine: Hearer | None, hints: Hints, progress: Progress | None) -> Transcript:
    from dictate.reading import transcript_of_text

    if not is_text(source):
        if engine is None or isinstance(source, Typed):
            raise InputError(f"{source}: a recording needs an engine to hear it")
        return engine.hear(source, hints=hints, progress=progress)
    typed = source if isinstance(source, Typed) else Typed(source.name, _read_text(source))
    if not typed.text.strip():
        raise InputError(f"{typed.name}: the text is empty: give the words of the dictation")
    return transcript_of_text(typed.text, name=typed.name)


def _read_text(path: Path) -> str:
    try:
        if path.is_dir():
            raise InputError(f"{path}: is a folder: name a file")
        return path.read_text(encoding="utf-8-sig")
    except FileNotFoundError as fault:
        raise InputError(f"{path}: no such file: check the name") from fault
    except UnicodeDecodeError as fault:
        raise InputError(
            f"{path.name}: is no UTF-8 text: save it as plain text, or give a recording its ending"
        ) from fault
    except OSError as fault:
        reason = (fault.strerror or str(fault)).lower()
        raise InputError(f"{path}: cannot be read: {reason}: check its permissions") from fault


def _part_of(progress: Progress, at: int, count: int) -> Progress:
    """Progress of one of several sources as progress of the whole."""
    return lambda share: progress((at + share) / count)


def _moved(stretches: Iterable[Stretch], shift: int) -> list[Stretch]:
    return [stretch.model_copy(update={"source": stretch.source + shift}) for stretch in stretches]


def _terms(part: ComponentFile) -> tuple[str, ...]:
    names = [name for item in part.items.values() if not item.blanket for name in (item.name, *item.terms[:2])]
    return tuple(sorted(dict.fromkeys(names), key=lambda name: (-max(map(len, name.split())), len(name))))


def _time_of(transcript: Transcript, given: datetime | None) -> tuple[datetime | None, Origin]:
    """The option, else the first recording's own creation time; never the time of processing."""
    if given is not None:
        return given, "option"
    made = next((source.created_at for source in transcript.sources if source.created_at), None)
    return made, "recording" if made else ""


def _says_age(remark: Remark, person: Person) -> bool:
    """Whether all its words are the patient's age, which the note states."""
    return remark.kind is RemarkKind.NOT_PLACED and any(
        one.first <= remark.evidence.first and remark.evidence.last <= one.last for one in person.evidence
    )
