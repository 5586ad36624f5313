"""`dictate sign`, `amend` and `withdraw`."""

from __future__ import annotations

import html
import io
import json
import re
from pathlib import Path

import pytest
from records.visits import BY, doubtful, visit
from typer.testing import CliRunner, Result

from dictate.cli import signing
from dictate.cli.app import app
from dictate.errors import InputError, OpenQueries, RecordError
from dictate.model import Examination, Severity
from dictate.notes import exam_json, examination_of
from dictate.records import open_records


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Records of their own."""
    monkeypatch.setenv("DICTATE_RECORDS", str(tmp_path / "records"))
    return tmp_path / "records"


def run(*arguments: str, stdin: str = "") -> Result:
    """Run a command in this process."""
    return CliRunner().invoke(app, arguments, input=stdin)


def test_an_exam_json_is_saved_and_signed(folder: Path, tmp_path: Path) -> None:
    """A trainee signs, an examiner countersigns."""
    path = tmp_path / "visit.exam.json"
    path.write_text(exam_json(visit()), encoding="utf-8")
    result = run("sign", str(path), "--by", "C. Trainee", "--countersign", BY, "--examined-by", "C. Trainee")
    assert result.exit_code == 0
    assert result.stdout.startswith("Signed by C. Trainee, 20")
    assert f"\nCountersigned by {BY}\nExamined by C. Trainee\nPatient: P-1\n" in result.stdout
    with open_records(folder) as records:
        (one,) = records.find()
    assert (one.state, one.revision) == ("signed", 2)


def test_a_file_is_signed_once(folder: Path, tmp_path: Path) -> None:
    """It stays a draft, which is said; the same dictation is no second record of the patient."""
    path = tmp_path / "visit.exam.json"
    path.write_text(exam_json(visit()), encoding="utf-8")
    assert "stays the draft it is" in run("sign", str(path), "--by", BY).stderr
    again = run("sign", str(path), "--by", BY)
    assert re.search(r"is in record \w{6} \(signed\) already", str(again.exception))
    path.write_text(exam_json(visit("P-2")), encoding="utf-8")
    with open_records(folder) as records:
        key = records.save(visit("P-2"), who=BY, why="dictated").key
    assert f"`dictate sign {key}` signs it" in str(run("sign", str(path), "--by", BY).exception)
    with open_records(folder) as records:
        assert len(records.find()) == 2


def test_a_note_is_countersigned_later(folder: Path) -> None:
    """By somebody else than the trainee who signed, once; what was signed stays."""
    with open_records(folder) as records:
        key = records.save(visit(), who=BY, why="dictated").key
    assert run("sign", key).exit_code == 2
    assert isinstance(run("sign", key, "--countersign", BY).exception, RecordError)
    assert "somebody else" in str(run("sign", key, "--by", "C. Trainee", "--countersign", "c.  trainee").exception)
    signed = run("sign", key, "--by", "C. Trainee")
    assert "somebody else" in str(run("sign", key, "--countersign", "C. Trainee").exception)
    result = run("sign", key, "--countersign", BY)
    assert result.stdout.startswith(signed.stdout)
    assert re.search(rf"\nCOUNTERSIGNED 20.* by {BY}\nRecord {key}, revision 3, head ", result.stdout)
    assert "countersigned by A. Examiner before" in str(run("sign", key, "--countersign", "B. Other").exception)
    with open_records(folder) as records:
        one = records.open(key)
        assert (one.state, one.exam.signed_by, one.exam.countersigned_by) == ("signed", "C. Trainee", BY)
        assert records.verify() == []


UNDONE = Path(__file__).parents[1] / "review" / "undone-earlier.exam.json"  # its triceps reflex was taken away


@pytest.mark.parametrize("kept", [False, True])
def test_a_draft_of_an_earlier_version_is_signed_as_review_shows_it(folder: Path, tmp_path: Path, kept: bool) -> None:
    """What comes back is told, and must be seen."""
    record = str(tmp_path / "visit.exam.json")
    Path(record).write_bytes(UNDONE.read_bytes())
    if kept:
        with open_records(folder) as records:
            exam = Examination.model_validate_json(UNDONE.read_bytes())
            record = records.save(exam, who=BY, why="dictated").key
    stopped = run("sign", record, "--by", BY)
    assert isinstance(stopped.exception, OpenQueries)
    assert "must be seen first" in str(stopped.exception)
    assert "put right: comes: Triceps reflex: both sides" in stopped.stderr
    result = run("sign", record, "--by", BY, "--passed-over")
    assert result.exit_code == 0, result.exception
    assert "Triceps reflex: both sides" in result.stdout


class Keyboard(io.StringIO):
    """Somebody who types."""

    def isatty(self) -> bool:
        """At a terminal."""
        return True


def test_looks_are_seen_one_by_one(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Piped input has not seen them; anything but enter stops, and nothing was changed; what is signed is no draft."""
    with open_records(folder) as records:
        key = records.save(doubtful(Severity.LOOK, Severity.LOOK), who=BY, why="dictated").key
    assert "2 queries must be looked at before signing" in str(run("sign", key, "--by", BY).exception)
    monkeypatch.setattr("sys.stdin", Keyboard("\nno\n"))
    with pytest.raises(RecordError, match="stopped: nothing was changed"):
        signing.sign(key, by=BY)
    with open_records(folder) as records:
        assert (records.open(key).state, records.open(key).exam.decisions) == ("draft", ())
    monkeypatch.setattr("sys.stdin", Keyboard("\n\n"))
    signing.sign(key, by=BY)
    assert "is no draft" in str(run("sign", key, "--by", BY).exception)
    other = run("records", "verify", "--head", "0" * 64)
    assert (other.exit_code, other.stdout) == (1, f"head {'0' * 64}: is not in the chain\n")


