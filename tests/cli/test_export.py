"""`dictate export` and `dictate compare`."""

from __future__ import annotations

import csv
import io
import json
import os
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest
from by_hand import examination, reflex
from notes.test_html import KNOWN, Page
from notes.test_pdf import actions_in
from typer.testing import CliRunner, Result

from dictate.cli.app import app
from dictate.cli.export import Format, print_bytes, rendered
from dictate.cli.opening import examination_in, opened
from dictate.errors import InputError
from dictate.grammar import Grammar
from dictate.model import Decision, Examination, Side
from dictate.notes import exam_json, examination_of
from dictate.notes.fhir import validate
from dictate.pipeline import Typed, examine
from dictate.review.decisions import apply


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


def test_fhir_reads_back(record: str, small: Grammar) -> None:
    """What was written is the examination, and the document says when it was made."""
    content = json.loads(run("export", record, "--format", "fhir").stdout)
    assert examination_of(content) == opened(str(record), small).exam
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
def test_record_that_cannot_be_read(content: str | None, message: str, tmp_path: Path, small: Grammar) -> None:
    """One line that says what to name instead."""
    path = tmp_path / "x.json"
    if content is not None:
        path.write_text(content, encoding="utf-8")
    with pytest.raises(InputError, match=message):
        opened(str(path), small)


def test_out_that_cannot_be_written(record: str, tmp_path: Path) -> None:
    """One line, and nothing left behind."""
    result = run("export", record, "--out", str(tmp_path / "none" / "x.txt"))
    assert "cannot be written" in str(result.exception)


@pytest.mark.parametrize("command", ["export", "compare"])
def test_a_file_that_is_there_stays(command: str, record: str, tmp_path: Path) -> None:
    """Nothing is written over unless that is asked for; never what is being read, nor what is no file."""
    out = tmp_path / "letter.txt"
    out.write_text("mine", encoding="utf-8")
    given = [command, record, *([record] if command == "compare" else []), "--out"]
    told = str(run(*given, str(out)).exception)
    assert told == f"--out {out}: is there already: give another name, or --force to write over it"
    assert out.read_text(encoding="utf-8") == "mine"
    assert run(*given, str(out), "--force").exit_code == 0
    assert out.read_text(encoding="utf-8") != "mine"
    before = Path(record).read_bytes()
    assert "is the examination itself" in str(run(*given, record, "--force").exception)
    assert Path(record).read_bytes() == before
    assert "is a folder" in str(run(*given, str(tmp_path), "--force").exception)
    assert "is no plain file" in str(run(*given, os.devnull, "--force").exception)
    link = tmp_path / "nowhere"
    link.symlink_to(tmp_path / "gone")
    assert "is there already" in str(run(*given, str(link)).exception)


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


def test_record_is_an_examination(record: str, small: Grammar) -> None:
    """The one place where a RECORD becomes one."""
    assert isinstance(opened(str(record), small).exam, Examination)


def noted(source: Path, folder: Path, *more: str) -> str:
    """Result files of a transcript in a folder; what was told."""
    return run("note", str(source), "--out", str(folder), *more).stderr


def values(folder: Path) -> dict[str, list[str]]:
    """Name of each examination in a folder → grades of its findings."""
    return {
        path.name: [getattr(f.value, "grade", "") for f in examination_in(path).findings]
        for path in folder.glob("*.exam.json")
    }


def test_second_visit_leaves_the_first(tmp_path: Path) -> None:
    """Two visits under one reference in one folder: both are there, and the second's name is told."""
    spring, autumn, out = tmp_path / "spring.txt", tmp_path / "autumn.txt", tmp_path / "notes"
    spring.write_text("Biceps two plus on the right.")
    autumn.write_text("Biceps three plus on the right.")
    noted(spring, out, "--patient", "P-17")
    assert "stays, this one is P-17-2" in noted(autumn, out, "--patient", "P-17")
    assert values(out) == {"P-17.exam.json": ["2+"], "P-17-2.exam.json": ["3+"]}


def test_files_without_their_examination_stay(tmp_path: Path) -> None:
    """A note that somebody keeps under that name, also where it is what is read."""
    source = tmp_path / "P-17.note.txt"
    source.write_text("Biceps two plus on the right.")
    assert "P-17 is of another examination, or was reviewed: it stays, this one is P-17-2" in noted(
        source, tmp_path, "--patient", "P-17"
    )
    assert source.read_text() == "Biceps two plus on the right."


