"""`dictate note`: recordings or transcripts of one examination → the note."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
import typer
from by_hand import ROOT
from typer.testing import CliRunner, Result

from dictate.cli.app import app
from dictate.errors import InputError
from dictate.model import Examination, Hints, Source, Transcript, Word

TEXT = "Reflexes. Biceps two plus on the right, three plus on the left. Plantar response flexor on both sides."
ASKS = "Reflexes. Left biceps seven plus."


class Parrot:
    """An engine that hears the same words in every recording."""

    def hear(self, path: Path, *, hints: Hints, progress: Callable[[float], None] | None = None) -> Transcript:
        """Words with times, half a second each."""
        if progress:
            progress(1.0)
        words = tuple(
            Word(text=text, start_s=at / 2, end_s=at / 2 + 0.4, probability=0.9) for at, text in enumerate(TEXT.split())
        )
        source = Source(name=path.name, kind="recording", sha256="0" * 64, created_at=datetime(2026, 3, 4, 14, 5))
        return Transcript(words=words, sources=(source,))


@pytest.fixture
def parrot(monkeypatch: pytest.MonkeyPatch) -> None:
    """No model is loaded."""
    monkeypatch.setattr("dictate.hearing.Engine", lambda model, device: Parrot())


def run(*arguments: str, stdin: str = "") -> Result:
    """Run a command in this process."""
    return CliRunner().invoke(app, arguments, input=stdin, catch_exceptions=True)


@pytest.fixture
def typed(tmp_path: Path) -> str:
    """A typed transcript."""
    path = tmp_path / "visit.txt"
    path.write_text(TEXT, encoding="utf-8")
    return str(path)


def test_typed_transcript_becomes_a_note(typed: str) -> None:
    """The note goes to stdout, and nothing to stderr."""
    result = run("note", typed)
    assert (result.exit_code, result.stderr) == (0, "")
    assert "Biceps reflex: right 2+, left 3+" in result.stdout


def test_stdin_is_text() -> None:
    """`-` reads the transcript from stdin."""
    assert "right 2+, left 3+" in run("note", "-", stdin=TEXT).stdout


@pytest.mark.usefixtures("parrot")
def test_recording_is_heard() -> None:
    """The recording's own creation time is the time of examination, labelled so."""
    result = run("note", "visit.flac")
    assert "2026-03-04 14:05 (creation time of the recording)" in result.stdout
    assert "right 2+, left 3+" in result.stdout


@pytest.mark.usefixtures("parrot")
def test_several_sources_are_one_examination(typed: str, tmp_path: Path) -> None:
    """Pieces are joined in order of dictation."""
    more = tmp_path / "more.txt"
    more.write_text("Motor. Pronator drift on the left.", encoding="utf-8")
    stdout = run("note", "visit.flac", str(more)).stdout
    assert "right 2+, left 3+" in stdout
    assert "Pronator drift: left present" in stdout


def test_json_is_the_examination(typed: str) -> None:
    """--format json prints exam.json."""
    exam = Examination.model_validate_json(run("note", typed, "--format", "json", "--patient", "P-17").stdout)
    assert exam.patient == "P-17"
    assert [finding.item for finding in exam.findings] == ["reflex_biceps", "reflex_biceps", "plantar_response"]


def test_csv_is_the_findings(typed: str) -> None:
    """--format csv prints findings.csv."""
    rows = list(csv.DictReader(io.StringIO(run("note", typed, "--format", "csv").stdout)))
    assert [(row["side"], row["value"]) for row in rows] == [("right", "2+"), ("left", "3+"), ("both", "flexor")]


def test_out_writes_all_files_and_prints_nothing(typed: str, tmp_path: Path) -> None:
    """--out DIR writes the five files of the source's name."""
    result = run("note", typed, "--out", str(tmp_path / "out"))
    assert result.stdout == ""
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == [
        "visit.exam.json", "visit.findings.csv", "visit.note.txt", "visit.queries.csv", "visit.transcript.json",
    ]  # fmt: skip


def test_patient_names_the_files_and_no_message(typed: str, tmp_path: Path) -> None:
    """The reference stands in the files' names, as asked, and in no message."""
    result = run("note", typed, "--out", str(tmp_path / "out"), "--patient", "P 17")
    assert (tmp_path / "out" / "P-17.note.txt").is_file()
    assert "17" not in result.stderr.replace(str(tmp_path), "")


def test_examined_at(typed: str) -> None:
    """The option says when the patient was examined."""
    assert "Time of examination: 2024-03-04 14:05\n" in run("note", typed, "--examined-at", "2024-03-04T14:05").stdout


