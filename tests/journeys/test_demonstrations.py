"""The demonstration recordings and transcripts against the findings they hold."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from by_hand import DEMOS

from dictate.model import Examination

Row = dict[str, str]
NAMES = sorted(path.name.removesuffix(".expected.csv") for path in DEMOS.glob("*.expected.csv"))
KEYS = ("item", "side", "position", "minutes")


def rows(path: Path) -> list[Row]:
    """A table."""
    with path.open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def key(row: Row) -> tuple[str, ...]:
    """What the finding is about."""
    return tuple(row[name] for name in KEYS)


def differs(got: Row, due: Row) -> bool:
    """Another status, or another number."""
    numbers = [re.findall(r"\d+(?:\.\d+)?[+-]?", row["value"]) for row in (got, due)]
    return got["status"] != due["status"] or (got["status"] == "measured" and numbers[0] != numbers[1])


def asked(row: Row, queries: list[Row]) -> bool:
    """Whether a query points at the row: its item, and no other side."""
    return any(query["item"] == row["item"] and query["side"] in ("", row["side"]) for query in queries)


def silently_wrong(got: list[Row], due: list[Row], queries: list[Row]) -> list[str]:
    """Findings that were not said so, and that no query points at."""
    return [
        f"{key(row)} {row['status']} {row['value']}: {row['quote']}"
        for row in got
        if all(key(row) != key(other) or differs(row, other) for other in due) and not asked(row, queries)
    ]


@pytest.mark.parametrize("name", NAMES)
def test_recording_gives_nothing_wrong_without_a_query(name: str, heard: Callable[[str], Path]) -> None:
    """A wrong value, side or status may stand in a draft only where a query points at it."""
    folder = heard(name)
    queries = rows(folder / f"{name}.queries.csv")
    wrong = silently_wrong(rows(folder / f"{name}.findings.csv"), rows(DEMOS / f"{name}.expected.csv"), queries)
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize("name", NAMES)
def test_recording_gives_most_findings(name: str, heard: Callable[[str], Path]) -> None:
    """Nine of ten items dictated stand in the note (three of four in noise); the transcript holds the others' words."""
    got = {row["item"] for row in rows(heard(name) / f"{name}.findings.csv")}
    due = {row["item"] for row in rows(DEMOS / f"{name}.expected.csv")}
    assert len(got & due) >= (0.75 if "noisy" in name else 0.9) * len(due), sorted(due - got)


@pytest.mark.parametrize("name", NAMES)
def test_typed_transcript_gives_every_finding(name: str, here: Callable[..., object], tmp_path: Path) -> None:
    """Where nothing has to be heard, nothing is missing and nothing is wrong."""
    here("note", str(DEMOS / f"{name}.txt"), "--out", str(tmp_path))
    got = rows(tmp_path / f"{name}.findings.csv")
    due = rows(DEMOS / f"{name}.expected.csv")
    wrong = silently_wrong(got, due, [])
    missing = [f"missing {key(row)}" for row in due if key(row) not in {key(other) for other in got}]
    assert not wrong + missing, "\n".join(wrong + missing)


@pytest.mark.parametrize("path", sorted(DEMOS.glob("*.must-query.csv")), ids=lambda path: path.name)
def test_transcript_with_faults_is_asked_about(path: Path, here: Callable[..., object], tmp_path: Path) -> None:
    """Every fault that was put into the dictation becomes a query that must be settled."""
    name = path.name.removesuffix(".must-query.csv")
    here("note", str(DEMOS / f"{name}.txt"), "--out", str(tmp_path))
    got = {(row["code"], row["item"]) for row in rows(tmp_path / f"{name}.queries.csv")}
    assert not {(row["code"], row["item"]) for row in rows(path)} - got


@pytest.mark.parametrize("name", NAMES)
def test_every_quote_is_in_the_transcript(name: str, heard: Callable[[str], Path]) -> None:
    """No finding rests on words that were not heard."""
    exam = Examination.model_validate_json((heard(name) / f"{name}.exam.json").read_text(encoding="utf-8"))
    for finding in exam.findings:
        for piece in finding.evidence:
            assert piece.quote == exam.transcript.quote(piece.first, piece.last)
            assert piece.start_s is not None
            assert piece.end_s is not None
