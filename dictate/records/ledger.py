"""The database under the records: opened, migrated, read and appended to; every fault of it in one line."""

from __future__ import annotations

import contextlib
import secrets
import sqlite3
import zlib
from collections.abc import Callable, Iterable, Iterator
from datetime import datetime
from pathlib import Path
from typing import Any

from pydantic import ValidationError
from sqlalchemy import URL, Connection, Engine, LargeBinary, Select, cast, create_engine, delete, event, insert, select
from sqlalchemy.exc import DatabaseError

from dictate.errors import Damaged, MachineError, RecordError
from dictate.records import chain, place
from dictate.records.chain import COLUMNS, FORM, Row
from dictate.records.kept import Leaf
from dictate.records.keys import Keys, open_keys
from dictate.records.migrations import migrate
from dictate.records.tables import contents, facts, revisions

WAIT_MS = 10_000  # for another window that is saving
PRAGMAS = (
    f"busy_timeout = {WAIT_MS}",
    "journal_mode = WAL",
    "synchronous = FULL",  # what is acknowledged is on the disk
    "foreign_keys = ON",
    "secure_delete = ON",  # what is erased is written over
    "trusted_schema = OFF",
)
SALT_BYTES = 16
DAMAGE = (  # in SQLite's words
    "malformed", "utf-8", "no such table", "no such column", "not a database", "already exists", "mismatch",
)  # fmt: skip
MENDS = {  # SQLite's words → what to do
    "full": "make room, then try again",
    "readonly": "check the permissions of file and folder: even to read, both must be writable",
    "unable to open": "check the permissions of file and folder",
}
Clock = Callable[[], datetime]
Fill = Callable[["Ledger", Connection], None]


def local_now() -> datetime:
    """Now, with the zone of the machine, to the second."""
    return datetime.now().astimezone().replace(microsecond=0)


