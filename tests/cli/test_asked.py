"""Options that several commands share, and what becomes of them."""

from __future__ import annotations

import subprocess
import sys
from datetime import datetime
from pathlib import Path

import pytest
from typer.testing import CliRunner

from dictate.cli import asked
from dictate.cli.app import app
from dictate.errors import InputError
from dictate.grammar import load_grammar
from dictate.pipeline import Typed


def test_progress_shows_only_on_a_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    """In a pipe no bar is drawn."""
    monkeypatch.setattr(sys.stderr, "isatty", lambda: False, raising=False)
    with asked._progress(shown=True) as progress:
        assert progress is None


def test_time_given_or_not() -> None:
    """As written, or none; never the time of processing."""
    assert asked.time_of("2024-03-04T14:30") == datetime(2024, 3, 4, 14, 30)
    assert asked.time_of("") is None
    with pytest.raises(InputError, match="is no time"):
        asked.time_of("yesterday")
    with pytest.raises(InputError, match="2999-01-01: is still to come"):
        asked.time_of("2999-01-01")


def test_reference_is_one_line_of_letters() -> None:
    """Nothing in it steers a terminal or begins a line of the note."""
    assert asked.on_one_line("P-1\nSigned by A\x1b[2J") == "P-1 Signed by A[2J"
    assert asked.on_one_line(None) is None


@pytest.mark.parametrize("command", ["listen --source none.wav", "review none.txt", "batch none --out out"])
def test_what_a_crash_left_goes(command: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """At the start of every command that may have left it, whatever becomes of the command."""
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    ended = subprocess.Popen(["true"])
    ended.wait()
    left = tmp_path / f"dictate-{ended.pid}-x" / "sound.wav"
    left.parent.mkdir()
    left.touch()
    result = CliRunner().invoke(app, command.split())
    assert result.exit_code != 0
    assert not left.parent.exists()


def test_conventions_of_the_users_file_serve_every_examination(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Whichever command asked for it; a word that is none is one line."""
    path = tmp_path / "figures.toml"
    path.write_text("vibration_norms = true\n", encoding="utf-8")
    monkeypatch.setenv("DICTATE_FIGURES", str(path))
    said = Typed("visit", "Vibration at the right great toe four out of eight.")
    exam = asked.examined([said], load_grammar(), age=40)
    assert any("40 years" in figure.text for figure in exam.figures)
    path.write_text("vibration_norms = 7\n", encoding="utf-8")
    with pytest.raises(InputError, match="vibration_norms"):
        asked.conventions()
