"""`dictate export` and `dictate compare`."""

from __future__ import annotations

import csv
import io
import json
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest
from by_hand import examination, reflex
from typer.testing import CliRunner, Result

from dictate.cli.app import app
from dictate.cli.export import print_bytes
from dictate.cli.opening import opened
from dictate.errors import InputError
from dictate.model import Examination, Side
from dictate.notes import exam_json, examination_of


def run(*arguments: str) -> Result:
    """Run a command in this process."""
    return CliRunner().invoke(app, arguments, catch_exceptions=True)


def visit(grade: str, folder: Path, name: str, **more: object) -> str:
    """An exam.json."""
    path = folder / f"{name}.exam.json"
    path.write_text(exam_json(examination(reflex("reflex_biceps", grade, side=Side.LEFT), **more)), encoding="utf-8")
    return str(path)


@pytest.fixture
def record(tmp_path: Path) -> str:
    """One visit."""
    return visit("2+", tmp_path, "visit")


@pytest.mark.parametrize(
    ("form", "start"),
    [
        ("text", b"DRAFT, not signed"), ("html", b"<!DOCTYPE html>"), ("pdf", b"%PDF-"), ("csv", b"component,item"),
        ("json", b"{"), ("fhir", b"{"),
    ],
)  # fmt: skip
def test_every_format(form: str, start: bytes, record: str, tmp_path: Path) -> None:
    """To stdout, or the same to a file that only its owner reads."""
    printed = run("export", record, "--format", form)
    assert printed.exit_code == 0
    assert printed.stdout_bytes.startswith(start)
    out = tmp_path / "out"
    assert run("export", record, "--format", form, "--out", str(out)).stdout_bytes == b""
    assert out.read_bytes().startswith(start)
    assert out.stat().st_mode & 0o777 == 0o600


def test_fhir_reads_back(record: str) -> None:
    """What was written is the examination, and the document says when it was made."""
    content = json.loads(run("export", record, "--format", "fhir").stdout)
    assert examination_of(content) == opened(str(record)).exam
    assert abs((datetime.now(UTC) - datetime.fromisoformat(content["timestamp"])).total_seconds()) < 600


def test_note_has_the_same_formats(tmp_path: Path) -> None:
    """From a dictation at once."""
    typed = tmp_path / "visit.txt"
    typed.write_text("Reflexes. Biceps two plus on the left.", encoding="utf-8")
    assert "<!DOCTYPE html>" in run("note", str(typed), "--format", "html").stdout
    assert json.loads(run("note", str(typed), "--format", "fhir").stdout)["resourceType"] == "Bundle"


@pytest.mark.parametrize(
    ("content", "message"),
    [(None, "no such file"), ("{}", "is no examination"), ("\x00", "is no examination"), ("[1", "is no examination")],
)
def test_record_that_cannot_be_read(content: str | None, message: str, tmp_path: Path) -> None:
    """One line that says what to name instead."""
    path = tmp_path / "x.json"
    if content is not None:
        path.write_text(content, encoding="utf-8")
    with pytest.raises(InputError, match=message):
        opened(str(path))


def test_out_that_cannot_be_written(record: str, tmp_path: Path) -> None:
    """One line, and nothing left behind."""
    result = run("export", record, "--out", str(tmp_path / "none" / "x.txt"))
    assert "cannot be written" in str(result.exception)


def test_compare_two_visits(tmp_path: Path) -> None:
    """In text, csv, json and html."""
    pair = visit("2+", tmp_path, "a"), visit("3+", tmp_path, "b")
    assert "biceps reflex left: 2+, now 3+" in run("compare", *pair).stdout
    assert next(csv.DictReader(io.StringIO(run("compare", *pair, "--format", "csv").stdout)))["change"] == "changed"
    assert json.loads(run("compare", *pair, "--format", "json").stdout)["differences"][0]["change"] == "changed"
    assert "now 3+" in run("compare", *pair, "--format", "html").stdout


def test_pdf_is_not_written_to_a_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    """It would be noise."""
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True, raising=False)
    with pytest.raises(InputError, match="write it to a file"):
        print_bytes(b"%PDF-1.7")


def test_one_visit_is_no_comparison(record: str) -> None:
    """It takes two."""
    assert "name an earlier and a later one" in str(run("compare", record).exception)


def test_two_patients_are_not_compared(tmp_path: Path) -> None:
    """And no message names them."""
    pair = visit("2+", tmp_path, "a", patient="P-17"), visit("3+", tmp_path, "b", patient="P-18")
    fault = str(run("compare", *pair).exception)
    assert "several patients" in fault
    assert "P-1" not in fault


def test_record_is_an_examination(record: str) -> None:
    """The one place where a RECORD becomes one."""
    assert isinstance(opened(str(record)).exam, Examination)
