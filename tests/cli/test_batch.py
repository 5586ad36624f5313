"""`dictate batch`: a folder of recordings and transcripts → result files, batch.csv, a report."""

from __future__ import annotations

import csv
import stat
import subprocess
import sys
import time
from contextlib import AbstractContextManager
from pathlib import Path
from subprocess import PIPE

import psutil
import pytest
from by_hand import ROOT
from sleepers import SAID, SMALL
from typer.testing import CliRunner, Result

from dictate.batch import Setting, crew
from dictate.batch.crew import Crew
from dictate.cli.app import app
from dictate.errors import InputError, MachineError


@pytest.fixture(autouse=True)
def _here(monkeypatch: pytest.MonkeyPatch) -> None:
    """No processes are started: transcripts are read in this one."""
    monkeypatch.setattr("dictate.batch.open_crew", lambda setting, **_: crew.alone(setting))


def run(*arguments: str | Path) -> Result:
    """Run the command in this process."""
    return CliRunner().invoke(app, ["batch", *map(str, arguments)], catch_exceptions=True)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Two transcripts, a copy and something else."""
    inside = tmp_path / "in" / "ward"
    inside.mkdir(parents=True)
    (tmp_path / "in" / "roe.txt").write_text(SAID, encoding="utf-8")
    (inside / "doe.txt").write_text(f"Left biceps seven plus. {SMALL}", encoding="utf-8")
    (inside / "copy.txt").write_text(SAID, encoding="utf-8")
    (inside / "letter.pdf").touch()
    return tmp_path / "in"


def test_results_and_a_table(folder: Path, tmp_path: Path) -> None:
    """Five files of each examination and batch.csv, readable by their owner alone; no source named in a message."""
    result = run(folder, "--out", tmp_path / "out")
    assert (result.exit_code, result.stdout) == (0, "")
    written = [path for path in (tmp_path / "out").iterdir() if not path.name.startswith(".")]
    assert len(written) == 2 * 5 + 1
    assert {stat.S_IMODE(path.stat().st_mode) for path in written} == {0o600}
    with (tmp_path / "out" / "batch.csv").open(encoding="utf-8", newline="") as file:
        rows = {row["source"]: row for row in csv.DictReader(file)}
    assert {source: (row["state"], row["findings"]) for source, row in rows.items()} == {
        "roe.txt": ("done", "2"), "ward/copy.txt": ("same", ""), "ward/doe.txt": ("done", "2"),
    }  # fmt: skip
    said = result.stderr
    assert "2 done, 0 done before, 0 failed" in said
    assert "1 with the same content as another" in said
    assert "1 other file left aside" in said
    assert not {"roe", "doe", "ward"} & set(said.replace("/", " ").replace(".", " ").split())


def test_saved_in_the_records_as_note_does(folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """--save: a draft each, which the records list and export hands on; what failed has none."""
    monkeypatch.setenv("DICTATE_RECORDS", str(tmp_path / "records"))
    monkeypatch.delenv("DICTATE_PASSPHRASE", raising=False)
    (folder / "empty.wav").touch()
    assert run(folder, "--out", tmp_path / "out", "--save").exit_code == 1
    with (tmp_path / "out" / "batch.csv").open(encoding="utf-8", newline="") as file:
        keys = {row["source"]: row["record"] for row in csv.DictReader(file)}
    assert [source for source, key in keys.items() if key] == ["roe.txt", "ward/doe.txt"]
    listed = CliRunner().invoke(app, ["records"]).stdout
    assert all(key in listed for key in keys.values() if key)
    (note,) = (tmp_path / "out").glob("roe-*.note.txt")
    assert CliRunner().invoke(app, ["export", keys["roe.txt"]]).stdout == note.read_text(encoding="utf-8")


def test_further_formats(folder: Path, tmp_path: Path) -> None:
    """--format: beside the usual files; also for what an earlier run heard, without doing it again."""
    out = tmp_path / "out"
    run(folder, "--out", out, "--format", "html")
    assert len(list(out.glob("*.note.html"))) == 2
    result = run(folder, "--out", out, "--format", "html", "--format", "fhir")
    assert "2 done before" in result.stderr
    (found,) = out.glob("roe-*.fhir.json")
    assert '"resourceType": "Bundle"' in found.read_text(encoding="utf-8")
    assert stat.S_IMODE(found.stat().st_mode) == 0o600


def test_exit_status(folder: Path, tmp_path: Path) -> None:
    """1 when any failed; 3 with --strict when queries must be settled; 0 otherwise."""
    assert run(folder, "--out", tmp_path / "out", "--strict").exit_code == 3
    (folder / "empty.wav").touch()
    result = run(folder, "--out", tmp_path / "out", "--strict")
    assert result.exit_code == 1
    assert "2 done before, 1 failed" in result.stderr
    assert "batch.csv" in result.stderr


def test_options_reach_every_examination(folder: Path, tmp_path: Path) -> None:
    """A scope asks, a reference stands in the note and in no name, filters choose."""
    out = tmp_path / "out"
    result = run(folder, "--out", out, "--scope", "dizziness", "--patient", "P-17", "--only", "doe.*")
    assert result.exit_code == 0
    (note,) = out.glob("*.note.txt")
    assert note.name.startswith("doe-")
    text = note.read_text(encoding="utf-8")
    assert "P-17" in text
    assert "not mentioned" in text


def test_sub_folder_is_one_examination(folder: Path, tmp_path: Path) -> None:
    """--together."""
    assert run(folder, "--out", tmp_path / "out", "--together").exit_code == 0
    assert sorted(path.name.rpartition("-")[0] for path in (tmp_path / "out").glob("*.note.txt")) == ["roe", "ward"]


def test_report(folder: Path, tmp_path: Path) -> None:
    """Printed, and written beside the results."""
    out = tmp_path / "out"
    run(folder, "--out", out)
    result = run("--report", out)
    assert result.exit_code == 0
    assert result.stdout == (out / "report.txt").read_text(encoding="utf-8")
    assert "component,reflexes,3,2,1.000," in (out / "report.csv").read_text(encoding="utf-8")
    assert isinstance(run("--report", tmp_path / "none").exception, InputError)


def test_results_beside_the_recordings(folder: Path) -> None:
    """--out FOLDER hears what is there, and nothing twice; dictations that a run passes over are told."""
    first = run(folder, "--out", folder)
    assert first.exit_code == 0
    assert "2 done" in first.stderr
    assert "0 done, 2 done before" in run(folder, "--out", folder).stderr
    assert "with results of a batch passed over" in run(folder.parent, "--out", folder.parent / "more").stderr


def test_no_more_processes_than_work(folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A number typed wrongly starts none that would have nothing to do."""
    asked: list[int] = []

    def counted(setting: Setting, *, workers: int, **_: str) -> AbstractContextManager[Crew]:
        asked.append(workers)
        return crew.alone(setting)

    monkeypatch.setattr("dictate.batch.open_crew", counted)
    assert run(folder, "--out", tmp_path / "o", "--workers", "400").exit_code == 0
    assert asked == [3]
    assert run(folder, "--out", tmp_path / "o", "--workers", "100000").exit_code == 2


