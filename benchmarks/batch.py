"""A batch against one `note` call after the other, Dask against plain processes, and what scheduling costs.

Use: python benchmarks/batch.py [recordings|workers|overhead|scheduling|ceiling] [--count N] [--workers N] [--sample N]

`recordings` hears short recordings cut from the demonstrations (30; 300 take a while) by `dictate batch`, and in the
same run --sample of them by `dictate note`, half before and half after, so that a load that drifts weighs on both.
`workers` hears them with one worker and with more. `overhead`, `scheduling` and `ceiling` use recognisers that only
sleep, or do nothing, so that the cost of dealing jobs out can be told. Ratios hold on any machine, seconds only on
the one they were taken on.
"""

from __future__ import annotations

import argparse
import csv
import os
import resource
import subprocess
import sys
import tempfile
import threading
import time
import wave
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path

DEMOS = Path(__file__).parent.parent / "demo_audio"
NAMES = ("clinic-examination", "stroke-corrections", "postural-series", "noisy-queries")
LENGTH_S = 6.0
LEAST_RATIO = 1.6
MOST_OVERHEAD = 0.05
SHAPES = (1, 4, 16, 64)  # workers
FILES = 60_000  # bytes of results of one examination, about
RATE_HZ = 16_000


def main() -> int:
    """Run one part, print its figures; 1 when a limit is broken."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("part", choices=sorted(PARTS), nargs="?", default="recordings")
    parser.add_argument("--count", type=int, help="recordings or files")
    parser.add_argument("--workers", type=int, default=len(os.sched_getaffinity(0)))
    parser.add_argument("--sample", type=int, default=30, help="recordings that `note` hears")
    given = parser.parse_args()
    print(f"load before: {os.getloadavg()[0]:.1f} on {len(os.sched_getaffinity(0))} cores", flush=True)
    with tempfile.TemporaryDirectory() as folder:
        status = PARTS[given.part](Path(folder), given)
    print(f"load after: {os.getloadavg()[0]:.1f}")
    return status


def recordings(folder: Path, given: argparse.Namespace) -> int:
    """Throughput of a batch over one-by-one `note` calls, real-time factor, memory of each process."""
    paths = cut(folder / "in", given.count or 30)
    sample = paths[:: max(1, len(paths) // given.sample)][: given.sample]
    half = len(sample) // 2
    alone = spent_on_notes(sample[:half], folder)
    with PeakMemory() as peaks:
        batch = spent_on_batch(folder / "in", folder / "out", given.workers)
    alone = [one + other for one, other in zip(alone, spent_on_notes(sample[half:], folder), strict=True)]
    with (folder / "out" / "batch.csv").open(newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["state"] == "done"]
    print(f"{len(rows)} recordings of {LENGTH_S:.0f} s, {given.workers} workers; {len(sample)} of them one by one")
    for name, (clock, processor), number in (("one by one", alone, len(sample)), ("batch", batch, len(rows))):
        print(
            f"{name:12} {clock:8.1f} s, processor {processor:8.1f} s; each {clock / number:6.2f} s, processor"
            f" {processor / number:6.2f} s, real-time factor {clock / number / LENGTH_S:.2f}"
        )
    ratios = [one / len(sample) / (other / len(rows)) for one, other in zip(alone, batch, strict=True)]
    print(f"ratio        {ratios[0]:8.2f} (at least {LEAST_RATIO}); of processor time {ratios[1]:.2f}")
    largest = sorted(peaks.values(), reverse=True)[: given.workers + 1]
    print(f"peak memory  {', '.join(f'{size / 1e6:.0f}' for size in largest)} MB in the largest processes")
    return int(ratios[0] < LEAST_RATIO)


PROGRAM = (sys.executable, "-m", "dictate.cli.app")


def spent_on_notes(paths: list[Path], folder: Path) -> tuple[float, float]:
    """Seconds by the clock and of the processor, for `note` calls one after the other."""
    return spent(*([*PROGRAM, "note", str(path), "--out", str(folder / "one")] for path in paths))


def spent_on_batch(folder: Path, out: Path, workers: int) -> tuple[float, float]:
    """The same for a batch."""
    return spent([*PROGRAM, "batch", str(folder), "--out", str(out), "--workers", str(workers)])


def spent(*commands: list[str]) -> tuple[float, float]:
    """Seconds by the clock, and of the processor in all their processes."""
    before, begin = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    for command in commands:
        subprocess.run(command, check=True, stderr=subprocess.DEVNULL)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return time.perf_counter() - begin, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def more_workers(folder: Path, given: argparse.Namespace) -> int:
    """A batch with one worker of one thread and with more, in the same run; needs as many cores that are free."""
    cut(folder / "in", given.count or 16)
    shapes = (1, given.workers, 1, given.workers)
    took = [spent_on_batch(folder / "in", folder / f"out{at}", number) for at, number in enumerate(shapes)]
    for number, (clock, processor) in zip(shapes, took, strict=True):
        print(f"{number} workers: {clock:.1f} s, processor {processor:.1f} s", flush=True)
    ratio = (took[0][0] + took[2][0]) / (took[1][0] + took[3][0])
    print(f"ratio {ratio:.2f} (at least {LEAST_RATIO} for two, where cores allow)")
    return int(ratio < LEAST_RATIO)


def overhead(folder: Path, given: argparse.Namespace) -> int:
    """The same jobs, that sleep, dealt out by Dask and by a plain pool of processes; starting is not counted."""
    from dictate.batch.crew import local_workers

    count, workers, seconds = given.count or 120, given.workers * 2, 1.0
    with ProcessPoolExecutor(workers) as pool:
        list(pool.map(time.sleep, [0.5] * workers))
        begin = time.perf_counter()
        list(pool.map(partial(slept, "", seconds=seconds), [None] * count))
        plain = time.perf_counter() - begin
    with local_workers(workers) as client:
        client.wait_for_workers(workers)
        client.gather(client.map(slept, [""] * workers, [None] * workers, pure=False))
        took = dealt_out(folder, client, count, seconds, write=lambda folder, files: None)
    share = took / plain - 1
    print(f"{count} jobs of {seconds} s, {workers} processes: plain {plain:.2f} s, batch with Dask {took:.2f} s")
    print(f"overhead {share:.1%} (at most {MOST_OVERHEAD:.0%})")
    return int(share > MOST_OVERHEAD)


def scheduling(folder: Path, given: argparse.Namespace) -> int:
    """Jobs a second with ever more workers that only sleep; result files are written as always.

    All workers live in one process, beside scheduler and client, so the cost is that of all of them on one core.
    """
    from dictate.batch.crew import local_workers
    from dictate.cli.files import write_files

    for number in SHAPES if given.count is None else SHAPES[-1:]:
        with local_workers(number, processes=False) as client:
            client.wait_for_workers(number)
            files = given.count or number * 12
            seconds = 1.0
            took = dealt_out(folder / str(number), client, files, seconds, write=write_files)
        ideal = seconds * files / number
        rate, extra = files / took, 1000 * (took - ideal) / files
        print(
            f"{number:3} workers, {files:6} files: {took:7.1f} s, ideal {ideal:7.1f} s ({ideal / took:.0%} of it)",
            end="",
        )
        print(f", {rate:6.1f} files/s, {extra:6.2f} ms a file", flush=True)
    return 0


def ceiling(folder: Path, given: argparse.Namespace) -> int:
    """Files a second when hearing takes no time, for more and more files and workers: what dealing out costs alone."""
    from dictate.batch.crew import local_workers
    from dictate.cli.files import write_files
    from dictate.grammar import load_grammar

    load_grammar()  # not counted
    most = given.count or 10_000
    for number, files in ((4, most // 10), (4, most // 2), (4, most), (64, most // 10)):
        with local_workers(number, processes=False) as client:
            client.wait_for_workers(number)
            before = time.process_time()
            took = dealt_out(folder / f"{number}-{files}", client, files, 0.0, write=write_files)
            used = time.process_time() - before
        print(
            f"{number:3} workers, {files:6} files: {files / took:6.1f} files/s, {1000 * took / files:6.2f} ms a file,"
            f" processor {1000 * used / files:6.2f} ms",
            flush=True,
        )
    return 0


def dealt_out(
    folder: Path, client: object, count: int, seconds: float, *, write: Callable[..., None]
) -> float:  # fmt: skip
    """Seconds that a batch of jobs takes which only sleep."""
    from dictate.batch import Asked, Batch, Ledger, Setting
    from dictate.batch.crew import DaskCrew
    from dictate.batch.jobs import Candidate, Place
    from dictate.grammar import load_grammar
    from dictate.model import Conventions

    setting = Setting(load_grammar(), "benchmark", Asked(), Conventions(), int)  # type: ignore[arg-type]
    sound = folder / "in"
    sound.mkdir(parents=True)
    candidates = []
    for number in range(count):
        path = sound / f"{number}.txt"
        path.write_text(f"Gait normal {number}.")
        candidates.append(Candidate(path.name, (Place(str(path), 1, ""),)))
    with Ledger(folder / "out") as ledger:
        crew = DaskCrew(client, setting, do=partial(slept, seconds=seconds))  # type: ignore[arg-type]
        begin = time.perf_counter()
        tally = Batch(setting, crew, ledger, write=write).run(candidates)
        took = time.perf_counter() - begin
    if tally.done != count:
        raise SystemExit(f"{tally.done} of {count} done")
    return took


def slept(key: str, job: object, *, seconds: float = 0.0) -> object:
    """An outcome of the usual size, after a while."""
    from dictate.batch.jobs import Outcome

    time.sleep(seconds)
    part = FILES // 5 * "x"
    names = ("note.txt", "exam.json", "findings.csv", "queries.csv", "transcript.json")
    return Outcome(files=dict.fromkeys(names, part))


def cut(folder: Path, count: int) -> list[Path]:
    """Short recordings at different places of the demonstrations, no two the same."""
    import numpy as np

    from dictate.hearing.audio import Recording

    folder.mkdir()
    whole = {name: next(Recording(DEMOS / f"{name}.flac").blocks()).samples for name in NAMES}
    paths = []
    for number in range(count):
        sound = whole[NAMES[number % len(NAMES)]]
        room = len(sound) - int(LENGTH_S * RATE_HZ)
        start = int(room * (number / count))
        paths.append(folder / f"{number:03}.wav")
        with wave.open(str(paths[-1]), "wb") as file:
            file.setparams((1, 2, RATE_HZ, 0, "NONE", ""))
            file.writeframes((sound[start : start + int(LENGTH_S * RATE_HZ)] * 32767).astype(np.int16).tobytes())
    return paths


class PeakMemory:
    """Largest resident memory of every process below this one, by process, in bytes."""

    def __enter__(self) -> dict[int, int]:
        """Watch from now on."""
        self.peaks: dict[int, int] = {}
        self.over = threading.Event()
        self.thread = threading.Thread(target=self.watch, daemon=True)
        self.thread.start()
        return self.peaks

    def watch(self) -> None:
        """Ten times a second."""
        import psutil

        while not self.over.wait(0.1):
            for process in psutil.Process().children(recursive=True):
                try:
                    self.peaks[process.pid] = max(self.peaks.get(process.pid, 0), process.memory_info().rss)
                except psutil.Error:
                    continue

    def __exit__(self, *_: object) -> None:
        """Enough."""
        self.over.set()
        self.thread.join()


PARTS: dict[str, Callable[[Path, argparse.Namespace], int]] = {
    "recordings": recordings,
    "workers": more_workers,
    "ceiling": ceiling,
    "overhead": overhead,
    "scheduling": scheduling,
}

if __name__ == "__main__":
    sys.exit(main())