def test_a_file_with_open_musts_is_not_even_saved(folder: Path, tmp_path: Path) -> None:
    """Trying again does not fill the records with copies."""
    path = tmp_path / "visit.exam.json"
    path.write_text(exam_json(doubtful(Severity.MUST)), encoding="utf-8")
    assert isinstance(run("sign", str(path), "--by", BY).exception, OpenQueries)
    with open_records(folder) as records:
        assert records.find() == []


@pytest.mark.parametrize("content", [None, "{}", "\udcff"])
def test_a_file_that_is_no_examination(content: str | None, tmp_path: Path) -> None:
    """One line."""
    path = tmp_path / "visit.json"
    if content is not None:
        path.write_text(content, encoding="utf-8", errors="surrogateescape")
    assert isinstance(run("sign", str(path), "--by", BY).exception, InputError)


def test_an_addendum_is_typed_or_dictated(folder: Path, tmp_path: Path) -> None:
    """A dictated one must have been seen, and its doubts settled."""
    with open_records(folder) as records:
        key = records.save(visit(), who=BY, why="dictated").key
    common = (key, "--by", BY, "--reason", "forgotten")
    assert isinstance(run("amend", *common, "--text", "x").exception, RecordError)
    assert run("sign", key, "--by", BY).exit_code == 0
    assert isinstance(run("amend", *common).exception, InputError)
    assert "  Jaw jerk normal.\n" in run("amend", *common, "--text", "Jaw jerk normal.").stdout
    spoken = tmp_path / "more.txt"
    spoken.write_text("Reflexes. Left biceps seven plus.", encoding="utf-8")
    assert "say it again, or type it" in str(run("amend", *common, str(spoken), "--passed-over").exception)
    spoken.write_text("Reflexes. Triceps two plus on both sides.", encoding="utf-8")
    assert "must be seen first" in str(run("amend", *common, str(spoken)).exception)
    result = run("amend", *common, str(spoken), "--passed-over")
    assert result.exit_code == 0
    assert "  Reflexes. Triceps two plus on both sides.\n" in result.stdout
    with open_records(folder) as records:
        assert [one.exam is None for one in records.open(key).addenda] == [True, False]


def test_what_was_added_or_withdrawn_is_handed_on(folder: Path) -> None:
    """In every form that is read, as text: nobody takes a withdrawn note for one to rely on."""
    with open_records(folder) as records:
        key = records.save(visit(), who=BY, why="dictated").key
    assert run("sign", key, "--by", BY, "--passed-over").exit_code == 0
    added = 'The <b>left</b> "arm" was =1+1 weaker.'
    assert run("amend", key, "--by", BY, "--reason", "<script>", "--text", added).exit_code == 0
    assert run("withdraw", key, "--by", BY, "--reason", "another patient").exit_code == 0
    assert added in run("export", key).stdout
    page = run("export", key, "--format", "html").stdout
    document = json.loads(run("export", key, "--format", "fhir").stdout)
    composition = next(one["resource"] for one in document["entry"] if one["resource"]["resourceType"] == "Composition")
    for text in (page, composition["text"]["div"] + composition["section"][-1]["text"]["div"]):
        assert "another patient" in text
        assert "<script>" not in text
        assert added in html.unescape(text)
    assert "WITHDRAWN" in run("compare", key, key).stdout
    with open_records(folder) as records:
        assert examination_of(document) == records.open(key).exam


@pytest.mark.parametrize("form", ["csv", "json"])
def test_what_a_table_cannot_hold_is_said_beside_it(folder: Path, tmp_path: Path, form: str) -> None:
    """Addenda and a withdrawal change neither the columns nor the examination, and whoever exports it is told."""
    with open_records(folder) as records:
        key = records.save(visit(), who=BY, why="dictated").key
    assert run("sign", key, "--by", BY, "--passed-over").exit_code == 0
    plain = run("export", key, "--format", form)
    assert plain.stderr == ""
    assert run("amend", key, "--by", BY, "--reason", "left out", "--text", "The left arm was weaker.").exit_code == 0
    amended = run("export", key, "--format", form)
    assert amended.stdout == plain.stdout
    assert amended.stderr.splitlines() == [
        f"{key}: addenda after signing: 1: the {form} holds none of them: `dictate export {key}` prints them"
    ]
    assert run("withdraw", key, "--by", BY, "--reason", "another patient").exit_code == 0
    withdrawn = run("export", key, "--format", form, "--out", str(tmp_path / f"one.{form}"))
    assert withdrawn.stderr.splitlines()[1] == f"{key}: WITHDRAWN, entered in error: the {form} does not say so"
    assert (tmp_path / f"one.{form}").read_text(encoding="utf-8") == plain.stdout
    assert "another patient" not in withdrawn.stderr  # nobody's words in messages
    assert run("compare", key, key, "--format", "csv").stderr.splitlines()[0].startswith(f"{key}: WITHDRAWN")
    compared = run("compare", key, key, "--format", "json")
    assert [one["state"] for one in json.loads(compared.stdout)["visits"]] == ["withdrawn"] * 2


def test_only_a_signed_note_is_withdrawn(folder: Path) -> None:
    """A draft is a draft."""
    with open_records(folder) as records:
        key = records.save(visit(), who=BY, why="dictated").key
    assert isinstance(run("withdraw", key, "--by", BY, "--reason", "wrong").exception, RecordError)
