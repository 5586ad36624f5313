"""The database: on the disk before it is acknowledged, alone while it is written, every fault one line."""

from __future__ import annotations

import contextlib
import os
import sqlite3
import threading
from pathlib import Path

import pytest
from records.visits import BY, note_of, tampering, visit

from dictate.errors import Damaged, MachineError, RecordError
from dictate.records import Records, ledger, open_records
from dictate.records.place import DATABASE, HEAD_FILE


def test_what_is_acknowledged_is_on_the_disk(records: Records) -> None:
    """Write-ahead log, full synchronisation (2), foreign keys, and erased bytes written over."""
    with records._ledger.read() as db:
        said = {name: db.exec_driver_sql(f"PRAGMA {name}").scalar() for name in (
            "journal_mode", "synchronous", "foreign_keys", "secure_delete",
        )}  # fmt: skip
    assert said == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "secure_delete": 1}


def test_a_fault_in_the_middle_leaves_nothing(records: Records) -> None:
    """Neither a revision nor a line of the index."""
    one = records.save(visit(), who=BY, why="dictated")
    with pytest.raises(ZeroDivisionError):
        records.sign(one.key, by=BY, note=lambda exam: str(1 / 0))
    assert records.open(one.key) == one
    assert records.verify() == []


@pytest.mark.parametrize("content", [b"no database at all" * 100, b"SQLite format 3\0" + bytes(2000)])
def test_a_file_that_is_no_database(content: bytes, folder: Path) -> None:
    """One line that says what to do."""
    open_records(folder).close()
    (folder / DATABASE).write_bytes(content)
    with pytest.raises((Damaged, MachineError)) as said:
        open_records(folder)
    assert "\n" not in str(said.value)
    assert DATABASE in str(said.value)


def test_a_database_that_was_emptied_or_lost(folder: Path) -> None:
    """It is not begun anew over records that were kept, until somebody says so."""
    with open_records(folder) as records:
        records.save(visit(), who=BY, why="dictated")
    (folder / DATABASE).unlink()
    for _ in range(2):
        with pytest.raises(Damaged, match="holds no record, yet records were kept here"):
            open_records(folder)
    (folder / HEAD_FILE).unlink()
    with open_records(folder) as records:
        assert records.find() == []


@pytest.mark.parametrize("lost", ["1", "name = 'lock'"])
def test_lost_facts_of_the_lock(folder: Path, lost: str) -> None:
    """One line, also where the content then seems to be open."""
    with open_records(folder, passphrase="open sesame") as records:
        key = records.save(visit(), who=BY, why="dictated").key
    with tampering(folder) as db:
        db.execute(f"DELETE FROM facts WHERE {lost}")
    with pytest.raises(Damaged, match=r"sealed is gone|was changed behind"), open_records(folder) as records:
        records.open(key)


def test_another_window_that_does_not_end(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """After the wait it is one line, and nothing was changed."""
    monkeypatch.setattr(ledger, "PRAGMAS", ("busy_timeout = 50", *ledger.PRAGMAS[1:]))
    with open_records(folder) as records:
        with contextlib.closing(sqlite3.connect(folder / DATABASE, isolation_level=None)) as other:
            other.execute("BEGIN IMMEDIATE")
            with pytest.raises(MachineError, match="database is locked: nothing was changed; try again"):
                records.save(visit(), who=BY, why="dictated")
            assert records.find() == []
            other.execute("ROLLBACK")
        records.save(visit(), who=BY, why="dictated")


def test_content_of_a_newer_program_is_said_so(records: Records, monkeypatch: pytest.MonkeyPatch) -> None:
    """It is not half understood."""
    one = records.save(visit(), who=BY, why="dictated")
    monkeypatch.setattr(ledger.zlib, "decompress", lambda content: b'{"why": "x", "unheard_of": 1}')
    with pytest.raises(RecordError, match="by another version of this program"):
        records.open(one.key)


def test_threads_save_side_by_side(records: Records) -> None:
    """Each in its own transaction, all in one chain."""

    def work() -> None:
        for _ in range(5):
            one = records.save(visit(), who=BY, why="dictated")
            records.sign(one.key, by=BY, note=note_of)

    threads = [threading.Thread(target=work) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert [one.state for one in records.find()] == ["signed"] * 20
    assert records.verify() == []


def test_processes_save_side_by_side(folder: Path) -> None:
    """Also the very first time, when the key and the tables are made."""
    children = []
    for _ in range(4):
        child = os.fork()
        if child == 0:
            status = 1
            with contextlib.suppress(BaseException), open_records(folder) as records:
                for _ in range(5):
                    records.save(visit(), who=BY, why="dictated")
                status = 0
            os._exit(status)
        children.append(child)
    assert [os.waitpid(child, 0)[1] for child in children] == [0] * 4
    with open_records(folder) as records:
        assert len(records.find()) == 20
        assert records.verify() == []


def test_a_database_that_may_not_be_written(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """To try again would not help."""
    open_records(folder).close()
    monkeypatch.setattr(ledger, "PRAGMAS", (*ledger.PRAGMAS, "query_only = 1"))
    with (
        pytest.raises(MachineError, match="nothing was changed; check the permissions of file and folder"),
        open_records(folder) as records,
    ):
        records.save(visit(), who=BY, why="dictated")
