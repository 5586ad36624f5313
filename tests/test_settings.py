"""Folders and names that everything else may rely on."""

from __future__ import annotations

import subprocess
import sys
from datetime import datetime
from pathlib import Path

import pytest

from dictate import settings
from dictate.errors import InputError


@pytest.mark.parametrize(
    ("variable", "folder"),
    [
        ("DICTATE_CACHE", settings.cache_folder),
        ("DICTATE_GRAMMAR", settings.user_grammar_folder),
        ("DICTATE_RECORDS", settings.records_folder),
    ],
)
def test_environment_names_the_folder(
    variable: str, folder: object, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """A variable overrides the user's usual folder, and an empty one does not."""
    assert callable(folder)
    monkeypatch.setenv(variable, str(tmp_path))
    assert folder() == tmp_path
    monkeypatch.setenv(variable, "")
    assert settings.PROGRAM in str(folder())


def test_grammar_is_found_in_wheel_or_checkout() -> None:
    """The packaged grammar is there."""
    assert (settings.packaged_grammar_folder() / "common.yaml").is_file()


def test_choices_for_figures_are_read_from_a_file(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Without the file there are none; the variable names another."""
    path = tmp_path / "figures.toml"
    monkeypatch.setenv("DICTATE_FIGURES", str(path))
    assert settings.figures_settings() == {}
    path.write_text('vibration_norms = true\nsupine_hypertension = "above 160"\n', encoding="utf-8")
    assert settings.figures_settings() == {"vibration_norms": True, "supine_hypertension": "above 160"}
    path.write_text("vibration_norms =\n", encoding="utf-8")
    with pytest.raises(InputError, match=r"figures\.toml: cannot be read as TOML"):
        settings.figures_settings()


NOW = datetime.fromisoformat("2026-03-04T14:30+01:00")


@pytest.mark.parametrize(
    ("moment", "ahead"),
    [
        ("2026-03-04T14:39", False), ("2026-03-04T14:41", True), ("2026-03-04T13:39+00:00", False),
        ("2026-03-04T13:41+00:00", True), ("0001-01-01", False), ("9999-12-31T23:59-12:00", True), ("2999-01-01", True),
    ],
)  # fmt: skip
def test_time_to_come(moment: str, ahead: bool) -> None:
    """Ten minutes are left to clocks that differ, with a zone or without."""
    assert settings.is_to_come(datetime.fromisoformat(moment), NOW) is ahead


def test_temporary_folders_of_dead_processes_go(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Those of a running one, rescued sound and what is not ours stay."""
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    dead = tmp_path / f"dictate-{ended.pid}-x"
    dead.mkdir()
    (tmp_path / "dictate-notes").mkdir()
    rescued = settings.rescue_folder()
    passing = settings.passing_folder()
    assert passing.stat().st_mode & 0o777 == 0o700
    assert settings.clear_temporary_folders() == [rescued]
    passing.rmdir()
    dead.mkdir()
    with settings.temporary_folder() as running:
        assert not dead.exists()
        dead.mkdir()
        assert settings.clear_temporary_folders() == [rescued]
        assert not dead.exists()
        assert {one.name for one in tmp_path.iterdir()} == {rescued.name, "dictate-notes", Path(running).name}
        assert Path(running).stat().st_mode & 0o777 == rescued.stat().st_mode & 0o777 == 0o700
