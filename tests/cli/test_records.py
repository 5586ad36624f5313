"""`dictate records`: find, print, verify, move, erase."""

from __future__ import annotations

import contextlib
import io
from datetime import UTC, datetime
from pathlib import Path

import pytest
from records.visits import BY, note_of, tampering, visit
from typer.testing import CliRunner, Result

from dictate.cli.app import app
from dictate.cli.records import erase
from dictate.errors import InputError, RecordError
from dictate.records import open_records

SPOKEN = "Patient number four seven one. Reflexes. Biceps two plus on the right, three plus on the left."


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Records of their own."""
    monkeypatch.setenv("DICTATE_RECORDS", str(tmp_path / "records"))
    return tmp_path / "records"


def run(*arguments: str, stdin: str = "") -> Result:
    """Run a command in this process."""
    return CliRunner().invoke(app, arguments, input=stdin)


def saved(folder: Path, patient: str = "P-1", *, sign: bool = False) -> str:
    """A record; its key."""
    with open_records(folder) as records:
        key = records.save(visit(patient), who=BY, why="dictated").key
        if sign:
            records.sign(key, by=BY, note=note_of)
    return key


def test_nothing_saved_yet() -> None:
    """Said on stderr; no fault."""
    result = run("records")
    assert (result.exit_code, result.stdout, result.stderr) == (0, "", "no record found\n")


def test_records_are_listed_and_printed(folder: Path) -> None:
    """One line each; --last and --show print the note."""
    key = saved(folder, sign=True)
    saved(folder, "P-2")
    assert len(run("records").stdout.splitlines()) == 2
    (line,) = run("records", "--patient", "P-1", "--item", "biceps reflex").stdout.splitlines()
    assert line.startswith(f"{key}  signed ")
    assert run("records", "--patient", "P-1", "--last").stdout == run("records", "--show", key.upper()).stdout
    assert run("records", "--show", key).stdout.startswith(f"Signed by {BY}\n")
    assert run("records", "--patient", "P-2", "--last").stdout.startswith("DRAFT, not signed")
    assert run("records", "--since", "2000-01-01", "--until", "2000-01-02").stdout == ""


def test_what_is_not_understood() -> None:
    """A date, an item, a key."""
    assert isinstance(run("records", "--since", "monday").exception, InputError)
    assert "did you mean" in str(run("records", "--item", "biceps reflx").exception)
    assert isinstance(run("records", "--show", "zzzzzz").exception, RecordError)


def test_verify_says_where(folder: Path) -> None:
    """Status 1, one line per fault."""
    key = saved(folder)
    assert run("records", "verify").stdout == "1 record, all as written\n"
    with tampering(folder) as db:
        db.execute("UPDATE revisions SET who = 'B'")
    result = run("records", "verify")
    assert (result.exit_code, result.stdout) == (1, f"entry 1 (record {key}, revision 1): changed\n")


def test_a_changed_index_is_mended(folder: Path) -> None:
    """On request."""
    saved(folder)
    with tampering(folder) as db:
        db.execute("DELETE FROM findings")
    assert run("records", "verify").exit_code == 1
    assert run("records", "verify", "--mend-index").exit_code == 0


def test_moving_a_draft_asks_whose_it_is() -> None:
    """A spoken reference against the new one is a query that must be settled."""
    result = run("note", "-", "--save", "--patient", "471", stdin=SPOKEN)
    key = result.stderr.split("record ")[1].split(",")[0]
    assert "QUERIES TO SETTLE" not in result.stdout
    assert run("records", "move", key, "--patient", "472", "--reason", "wrong").exit_code == 0
    shown = run("records", "--patient", "472", "--last").stdout
    assert "whose examination is it?" in shown


def test_erasing(folder: Path) -> None:
    """What is printed afterwards says so."""
    key = saved(folder, sign=True)
    assert isinstance(run("records", "erase", key, "--reason", "x", "--sound-only", "--yes").exception, RecordError)
    assert run("records", "erase", key, "--reason", "asked for", "--by", BY, "--yes").exit_code == 0
    assert run("records", "--show", key).stdout.startswith("ERASED ")
    assert run("records", "verify").exit_code == 0


def test_nothing_is_erased_unasked(folder: Path) -> None:
    """Where nobody can be asked, a script must say that it is meant."""
    key = saved(folder)
    result = run("records", "erase", key, "--reason", "x", stdin="yes\n")
    assert isinstance(result.exception, RecordError)
    assert str(result.exception) == (
        f"record {key}: nobody can be asked whether to erase all that it holds: --yes says that it is meant"
    )
    assert run("records", "--show", key).stdout.startswith("DRAFT")


class Keyboard(io.StringIO):
    """Somebody who types."""

    def isatty(self) -> bool:
        """At a terminal."""
        return True


@pytest.mark.parametrize("typed", ["yes\n", " YES \n", "y\n", "\n", ""])
@pytest.mark.parametrize("day", ["examined 2026-03-04", "saved 20"])
def test_erasing_is_asked(
    typed: str, day: str, folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Whose record it is and of when stands in the question; only a whole yes is one."""
    when = datetime(2026, 3, 4, 9, tzinfo=UTC) if day.startswith("examined") else None
    with open_records(folder) as records:
        exam = visit().model_copy(update={"examined_at": when})
        key = records.save(exam, who=BY, why="dictated").key
    monkeypatch.setattr("sys.stdin", Keyboard(typed))
    meant = typed.strip().lower() == "yes"
    with contextlib.nullcontext() if meant else pytest.raises(RecordError, match="stopped: nothing was erased"):
        erase(key, reason="x", sound_only=False, by="", yes=False)
    told = capsys.readouterr().err
    assert f"record {key} (draft), patient: P-1, {day}" in told
    assert "all that it holds will be gone for good\ntype yes to erase; anything else stops: " in told
    assert run("records", "--show", key).stdout.startswith("ERASED " if meant else "DRAFT")


@pytest.mark.parametrize("given", [("--show", ""), ("--item", " "), ("verify", "--head", "")])
def test_an_empty_option_is_not_one_left_out(given: tuple[str, ...], folder: Path) -> None:
    """A script whose variable is empty is not told that all is well, nor shown what it did not ask for."""
    saved(folder)
    result = run("records", *given)
    assert (result.exit_code, result.stdout) == (2, "")
    assert "is empty: say it, or leave the option out" in result.stderr


def test_days_the_wrong_way_round(folder: Path) -> None:
    """Nothing can lie between them; one day alone may be both."""
    saved(folder)
    wrong = run("records", "--since", "2024-05-02", "--until", "2024-05-01")
    assert "put them the other way round" in str(wrong.exception)
    assert run("records", "--since", "2024-05-01T10:00", "--until", "2024-05-01").exit_code == 0


def test_moving_to_the_same_reference(folder: Path) -> None:
    """Probably the wrong record was named: it is said, and nothing is written."""
    key = saved(folder)
    result = run("records", "move", key, "--patient", "P-1", "--reason", "wrong")
    assert "has that reference: nothing was moved" in str(result.exception)
    with open_records(folder) as records:
        assert records.open(key).revision == 1
