"""Is everything as it was written? Chain, contents, recordings, guards and index, each fault with its place."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sqlalchemy import Connection, select
from sqlalchemy.exc import DatabaseError

from dictate.records import place, search
from dictate.records.chain import Row, breaks, erased_from, is_content, live_sounds, name_of
from dictate.records.changing import sound_digest
from dictate.records.kept import Fault
from dictate.records.ledger import Ledger
from dictate.records.migrations import GUARDS
from dictate.records.tables import contents

SHORTEST_HEAD = 12  # letters of a printed head that are enough to tell it


def verify(ledger: Ledger, *, head: str = "") -> list[Fault]:
    """Every fault; none: all is as it was written. head: one that was printed, and must be in the chain."""
    with ledger.read() as db:
        rows = ledger.rows(db)
        found = [Fault(where=where, what=what) for where, what in breaks(ledger.keys.seal, rows)]
        found += _heads(ledger, rows, head)
        found += _contents(ledger, db, rows)
        found += _sounds(ledger, rows)
        found += _database(db)
        found += _index(ledger, db, rows)
    return found


def _heads(ledger: Ledger, rows: Sequence[Row], head: str) -> Iterator[Fault]:
    """The newest revisions can be cut off without a trace in the chain; a head known from elsewhere tells."""
    seals = [row.seal.decode(errors="replace") for row in rows]
    for known in place.read_heads(ledger.folder):
        if known not in seals:
            yield Fault(
                where=f"{ledger.folder / place.HEAD_FILE}",
                what=f"entries up to {known[:SHORTEST_HEAD]} are missing, or were changed: put the database back from "
                "a back-up, or remove that line once you know why",
            )
    wanted = head.strip().lower()
    if wanted and (len(wanted) < SHORTEST_HEAD or not any(seal.startswith(wanted) for seal in seals)):
        short = f": give {SHORTEST_HEAD} letters or more" if len(wanted) < SHORTEST_HEAD else ""
        yield Fault(where=f"head {head.strip()}", what=f"is not in the chain{short}")


def _contents(ledger: Ledger, db: Connection, rows: Sequence[Row]) -> Iterator[Fault]:
    erased = erased_from(rows)
    seqs = set()
    for row in rows:
        seqs.add(row.seq)
        found = db.execute(select(contents.c.salt, contents.c.body).where(contents.c.seq == row.seq)).one_or_none()
        gone = erased.get(row["record"], 0) > row.seq
        if found is None and not gone:
            yield Fault(where=name_of(row), what="its content is missing")
        if found is not None and gone:
            yield Fault(where=name_of(row), what="its content is still there although its record was erased")
        if found is not None and not gone and not _is_whole(ledger, row, found.salt, found.body):
            yield Fault(where=name_of(row), what="its content was changed")
    for (seq,) in db.execute(select(contents.c.seq)):
        if seq not in seqs:
            yield Fault(where=f"entry {seq}", what="a content without its revision")


def _is_whole(ledger: Ledger, row: Row, salt: object, body: object) -> bool:
    return isinstance(salt, bytes) and isinstance(body, bytes) and is_content(ledger.keys.seal, row, salt, body)


def _sounds(ledger: Ledger, rows: Sequence[Row]) -> Iterator[Fault]:
    live = live_sounds(rows)
    of = {name: name_of(row) for row in rows for name in row.came}
    for name, seal in live.items():
        path = place.sound_file(ledger.folder, name)
        if path is None:
            yield Fault(where=of[name], what=f"its recording {name} is missing")
        elif sound_digest(ledger.keys.seal, name, path.read_bytes()) != seal:
            yield Fault(where=of[name], what=f"its recording {name} was changed")
    for name in place.strays(ledger.folder, live):
        yield Fault(where=f"{place.SOUNDS}/{name}", what="no revision names this file")


def _index(ledger: Ledger, db: Connection, rows: Sequence[Row]) -> list[Fault]:
    try:
        return search.faults(ledger, db, rows)
    except DatabaseError as fault:
        return [Fault(where="index", what=f"cannot be read ({fault.orig}): {search.MEND}")]


def _database(db: Connection) -> Iterator[Fault]:
    for (said,) in db.exec_driver_sql("PRAGMA integrity_check(20)"):
        if said != "ok":
            yield Fault(where="database", what=str(said))
    for fault in db.exec_driver_sql("PRAGMA foreign_key_check"):
        yield Fault(where=f"database, table {fault[0]}", what=f"row {fault[1]} points nowhere")
    triggers = db.exec_driver_sql("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
    guards = {trigger.name: trigger.sql for trigger in triggers}
    for name, text in GUARDS.items():
        if " ".join(str(guards.get(name)).split()) != " ".join(text.split()):
            yield Fault(
                where=f"database, guard {name}", what="is missing or was changed: revisions can be altered there"
            )
    for name in sorted(guards.keys() - GUARDS.keys()):
        yield Fault(where=f"database, guard {name}", what="is none of this program's")
