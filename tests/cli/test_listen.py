"""`dictate listen`: options, what it says, and what stays behind."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from hearing.sounds import write_sound
from live.fakes import BeepMaker, spoken
from typer.testing import CliRunner, Result

from dictate.cli import listen as listen_module
from dictate.cli.app import app
from dictate.errors import BrokenOff, InputError, MachineError
from dictate.grammar import load_grammar
from dictate.live import recogniser

KNOWN = ("Reflexes.", "Biceps two plus on the right.", "Knee jerk three plus.", "End of dictation.")


@pytest.fixture(autouse=True)
def sound(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder for sound, and a recogniser that hears beeps."""
    monkeypatch.setenv("DICTATE_SOUND", str(tmp_path / "sound"))
    monkeypatch.setenv("DICTATE_GRAMMAR", str(tmp_path / "none"))
    monkeypatch.setattr(recogniser, "EngineMaker", lambda *_: BeepMaker(KNOWN))
    return tmp_path / "sound"


@pytest.fixture
def recording(tmp_path: Path) -> Path:
    """A heading, a finding, a doubtful one."""
    return write_sound(tmp_path / "clinic.wav", spoken(KNOWN[:3], KNOWN))


def listen(*arguments: str) -> Result:
    """Run the command."""
    return CliRunner().invoke(app, ["listen", *arguments])


def test_note_on_stdout_lines_on_stderr(recording: Path, sound: Path) -> None:
    """The note alone goes where notes go; where the sound stays is said, and that for how long."""
    result = listen("--source", str(recording), "--fast", "--plain")
    assert result.exit_code == 0, result.output
    assert result.stdout.startswith("DRAFT, not signed")
    assert "Biceps reflex: right 2+" in result.stdout
    assert "= Biceps reflex right: 2+" in result.stderr
    assert re.search(r"\? .*which side", result.stderr)
    assert "for 14 days" in result.stderr
    assert len(list(sound.iterdir())) == 1


def test_sound_goes_with_the_note(recording: Path, sound: Path, tmp_path: Path) -> None:
    """--keep-audio no; files get the reference's name; --strict counts what is open."""
    given = ("--out", str(tmp_path / "out"), "--patient", "P-17", "--keep-audio", "no", "--strict")
    result = listen("--source", str(recording), "--fast", *given)
    assert result.exit_code == 3, result.output
    assert list(sound.iterdir()) == []
    exam = json.loads((tmp_path / "out" / "P-17.exam.json").read_text())
    assert exam["patient"] == "P-17"
    assert exam["transcript"]["sources"][0]["name"] == "clinic.wav"


