"""Who does the work: Dask's workers on this machine or many, or this process where Dask is not installed."""

from __future__ import annotations

import builtins
import csv
import os
import queue
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from concurrent.futures import CancelledError
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import psutil
import pytest
import sleepers
from by_hand import ROOT
from distributed import KilledWorker
from fsspec.implementations.memory import MemoryFileSystem
from sleepers import SAID, SMALL, fill, run, setting

from dictate.batch import crew
from dictate.batch.contents import digest_of
from dictate.batch.crew import open_crew
from dictate.batch.jobs import Job, Outcome
from dictate.errors import MachineError
from dictate.grammar import Grammar

AROUND = {**os.environ, "PYTHONPATH": os.pathsep.join((str(ROOT), str(ROOT / "tests")))}


def states(out: Path) -> dict[str, str]:
    """State by source, from batch.csv; a source has one line."""
    with (out / "batch.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert len({row["source"] for row in rows}) == len(rows)
    return {row["source"]: row["state"] for row in rows}


def written(out: Path) -> dict[str, bytes]:
    """Result files of all examinations."""
    return {path.name: path.read_bytes() for path in out.glob("*-*.*")}


def heard(log: Path) -> list[tuple[str, str]]:
    """Name and process of each hearing."""
    return [(name, pid) for name, pid in map(str.split, log.read_text(encoding="utf-8").splitlines())]


def started(folder: Path, out: Path, log: Path, *, seconds: float, workers: int | None = None) -> subprocess.Popen[str]:
    """A batch in a process group of its own."""
    given = [str(folder), str(out), str(log), str(seconds), *([str(workers)] if workers else [])]
    return subprocess.Popen(
        [sys.executable, sleepers.__file__, *given], env=AROUND, text=True, start_new_session=True
    )  # fmt: skip


def wait_for(condition: Any, seconds: float = 60.0) -> None:
    """Until it holds."""
    end = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < end, "waited in vain"
        time.sleep(0.02)


def no_dask(monkeypatch: pytest.MonkeyPatch) -> None:
    """As where it is not installed."""
    real = builtins.__import__

    def refuse(name: str, *given: Any, **more: Any) -> Any:
        if name.split(".")[0] == "distributed":
            raise ModuleNotFoundError("No module named 'distributed'", name="distributed")
        return real(name, *given, **more)

    monkeypatch.setattr(builtins, "__import__", refuse)


def test_without_dask_this_process_does_it(small: Grammar, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The same results; a cluster is refused with what to install."""
    no_dask(monkeypatch)
    folder = fill(tmp_path / "in", a=SAID, b="fail|")
    tally = run(setting(small, log=str(tmp_path / "log")), folder, tmp_path / "out", workers=2)
    assert (tally.done, tally.failed) == (1, 1)
    assert {pid for _, pid in heard(tmp_path / "log")} == {str(os.getpid())}
    with pytest.raises(MachineError, match="pip install"), open_crew(setting(small), cluster="tcp://127.0.0.1:1"):
        pass


@pytest.mark.enable_socket
def test_a_lost_worker_loses_nothing(small: Grammar, tmp_path: Path) -> None:
    """One dies of kill -9 while hearing: its job is done by another, nothing twice in the results.

    Then the same workers hear what only this process can reach: its sound is sent along.
    """
    files = {f"f{number}": f"{SAID} Heart rate {60 + number}." for number in range(6)}
    folder = fill(tmp_path / "in", **files, last=f"die-once|{SMALL}", bad="break|")
    prepared = setting(small, seconds=0.02, log=str(tmp_path / "log"))
    with open_crew(prepared, workers=2) as dask:
        tally = run(prepared, folder, tmp_path / "out", crew=dask)
        only_here = MemoryFileSystem()
        only_here.pipe({"/ward/a.wav": SAID.encode(), "/ward/b.wav": SMALL.encode()})
        sent = run(prepared, "memory://ward", tmp_path / "sent", crew=dask)
        only_here.rm("/ward", recursive=True)
    assert (sent.done, sent.failed) == (2, 0)
    assert (folder / "last.died").exists()
    assert (tally.done, tally.failed) == (7, 1)
    assert states(tmp_path / "out") == {f"{name}.wav": "done" for name in (*files, "last")} | {"bad.wav": "failed"}
    pids = {pid for _, pid in heard(tmp_path / "log")}
    assert len(pids) >= 2
    assert str(os.getpid()) not in pids
    run(setting(small), fill(tmp_path / "again", **files), tmp_path / "alone")
    assert len(written(tmp_path / "alone")) == 5 * len(files)
    assert written(tmp_path / "alone").items() <= written(tmp_path / "out").items(), "one process says the same"


class Held:
    """What Dask holds of a job that has ended."""

    def __init__(self, outcome: Outcome | None = None, fault: BaseException | None = None) -> None:
        self.outcome, self.fault, self.status = outcome, fault, "lost"

    def exception(self) -> BaseException | None:
        """As Dask says it, after waiting for a result that is made again."""
        return self.fault

    def result(self) -> Outcome | None:
        """The same."""
        return self.outcome


def test_a_lost_result_is_no_lost_scheduler() -> None:
    """A worker that dies once its job is done takes the result with it: it comes again, and the batch goes on."""
    assert crew._result(Held(Outcome(findings=3))).findings == 3
    with pytest.raises(MachineError, match="the scheduler is gone"):
        crew._result(Held(fault=CancelledError("connection lost")))


def test_workers_that_the_model_is_too_large_for(small: Grammar) -> None:
    """One line, for nothing can be heard."""

    class Dying:
        """Where every worker ends of it."""

        def nthreads(self) -> dict[str, int]:
            return {"a": 1}

        def submit(self, *_: object, **__: object) -> Dying:
            return self

        def result(self) -> None:
            raise KilledWorker("examination-1", None, 2)

    with pytest.raises(MachineError, match="end while they load the model"):
        crew.DaskCrew(Dying(), setting(small)).identify()


@pytest.mark.slow
@pytest.mark.enable_socket
def test_result_that_died_with_its_worker_comes_again(grammar: Grammar, tmp_path: Path) -> None:
    """Real workers: the one that heard it is killed before the result was fetched."""
    path = fill(tmp_path, a=SAID) / "a.wav"
    ended: queue.SimpleQueue[Any] = queue.SimpleQueue()
    prepared = setting(grammar, log=str(tmp_path / "log"))
    with open_crew(prepared, workers=2) as dask:
        job = Job("a.wav", "a", (str(path),), (digest_of(str(path)),), dask.identify().sha256)
        dask.submit(job, lambda job, outcome: ended.put(outcome))
        outcome = ended.get(timeout=60)
        os.kill(int(heard(tmp_path / "log")[0][1]), signal.SIGKILL)
        time.sleep(1.0)
        assert outcome().findings == 2
    assert len(heard(tmp_path / "log")) == 2


@pytest.mark.enable_socket
def test_no_scheduler_there(small: Grammar, monkeypatch: pytest.MonkeyPatch) -> None:
    """One line with the address."""
    monkeypatch.setattr("dictate.batch.crew.PATIENCE_S", 1.0)
    with (
        pytest.raises(MachineError, match=r"--cluster tcp://127.0.0.1:1: no scheduler answers"),
        open_crew(setting(small), cluster="tcp://127.0.0.1:1"),
    ):
        pass


def test_killed_batch_goes_on(tmp_path: Path) -> None:
    """kill -9 of the whole run: started again it does what is missing, and no finished one a second time."""
    count = 12
    folder = fill(tmp_path / "in", **{f"f{number}": f"{SAID} Heart rate {60 + number}." for number in range(count)})
    out, log = tmp_path / "out", tmp_path / "log"
    first = started(folder, out, log, seconds=0.1)
    wait_for(lambda: len(list(out.glob("*.note.txt"))) >= 3)
    os.killpg(first.pid, signal.SIGKILL)
    first.wait()
    before = len(heard(log))
    assert before < count
    assert started(folder, out, log, seconds=0.0).wait(60) == 0
    assert set(states(out).values()) == {"done"}
    assert len(list(out.glob("*.note.txt"))) == count
    assert len(heard(log)) <= count + 2, "only what was under way is heard twice"
    assert not list(out.glob("*.part"))


@contextmanager
def dask_workers(count: int) -> Iterator[tuple[str, list[subprocess.Popen[str]]]]:
    """A scheduler and workers of Dask's own, as a user starts them."""
    program = [sys.executable, "-m", "distributed.cli.dask_scheduler"]
    begun = []
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, "env": AROUND, "text": True}
    port = 20000 + os.getpid() % 20000
    address = f"tcp://127.0.0.1:{port}"
    scheduler = ["--host", "127.0.0.1", "--port", str(port), "--no-dashboard"]
    worker = [sys.executable, "-m", "distributed.cli.dask_worker", address, "--nthreads", "1", "--no-dashboard"]
    begun.append(subprocess.Popen([*program, *scheduler], **quiet))  # type: ignore[call-overload]
    begun += [subprocess.Popen([*worker, "--no-nanny"], **quiet) for _ in range(count)]  # type: ignore[call-overload]
    try:
        yield address, begun
    finally:
        for process in begun:
            process.kill()
            process.wait()


@pytest.mark.slow
@pytest.mark.enable_socket
def test_cluster_that_does_not_see_the_files_and_loses_a_worker(small: Grammar, tmp_path: Path) -> None:
    """Dask's own scheduler and workers, started elsewhere; a worker is killed, all is done once."""
    files = {f"f{number}": f"sleep 0.3|{SAID} Heart rate {60 + number}." for number in range(20)}
    fill(tmp_path / "in", **files)
    with dask_workers(2) as (address, (_, victim, _)):
        os.chdir(tmp_path)  # the workers are not there, so for them no file has the path that it has here
        try:
            killer = subprocess.Popen(["sh", "-c", f"sleep 4; kill -9 {victim.pid}"])
            tally = run(setting(small, log=str(tmp_path / "log")), Path("in"), tmp_path / "out", cluster=address)
            killer.wait()
        finally:
            os.chdir(ROOT)
    assert (tally.done, tally.failed) == (20, 0)
    assert set(states(tmp_path / "out").values()) == {"done"}


@pytest.mark.slow
@pytest.mark.enable_socket
def test_file_that_workers_die_of_is_said(small: Grammar, tmp_path: Path) -> None:
    """Its neighbours are heard; it has a line of its own."""
    folder = fill(tmp_path / "in", a=SAID, b="die|", c=SMALL, d=f"{SAID} {SMALL}")
    tally = run(setting(small, seconds=0.05), folder, tmp_path / "out", workers=2)
    assert (tally.done, tally.failed) == (3, 1)
    assert states(tmp_path / "out")["b.wav"] == "failed"


@pytest.mark.slow
@pytest.mark.parametrize("whole", [False, True], ids=["client", "whole run"])
def test_killed_client_leaves_no_process_and_goes_on(tmp_path: Path, whole: bool) -> None:
    """kill -9 of the client alone, or of all its processes; twenty times at other moments: nothing lost or doubled."""
    count = 40
    folder = fill(tmp_path / "in", **{f"f{number}": f"{SAID} Heart rate {60 + number}." for number in range(count)})
    out, log = tmp_path / "out", tmp_path / "log"
    for number in range(10):
        run_ = started(folder, out, log, seconds=0.2, workers=2)
        have = len(list(out.glob("*.note.txt")))
        wait_for(lambda have=have, run_=run_: len(list(out.glob("*.note.txt"))) > have or run_.poll() is not None)
        time.sleep(0.013 * number)
        children = psutil.Process(run_.pid).children(recursive=True) if run_.poll() is None else []
        os.killpg(run_.pid, signal.SIGKILL) if whole else run_.kill()
        run_.wait()
        gone, alive = psutil.wait_procs(children, timeout=20)
        assert not alive, f"{len(gone)} ended, {len(alive)} did not"
    assert started(folder, out, log, seconds=0.0, workers=2).wait(120) == 0
    assert set(states(out).values()) == {"done"}
    assert len(states(out)) == len(list(out.glob("*.note.txt"))) == count
    assert len(heard(log)) <= count + 10 * 4, "only what was under way is heard twice"


def test_what_ends_the_program_waits_for_workers_to_stand() -> None:
    """Workers that are half started cannot be put away: the signal comes when they can."""
    done = []

    def start() -> None:
        with crew._undisturbed():
            signal.raise_signal(signal.SIGINT)
            done.append("workers stand")

    with pytest.raises(KeyboardInterrupt):
        start()
    assert done == ["workers stand"]
    assert signal.getsignal(signal.SIGINT) is signal.default_int_handler
