"""Each step runs once; databases of older steps open with all they hold."""

from __future__ import annotations

import contextlib
import shutil
import sqlite3
from pathlib import Path

import pytest
from records.visits import BY, note_of, visit

from dictate.errors import MachineError
from dictate.model import Side
from dictate.records import migrations, open_records
from dictate.records.keys import KEY_FILE
from dictate.records.place import DATABASE

HERE = Path(__file__).parent


def old(folder: Path) -> None:
    """Records as the first step made them: two records, one of them signed and amended."""
    folder.mkdir(mode=0o700)
    with contextlib.closing(sqlite3.connect(folder / DATABASE)) as db:
        db.executescript((HERE / "version1.sql").read_text(encoding="utf-8"))
    shutil.copy(HERE / "version1.key", folder / KEY_FILE)


def test_records_of_the_first_version_open(folder: Path) -> None:
    """Found, opened, verified, and added to."""
    old(folder)
    with open_records(folder) as records:
        assert records.verify() == []
        one = records.open("aaaaaa")
        assert [(finding.item, finding.side) for finding in one.exam.findings] == [
            ("reflex_biceps", Side.RIGHT), ("reflex_biceps", Side.LEFT),
        ]  # fmt: skip
        assert (one.state, one.addenda[0].text) == ("amended", "Jaw jerk normal.")
        assert [found.key for found in records.find(patient="P-2", item="reflex_patellar", open_only=True)] == [
            "bbbbbb"
        ]
        records.save(visit(), who=BY, why="more", key="bbbbbb", base=1)
        records.sign("bbbbbb", by=BY, note=note_of)
        assert records.verify() == []


def test_each_step_runs_once(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Opening again runs none."""
    ran = []
    steps = [lambda db, step=step: (ran.append(step.__name__), step(db)) for step in migrations.MIGRATIONS]
    monkeypatch.setattr(migrations, "MIGRATIONS", tuple(steps))
    for _ in range(3):
        open_records(folder).close()
    assert ran == ["m001", "m002"]


def test_a_step_that_fails_leaves_everything_as_it_was(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The old program can still open it."""
    old(folder)
    monkeypatch.setattr(migrations, "MIGRATIONS", (*migrations.MIGRATIONS, lambda db: 1 / 0))
    with pytest.raises(ZeroDivisionError):
        open_records(folder)
    with contextlib.closing(sqlite3.connect(folder / DATABASE)) as db:
        assert db.execute("SELECT number FROM migrations").fetchall() == [(1,)]
        assert not db.execute("SELECT name FROM sqlite_master WHERE name = 'findings'").fetchall()


def test_records_of_a_newer_program_are_left_alone(folder: Path) -> None:
    """One line."""
    open_records(folder).close()
    with contextlib.closing(sqlite3.connect(folder / DATABASE, isolation_level=None)) as db:
        db.execute("INSERT INTO migrations VALUES (99)")
    with pytest.raises(MachineError, match="newer version of this program"):
        open_records(folder)


def test_the_database_refuses_changes(folder: Path) -> None:
    """Whatever program asks: rows are only added, behind the newest; contents go only with an erasure."""
    with open_records(folder) as records:
        records.save(visit(), who=BY, why="dictated")
    with contextlib.closing(sqlite3.connect(folder / DATABASE, isolation_level=None)) as db:
        db.execute("PRAGMA recursive_triggers = OFF")
        copy = "SELECT {seq}, record, 2, action, at, who, form, content, sounds, {previous}, seal FROM revisions"
        for statement, said in (
            ("UPDATE revisions SET who = 'B'", "never changed"),
            ("DELETE FROM revisions", "never removed"),
            ("UPDATE contents SET body = x'00'", "never changed"),
            ("DELETE FROM contents", "only when their record is erased"),
            ("INSERT OR REPLACE INTO contents SELECT seq, salt, x'00' FROM contents", "never changed"),
            (f"INSERT OR REPLACE INTO revisions {copy.format(seq='1', previous='seal')}", "follows the newest"),
            (f"INSERT INTO revisions {copy.format(seq='7', previous='seal')}", "follows the newest"),
            (f"INSERT INTO revisions {copy.format(seq='2', previous='previous')}", "follows the newest"),
        ):
            with pytest.raises(sqlite3.IntegrityError, match=said):
                db.execute(statement)
