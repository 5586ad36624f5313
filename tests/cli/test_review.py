"""`dictate review`: which file is opened, and what is refused before a page is."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from typer.testing import CliRunner

from dictate.cli.app import app
from dictate.errors import InputError
from dictate.model import Decision, Examination
from dictate.review.sitting import Sitting

TEXT = "Biceps reflex two plus. Gait normal."


@pytest.fixture
def review(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Callable[..., list[Sitting]]:
    """Run the command with a page that is closed at once; returns the sittings it would have served."""
    monkeypatch.setenv("DICTATE_GRAMMAR", str(tmp_path / "none"))
    served: list[Sitting] = []

    def serve(sitting: Sitting, *, port: int, announce: Callable[[str], None]) -> None:
        served.append(sitting)
        announce(f"http://127.0.0.1:{port or 5}/open?token=x")

    monkeypatch.setattr("dictate.review.server.serve", serve)

    def run(*arguments: str) -> list[Sitting]:
        result = CliRunner().invoke(app, ["review", *arguments], catch_exceptions=False)
        assert result.exit_code == 0, result.output
        return served

    return run


def transcript(folder: Path) -> Path:
    """A dictation that was typed."""
    path = folder / "visit.txt"
    path.write_text(TEXT, encoding="utf-8")
    return path


def test_transcript_is_read_first_and_kept_beside_itself(review: Callable[..., list[Sitting]], tmp_path: Path) -> None:
    """Nothing is written before the first decision; then it is opened as an examination."""
    path = transcript(tmp_path)
    (sitting,) = review(str(path), "--no-open", "--who", "Dr A", "--patient", "P-17")
    kept = tmp_path / "visit.exam.json"
    assert not kept.exists()
    sitting.decide(Decision(query=0, answer="left"))
    exam = Examination.model_validate_json(kept.read_bytes())
    assert (exam.patient, exam.decisions[0].who, str(exam.findings[0].side)) == ("P-17", "Dr A", "left")
    assert exam.decisions[0].at is not None
    assert kept.stat().st_mode & 0o777 == 0o600
    again = review(str(kept), "--no-open")[-1]
    assert again.exam == exam
    with pytest.raises(InputError, match=r"was read before: review visit\.exam\.json"):
        review(str(path), "--no-open")


def test_record_that_does_not_exist(review: Callable[..., list[Sitting]], tmp_path: Path) -> None:
    """One line."""
    with pytest.raises(InputError, match="no such file"):
        review(str(tmp_path / "none.exam.json"))


def test_terminal_needs_one(review: Callable[..., list[Sitting]], tmp_path: Path) -> None:
    """Piped input is none."""
    with pytest.raises(InputError, match="--terminal: needs a terminal"):
        review(str(transcript(tmp_path)), "--terminal")


@pytest.mark.parametrize("opens", [True, False])
def test_browser_is_opened_on_request(
    review: Callable[..., list[Sitting]], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, opens: bool
) -> None:
    """--no-open prints the address only."""
    asked: list[str] = []
    monkeypatch.setattr("webbrowser.open", asked.append)
    review(str(transcript(tmp_path)), "--port", "8123", *([] if opens else ["--no-open"]))
    assert asked == (["http://127.0.0.1:8123/open?token=x"] if opens else [])
