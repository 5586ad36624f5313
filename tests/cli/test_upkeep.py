"""`dictate grammar check` and `dictate doctor`."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner

from dictate import examples
from dictate.cli.app import app
from dictate.errors import GrammarError
from dictate.grammar import Example
from dictate.model import Component


def test_a_fault_of_a_file_names_its_line(tmp_path: Path) -> None:
    """The line, the key and what is wrong."""
    (tmp_path / "reflexes.yaml").write_text("items:\n  reflex_biceps:\n    termz: [x]\n", encoding="utf-8")
    result = CliRunner().invoke(app, ["grammar", "check", str(tmp_path)])
    assert isinstance(result.exception, GrammarError)
    assert "reflexes.yaml:3:" in str(result.exception)


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    """One line names it."""
    result = CliRunner().invoke(app, ["grammar", "check", str(tmp_path / "none")])
    assert "no such folder of grammar files" in str(result.exception)


@pytest.mark.parametrize(("faults", "status"), [((), 0), (("missing item=reflex_biceps",), 1)])
def test_check_exits_with_1_when_an_example_fails(
    faults: tuple[str, ...], status: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A count per file, and a line per failure."""
    one = examples.Outcome(Component.REFLEXES, "reflex_biceps", Example(say="biceps two plus"), faults)
    monkeypatch.setattr(examples, "run_examples", lambda grammar: iter([one]))
    result = CliRunner().invoke(app, ["grammar", "check"])
    assert result.exit_code == status
    assert f"reflexes.yaml: {1 - status} of 1 examples as expected" in result.stdout
    assert ('"biceps two plus": missing item=reflex_biceps' in result.stdout) is bool(faults)


def test_doctor_names_parts_grammar_and_model() -> None:
    """What is installed, and what to do about what is not."""
    result = CliRunner().invoke(app, ["doctor"])
    assert "faster-whisper" in result.stdout
    assert "items, SHA-256" in result.stdout
    assert "model base" in result.stdout
