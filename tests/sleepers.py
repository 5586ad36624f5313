"""Recognisers that sleep, and do what the file says, for tests of batches; `python sleepers.py FOLDER OUT` runs one."""

from __future__ import annotations

import functools
import hashlib
import os
import signal
import sys
import time
from collections.abc import Callable
from contextlib import nullcontext
from datetime import datetime
from pathlib import Path
from typing import Any

from by_hand import small_grammar

from dictate.batch import Asked, Batch, Crew, Ledger, Setting, Tally, find, open_crew
from dictate.batch.crew import alone
from dictate.cli.files import write_files
from dictate.errors import InputError
from dictate.grammar import Grammar
from dictate.model import Conventions, Hints, ModelIdentity, Source, Transcript, Word

SAID = "Reflexes. Biceps two plus on the right, three plus on the left."
SMALL = "Gait normal."


class Sleeper:
    """Hears the words that stand in the file, and follows orders before bars: `made DAY|`, `sleep 1|`, `die|`."""

    def __init__(self, seconds: float = 0.0, log: str = "", sha256: str = "1" * 64) -> None:
        self.seconds, self.log = seconds, log
        self.identity = ModelIdentity(name="sleeper", sha256=sha256)

    def hear(self, path: Path, *, hints: Hints, progress: Callable[[float], None] | None = None) -> Transcript:
        """Words with times, half a second each."""
        sound = path.read_bytes()
        digest = hashlib.sha256(sound).hexdigest()
        orders, _, words = sound.decode("utf-8").rpartition("|")
        time.sleep(self.seconds)
        if self.log:
            with open(self.log, "a", encoding="utf-8") as log:
                log.write(f"{path.name} {os.getpid()}\n")
        for order in orders.split("|"):
            self._follow(order, path)
        heard = tuple(
            Word(text=text, start_s=at / 2, end_s=at / 2 + 0.4, probability=0.9)
            for at, text in enumerate(words.split())
        )
        made = next((order.split()[1] for order in orders.split("|") if order.startswith("made")), "")
        source = Source(
            name=path.name, kind="recording", sha256=digest, duration_s=len(heard) / 2,
            created_at=datetime.fromisoformat(made) if made else None,
        )  # fmt: skip
        return Transcript(words=heard, sources=(source,), model=self.identity)

    def _follow(self, order: str, path: Path) -> None:
        if order.startswith("sleep"):
            time.sleep(float(order.split()[1]))
        if order == "grow":
            with path.open("a", encoding="utf-8") as file:
                file.write(" and so on")
        if order == "fail":
            raise InputError(f"{path.name}: damaged")
        if order == "break":
            raise ZeroDivisionError(f"{path.name} in a message that must not get out")
        if order == "die-once" and path.with_suffix(".died").exists():
            return
        if order in ("die", "die-once"):
            path.with_suffix(".died").touch()
            os.kill(os.getpid(), signal.SIGKILL)


def setting(grammar: Grammar, *, asked: Asked | None = None, **engine: Any) -> Setting:
    """A setting whose recogniser sleeps."""
    return Setting(
        grammar=grammar,
        program=version(),
        asked=asked or Asked(),
        conventions=Conventions(),
        make_engine=functools.partial(Sleeper, **engine),
    )


def version() -> str:
    """The installed version."""
    from importlib.metadata import version as of

    return of("dictate")


def run(prepared: Setting, folder: Path | str, out: Path, *, crew: Crew | None = None, **ways: Any) -> Tally:
    """A batch by a crew, in this process, or with `workers` or `cluster` by Dask; other ways are find()'s."""
    dask = {name: ways.pop(name) for name in ("workers", "cluster") if name in ways}
    keeping = ways.pop("keeping", None)
    found = find(str(folder), out=out, **ways)
    by = nullcontext(crew) if crew else open_crew(prepared, **dask) if dask else alone(prepared)
    with Ledger(out) as ledger, by as workers:
        ledger.forget_failed({one.source for one in found.candidates})
        return Batch(prepared, workers, ledger, write=write_files, keeping=keeping).run(found.candidates)


def fill(folder: Path, **files: str) -> Path:
    """Recordings whose sound is text: `a="..."` is a.wav, `a__b` is a/b.wav."""
    for name, said in files.items():
        path = folder / f"{name.replace('__', '/')}.wav"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(said, encoding="utf-8")
    return folder


if __name__ == "__main__":
    tally = run(
        setting(small_grammar(), seconds=float(sys.argv[4]), log=sys.argv[3]), Path(sys.argv[1]), Path(sys.argv[2]),
        **({"workers": int(sys.argv[5])} if len(sys.argv) > 5 else {}),
    )  # fmt: skip
    sys.exit(1 if tally.failed else 0)