def test_what_is_wrong_is_one_line(folder: Path, tmp_path: Path) -> None:
    """Wrong usage is 2; an unknown scope or folder and a second batch are named."""
    assert run(folder).exit_code == 2
    assert run("--out", tmp_path).exit_code == 2
    assert isinstance(run(folder, "--out", tmp_path / "o", "--scope", "dizzines").exception, InputError)
    assert isinstance(run(tmp_path / "none", "--out", tmp_path / "o").exception, InputError)
    (tmp_path / "file").touch()
    assert isinstance(run(folder, "--out", tmp_path / "file").exception, MachineError)


def test_files_of_others_stay(folder: Path, tmp_path: Path) -> None:
    """A batch.csv or a report that this program did not write is not written over."""
    out = tmp_path / "out"
    out.mkdir()
    table = out / "batch.csv"
    table.write_text("batch,drug\n1,a\n", encoding="utf-8")
    assert str(run(folder, "--out", out).exception).startswith(f"{table}: is no result of a batch: move it")
    assert [path.name for path in out.iterdir()] == ["batch.csv"]
    table.unlink()
    assert run(folder, "--out", out).exit_code == 0
    assert run(folder, "--out", out).exit_code == 0
    assert run("--report", out).exit_code == 0
    assert run("--report", out).exit_code == 0
    (out / "report.txt").write_text("Dear colleague", encoding="utf-8")
    assert "report.txt: is no result of a batch" in str(run("--report", out).exception)
    assert (out / "report.txt").read_text(encoding="utf-8") == "Dear colleague"


def test_a_service_ends_it(tmp_path: Path) -> None:
    """SIGTERM ends a batch that waits for arrivals as Ctrl-C does: with our lines alone, and nothing left running."""
    inside, out = tmp_path / "in", tmp_path / "out"
    inside.mkdir()
    (inside / "doe.txt").write_text(SMALL, encoding="utf-8")
    given = [sys.executable, "-m", "dictate.cli.app", "batch", str(inside), "--out", str(out), "--arrivals"]
    process = subprocess.Popen([*given, "--workers", "1"], stdout=PIPE, stderr=PIPE, text=True, cwd=ROOT)
    try:
        end = time.monotonic() + 60.0
        while not list(out.glob("*.note.txt")) and time.monotonic() < end:
            time.sleep(0.2)
        children = psutil.Process(process.pid).children(recursive=True)
        process.terminate()
        told = process.communicate(timeout=60)
    finally:
        process.kill()
    assert process.returncode == 0
    assert told == ("", "stopped: 1 done, 0 done before, 0 failed\n0.0 min of sound, 1 findings, 0 must, 1 look\n")
    assert children
    assert psutil.wait_procs(children, timeout=10)[1] == []
