"""Who does the work: Dask's workers on this machine or many, or this process where Dask is not installed."""

from __future__ import annotations

import contextlib
import logging
import signal
import threading
import time
from collections.abc import Callable, Iterator
from concurrent.futures import CancelledError, ThreadPoolExecutor
from typing import TYPE_CHECKING, Any, Protocol

from dictate.batch import work
from dictate.batch.jobs import Job, Outcome, Setting
from dictate.errors import DictateError, MachineError
from dictate.model import ModelIdentity

if TYPE_CHECKING:
    from distributed import Client

EXTRA = 'pip install "dictate[cluster]"'
LOOK_S = 2.0  # how often the number of workers is asked for
PATIENCE_S = 60.0  # for the first worker
AHEAD = 2  # jobs per worker under way: one being heard, one waiting
MOST_BYTES = 6 << 30  # of a local worker: one that takes more is ended, and its job tried again, then said
DEATHS = 2  # workers that may die of one job before it is set aside


class Crew(Protocol):
    """Takes jobs, gives outcomes."""

    def room(self) -> int:
        """How many jobs may be under way."""

    def identify(self) -> ModelIdentity:
        """The model that is heard with. Raises: MachineError."""

    def submit(self, job: Job, done: Callable[[Job, Callable[[], Outcome]], None]) -> None:
        """Start a job; `done` is called from another thread, with what gives its outcome or raises."""

    def check(self) -> None:
        """Raises: MachineError when nobody will ever answer again."""


@contextlib.contextmanager
def open_crew(setting: Setting, *, cluster: str = "", workers: int = 1) -> Iterator[Crew]:
    """Workers for a batch. cluster: address of a Dask scheduler; empty: `workers` processes of this machine.

    Without Dask this process does the work alone. Raises: MachineError.
    """
    try:
        import distributed
    except ModuleNotFoundError as fault:
        if cluster:
            raise MachineError(f"--cluster needs Dask, which is not installed: {EXTRA}") from fault
        distributed = None  # type: ignore[assignment]
    if distributed is None:
        with alone(setting) as crew:
            yield crew
        return
    with _quiet(), contextlib.ExitStack() as stack:
        client = stack.enter_context(_joined(cluster, setting) if cluster else local_workers(workers))
        _ready(client, setting, cluster)
        yield DaskCrew(client, setting)


@contextlib.contextmanager
def alone(setting: Setting) -> Iterator[Crew]:
    """Here, in this process: one examination after the other."""
    work.prepare(setting)
    with ThreadPoolExecutor(1) as pool:
        try:
            yield _Here(setting, pool)
        finally:
            pool.shutdown(wait=True, cancel_futures=True)
            work.release(setting.run)


class _Here:
    """Crew of one."""

    def __init__(self, setting: Setting, pool: ThreadPoolExecutor) -> None:
        self._run, self._pool = setting.run, pool

    def room(self) -> int:
        return AHEAD

    def identify(self) -> ModelIdentity:
        return work.identify(self._run)

    def submit(self, job: Job, done: Callable[[Job, Callable[[], Outcome]], None]) -> None:
        future = self._pool.submit(work.do, self._run, job)
        future.add_done_callback(lambda ended: done(job, ended.result))

    def check(self) -> None:
        return


class DaskCrew:
    """Dask's workers; it repeats the jobs of a lost one, and tells of a job that workers die of."""

    def __init__(self, client: Client, setting: Setting, *, do: Callable[[str, Job], Outcome] = work.do) -> None:
        self._client, self._setting, self._do = client, setting, do
        self._count, self._looked_at = len(client.nthreads()), time.monotonic()
        self._number = 0

    def room(self) -> int:
        """Two jobs a worker: one being heard, one waiting."""
        if time.monotonic() - self._looked_at > LOOK_S:
            self._count, self._looked_at = len(_asked(self._client.nthreads)), time.monotonic()
        return AHEAD * max(1, self._count)

    def identify(self) -> ModelIdentity:
        """A worker's model."""
        from distributed import KilledWorker

        try:
            found: ModelIdentity = _asked(self._client.submit(work.identify, self._setting.run, pure=False).result)
        except KilledWorker as fault:
            raise MachineError("workers end while they load the model: more memory, or a smaller --model") from fault
        return found

    def submit(self, job: Job, done: Callable[[Job, Callable[[], Outcome]], None]) -> None:
        """Hand a job to the scheduler, under a name that tells nothing."""
        self._number += 1
        name = f"examination-{self._setting.run[:8]}-{self._number}-{time.time_ns():x}"  # names no source
        future = self._client.submit(self._do, self._setting.run, job, key=name, pure=False)
        future.add_done_callback(lambda ended: done(job, lambda: _result(ended)))

    def check(self) -> None:
        """Whether the scheduler is still there."""
        if self._client.status not in ("running", "connecting"):
            raise MachineError(GONE)


