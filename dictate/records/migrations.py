"""m001(db), m002(db) ... from one form of the database to the next: once each, in one transaction."""

from __future__ import annotations

from collections.abc import Callable

from sqlalchemy import Connection

from dictate.errors import MachineError

GUARDS = {  # name → what it refuses; the database itself keeps what was written
    "revisions_stay": """
        CREATE TRIGGER revisions_stay BEFORE UPDATE ON revisions
        BEGIN SELECT RAISE(ABORT, 'revisions are never changed'); END""",
    "revisions_last": """
        CREATE TRIGGER revisions_last BEFORE DELETE ON revisions
        BEGIN SELECT RAISE(ABORT, 'revisions are never removed'); END""",
    "revisions_follow": """
        CREATE TRIGGER revisions_follow BEFORE INSERT ON revisions
        WHEN NEW.seq IS NOT (SELECT COALESCE(MAX(seq), 0) + 1 FROM revisions)
          OR NEW.previous IS NOT COALESCE((SELECT seal FROM revisions ORDER BY seq DESC LIMIT 1), '')
        BEGIN SELECT RAISE(ABORT, 'a revision follows the newest one'); END""",
    "contents_stay": """
        CREATE TRIGGER contents_stay BEFORE UPDATE ON contents
        BEGIN SELECT RAISE(ABORT, 'contents are never changed'); END""",
    "contents_once": """
        CREATE TRIGGER contents_once BEFORE INSERT ON contents
        WHEN EXISTS (SELECT 1 FROM contents WHERE seq = NEW.seq)
        BEGIN SELECT RAISE(ABORT, 'contents are never changed'); END""",
    "contents_last": """
        CREATE TRIGGER contents_last BEFORE DELETE ON contents
        WHEN NOT EXISTS (
            SELECT 1 FROM revisions old JOIN revisions erasing ON erasing.record = old.record
            WHERE old.seq = OLD.seq AND erasing.action = 'erase' AND erasing.seq > OLD.seq)
        BEGIN SELECT RAISE(ABORT, 'contents go only when their record is erased'); END""",
}


def m001(db: Connection) -> None:
    """Revisions in a chain, their contents, and the guards that keep both."""
    for statement in (
        "CREATE TABLE facts (name TEXT PRIMARY KEY, value TEXT NOT NULL)",
        """CREATE TABLE revisions (
            seq INTEGER PRIMARY KEY, record TEXT NOT NULL, revision INTEGER NOT NULL, action TEXT NOT NULL,
            at TEXT NOT NULL, who TEXT NOT NULL, form INTEGER NOT NULL, content TEXT NOT NULL, sounds TEXT NOT NULL,
            previous TEXT NOT NULL, seal TEXT NOT NULL, UNIQUE (record, revision))""",
        """CREATE TABLE contents (
            seq INTEGER PRIMARY KEY REFERENCES revisions (seq), salt BLOB NOT NULL, body BLOB NOT NULL)""",
        *GUARDS.values(),
    ):
        db.exec_driver_sql(statement)


def m002(db: Connection) -> None:
    """An index to find records by patient, time, item and open queries; filled by whoever migrates."""
    for statement in (
        """CREATE TABLE records (
            record TEXT PRIMARY KEY, seq INTEGER NOT NULL REFERENCES revisions (seq), state TEXT NOT NULL,
            patient TEXT NOT NULL, shown BLOB NOT NULL, day TEXT NOT NULL, open INTEGER NOT NULL)""",
        """CREATE TABLE findings (
            record TEXT NOT NULL REFERENCES records (record), place INTEGER NOT NULL, item TEXT NOT NULL,
            side TEXT NOT NULL, value TEXT NOT NULL, patient TEXT NOT NULL, day TEXT NOT NULL)""",
        "CREATE INDEX records_by_patient ON records (patient, day)",
        "CREATE INDEX records_by_day ON records (day)",
        "CREATE INDEX findings_by_item ON findings (item, side, value, day)",
        "CREATE INDEX findings_by_patient ON findings (patient, item, day)",
        "CREATE INDEX findings_by_record ON findings (record)",
    ):
        db.exec_driver_sql(statement)


MIGRATIONS: tuple[Callable[[Connection], None], ...] = (m001, m002)


def migrate(db: Connection) -> bool:
    """Run those that have not run, inside the caller's transaction; whether any ran.

    Raises: MachineError when the database was made by a newer program.
    """
    db.exec_driver_sql("CREATE TABLE IF NOT EXISTS migrations (number INTEGER PRIMARY KEY)")
    done = {number for (number,) in db.exec_driver_sql("SELECT number FROM migrations")}
    if done and max(done) > len(MIGRATIONS):
        raise MachineError("records: were written by a newer version of this program: update it, nothing was changed")
    for number, migration in enumerate(MIGRATIONS, 1):
        if number not in done:
            migration(db)
            db.exec_driver_sql("INSERT INTO migrations (number) VALUES (?)", (number,))
    return len(done) < len(MIGRATIONS)
