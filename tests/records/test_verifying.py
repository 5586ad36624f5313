"""What was changed, lost or put in another order is found, and its place is named."""

from __future__ import annotations

import contextlib
import random
import shutil
import sqlite3
from collections.abc import Iterator
from pathlib import Path

import pytest
from records.visits import BY, heard, note_of, recording, signed, tampering, visit

from dictate.errors import DictateError
from dictate.records import Records, open_records
from dictate.records.place import DATABASE, HEAD_FILE, SOUNDS

ROW = ("seq", "record", "revision", "action", "at", "who", "form", "content", "sounds", "previous", "seal")
CONTENT = ("seq", "salt", "body")


@pytest.fixture
def full(records: Records, tmp_path: Path) -> Records:
    """Two records, six revisions, a recording."""
    path = recording(tmp_path)
    one = records.save(heard(path), who=BY, why="dictated", audio=[path])
    records.save(visit("P-2"), who=BY, why="dictated")
    records.save(heard(path), who=BY, why="corrected", key=one.key, base=1)
    records.sign(one.key, by=BY, note=note_of)
    records.amend(one.key, by=BY, why="forgotten", text="Jaw jerk normal.")
    assert records.verify() == []
    return records


def said(records: Records) -> str:
    """All faults as one text."""
    return "\n".join(map(str, records.verify()))


def cells(folder: Path) -> Iterator[tuple[str, str, int, bytes]]:
    """Every stored cell of revisions and contents: table, column, row, bytes."""
    with contextlib.closing(sqlite3.connect(folder / DATABASE)) as db:
        for table, columns in (("revisions", ROW), ("contents", CONTENT)):
            for column in columns:
                for seq, value in db.execute(f"SELECT seq, CAST({column} AS BLOB) FROM {table} ORDER BY seq"):
                    yield table, column, seq, bytes(value)


def change(db: sqlite3.Connection, place: tuple[str, str, int], value: bytes) -> bool:
    """Write other bytes into a cell; False: the database itself refused."""
    table, column, seq = place
    kind = "BLOB" if column in ("salt", "body") else "TEXT"
    try:
        db.execute(f"UPDATE {table} SET {column} = CAST(? AS {kind}) WHERE seq = ?", (value, seq))
    except sqlite3.IntegrityError:
        return False
    return True


def missed(records: Records, share: float) -> list[tuple[str, str, int, int]]:
    """Single-byte changes of stored cells that verify does not find; `share` of all places is tried."""
    luck = random.Random(7)
    unseen = []
    with tampering(records.folder) as db:
        db.execute("PRAGMA synchronous = OFF")
        for table, column, seq, value in list(cells(records.folder)):
            for at in range(len(value)):
                if luck.random() > share:
                    continue
                other = bytearray(value)
                other[at] ^= luck.randrange(1, 256)
                if not change(db, (table, column, seq), bytes(other)):
                    continue
                if all("guard" in fault.where for fault in records.verify()):
                    unseen.append((table, column, seq, at))
                restore(db, (table, column, seq), value, bytes(other))
    return unseen


def restore(db: sqlite3.Connection, place: tuple[str, str, int], value: bytes, other: bytes) -> None:
    """Put the bytes back; a row whose number was changed is found by the new one."""
    table, column, seq = place
    if column == "seq":
        number = db.execute("SELECT CAST(CAST(? AS TEXT) AS INTEGER)", (other,)).fetchone()[0]
        db.execute(f"UPDATE {table} SET seq = ? WHERE seq = ?", (seq, number))
    else:
        change(db, place, value)


def test_changes_of_single_bytes_are_found(full: Records) -> None:
    """A sample over all columns of all rows; every place is tried in the slow tier."""
    assert missed(full, 0.02) == []
    assert full.verify() == []


@pytest.mark.slow
def test_every_change_of_a_single_byte_is_found(full: Records) -> None:
    """Every byte of every column of every row, each changed to another."""
    assert missed(full, 1.0) == []
    assert full.verify() == []


def test_a_changed_revision_is_named(full: Records, folder: Path) -> None:
    """Where it is, and that it was changed; opening it is refused."""
    with tampering(folder) as db:
        db.execute("UPDATE revisions SET who = 'B. Other' WHERE seq = 4")
    assert "entry 4 (record " in said(full)
    assert "revision 3): changed" in said(full)
    key = full.find(patient="P-1")[0].key
    with pytest.raises(DictateError, match=r"revision 3: was changed behind the program's back: `dictate records ver"):
        full.open(key)


def test_a_missing_revision_is_named(full: Records, folder: Path) -> None:
    """The hole, and the one that follows it."""
    with tampering(folder) as db:
        db.execute("DELETE FROM contents WHERE seq = 2")
        db.execute("DELETE FROM revisions WHERE seq = 2")
    assert "entry 2: missing" in said(full)
    assert "follows a revision that is missing or changed" in said(full)