def _result(future: Any) -> Outcome:
    """A job's outcome; a job that workers died of is an error of its own, as is what no one foresaw.

    A result that was lost with its worker is waited for: the scheduler has the job done again.
    """
    from distributed import KilledWorker

    fault = future.exception()
    if isinstance(fault, CancelledError):
        raise MachineError(GONE)
    if fault is None:
        outcome: Outcome = future.result()
        return outcome
    if isinstance(fault, KilledWorker):
        return Outcome(error=DIED)
    if isinstance(fault, DictateError):
        raise fault
    return Outcome(error=unforeseen(fault))


GONE = "the scheduler is gone: what is done is kept: start it and run again"
DIED = f"{DEATHS + 1} workers ended while hearing it: memory, or a file that breaks the decoder: try it alone"


def outcome_of(ended: Callable[[], Outcome]) -> Outcome:
    """What came of a job; a fault of the program is the job's, a fault of the machine the batch's."""
    try:
        return ended()
    except MachineError:
        raise
    except (ArithmeticError, AttributeError, LookupError, OSError, RuntimeError, TypeError, ValueError) as fault:
        return Outcome(error=unforeseen(fault))


def unforeseen(fault: BaseException) -> str:
    """What to say of a fault of the program itself."""
    return f"the program failed ({type(fault).__name__}): please report it, without the recording"


def _asked(ask: Callable[[], Any]) -> Any:
    """An answer of the scheduler. Raises: MachineError when it is gone."""
    try:
        return ask()
    except (OSError, TimeoutError, CancelledError) as fault:
        raise MachineError("the scheduler does not answer: what is done is kept: start it and run again") from fault


@contextlib.contextmanager
def local_workers(workers: int, *, processes: bool = True) -> Iterator[Client]:
    """Processes of this machine; what they say to each other is encrypted, and no other machine can reach them."""
    import dask
    from distributed import Client, LocalCluster

    settings = {
        "distributed.scheduler.allowed-failures": DEATHS,
        "distributed.worker.profile.enabled": False,  # looks at every thread a hundred times a second
        "distributed.worker.memory.pause": False,
        "distributed.worker.memory.spill": False,
        "distributed.worker.memory.target": False,
        "distributed.scheduler.http.routes": [],
        "distributed.worker.http.routes": [],
    }
    with dask.config.set(settings), contextlib.ExitStack() as stack:
        with _undisturbed():
            cluster = stack.enter_context(LocalCluster(
                n_workers=workers, threads_per_worker=1, processes=processes, host="127.0.0.1", dashboard_address=None,
                security=True, memory_limit=MOST_BYTES, silence_logs=logging.CRITICAL,
                scheduler_kwargs={"dashboard": False, "dashboard_address": "127.0.0.1:0"},
            ))  # fmt: skip
            client = stack.enter_context(Client(cluster))
        yield client


@contextlib.contextmanager
def _undisturbed() -> Iterator[None]:
    """What ends the program waits until workers that are being started can be ended, too."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    came: list[int] = []
    numbers = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)
    before = {number: signal.signal(number, lambda got, _: came.append(got)) for number in numbers}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
    if came:
        signal.raise_signal(came[0])


@contextlib.contextmanager
def _joined(address: str, setting: Setting) -> Iterator[Client]:
    from distributed import Client

    try:
        client = Client(address, timeout=PATIENCE_S / 2, name="dictate")
    except (OSError, ValueError, TimeoutError) as fault:
        raise MachineError(
            f"--cluster {address}: no scheduler answers there: check address and certificates"
        ) from fault
    try:
        yield client
    finally:
        with contextlib.suppress(OSError, TimeoutError, CancelledError, ValueError):
            if client.status == "running":
                client.unregister_worker_plugin(f"dictate-{setting.run}")
            client.close(timeout=5)


def _ready(client: Client, setting: Setting, cluster: str) -> None:
    """Wait for the first worker, and have every worker, also those still to come, keep the setting."""
    from distributed import WorkerPlugin

    class Prepared(WorkerPlugin):
        name = f"dictate-{setting.run}"

        def setup(self, worker: Any) -> None:
            from dictate.batch.work import prepare

            prepare(setting)

        def teardown(self, worker: Any) -> None:
            from dictate.batch.work import release

            release(setting.run)

    try:
        client.wait_for_workers(1, timeout=PATIENCE_S)
        client.register_plugin(Prepared())
    except TimeoutError as fault:
        raise MachineError(f"--cluster {cluster}: has no workers: start some, then run again") from fault
    except ModuleNotFoundError as fault:
        raise MachineError(f"--cluster {cluster}: a worker lacks {fault.name}: install dictate there") from fault


@contextlib.contextmanager
def _quiet() -> Iterator[None]:
    """Dask's own messages stay out of this program's."""
    import dask

    loggers = [logging.getLogger(name) for name in ("distributed", "tornado", "asyncio")]
    levels = [logger.level for logger in loggers]
    for logger in loggers:
        logger.setLevel(logging.CRITICAL)
    try:
        with dask.config.set({"distributed.admin.large-graph-warning-threshold": "1TB"}):  # sound that is sent along
            yield
    finally:
        for logger, level in zip(loggers, levels, strict=True):
            logger.setLevel(level)
