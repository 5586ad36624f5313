"""Latency and memory of live dictation: from the end of a phrase to its finding, and over long sound.

Use: python benchmarks/listen.py [RECORDING...] [--hours H] [--rounds N]

Without --hours the recordings are played in real time, one after the other, into a session as `dictate listen` runs it.
Taken is the time from the end of voice in each phrase to its line on the screen, the pause that ends it included. With
--hours the first recording is played over and over, as fast as it is heard, and the memory of both processes is taken
every minute of sound. How busy the machine is with other things is printed beside it: the limits hold on two cores of
its own.
"""

from __future__ import annotations

import argparse
import statistics
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import psutil

from dictate.grammar import load_grammar
from dictate.hearing.microphone import FileSource, Piece, Trouble
from dictate.live.kept import Facts, Kept
from dictate.live.listen import Session
from dictate.live.recogniser import EngineMaker, Heard
from dictate.live.screen import View

if TYPE_CHECKING:
    from dictate.hearing.hear import Listener

DEMOS = sorted((Path(__file__).parent.parent / "demo_audio").glob("*.flac"))
MOST_MEDIAN_S, MOST_P95_S = 1.0, 1.8
COSTS = ("spans", "encode", "decode", "align", "weigh")
MOST_GROWTH = 0.1  # of memory, from a quarter of the way to the end
PAUSE = bytes(3200 * 12)


class Timed:
    """A screen that takes the time."""

    def __init__(self) -> None:
        self.ready = threading.Event()

    def line(self, text: str) -> None:
        if text.endswith("> listening"):
            self.ready.set()

    def show(self, view: View) -> None:
        pass

    def close(self) -> None:
        pass


class Row:
    """Recordings one after the other; starts when the recogniser is ready, remembers when each block was given."""

    plays = False

    def __init__(self, paths: list[Path], ready: threading.Event, *, fast: bool = False, most_s: float = 1e9) -> None:
        self.paths, self.ready, self.fast, self.most_s = paths, ready, fast, most_s
        self.began = 0.0
        self.given_s = 0.0

    def pieces(self, stop: threading.Event) -> Iterator[Piece | Trouble]:
        self.ready.wait()
        self.began = time.monotonic()
        while self.given_s < self.most_s:
            for path in self.paths:
                for piece in FileSource(path, fast=True).pieces(stop):
                    if isinstance(piece, Piece):
                        yield from self._given(piece, stop)
                yield from self._given(Piece(PAUSE), stop)
            if self.most_s == 1e9:
                return

    def _given(self, piece: Piece, stop: threading.Event) -> Iterator[Piece]:
        self.given_s += len(piece.pcm) / 32_000
        if not self.fast:
            stop.wait(max(0.0, self.began + self.given_s - time.monotonic()))
        yield piece