def test_a_hole_that_was_closed_is_found(full: Records, folder: Path) -> None:
    """Also when all that follow were numbered anew."""
    with tampering(folder) as db:
        db.execute("DELETE FROM contents WHERE seq = 2")
        db.execute("DELETE FROM revisions WHERE seq = 2")
        for table in ("contents", "revisions"):
            db.execute(f"UPDATE {table} SET seq = seq - 1 WHERE seq > 2")
    assert "entry 2" in said(full)


def test_reordered_revisions_are_found(full: Records, folder: Path) -> None:
    """Two that changed places."""
    with tampering(folder) as db:
        for old, new in ((2, 99), (3, 2), (99, 3)):
            for table in ("contents", "revisions"):
                db.execute(f"UPDATE {table} SET seq = ? WHERE seq = ?", (new, old))
    assert "reordered" in said(full)


def test_a_content_that_is_gone_is_named(full: Records, folder: Path) -> None:
    """Only an erasure takes a content away."""
    with tampering(folder) as db:
        db.execute("DELETE FROM contents WHERE seq = 4")
    assert "entry 4" in said(full)
    assert "its content is missing" in said(full)


def test_an_exchanged_content_is_found(full: Records, folder: Path) -> None:
    """Sound contents in each other's place."""
    with tampering(folder) as db:
        for old, new in ((1, 99), (2, 1), (99, 2)):
            db.execute("UPDATE contents SET seq = ? WHERE seq = ?", (new, old))
    assert said(full).count("its content was changed") == 2


def test_recordings_are_watched(full: Records, folder: Path) -> None:
    """Changed, missing, or not the records' own."""
    (path,) = (folder / SOUNDS).iterdir()
    content = path.read_bytes()
    path.write_bytes(content[:-1] + b"X")
    assert f"its recording {path.name} was changed" in said(full)
    path.unlink()
    assert f"its recording {path.name} is missing" in said(full)
    path.write_bytes(content)
    (folder / SOUNDS / "stray").write_bytes(b"x")
    assert said(full) == "sounds/stray: no revision names this file"


def test_missing_guards_are_found(full: Records, folder: Path) -> None:
    """Without them other programs can change revisions."""
    with contextlib.closing(sqlite3.connect(folder / DATABASE, isolation_level=None)) as db:
        db.execute("DROP TRIGGER revisions_stay")
        db.execute("CREATE TRIGGER own AFTER INSERT ON revisions BEGIN SELECT 1; END")
    assert "guard revisions_stay: is missing" in said(full)
    assert "guard own: is none of this program's" in said(full)


def test_cut_off_newest_revisions_need_a_head(full: Records, folder: Path) -> None:
    """The chain alone cannot tell; the head beside the database can, and so can one printed on a note."""
    head = full.open(full.find(patient="P-1")[0].key).head
    with tampering(folder) as db:
        db.execute("DELETE FROM contents WHERE seq = 5")
        db.execute("DELETE FROM revisions WHERE seq = 5")
    full.mend_index()
    full.save(visit(), who=BY, why="dictated")  # a further saving hides nothing
    assert f"entries up to {head[:12]} are missing" in said(full)
    (folder / HEAD_FILE).unlink()
    assert said(full) == ""
    assert [fault.what for fault in full.verify(head=head[:16])] == ["is not in the chain"]


def test_a_printed_head_is_found(records: Records) -> None:
    """Its beginning is enough, three letters are not."""
    head = signed(records).head
    assert records.verify(head=head) == records.verify(head=head[:16].upper()) == []
    assert [fault.what for fault in records.verify(head=head[:3])] == [
        "is not in the chain: give 12 letters or more",
    ]


def silent(folder: Path, count: int | None, tmp_path: Path) -> list[int]:
    """Places of the database file whose change makes a record read otherwise without a word; count None: all."""
    with open_records(folder) as records:
        before = {one.key: records.open(one.key) for one in records.find()}
    whole = (folder / DATABASE).read_bytes()
    luck = random.Random(11)
    wrong = []
    copy = tmp_path / "copy"
    for at in range(len(whole)) if count is None else (luck.randrange(len(whole)) for _ in range(count)):
        shutil.rmtree(copy, ignore_errors=True)
        shutil.copytree(folder, copy)
        with open(copy / DATABASE, "r+b") as file:
            file.seek(at)
            file.write(bytes([whole[at] ^ luck.randrange(1, 256)]))
        with contextlib.suppress(DictateError), open_records(copy) as records:
            for key, one in before.items():
                with contextlib.suppress(DictateError):
                    if records.open(key) != one:
                        wrong.append(at)
    return wrong


def test_no_changed_byte_of_the_file_is_read_silently(full: Records, folder: Path, tmp_path: Path) -> None:
    """A damaged file is refused in one line, or what is opened is what was saved."""
    full.close()
    assert silent(folder, 30, tmp_path) == []


@pytest.mark.slow
def test_many_changed_bytes_of_the_file(full: Records, folder: Path, tmp_path: Path) -> None:
    """The same, a thousand times."""
    full.close()
    assert silent(folder, 1000, tmp_path) == []
