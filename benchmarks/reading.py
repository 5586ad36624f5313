"""Time and memory of reading: ten thousand words in two seconds after loading, and no more a word when there are more.

Use: python benchmarks/reading.py [--rounds N]

Texts are made of the demonstrations' sentences, as typed and as a recogniser gives them without a full stop; each
length runs in a process of its own. Process time is what the work takes, whatever else the machine does.
"""

from __future__ import annotations

import argparse
import json
import random
import re
import resource
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

DEMOS = Path(__file__).parent.parent / "demo_audio"
LENGTHS = (1_000, 2_000, 5_000, 10_000, 20_000)
JUDGED, MOST_S = 10_000, 2.0
MOST_GROWTH = 1.5  # time a word at the greatest length against the smallest
BYTES = 1 if sys.platform == "darwin" else 1024  # unit of ru_maxrss


def main() -> int:
    """Read every length in a process of its own and print what it took; 1 when a limit is broken."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--rounds", type=int, default=1, help="runs of each length; the quickest counts")
    parser.add_argument("--words", type=int, help=argparse.SUPPRESS)
    parser.add_argument("--bare", action="store_true", help=argparse.SUPPRESS)
    given = parser.parse_args()
    if given.words:
        print(json.dumps(measured(given.words, bare=given.bare)))
        return 0
    broken = [report(bare, given.rounds) for bare in (False, True)]
    return int(any(broken))


def report(bare: bool, rounds: int) -> bool:
    """One line a length; whether a limit is broken."""
    print("without punctuation" if bare else "as typed")
    runs = [min((_apart(n, bare) for _ in range(rounds)), key=lambda run: run["process_s"]) for n in LENGTHS]
    for run in runs:
        print(
            f"  {run['words']:6} words {run['process_s']:6.2f} s of process time, {run['wall_s']:6.2f} s by the clock, "
            f"{run['words'] / run['process_s']:6.0f} words/s, {run['findings']} findings, {run['peak_mb']:.0f} MB"
        )
    judged = runs[LENGTHS.index(JUDGED)]["process_s"]
    growth = (runs[-1]["process_s"] / runs[-1]["words"]) / (runs[0]["process_s"] / runs[0]["words"])
    print(f"  {JUDGED} words {judged:.2f} s, {judged / MOST_S:.2f} of the limit of {MOST_S:.0f} s")
    print(f"  a word of {LENGTHS[-1]} takes {growth:.2f} times a word of {LENGTHS[0]} (at most {MOST_GROWTH})")
    return judged > MOST_S or growth > MOST_GROWTH


def measured(count: int, *, bare: bool) -> dict[str, Any]:
    """Read so many words once; loading is not counted."""
    from dictate.grammar import load_grammar
    from dictate.reading import read, transcript_of_text

    grammar = load_grammar()
    read(transcript_of_text("Gait normal."), grammar)  # what is loaded once
    transcript = transcript_of_text(text_of(count, bare=bare))
    wall, process = time.perf_counter(), time.process_time()
    result = read(transcript, grammar)
    return {
        "process_s": time.process_time() - process,
        "wall_s": time.perf_counter() - wall,
        "words": len(transcript.words),
        "findings": len(result.findings),
        "peak_mb": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * BYTES / 1e6,
    }


def text_of(count: int, *, bare: bool) -> str:
    """So many words of the demonstrations' lines, in a fixed random order."""
    lines = [line for path in sorted(DEMOS.glob("*.txt")) for line in path.read_text(encoding="utf-8").splitlines()]
    lines = [line for line in lines if line.strip()]
    chance = random.Random(1)
    said: list[str] = []
    words = 0
    while words < count:
        said.append(chance.choice(lines))
        words += len(said[-1].split())
    return re.sub(r"[^\w\s'/+-]", "", " ".join(said)).lower() if bare else "\n".join(said)


def _apart(count: int, bare: bool) -> dict[str, Any]:
    run = subprocess.run(
        [sys.executable, __file__, "--words", str(count), *(["--bare"] if bare else [])],
        stdout=subprocess.PIPE, text=True, check=True,
    )  # fmt: skip
    found: dict[str, Any] = json.loads(run.stdout.splitlines()[-1])
    return found


if __name__ == "__main__":
    sys.exit(main())
