"""RECORD on the command line: the key of a record, or an exam.json file."""

from __future__ import annotations

from pathlib import Path

import pytest
from by_hand import examination

from dictate.cli.opening import examination_in, is_file, key_of, opened
from dictate.errors import InputError, RecordError
from dictate.grammar import Grammar
from dictate.notes import exam_json
from dictate.records import open_records


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Records of this test alone."""
    monkeypatch.setenv("DICTATE_RECORDS", str(tmp_path / "records"))
    return tmp_path


def test_a_file_is_told_from_a_key(folder: Path) -> None:
    """By its ending, its folder, or its being there."""
    (folder / "visit.txt").touch()
    assert is_file("visit.exam.json")
    assert is_file(str(folder / "visit.txt"))
    assert is_file("notes/visit")
    assert is_file("none.txt")  # a slip of the name is told as one, not as a record that is missing
    assert not is_file("k7q2mx")
    assert key_of(" K7Q2MX ") == "k7q2mx"


def test_a_file_has_no_state(folder: Path, small: Grammar) -> None:
    """It is what its JSON says."""
    path = folder / "visit.exam.json"
    path.write_text(exam_json(examination()), encoding="utf-8")
    assert (opened(str(path), small).exam, opened(str(path), small).state) == (examination(), None)


def test_a_record_has_its_state(folder: Path, small: Grammar) -> None:
    """And nothing once it was erased."""
    with open_records() as records:
        key = records.save(examination(), who="A", why="dictated").key
    assert (opened(key.upper(), small).exam, opened(key, small).state) == (examination(), "draft")
    with open_records() as records:
        records.erase(key, who="A", why="test")
    with pytest.raises(RecordError, match="erased"):
        opened(key, small)


def test_what_is_no_examination_is_refused_in_one_line(folder: Path) -> None:
    """Named, with what to do."""
    with pytest.raises(InputError, match="no such file"):
        examination_in(folder / "none.exam.json")
    (folder / "bad.json").write_text("{}", encoding="utf-8")
    with pytest.raises(InputError, match=r"bad\.json: is no examination"):
        examination_in(folder / "bad.json")
    (folder / "P-1.exam.json").touch()
    (folder / "P-1.note.txt").write_text("DRAFT")
    for name in ("P-1.note.txt", "exam.json", "."):
        with pytest.raises(InputError, match=r"did you mean .*/P-1\.exam\.json\?" if name != "." else "writes one"):
            examination_in(folder / name)
