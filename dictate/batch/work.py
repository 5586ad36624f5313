"""What a worker does: one job → the texts of its result files; the model is loaded once per process."""

from __future__ import annotations

import threading
import time
from contextlib import ExitStack
from importlib.metadata import version
from pathlib import Path
from typing import TYPE_CHECKING

from dictate.batch.contents import at_hand, digest_of, must_stand, standing
from dictate.batch.found import of_address
from dictate.batch.jobs import Job, Outcome, Setting, printable
from dictate.errors import DictateError, InputError, MachineError
from dictate.model import Examination, ModelIdentity, Severity
from dictate.settings import PROGRAM

if TYPE_CHECKING:
    from dictate.pipeline import Hearer

_settings: dict[str, Setting] = {}
_engines: dict[str, Hearer] = {}
_one = threading.RLock()  # one examination at a time in a process: its threads are the recogniser's


def prepare(setting: Setting) -> None:
    """Keep what the jobs to come need; nothing is loaded yet."""
    _settings[setting.run] = setting


def release(run: str) -> None:
    """Let go of a setting and its model."""
    _settings.pop(run, None)
    _engines.pop(run, None)


def identify(run: str) -> ModelIdentity:
    """The model that this process hears with. Raises: DictateError."""
    with _one:
        identity = getattr(_engine(run), "identity", None)
    return identity if isinstance(identity, ModelIdentity) else ModelIdentity(name="none", sha256="")


def do(run: str, job: Job) -> Outcome:
    """Hear, read, check and write one examination. What is wrong with it comes back as its error."""
    begin = time.perf_counter()
    try:
        with _one, ExitStack() as stack:
            try:
                paths = stack.enter_context(at_hand(job.paths, job.sent, job.sizes))
            except InputError:  # an address that this machine cannot reach; or it is gone, and the batch will say so
                return Outcome(unseen=True)
            begin = time.perf_counter()
            exam = _meant(run, job, paths)
            if exam is None:
                return Outcome(unseen=True)
            files = files_of(_settings[run], exam)
    except DictateError as fault:
        return Outcome(error=printable(str(fault)), seconds=time.perf_counter() - begin)
    musts, looks = open_counts(exam)
    return Outcome(
        files=files,
        findings=len(exam.findings),
        musts=musts,
        looks=looks,
        sound_s=sum(source.duration_s or 0.0 for source in exam.transcript.sources),
        seconds=time.perf_counter() - begin,
        model=exam.transcript.model,
    )


def _meant(run: str, job: Job, paths: list[Path]) -> Examination | None:
    """The examination; None: the files lie on another machine, also when other content has their paths here.

    A recording is read through once for its digest, by the recogniser; it must be the one that the batch saw, and the
    file must stand as it stood before. Raises: DictateError.
    """
    if job.sent or of_address(job):
        return _examined(run, job, paths)
    try:
        before = standing(paths)
    except InputError:
        return None
    try:
        exam = _examined(run, job, paths)
        contents = _contents(exam, paths)
    except InputError:
        must_stand(paths, before)
        if tuple(digest_of(str(path)) for path in paths) != job.contents:
            return None
        raise
    must_stand(paths, before)
    return exam if contents == job.contents else None


def _contents(exam: Examination, paths: list[Path]) -> tuple[str, ...]:
    """Digest of each file; that of a typed source is of its words, so its file is asked."""
    sources = zip(exam.transcript.sources, paths, strict=True)
    return tuple(source.sha256 if source.kind == "recording" else digest_of(str(path)) for source, path in sources)


def _examined(run: str, job: Job, paths: list[Path]) -> Examination:
    from dictate.pipeline import examine, is_text

    setting = _settings[run]
    if version(PROGRAM) != setting.program:
        raise MachineError(f"a worker runs version {version(PROGRAM)}, the batch {setting.program}: install the same")
    engine = None
    if not all(map(is_text, paths)):
        engine = _engine(run)
        if (found := identify(run)).sha256 != job.model_sha256:
            raise MachineError(f"a worker hears with another model {found.name}: give every worker the same")
    asked = setting.asked
    return examine(
        paths, engine=engine, grammar=setting.grammar, scope=asked.scope, patient=asked.patient,
        examined_at=asked.examined_at, age=asked.age, height=asked.height, conventions=setting.conventions,
    )  # fmt: skip


def _engine(run: str) -> Hearer:
    if run not in _engines:
        _engines.clear()  # one model in memory, whatever ran here before
        _engines[run] = _settings[run].make_engine()
    return _engines[run]


def open_counts(exam: Examination) -> tuple[int, int]:
    """How many queries must be settled, and how many are to be looked at."""
    asked = [query.severity for query in exam.open_queries]
    return asked.count(Severity.MUST), asked.count(Severity.LOOK)


def files_of(setting: Setting, exam: Examination) -> dict[str, str | bytes]:
    """Ending → content of each result file."""
    from dictate.notes import FILES, write_note

    note = write_note(exam, setting.grammar, brief=setting.asked.brief)
    usual = {ending: write(exam) for ending, write in FILES.items()}
    return {"note.txt": note, **usual, **{end: write(exam, setting.grammar) for end, write in setting.further.items()}}
