"""Unchanged since last visit: the patient's last record before this examination, from `note --save` to `review`."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner

from dictate.cli.app import app
from dictate.cli.earlier import tied_to_record
from dictate.errors import MachineError
from dictate.grammar import Grammar
from dictate.model import Examination
from dictate.pipeline import Typed, examine

FIRST = "Motor. Left deltoid four minus. Gait hemiparetic."
THEN = "Motor. Left deltoid unchanged. Gait unchanged since the last visit."


@pytest.fixture(autouse=True)
def records(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Records of this test alone."""
    folder = tmp_path / "records"
    monkeypatch.setenv("DICTATE_RECORDS", str(folder))
    return folder


def note(text: str, *more: str) -> tuple[str, str]:
    """What `dictate note` prints, and what it says beside."""
    result = CliRunner().invoke(app, ["note", "-", *more], input=text)
    assert result.exit_code == 0, result.stderr
    return result.stdout, result.stderr


def save(text: str, day: str, patient: str = "P-1", *more: str) -> str:
    """Key of a new record."""
    said = note(text, "--patient", patient, "--examined-at", f"{day}T10:00", "--save", *more)[1]
    return said.split("record ")[1].split(",")[0]


def test_the_whole_journey(tmp_path: Path) -> None:
    """Saved, dictated again, tied, settled, compared."""
    key = save(FIRST, "2024-03-01")
    text = note(THEN, "--patient", "P-1", "--examined-at", "2024-09-01T10:00")[0]
    assert f"Deltoid: left unchanged (2024-03-01, record {key}: 4-)" in text
    assert "TO SETTLE BEFORE SIGNING" not in text
    other = save(THEN, "2024-09-01")
    compared = CliRunner().invoke(app, ["compare", key, other]).stdout
    assert "deltoid left: 4-, now unchanged (said to be unchanged, and tied to the earlier record)" in compared
    kept = CliRunner().invoke(app, ["export", other, "--format", "json"]).stdout
    assert json.loads(kept)["findings"][0]["earlier"]["record"] == key


def test_the_newest_earlier_record_counts() -> None:
    """Not a later one, not one that was withdrawn, not one of another patient."""
    save("Gait ataxic.", "2023-01-01")
    newest = save(FIRST, "2024-03-01")
    save("Gait normal.", "2024-12-01")
    save("Gait normal.", "2024-04-01", "P-2")
    text = note(THEN, "--patient", "P-1", "--examined-at", "2024-09-01T10:00")[0]
    assert f"Gait: unchanged (2024-03-01, record {newest}: hemiparetic)" in text


@pytest.mark.parametrize("more", [(), ("--patient", "P-9")])
def test_without_a_record_it_is_asked(more: tuple[str, ...]) -> None:
    """No reference, or nothing kept of it."""
    save(FIRST, "2024-03-01")
    text = note(THEN, *more)[0]
    assert "deltoid left unchanged: no earlier record speaks of it; what was found?" in text


def test_the_same_dictation_is_no_earlier_record() -> None:
    """Saved twice, it is not tied to itself."""
    save(THEN, "2024-03-01")
    assert "record " not in note(THEN, "--patient", "P-1")[0].split("QUERIES")[0]


def test_further_dictation_is_not_tied_to_its_own_record() -> None:
    """`--record KEY`: the visit before counts."""
    before = save(FIRST, "2024-03-01")
    key = save("Gait normal.", "2024-09-01")
    text = note("Motor. Left deltoid unchanged.", "--record", key)[0]
    assert f"Deltoid: left unchanged (2024-03-01, record {before}: 4-)" in text


def test_no_records_are_made_for_it(records: Path, grammar: Grammar) -> None:
    """Looking for an earlier visit leaves nothing behind."""
    exam: Examination = examine([Typed("a", THEN)], engine=None, grammar=grammar, patient="P-1")
    assert tied_to_record(exam, grammar) == exam
    assert not records.exists()


def test_a_walk_is_compared_with_the_one_before_though_nobody_calls_it_unchanged() -> None:
    """Both times, the change of speed, and met or not, in the note of the second visit."""
    save("Timed twenty five foot walk 6 seconds.", "2024-03-01")
    text = note("Timed twenty five foot walk 5 seconds.", "--patient", "P-1", "--examined-at", "2024-09-01T10:00")[0]
    assert (
        "25-foot walk, 25 ft in 6 s at the earlier visit (2024-03-01), now 25 ft in 5 s: speed +20 %; faster by 20 % "
        "or more (Hobart 2013): met"
    ) in " ".join(text.split())
    other = note("Timed twenty five foot walk 5 seconds.", "--patient", "P-2", "--examined-at", "2024-09-01T10:00")[0]
    assert "earlier visit" not in other


@pytest.mark.parametrize(
    "fault", [PermissionError(13, "Permission denied"), MachineError("/r: belongs to another user")]
)
def test_records_out_of_reach_cost_no_note(fault: Exception, records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another user's, or of a disk that is gone: it is said, the note is written, and its query asks."""
    save(FIRST, "2024-03-01")

    def refused(*_: object, **__: object) -> None:
        raise fault

    if isinstance(fault, OSError):
        monkeypatch.setattr(Path, "is_file", refused)
    else:
        monkeypatch.setattr("dictate.cli.saving.opened_records", refused)
    text, said = note(THEN, "--patient", "P-1")
    assert "TO SETTLE BEFORE SIGNING" in text
    assert '"unchanged" is tied to no earlier record: ' in said
    assert "check its permissions" in said or "belongs to another user" in said
