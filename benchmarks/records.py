"""How long it takes to find and open one record among many findings: `python benchmarks/records.py`.

2,000 records of 50 findings each are saved first, in a folder that goes away again; then, in a fresh process for each
way of asking, the records are opened, one is found and it is opened. Broken limits end with 1.
"""

from __future__ import annotations

import argparse
import json
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import Any

MOST_S = 0.3
FINDINGS = 50
WAYS: dict[str, dict[str, Any]] = {
    "patient": {"patient": "P-777"},
    "last of patient": {"patient": "P-777", "last": True},
    "item in few": {"item": "rare"},
    "item in all": {"item": "item_7"},
    "all": {},
}


def main() -> int:
    """Fill, ask in every way, print; 1 when a limit is broken."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--records", type=int, default=2000)
    parser.add_argument("--passphrase", help="lock them")
    parser.add_argument("--ask", nargs=2, metavar=("FOLDER", "WAY"), help=argparse.SUPPRESS)
    given = parser.parse_args()
    if given.ask:
        print(json.dumps(ask(Path(given.ask[0]), WAYS[given.ask[1]], given.passphrase)))
        return 0
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "records"
        fill(folder, given.records, given.passphrase)
        worst = 0.0
        for way in WAYS:
            took = _apart(folder, way, given.passphrase)
            worst = max(worst, took["find"] + took["open"])
            print(
                f"{way:16} {took['hits']:6} found   opened in {took['ready'] * 1000:6.1f} ms   "
                f"find {took['find'] * 1000:6.1f} ms   open one {took['open'] * 1000:6.1f} ms"
            )
    print(f"slowest find and open {worst:.3f} s (at most {MOST_S} s)")
    return int(worst > MOST_S)


def fill(folder: Path, count: int, passphrase: str | None) -> None:
    """Save records, one transaction each, as the program does."""
    from dictate.model import Component, Evidence, Examination, Finding, Grade, Side, Status, Transcript
    from dictate.records import open_records

    evidence = (Evidence(first=0, last=3, quote="biceps two plus right"),)
    value = Grade(scale="tendon_reflex", grade="2+")
    begin = time.perf_counter()
    with open_records(folder, passphrase=passphrase) as records:
        for number in range(count):
            items = [f"item_{at}" for at in range(FINDINGS)]
            if number % 500 == 0:
                items[0] = "rare"
            findings = tuple(
                Finding(
                    component=Component.REFLEXES, item=item, side=Side.LEFT, status=Status.MEASURED, value=value,
                    evidence=evidence,
                )
                for item in items
            )  # fmt: skip
            exam = Examination(
                program="0", grammar_sha256="", patient=f"P-{number}", transcript=Transcript(), findings=findings
            )
            records.save(exam, who="benchmark", why="filled")
    took = time.perf_counter() - begin
    print(f"{count} records, {count * FINDINGS} findings saved, {took / count * 1000:.1f} ms each")


def ask(folder: Path, wanted: dict[str, Any], passphrase: str | None) -> dict[str, Any]:
    """Open, find, open the first that was found."""
    from dictate.records import open_records

    begin = time.perf_counter()
    with open_records(folder, passphrase=passphrase) as records:
        ready = time.perf_counter()
        found = records.find(**wanted)
        listed = time.perf_counter()
        records.open(found[0].key)
        end = time.perf_counter()
    return {"hits": len(found), "ready": ready - begin, "find": listed - ready, "open": end - listed}


def _apart(folder: Path, way: str, passphrase: str | None) -> dict[str, Any]:
    """One question in a process of its own: nothing is warm but the disk."""
    lock = ["--passphrase", passphrase] if passphrase else []
    run = [sys.executable, __file__, "--ask", str(folder), way, *lock]
    took: dict[str, Any] = json.loads(subprocess.run(run, capture_output=True, text=True, check=True).stdout)
    return took


if __name__ == "__main__":
    sys.exit(main())