def main() -> int:
    """Print the figures; 1 when a limit is broken."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("recordings", nargs="*", type=Path, default=DEMOS)
    parser.add_argument("--rounds", type=int, default=1, help="how often the recordings are played")
    parser.add_argument("--hours", type=float, default=0.0, help="hours of sound, as fast as it is heard")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as place:
        if given.hours:
            return memory(given.recordings, Path(place), given.hours)
        return latency(given.recordings * given.rounds, Path(place))


def latency(paths: list[Path], place: Path) -> int:
    """Seconds from the end of each phrase to its line, and what they were spent on."""
    screen = Timed()
    row = Row(paths, screen.ready)
    session = Session(row, _kept(place), load_grammar(), Clocked(str(place / "took")), screen)
    took: list[Phrase] = []
    follow = session.follower.heard
    reading: list[float] = []

    def heard(phrase: Heard) -> None:
        begin, cpu = time.monotonic(), time.thread_time()
        follow(phrase)
        reading.append(time.thread_time() - cpu)
        now = time.monotonic()
        took.append(Phrase(row.began + phrase.end_s, now, max(0.0, now - begin - reading[-1])))

    session.follower.heard = heard  # type: ignore[method-assign]
    session._whole = lambda: None  # type: ignore[assignment,method-assign,return-value]
    psutil.cpu_percent()
    session.run()
    busy = psutil.cpu_percent()
    seconds = [phrase.shown - phrase.ended for phrase in took]
    calls = [Call.read(line) for line in (place / "took").read_text().splitlines()]
    own = [all_s - phrase.waited(calls) for all_s, phrase in zip(seconds, took, strict=True)]
    median, p95 = statistics.median(seconds), statistics.quantiles(seconds, n=20)[-1]
    print(f"phrases             {len(took)} over {row.given_s:.0f} s of sound")
    print(f"end of phrase to finding: median {median:.2f} s (at most {MOST_MEDIAN_S})")
    print(f"                    95% within {p95:.2f} s (at most {MOST_P95_S}), worst {max(seconds):.2f} s")
    print(f"  less what its calls waited for a core: median {statistics.median(own):.2f} s, "
          f"95% within {statistics.quantiles(own, n=20)[-1]:.2f} s, worst {max(own):.2f} s")  # fmt: skip
    print(f"reading             {statistics.median(reading):.3f} s of CPU a phrase, worst {max(reading):.2f}")
    print_costs(calls, len(took))
    print(f"machine             {psutil.cpu_count()} cores, {busy:.0f}% busy; load {psutil.getloadavg()[0]:.1f}")
    return int(median > MOST_MEDIAN_S or p95 > MOST_P95_S)


@dataclass(frozen=True)
class Call:
    """One call of the recogniser: when it began, seconds on the clock, seconds of CPU over all cores."""

    name: str
    began: float
    wall: float
    cpu: float

    @classmethod
    def read(cls, line: str) -> Call:
        name, *numbers = line.split()
        return cls(name, *map(float, numbers))


@dataclass(frozen=True)
class Phrase:
    """When voice ended, when its line was shown, and what reading it waited for a core."""

    ended: float
    shown: float
    reading_waited: float

    def waited(self, calls: list[Call]) -> float:
        """Seconds by which calls since its end took longer than the CPU they used: at least so long they waited."""
        since = [call for call in calls if self.ended <= call.began and call.began + call.wall <= self.shown]
        return self.reading_waited + sum(max(0.0, call.wall - call.cpu) for call in since)


@dataclass(frozen=True)
class Clocked:
    """Makes the engine, and writes down what each call of it takes."""

    log: str

    def __call__(self) -> Listener:
        engine = EngineMaker(offline=True)()
        for name in COSTS:
            setattr(engine, name, self._clocked(name, getattr(engine, name)))
        return engine

    def _clocked(self, name: str, call: Callable[..., Any]) -> Callable[..., Any]:
        def clocked(*given: Any, **more: Any) -> Any:
            wall, cpu = time.monotonic(), time.process_time()
            try:
                return call(*given, **more)
            finally:
                with Path(self.log).open("a") as out:
                    took, used = time.monotonic() - wall, time.process_time() - cpu
                    out.write(f"{name} {wall:.4f} {took:.4f} {used:.4f}\n")

        return clocked


def print_costs(calls: list[Call], phrases: int) -> None:
    """What the recogniser's calls took, a phrase: CPU seconds, and seconds with waiting for a core in them."""
    for name in COSTS:
        some = [call for call in calls if call.name == name]
        cpu, wall = sum(call.cpu for call in some) / phrases, sum(call.wall for call in some) / phrases
        print(f"  {name:<18}{len(some) / phrases:5.1f} calls a phrase, {cpu:.3f} s of CPU, {wall:.3f} s on the clock, "
              f"longest {max((call.wall for call in some), default=0.0):.2f} s")  # fmt: skip
    print(f"recogniser          {sum(call.cpu for call in calls) / phrases:.2f} s of CPU a phrase")


def memory(paths: list[Path], place: Path, hours: float) -> int:
    """Megabytes of both processes while sound is played fast."""
    screen = Timed()
    row = Row(paths[:1], screen.ready, fast=True, most_s=hours * 3600)
    session = Session(row, _kept(place), load_grammar(), EngineMaker(offline=True), screen, fast=True)
    session._whole = lambda: None  # type: ignore[assignment,method-assign,return-value]
    taken: list[tuple[float, float]] = []  # seconds of sound, megabytes of both
    over = threading.Event()

    def watch() -> None:
        while not over.wait(1.0):
            if row.given_s - (taken[-1][0] if taken else 0.0) >= 60:
                own, recogniser = _megabytes()
                taken.append((row.given_s, own + recogniser))
                print(f"  {row.given_s / 60:6.1f} min of sound {own:7.0f} MB the program, {recogniser:7.0f} MB its "
                      "recogniser", flush=True)  # fmt: skip

    watcher = threading.Thread(target=watch)
    watcher.start()
    begin = time.monotonic()
    session.run()
    over.set()
    watcher.join()
    print(f"{row.given_s / 3600:.2f} h of sound in {time.monotonic() - begin:.0f} s")
    early, late = taken[len(taken) // 4][1], taken[-1][1]
    print(f"memory              {early:.0f} MB at a quarter, {late:.0f} MB at the end (at most {MOST_GROWTH:.0%} more)")
    return int(late > early * (1 + MOST_GROWTH))


def _kept(place: Path) -> Kept:
    return Kept.begin(place, Facts(started_at=datetime.now()))


def _megabytes() -> tuple[float, float]:
    """Of the program, and of the processes under it."""
    own = psutil.Process()
    under = sum(process.memory_info().rss for process in own.children(recursive=True))
    return own.memory_info().rss / 1e6, under / 1e6


if __name__ == "__main__":
    sys.exit(main())
