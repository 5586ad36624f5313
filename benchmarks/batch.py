"""A batch against one `note` call after the other, Dask against plain processes, and what scheduling costs.

Use: python benchmarks/batch.py [recordings|overhead|scheduling] [--count N] [--workers N]

`recordings` hears short recordings cut from the demonstrations (30; 300 take a while), in the same run by `dictate
note` calls and by `dictate batch`. `overhead` and `scheduling` use recognisers that only sleep, so that the cost of
dealing jobs out can be told. Ratios hold on any machine, seconds only on the one they were taken on.
"""

from __future__ import annotations

import argparse
import csv
import os
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
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        return PARTS[given.part](Path(folder), given.count, given.workers)


def recordings(folder: Path, count: int | None, workers: int) -> int:
    """Throughput of a batch over one-by-one `note` calls, real-time factor, memory of each process."""
    paths = cut(folder / "in", count or 30)
    program = [sys.executable, "-m", "dictate.cli.app"]
    begin = time.perf_counter()
    for path in paths:
        subprocess.run([*program, "note", path, "--out", folder / "one"], check=True, stderr=subprocess.DEVNULL)
    one_by_one = time.perf_counter() - begin
    with PeakMemory() as peaks:
        begin = time.perf_counter()
        given = [*program, "batch", folder / "in", "--out", folder / "out", "--workers", str(workers)]
        subprocess.run(given, check=True, stderr=subprocess.DEVNULL)
        batch = time.perf_counter() - begin
    with (folder / "out" / "batch.csv").open(newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["state"] == "done"]
    sound_s = sum(float(row["sound_min"]) for row in rows) * 60
    ratio = one_by_one / batch
    print(f"{len(rows)} recordings, {sound_s:.0f} s of sound, {workers} workers")
    print(f"one by one   {one_by_one:8.1f} s, real-time factor {one_by_one / sound_s:.3f}")
    print(f"batch        {batch:8.1f} s, real-time factor {batch / sound_s:.3f}")
    print(f"ratio        {ratio:8.2f} (at least {LEAST_RATIO})")
    print(f"peak memory  {max(peaks.values(), default=0) / 1e6:.0f} MB in the largest process, {len(peaks)} processes")
    return int(ratio < LEAST_RATIO)


def overhead(folder: Path, count: int | None, workers: int) -> int:
    """The same jobs, that sleep, dealt out by Dask and by a plain pool of processes; starting is not counted."""
    from dictate.batch.crew import local_workers

    count, workers, seconds = count or 120, workers * 2, 1.0
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


def scheduling(folder: Path, count: int | None, workers: int) -> int:
    """Jobs a second with ever more workers that only sleep; result files are written as always.

    All workers live in one process, beside scheduler and client, so the cost is that of all of them on one core.
    """
    from dictate.batch.crew import local_workers
    from dictate.cli.files import write_files

    for number in SHAPES if count is None else SHAPES[-1:]:
        with local_workers(number, processes=False) as client:
            client.wait_for_workers(number)
            files = count or number * 12
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


PARTS: dict[str, Callable[[Path, int | None, int], int]] = {
    "recordings": recordings,
    "overhead": overhead,
    "scheduling": scheduling,
}

if __name__ == "__main__":
    sys.exit(main())