def test_strict_exits_with_3_when_a_query_must_be_settled(tmp_path: Path) -> None:
    """The note is still written."""
    path = tmp_path / "asks.txt"
    path.write_text(ASKS, encoding="utf-8")
    result = run("note", str(path), "--strict")
    assert result.exit_code == 3
    assert "[?1]" in result.stdout


def test_strict_exits_with_0_when_nothing_must_be_settled(typed: str) -> None:
    """A query that has only to be looked at does not count."""
    assert run("note", typed, "--strict").exit_code == 0


def test_unknown_scope_names_near_ones(typed: str) -> None:
    """A scope misspelt is one line with the near matches."""
    result = run("note", typed, "--scope", "dizzines")
    assert isinstance(result.exception, InputError)
    assert "--scope dizzines: no such scope: did you mean dizziness" in str(result.exception)


def test_time_that_is_none(typed: str) -> None:
    """A time that cannot be read is one line."""
    with pytest.raises(InputError, match="--examined-at yesterday: is no time"):
        raise run("note", typed, "--examined-at", "yesterday").exception or typer.Exit


def test_own_phrases_are_read(typed: str, tmp_path: Path) -> None:
    """A user's own grammar folder adds a phrase without touching the packaged files."""
    own = tmp_path / "own"
    own.mkdir()
    (own / "reflexes.yaml").write_text("items:\n  reflex_biceps:\n    terms: [elbow tap]\n", encoding="utf-8")
    said = "Reflexes. Elbow tap two plus on the right."
    assert "Biceps reflex: right 2+" in run("note", "-", "--grammar", str(own), stdin=said).stdout


def test_every_word_is_in_the_transcript(typed: str) -> None:
    """No word of the dictation is lost on the way to the file."""
    exam = json.loads(run("note", typed, "--format", "json").stdout)
    assert [word["text"] for word in exam["transcript"]["words"]] == TEXT.split()


def test_help_shows_an_example() -> None:
    """Every command's help has one."""
    for command in (("note",), ("doctor",), ("grammar", "check")):
        assert "Example: dictate" in run(*command, "--help").stdout


def test_checkout_is_not_needed(typed: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """The program runs from any folder."""
    monkeypatch.chdir(tmp_path)
    assert not tmp_path.is_relative_to(ROOT)
    assert run("note", typed).exit_code == 0


POTS = "Lying blood pressure 116/72, pulse 66. Standing at five minutes 112/74, pulse 100."


def test_age_and_height_serve_the_figures() -> None:
    """Options, or as dictated; the note says which."""
    assert "open: +34 at 5 min reaches 30" in run("note", "-", stdin=POTS).stdout
    given = run("note", "-", "--age", "27", stdin=POTS).stdout
    assert "\nAge: 27 years\n" in given
    assert "limit 30, age 27" in " ".join(given.split())
    said = run("note", "-", stdin=f"Sixteen year old girl. {POTS}").stdout
    assert 'Age: 16 years (as dictated: "Sixteen year old girl")' in said
    assert "not met (largest rise +34, limit 40, age 16)" in " ".join(said.split())
    weighed = run("note", "-", "--height", "172", stdin="Weight 70 kilograms.").stdout
    assert "Body mass index 23.7 kg/m²" in weighed


def test_another_age_than_the_one_given_is_asked_about() -> None:
    """It may be another patient; the option serves the figures."""
    result = run("note", "-", "--age", "27", "--strict", stdin=f"Seventy two year old man. {POTS}")
    assert result.exit_code == 3
    assert "Age 72 dictated; 27 given: which is right?" in " ".join(result.stdout.split())
    assert "limit 30, age 27" in " ".join(result.stdout.split())


def test_choices_for_figures_are_a_file(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Vibration norms on; an unknown choice is one line."""
    path = tmp_path / "figures.toml"
    monkeypatch.setenv("DICTATE_FIGURES", str(path))
    text = "Vibration at the right great toe four out of eight."
    assert "the usual for 40 years" not in run("note", "-", "--age", "40", stdin=text).stdout
    path.write_text("vibration_norms = true\n", encoding="utf-8")
    assert "the usual for 40 years" in run("note", "-", "--age", "40", stdin=text).stdout
    path.write_text("vibration_norms = 3\n", encoding="utf-8")
    result = run("note", "-", stdin=text)
    assert isinstance(result.exception, InputError)
    assert "vibration_norms" in str(result.exception)


def test_source_named_twice(tmp_path: Path) -> None:
    """The same words would stand in the transcript twice; another way to write the path changes nothing."""
    path = tmp_path / "a.txt"
    path.write_text(TEXT)
    result = run("note", str(path), f"{tmp_path}/./a.txt")
    assert "is named twice" in str(result.exception)
