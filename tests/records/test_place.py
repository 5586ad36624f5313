"""The folder: its owner's alone, put right after a crash."""

from __future__ import annotations

import os
import stat
import tempfile
from pathlib import Path

import pytest
from records.visits import BY, heard, recording, tampering, visit

from dictate.errors import DictateError, MachineError
from dictate.records import Records, open_records, place
from dictate.records.place import DATABASE, SOUNDS


def test_nobody_else_can_read_anything(records: Records, folder: Path, tmp_path: Path) -> None:
    """Folders 0700, files 0600, also those that SQLite makes, whatever the umask."""
    before = os.umask(0)
    try:
        path = recording(tmp_path)
        records.save(heard(path), who=BY, why="dictated", audio=[path])
        modes = {stat.S_IMODE(one.stat().st_mode) for one in folder.rglob("*") if one.is_file()}
        assert {one.name for one in folder.iterdir()} >= {DATABASE, f"{DATABASE}-wal", "key", "head", SOUNDS}
    finally:
        os.umask(before)
    assert modes == {0o600}
    assert {stat.S_IMODE(one.stat().st_mode) for one in (folder, folder / SOUNDS)} == {0o700}


def test_an_open_folder_of_records_is_closed(folder: Path) -> None:
    """A back-up put back with the wrong mode."""
    open_records(folder).close()
    folder.chmod(0o755)
    (folder / DATABASE).chmod(0o644)
    open_records(folder).close()
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    assert stat.S_IMODE((folder / DATABASE).stat().st_mode) == 0o600


def test_a_folder_that_holds_other_things_is_left_alone(folder: Path) -> None:
    """Somebody's home folder is not closed to others unasked."""
    folder.mkdir(mode=0o755)
    (folder / "letter.txt").touch()
    with pytest.raises(MachineError, match="holds other files: name a folder for records only"):
        open_records(folder)
    assert stat.S_IMODE(folder.stat().st_mode) == 0o755


def test_a_folder_that_cannot_be_made(tmp_path: Path) -> None:
    """A file stands in the way."""
    (tmp_path / "file").touch()
    with pytest.raises(MachineError, match="the records cannot be kept there"):
        open_records(tmp_path / "file" / "records")
    with pytest.raises(MachineError):
        open_records(tmp_path / "file")


def test_another_users_folder_is_refused(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Even where the system would allow it."""
    open_records(folder).close()
    monkeypatch.setattr(place.os, "geteuid", lambda: 12345)
    with pytest.raises(MachineError, match="belongs to another user of the machine"):
        open_records(folder)


@pytest.mark.skipif(os.name != "posix" or os.geteuid() != 0, reason="only the superuser can become another user")
def test_another_user_of_the_machine_reads_nothing() -> None:
    """The system itself refuses, in one line."""
    with tempfile.TemporaryDirectory() as name:
        Path(name).chmod(0o755)
        folder = Path(name) / "records"
        with open_records(folder) as records:
            records.save(visit(), who=BY, why="dictated")
        child = os.fork()
        if child == 0:
            os.setuid(65534)
            status = 1
            try:
                open_records(folder)
            except DictateError as fault:
                status = 0 if "\n" not in str(fault) and not os.access(folder / DATABASE, os.R_OK) else 2
            finally:
                os._exit(status)
        assert os.waitpid(child, 0)[1] == 0


def test_what_a_crash_left_is_put_right(records: Records, folder: Path, tmp_path: Path) -> None:
    """A saved recording gets its name, an erased one goes, temporary files go, what nobody knows stays."""
    paths = [recording(tmp_path, name, name.encode()) for name in ("a.flac", "b.flac")]
    one = records.save(heard(*paths), who=BY, why="dictated", audio=paths)
    first, second = (records.audio(one.key, at) for at in (0, 1))
    assert isinstance(first, Path)
    assert isinstance(second, Path)
    other = records.save(heard(paths[0]), who=BY, why="dictated", audio=paths[:1])
    third = records.audio(other.key, 0)
    assert isinstance(third, Path)
    content = third.read_bytes()
    records.erase(other.key, who=BY, why="asked for")
    first.rename(f"{first}.part")
    third.write_bytes(content)
    for name in ("key.77.part", f"{SOUNDS}/feed.part", f"{SOUNDS}/unknown"):
        (folder / name).write_bytes(b"x")
    assert records.audio(one.key, 0) == Path(f"{first}.part")
    with open_records(folder) as again:
        assert again.audio(one.key, 0) == first
    assert sorted((folder / SOUNDS).iterdir()) == sorted([first, second, folder / SOUNDS / "unknown"])
    assert list(folder.glob("*.part")) == []


def test_a_head_that_cannot_be_written_loses_nothing(records: Records, monkeypatch: pytest.MonkeyPatch) -> None:
    """It only helps to verify."""

    def full(path: Path, content: bytes) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(place, "write_whole", full)
    one = records.save(visit(), who=BY, why="dictated")
    assert records.open(one.key) == one
    assert records.verify() == []


@pytest.mark.parametrize("name", ["../../letter", "2c97\x005d", ".."])
def test_a_changed_name_of_a_recording_leads_nowhere_else(
    records: Records, folder: Path, tmp_path: Path, name: str
) -> None:
    """Neither removed nor renamed when the records are opened; verify says which entry was changed."""
    path = recording(tmp_path)
    one = records.save(heard(path), who=BY, why="dictated", audio=[path])
    records.erase(one.key, who=BY, why="asked for")
    records.save(heard(path), who=BY, why="dictated", audio=[path])
    letter = tmp_path / "letter"
    letter.write_text("kept", encoding="utf-8")
    assert folder.parent == tmp_path  # the first name reaches the letter
    with tampering(folder) as db:
        db.execute("UPDATE revisions SET sounds = ? WHERE sounds LIKE '-%'", (f"-{name}",))
        db.execute("UPDATE revisions SET sounds = ? WHERE seq = 3", (f"{name}x=0",))
    with open_records(folder) as again:
        assert any("entry 3" in fault.where for fault in again.verify())
    assert letter.read_text(encoding="utf-8") == "kept"


@pytest.mark.parametrize("name", [DATABASE, SOUNDS])
def test_a_file_that_refuses_is_named(name: str, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another folder would not help: its permissions do."""
    open_records(folder).close()

    def refuse(path: object, *_: object, **__: object) -> int:
        raise PermissionError(13, "Permission denied", str(folder / name))

    monkeypatch.setattr(place.os, "open", refuse)
    with pytest.raises(MachineError, match=f"{name}: cannot be used: permission denied: check its permissions"):
        open_records(folder)