class Ledger:
    """One folder of records."""

    def __init__(self, folder: Path, *, fill: Fill, passphrase: str | None = None, now: Clock = local_now) -> None:
        """fill: makes the index anew, when a migration has changed it."""
        self.folder = folder
        self.now = now
        self.engine = _engine(place.prepare(folder))
        try:
            with self.write(sealed=False) as db:
                changed = migrate(db)
                self.keys = self._open_keys(db, passphrase)
                if changed:
                    fill(self, db)
                self._tidy(db)
        except (Damaged, MachineError, RecordError):
            self.close()
            raise

    def close(self) -> None:
        """Give the database back; its last user writes everything into the one file."""
        self.engine.dispose()

    @contextlib.contextmanager
    def read(self) -> Iterator[Connection]:
        """One consistent view."""
        with self._faults(), self.engine.connect() as db:
            yield db

    @contextlib.contextmanager
    def write(self, *, sealed: bool = True) -> Iterator[Connection]:
        """One transaction, alone: all of it is on the disk when this ends, or nothing."""
        with self._faults(), self.engine.connect() as plain:
            db = plain.execution_options(alone=True)
            with db.begin():
                yield db
                last = self.head(db) if sealed else ""
                missing = self.missing_heads(db) if sealed else []
        if last:
            place.write_heads(self.folder, last, missing)

    @contextlib.contextmanager
    def _faults(self) -> Iterator[None]:
        path = self.folder / place.DATABASE
        try:
            yield
        except UnicodeDecodeError as fault:  # the driver met a changed byte in what it tells of the file
            raise Damaged(f"{path}: is damaged (text that is no text): put it back from a back-up") from fault
        except (DatabaseError, sqlite3.Error) as fault:  # the library's, or the driver's while a connection is opened
            cause = fault.orig if isinstance(fault, DatabaseError) else fault
            said = " ".join(str(cause).lower().split())
            if isinstance(cause, sqlite3.OperationalError) and not any(word in said for word in DAMAGE):
                what = next((mend for word, mend in MENDS.items() if word in said), "try again")
                raise MachineError(f"{path}: cannot be used: {said}: nothing was changed; {what}") from fault
            raise Damaged(f"{path}: is damaged ({said}): put it back from a back-up") from fault

    def _open_keys(self, db: Connection, passphrase: str | None) -> Keys:
        known = {row.name: row.value for row in db.execute(select(facts))}
        path, head = self.folder / place.DATABASE, self.folder / place.HEAD_FILE
        if not self.head(db) and place.read_heads(self.folder):
            raise Damaged(
                f"{path}: holds no record, yet records were kept here: put it back from a back-up; to begin anew, "
                f"remove {head}"
            )
        if self.head(db) and "key_check" not in known:
            raise Damaged(f"{path}: what tells how the records are sealed is gone: put it back from a back-up")
        told = dict(known)
        told.setdefault("name", secrets.token_hex(8))
        keys = open_keys(self.folder, told, passphrase=passphrase, fresh=self.head(db) == "")
        for name in told.keys() - known.keys():
            db.execute(insert(facts).values(name=name, value=told[name]))
        return keys

    def _tidy(self, db: Connection) -> None:
        if not any((self.folder / place.SOUNDS).iterdir()) and not any(self.folder.glob(f"*{place.PART}")):
            return
        rows = self.rows(db, select(revisions).where(revisions.c.sounds != ""))
        live = chain.live_sounds(rows)
        gone = {name for row in rows for name in row.went}
        place.tidy(self.folder, live=live, erased=gone - live.keys())

    def head(self, db: Connection) -> str:
        """Seal of the newest revision; empty before the first."""
        return db.execute(select(revisions.c.seal).order_by(revisions.c.seq.desc()).limit(1)).scalar() or ""

    def missing_heads(self, db: Connection) -> list[str]:
        """Seals that were remembered beside the database and are in the chain no more."""
        known = place.read_heads(self.folder)
        there = set(db.execute(select(revisions.c.seal).where(revisions.c.seal.in_(known))).scalars())
        return [seal for seal in known if seal not in there]

    def rows(self, db: Connection, wanted: Select[Any] | None = None) -> list[Row]:
        """Revisions in order, byte by byte as they lie there."""
        wanted = select(revisions) if wanted is None else wanted
        columns = [cast(revisions.c[name], LargeBinary) for name in (*COLUMNS, "seal")]
        found = db.execute(wanted.with_only_columns(*columns).order_by(revisions.c.seq))
        return [Row(tuple(bytes(cell or b"") for cell in cells[:-1]), bytes(cells[-1] or b"")) for cells in found]

    def rows_of(self, db: Connection, record: str) -> list[Row]:
        """Revisions of one record, each as it was written.

        Raises: RecordError when there is no such record; Damaged when one was changed.
        """
        rows = self.rows(db, select(revisions).where(revisions.c.record == record))
        if not rows:
            raise RecordError(f"record {record}: there is none: `dictate records` lists them")
        for number, row in enumerate(rows, 1):
            if not chain.is_sealed(self.keys.seal, row) or row.revision != number:
                raise Damaged(_behind(f"record {record}, revision {number}"))
        return rows

    def leaf(self, db: Connection, row: Row) -> Leaf:
        """Content of a revision. Raises: Damaged when it was changed, RecordError when a newer program wrote it."""
        found = db.execute(select(contents.c.salt, contents.c.body).where(contents.c.seq == row.seq)).one_or_none()
        if found is None or not chain.is_content(self.keys.seal, row, found.salt, found.body):
            raise Damaged(_behind(f"record {row['record']}, revision {row.revision}"))
        try:
            return Leaf.model_validate_json(zlib.decompress(self.keys.unlock(found.body)))
        except zlib.error as fault:
            raise Damaged(_behind(f"record {row['record']}, revision {row.revision}")) from fault
        except ValidationError as fault:
            raise RecordError(
                f"record {row['record']}: was saved by another version of this program: update it; nothing was changed"
            ) from fault

    def append(
        self, db: Connection, *, record: str, action: str, who: str, leaf: Leaf,
        came: Iterable[tuple[str, str]] = (), went: Iterable[str] = (),
    ) -> Row:  # fmt: skip
        """Add one revision to a record. came: name and keyed digest of its new recordings; went: those erased."""
        last = db.execute(select(revisions.c.seq).order_by(revisions.c.seq.desc()).limit(1)).scalar() or 0
        count = len(db.execute(select(revisions.c.seq).where(revisions.c.record == record)).all())
        salt = secrets.token_bytes(SALT_BYTES)
        body = self.keys.lock(zlib.compress(leaf.model_dump_json().encode()))
        values: dict[str, str | int] = {
            "seq": last + 1,
            "record": record,
            "revision": count + 1,
            "action": action,
            "at": self.now().isoformat(),
            "who": who,
            "form": FORM,
            "content": chain.content_digest(self.keys.seal, salt, body),
            "sounds": " ".join([*(f"{name}={seal}" for name, seal in came), *(f"-{name}" for name in went)]),
            "previous": self.head(db),
        }
        cells = tuple(str(values[name]).encode() for name in COLUMNS)
        seal = chain.seal_of(self.keys.seal, cells)
        db.execute(insert(revisions).values(**values, seal=seal))
        db.execute(insert(contents).values(seq=last + 1, salt=salt, body=body))
        return Row(cells, seal.encode())

    def forget(self, db: Connection, rows: Iterable[Row]) -> None:
        """Remove contents of revisions that an erasure, appended before, covers."""
        db.execute(delete(contents).where(contents.c.seq.in_([row.seq for row in rows])))

    def flush(self) -> None:
        """Write everything into the one file, so that nothing erased stays in the log beside it."""
        with self._faults(), contextlib.closing(self.engine.raw_connection()) as raw:
            raw.cursor().execute("PRAGMA wal_checkpoint(TRUNCATE)")


def _behind(where: str) -> str:
    return f"{where}: was changed behind the program's back: `dictate records verify` says where"


def _engine(path: Path) -> Engine:
    engine = create_engine(URL.create("sqlite", database=str(path)), connect_args={"timeout": WAIT_MS / 1000})

    @event.listens_for(engine, "connect")
    def prepare(raw: Any, _: object) -> None:
        raw.isolation_level = None  # the driver begins nothing by itself: see `begin`
        for pragma in PRAGMAS:
            raw.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def begin(db: Connection) -> None:
        alone = db.get_execution_options().get("alone", False)
        db.exec_driver_sql("BEGIN IMMEDIATE" if alone else "BEGIN")

    return engine
