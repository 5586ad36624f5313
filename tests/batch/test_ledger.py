"""What is done: one line per examination, appended when its files stand; a kill loses the last line at most."""

from __future__ import annotations

import stat
from pathlib import Path

import pytest

from dictate.batch.found import LEDGER
from dictate.batch.jobs import Outcome
from dictate.batch.ledger import Entry, Ledger
from dictate.errors import MachineError

ENDINGS = ("note.txt", "exam.json", "findings.csv", "queries.csv", "transcript.json")


def entry(name: str = "a", key: str = "k", **more: object) -> Entry:
    """A done one."""
    return Entry.model_validate({"source": f"{name}.wav", "name": name, "key": key, "state": "done", **more})


def files(folder: Path, name: str) -> None:
    """Its results."""
    for ending in ENDINGS:
        (folder / f"{name}.{ending}").touch()


def test_done_is_the_same_key_with_its_files(tmp_path: Path) -> None:
    """Another key, a failure or a missing file means: again."""
    with Ledger(tmp_path) as ledger:
        ledger.record(entry())
        ledger.record(entry("b", state="failed"))
        assert not ledger.is_done("a", "k")
        files(tmp_path, "a")
        files(tmp_path, "b")
        assert ledger.is_done("a", "k")
        assert not ledger.is_done("a", "other")
        assert not ledger.is_done("b", "k")
        (tmp_path / "a.queries.csv").unlink()
        assert not ledger.is_done("a", "k")


def test_last_line_counts_and_a_torn_one_does_not(tmp_path: Path) -> None:
    """Whatever byte a kill stopped at, the lines before it stand."""
    with Ledger(tmp_path) as ledger:
        ledger.record(entry(findings=1))
        ledger.record(entry(findings=2))
        ledger.record(entry("b"))
    whole = (tmp_path / LEDGER).read_bytes()
    last = whole.rstrip(b"\n").rindex(b"\n") + 1
    for cut in range(last, len(whole) - 1):
        (tmp_path / LEDGER).write_bytes(whole[:cut])
        with Ledger(tmp_path) as again:
            assert list(again.entries.values()) == [entry(findings=2)]
    (tmp_path / LEDGER).write_bytes(whole)
    with Ledger(tmp_path) as again:
        assert list(again.entries) == ["a", "b"]
    assert (tmp_path / LEDGER).read_bytes().count(b"\n") == 2, "written anew with a line each"


def test_files_are_the_owners_alone(tmp_path: Path) -> None:
    """And what a killed batch was writing is cleared."""
    (tmp_path / ".tmpabc.part").touch()
    with Ledger(tmp_path / "out") as ledger:
        ledger.record(entry())
    assert {stat.S_IMODE(path.stat().st_mode) for path in (tmp_path / "out").iterdir()} == {0o600}
    with Ledger(tmp_path):
        assert not list(tmp_path.glob("*.part"))


def test_one_batch_at_a_time(tmp_path: Path) -> None:
    """A second one is told, and leaves the first alone."""
    with Ledger(tmp_path) as ledger:
        with pytest.raises(MachineError, match="another batch"), Ledger(tmp_path):
            pass
        ledger.record(entry())
    with Ledger(tmp_path) as again:
        assert list(again.entries) == ["a"]


def test_folder_that_cannot_be_written(tmp_path: Path) -> None:
    """One line."""
    (tmp_path / "file").touch()
    with pytest.raises(MachineError, match="cannot be used"), Ledger(tmp_path / "file" / "out"):
        pass


def test_failures_of_sources_that_are_gone_are_dropped(tmp_path: Path) -> None:
    """What was done stays, though its recording was moved away."""
    with Ledger(tmp_path) as ledger:
        ledger.record(entry())
        ledger.record(entry("b", state="failed"))
        ledger.record(entry("c", state="failed"))
        ledger.forget_failed({"c.wav"})
        assert list(ledger.entries) == ["a", "c"]


def test_outcome_fills_the_entry() -> None:
    """An error makes it a failure."""
    assert entry().with_outcome(Outcome(error="damaged", seconds=1.23456)).state == "failed"
    filled = entry(state="failed").with_outcome(Outcome(findings=3, musts=1, looks=2, sound_s=61.5))
    assert (filled.state, filled.findings, filled.musts, filled.looks, filled.sound_s) == ("done", 3, 1, 2, 61.5)
