"""FOLDER → candidates: which files are dictations, what belongs together, what cannot be read."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from sleepers import SAID, fill

from dictate.batch import Found, Watched, find
from dictate.batch.found import LEDGER
from dictate.batch.jobs import Candidate, Place
from dictate.errors import InputError


def sources(found: Found) -> list[str]:
    """What was found, in order."""
    return [candidate.source for candidate in found.candidates]


def test_all_dictations_under_the_folder_in_the_order_of_names(tmp_path: Path) -> None:
    """Recordings and transcripts; other files are counted, hidden ones passed over."""
    fill(tmp_path, part10=SAID, part2=SAID, ward__x=SAID)
    for name in ("a.txt", "b.FLAC", "c.pdf", ".hidden.wav"):
        (tmp_path / name).write_text(SAID, encoding="utf-8")
    found = find(str(tmp_path))
    assert sources(found) == ["a.txt", "b.FLAC", "part2.wav", "part10.wav", "ward/x.wav"]
    assert found.others == 1


def test_filters_are_of_names_or_paths(tmp_path: Path) -> None:
    """--only and --skip."""
    fill(tmp_path, a=SAID, ward__b=SAID, ward__c=SAID)
    assert sources(find(str(tmp_path), only=["ward/*"], skip=["c.*"])) == ["ward/b.wav"]


def test_sub_folder_as_one_examination(tmp_path: Path) -> None:
    """Its files in the order of names; those of the folder itself stay examinations of their own."""
    fill(tmp_path, one=SAID, visit__p1=SAID, visit__p10=SAID, visit__p2=SAID)
    found = find(str(tmp_path), together=True)
    assert sources(found) == ["one.wav", "visit/"]
    assert [Path(place.path).name for place in found.candidates[1].places] == ["p1.wav", "p2.wav", "p10.wav"]


def test_results_are_no_dictations(tmp_path: Path) -> None:
    """Neither notes, nor anything in a folder that a batch wrote."""
    fill(tmp_path, a=SAID, out__c=SAID, earlier__d=SAID)
    (tmp_path / "a.note.txt").write_text(SAID, encoding="utf-8")
    (tmp_path / "earlier" / LEDGER).touch()
    found = find(str(tmp_path), out=tmp_path / "out")
    assert (sources(found), found.others, found.loops) == (["a.wav"], 0, 0)


def test_folder_that_was_named_is_looked_into(tmp_path: Path) -> None:
    """Results may go where the recordings are: only what a batch wrote is left out, in that run and all later ones."""
    fill(tmp_path, a=SAID, ward__b=SAID)
    for name in (LEDGER, "batch.csv", "a-0123456789ab.note.txt", "report.txt"):
        (tmp_path / name).write_text(SAID, encoding="utf-8")
    for out in (tmp_path, tmp_path / "elsewhere", None):
        assert sources(find(str(tmp_path), out=out)) == ["a.wav", "ward/b.wav"]


def test_dictations_among_results_are_counted(tmp_path: Path) -> None:
    """A folder below that holds results is passed over; nobody may believe that what else it holds was heard."""
    fill(tmp_path, a=SAID, ward__b=SAID, out__c=SAID)
    (tmp_path / "ward" / LEDGER).touch()
    (tmp_path / "own").mkdir()
    for name in (LEDGER, "x-0123456789ab.note.txt", "report.txt"):
        (tmp_path / "own" / name).touch()
    found = find(str(tmp_path), out=tmp_path / "out")
    assert (sources(found), found.results) == (["a.wav"], 2)


def test_links_that_lead_back_end(tmp_path: Path) -> None:
    """Each folder is entered once, and the link is counted; a linked folder elsewhere is entered."""
    fill(tmp_path / "in", a=SAID, ward__b=SAID)
    fill(tmp_path / "elsewhere", c=SAID)
    (tmp_path / "in" / "ward" / "up").symlink_to(tmp_path / "in")
    (tmp_path / "in" / "more").symlink_to(tmp_path / "elsewhere")
    found = find(str(tmp_path / "in"))
    assert (sources(found), found.loops) == (["a.wav", "more/c.wav", "ward/b.wav"], 1)


def test_odd_names(tmp_path: Path) -> None:
    """Blanks, line ends, signs of formulas, letters of any script, and bytes that are no text."""
    names = [b" a .wav", b"b\nc.wav", b"=1+1.wav", "Größe 東.wav".encode(), b"no\xff.wav", b"-rf.wav"]
    for name in names:
        Path(os.fsdecode(os.fsencode(tmp_path) + b"/" + name)).write_text(SAID, encoding="utf-8")
    found = find(str(tmp_path))
    assert len(found.candidates) == len(names)
    for candidate in found.candidates:
        candidate.source.encode("utf-8")
        assert Path(candidate.places[0].path).is_file()


def test_link_to_nothing_is_found_and_left_for_later(tmp_path: Path) -> None:
    """It is no reason to stop; taking it will say what is wrong."""
    (tmp_path / "gone.wav").symlink_to(tmp_path / "nowhere.wav")
    assert find(str(tmp_path)).candidates == [Candidate("gone.wav", (Place(str(tmp_path / "gone.wav"), 0, ""),))]


def test_folder_that_cannot_be_read_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As a candidate with a fault, beside the others."""
    fill(tmp_path, a=SAID, shut__b=SAID)
    scan = os.scandir

    def refusing(path: str) -> object:
        if str(path).endswith("shut"):
            raise PermissionError(13, "Permission denied", str(path))
        return scan(path)

    monkeypatch.setattr(os, "scandir", refusing)
    found = find(str(tmp_path))
    assert sources(found) == ["a.wav", "shut/"]
    assert "permissions" in found.candidates[1].fault


def test_no_such_folder(tmp_path: Path) -> None:
    """One line."""
    with pytest.raises(InputError, match="no such folder"):
        find(str(tmp_path / "none"))


def test_address(tmp_path: Path) -> None:
    """Any file system that fsspec knows; a mark of its storage stands for the content."""
    fill(tmp_path, a=SAID, ward__b=SAID)
    found = find(f"file://{tmp_path}")
    assert sources(found) == ["a.wav", "ward/b.wav"]
    assert found.candidates[0].places[0].path == f"file://{tmp_path}/a.wav"
    assert found.candidates[0].size == len(SAID)
    before = found.candidates[0].places[0].stamp
    fill(tmp_path, a=SAID + " And more.")
    assert find(f"file://{tmp_path}").candidates[0].places[0].stamp != before


def test_address_of_no_kind() -> None:
    """One line."""
    with pytest.raises(InputError, match="nosuch"):
        find("nosuch://bucket/folder")


def test_arrivals_are_taken_when_they_stand_still() -> None:
    """Not while they grow; once each; again when they changed."""
    looks = [{"a": 1}, {"a": 2, "b": 1}, {"a": 2, "b": 1}, {"a": 2, "b": 1}, {"a": 3, "b": 1}, {"a": 3}, {"a": 3}]
    at = iter(range(1000))
    queue = [Found([Candidate(name, (Place(name, size, str(size)),)) for name, size in look.items()]) for look in looks]
    watched = Watched(lambda: queue.pop(0), 0.0, stopped=lambda: not queue, clock=lambda: float(next(at)))
    given = [(one.source, one.size) for one in watched if one]
    assert given == [("a", 2), ("b", 1), ("a", 3)]
