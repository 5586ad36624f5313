"""What a worker does: one job → the texts of its result files; the model is loaded once per process."""

from __future__ import annotations

import threading
import time
from importlib.metadata import version
from pathlib import Path
from typing import TYPE_CHECKING

from dictate.batch.contents import CHANGED, at_hand, digest_of
from dictate.batch.found import URL
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
        with _one, at_hand(job.paths, job.sent) as paths:
            begin = time.perf_counter()
            if _unseen(job):
                return Outcome(unseen=True)
            exam = _examined(run, job, paths)
            files = _files(run, exam)
    except DictateError as fault:
        return Outcome(error=printable(str(fault)), seconds=time.perf_counter() - begin)
    queries = exam.open_queries
    return Outcome(
        files=files,
        findings=len(exam.findings),
        musts=sum(query.severity is Severity.MUST for query in queries),
        looks=sum(query.severity is Severity.LOOK for query in queries),
        sound_s=sum(source.duration_s or 0.0 for source in exam.transcript.sources),
        seconds=time.perf_counter() - begin,
        model=exam.transcript.model,
    )


def _unseen(job: Job) -> bool:
    """Whether the files lie on another machine; a path that is there with other content counts as not seen, too."""
    if job.sent or any(map(URL.match, job.paths)):
        return False
    try:
        return tuple(map(digest_of, job.paths)) != job.contents
    except InputError:
        return True


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
    before = [digest_of(str(path)) for path in paths]
    exam = examine(
        paths, engine=engine, grammar=setting.grammar, scope=asked.scope, patient=asked.patient,
        examined_at=asked.examined_at, age=asked.age, height=asked.height, conventions=setting.conventions,
    )  # fmt: skip
    for path, digest in zip(paths, before, strict=True):
        if digest_of(str(path)) != digest:
            raise InputError(f"{path.name}: {CHANGED}")
    return exam


def _engine(run: str) -> Hearer:
    if run not in _engines:
        _engines.clear()  # one model in memory, whatever ran here before
        _engines[run] = _settings[run].make_engine()
    return _engines[run]


def _files(run: str, exam: Examination) -> dict[str, str]:
    from dictate.notes import FILES, write_note

    setting = _settings[run]
    note = write_note(exam, setting.grammar, brief=setting.asked.brief)
    return {"note.txt": note, **{ending: write(exam) for ending, write in FILES.items()}}