def test_interrupted_one_is_named_and_taken_up(recording: Path, sound: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its options are remembered."""

    def broken(*_: Any, **__: Any) -> Any:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(listen_module, "_ended", broken)
        listen("--source", str(recording), "--fast", "--patient", "P-9")
    (folder,) = sound.iterdir()
    second = listen("--source", str(recording), "--fast")
    assert "was interrupted" in second.stderr
    assert "P-9" not in second.stderr
    result = listen("--resume", "--plain")
    assert result.exit_code == 0, result.output
    assert "Patient: P-9" in result.stdout
    assert str(folder) in result.stderr


@pytest.mark.parametrize("fault", [BrokenOff("broken off"), MachineError("no processor time is left")])
def test_whole_that_was_not_heard_can_be_taken_up(
    fault: MachineError, recording: Path, sound: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Broken off or failed at the very end: what `--resume` is promised for is there for it."""

    def refuse(*_: Any, **__: Any) -> Any:
        raise fault

    with monkeypatch.context() as patch:
        patch.setattr("dictate.live.listen.hear_whole", refuse)
        first = listen("--source", str(recording), "--fast", "--plain")
    if isinstance(fault, BrokenOff):
        assert first.exception is fault
        assert first.stdout == ""
    else:
        assert "Biceps reflex: right 2+" in first.stdout
        assert "`dictate listen --resume` hears the whole again" in first.stderr
    second = listen("--resume", "--plain", "--fast")
    assert second.exit_code == 0, second.output
    assert "Biceps reflex: right 2+" in second.stdout
    assert "for 14 days" in second.stderr
    assert len(list(sound.iterdir())) == 1


def test_nothing_to_take_up() -> None:
    """One line."""
    result = listen("--resume")
    assert isinstance(result.exception, InputError)
    assert "no interrupted dictation" in str(result.exception)


@pytest.mark.parametrize(
    ("given", "said"),
    [(("--source", "none.wav"), "no such file"), (("--fast",), "--source FILE"), (("--scope", "dizzy"), "dizziness")],
)
def test_wrong_options_leave_nothing_behind(given: tuple[str, ...], said: str, sound: Path) -> None:
    """No folder of a dictation that never began."""
    result = listen(*given)
    assert said in str(result.exception)
    assert not sound.exists() or list(sound.iterdir()) == []


def test_another_file_than_the_interrupted_one(recording: Path, sound: Path, tmp_path: Path) -> None:
    """Sound of two patients must not be joined."""
    from datetime import datetime

    from dictate.live.kept import Facts, Kept

    Kept.begin(sound, Facts(started_at=datetime(2026, 3, 4), file=str(tmp_path / "other.wav"))).close()
    assert "was not of this file" in str(listen("--resume", "--source", str(recording)).exception)


def test_another_patient_than_the_interrupted_one(sound: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Nor is it added to another patient's record; it stays to be taken up."""
    from datetime import datetime

    from dictate.grammar import load_grammar
    from dictate.live.kept import Facts, Kept
    from dictate.pipeline import Typed, examine
    from dictate.records import open_records

    monkeypatch.setenv("DICTATE_RECORDS", str(tmp_path / "records"))
    exam = examine([Typed("text", "Gait normal.")], engine=None, grammar=load_grammar(), patient="P-2")
    with open_records() as records:
        key = records.save(exam, who="us", why="dictated").key
    Kept.begin(sound, Facts(started_at=datetime(2026, 3, 4), patient="P-9")).close()
    assert "another reference" in str(listen("--resume", "--patient", "P-2").exception)
    assert "another reference" in str(listen("--resume", "--record", key).exception)
    assert len(Kept.interrupted(sound)) == 1


def test_saved_in_the_records(recording: Path, sound: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """With its sound, which then lies nowhere else; a further dictation joins it."""
    from dictate.records import open_records

    monkeypatch.setenv("DICTATE_RECORDS", str(tmp_path / "records"))
    result = listen("--source", str(recording), "--fast", "--plain", "--patient", "P-9", "--save")
    assert result.exit_code == 0, result.output
    assert list(sound.iterdir()) == []
    key = re.search(r"saved: record (\w+)", result.stderr)
    assert key
    more = write_sound(tmp_path / "more.wav", spoken(KNOWN[2:3], KNOWN))
    assert listen("--source", str(more), "--fast", "--plain", "--record", key[1]).exit_code == 0
    with open_records() as records:
        one = records.open(key[1])
    assert one.exam.patient == "P-9"
    assert [source.name for source in one.exam.transcript.sources] == ["clinic.wav", "more.wav"]


def test_microphone_is_remembered(monkeypatch: pytest.MonkeyPatch, tmp_path: Path, sound: Path) -> None:
    """By the part of its name that was given."""
    from dictate import settings
    from dictate.hearing import microphone

    asked: list[str] = []

    def refuse(name: str) -> None:
        asked.append(name)
        raise InputError("no such microphone")

    monkeypatch.setattr(settings, "microphone_file", lambda: tmp_path / "config" / "microphone")
    monkeypatch.setattr(microphone, "Microphone", refuse)
    listen("--microphone", "bedside")
    listen()
    assert asked == ["bedside", "bedside"]
    assert list(sound.iterdir()) == []


def test_help_names_what_can_be_said() -> None:
    """The first way of saying each control."""
    text = " ".join(CliRunner().invoke(app, ["listen", "--help"], env={"COLUMNS": "200"}).output.split())
    for phrases in load_grammar().controls.values():
        assert f'"{phrases[0]}"' in text