def test_references_with_one_file_name_are_kept_apart(tmp_path: Path, small: Grammar) -> None:
    """Another patient's reference that makes the same file name takes nothing away."""
    source = tmp_path / "a.txt"
    source.write_text("Biceps two plus on the right.")
    noted(source, tmp_path, "--patient", "P/17")
    noted(source, tmp_path, "--patient", "P-17")
    assert {opened(str(path), small).exam.patient for path in tmp_path.glob("*.exam.json")} == {"P/17", "P-17"}


def test_same_dictation_again_is_written_over(tmp_path: Path) -> None:
    """Read again, or its transcript corrected: one examination."""
    source, out = tmp_path / "a.txt", tmp_path / "notes"
    for said in ("Biceps two plus on the right.", "Biceps two plus on the right.", "Biceps three plus on the right."):
        source.write_text(said)
        assert "stays" not in noted(source, out)
    assert values(out) == {"a.exam.json": ["3+"]}


def test_decisions_of_a_review_are_not_written_over(tmp_path: Path, small: Grammar) -> None:
    """What was settled stays when the same dictation is read again."""
    source, out = tmp_path / "a.txt", tmp_path / "notes"
    source.write_text("Biceps two plus.")
    noted(source, out)
    path = out / "a.exam.json"
    exam = opened(str(path), small).exam
    settled = exam.model_copy(update={"decisions": (Decision(query=0, answer="right"),)})
    path.write_text(exam_json(settled), encoding="utf-8")
    assert "a-2" in noted(source, out)
    assert opened(str(path), small).exam.decisions


def test_a_draft_of_an_earlier_version_is_handed_on_as_review_shows_it(tmp_path: Path, grammar: Grammar) -> None:
    """The finding that an undo of that version took away stands again."""
    path = tmp_path / "visit.exam.json"
    path.write_bytes((Path(__file__).parents[1] / "review" / "undone-earlier.exam.json").read_bytes())
    assert "reflex_triceps" in [finding.item for finding in opened(str(path), grammar).exam.findings]


TYPED_AT_REVIEW = (
    "<img src=x onerror=alert(1)><script>alert(2)</script>",
    '=HYPERLINK("http://example.org")',
    "+1+1",
    "-2+3",
    "@SUM(A1)",
    "\t=1+1",
    "]]><!DOCTYPE a>&b;",
    "\u202e4-\u200f left",
    "'single' \"double\" `back`",
    "one\r\n=two\nthree",
    "w" * 380,
)


@pytest.mark.parametrize("text", TYPED_AT_REVIEW, ids=range(len(TYPED_AT_REVIEW)))
def test_a_value_typed_at_review_is_only_text_in_every_form(text: str, grammar: Grammar) -> None:
    """No tag, no formula, no sign that turns the order round; FHIR stays valid and JSON keeps it as it was taken."""
    before = examine([Typed("typed", "Gait normal. Left knee jerk three plus.")], engine=None, grammar=grammar)
    exam = apply(before, Decision(finding=0, answer=f"abnormal: {text}"), grammar)
    kept = " ".join(text.split()).translate(dict.fromkeys(map(ord, "\u202e\u200f"), " ")).split()
    assert str(exam.findings[0].value).split() == kept
    made = {form: rendered(exam, grammar, form, brief=False) for form in Format}
    page = Page(made[Format.html].decode("utf-8"))
    assert set(page.tags) <= KNOWN
    assert not [name for name in page.attributes if name.startswith("on") or name == "src"]
    assert " ".join(kept) in " ".join(page.text.split())
    assert not {"\u202e", "\u200f"} & set(made[Format.text].decode("utf-8") + page.text)
    rows = list(csv.reader(io.StringIO(made[Format.csv].decode("utf-8"))))
    assert [len(row) for row in rows] == [14] * 3
    assert not [cell for row in rows for cell in row if cell[:1] in ("=", "+", "-", "@", "\t")]
    assert Examination.model_validate_json(made[Format.json]) == exam
    document = json.loads(made[Format.fhir])
    validate(document)
    assert examination_of(document) == exam
    assert actions_in(made[Format.pdf]) == []
