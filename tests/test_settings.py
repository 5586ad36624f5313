"""Folders and names that everything else may rely on."""

from __future__ import annotations

from pathlib import Path

import pytest

from dictate import settings


@pytest.mark.parametrize(
    ("variable", "folder"),
    [("DICTATE_CACHE", settings.cache_folder), ("DICTATE_GRAMMAR", settings.user_grammar_folder)],
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
