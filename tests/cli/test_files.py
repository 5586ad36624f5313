"""Result files written whole or not at all."""

from __future__ import annotations

import os
import stat
import time
from pathlib import Path

import pytest

from dictate.cli import files
from dictate.cli.files import file_name, write_file, write_files
from dictate.errors import MachineError


@pytest.mark.parametrize(
    ("wanted", "name"),
    [
        ("P-17", "P-17"),
        ("clinic examination", "clinic-examination"),
        ("../../etc/passwd", "etc-passwd"),
        ("a/b\\c:d", "a-b-c-d"),
        ("..", "dictation"),
        ("", "dictation"),
        ("x" * 300, "x" * 80),
    ],
)
def test_file_name(wanted: str, name: str) -> None:
    """No reference can leave the folder or break the file system."""
    assert file_name(wanted) == name


def test_files_are_the_owner_s_alone(tmp_path: Path) -> None:
    """Nobody else on the machine may read them, and nothing else is left."""
    write_files(tmp_path / "new" / "folder", {"a.txt": "1\r\n", "b.csv": "2"})
    written = sorted((tmp_path / "new" / "folder").iterdir())
    assert [path.name for path in written] == ["a.txt", "b.csv"]
    assert {stat.S_IMODE(path.stat().st_mode) for path in written} == {0o600}
    assert written[0].read_bytes() == b"1\r\n"


def test_full_disk_leaves_what_was_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When the second file does not fit, the first is not replaced either."""
    (tmp_path / "a.txt").write_text("old")
    room = iter([None, OSError(28, "No space left on device")])

    def sync(_: int) -> None:
        fault = next(room)
        if fault:
            raise fault

    monkeypatch.setattr(files.os, "fsync", sync)
    with pytest.raises(MachineError, match="no space left on device: make room"):
        write_files(tmp_path, {"a.txt": "new", "b.txt": "new"})
    assert [(path.name, path.read_text()) for path in tmp_path.iterdir()] == [("a.txt", "old")]


def test_what_a_crash_left_half_written_goes(tmp_path: Path) -> None:
    """At the next writing; what another process is writing just now, and what is not ours, stays."""
    for name, age_s in ((".dictate-a.part", 7200), (".dictate-b.part", 60), (".other.part", 7200)):
        (tmp_path / name).write_text("half")
        os.utime(tmp_path / name, (time.time() - age_s,) * 2)
    write_files(tmp_path, {"a.txt": "1"})
    assert sorted(path.name for path in tmp_path.iterdir()) == [".dictate-b.part", ".other.part", "a.txt"]


def test_a_file_in_the_way_of_the_folder(tmp_path: Path) -> None:
    """A file where the folder should be is one line."""
    (tmp_path / "out").write_text("")
    with pytest.raises(MachineError, match="cannot be written: file exists"):
        write_files(tmp_path / "out", {"a.txt": ""})


def test_one_file_is_written_whole_and_private(tmp_path: Path) -> None:
    """What stood there before is replaced at once, and nothing else is left."""
    target = tmp_path / "note.pdf"
    target.write_bytes(b"old")
    write_file(target, b"\x00new")
    assert target.read_bytes() == b"\x00new"
    assert target.stat().st_mode & 0o777 == 0o600
    assert list(tmp_path.iterdir()) == [target]
