"""The index: found by patient, time, item and open queries; made anew from the revisions whenever it must be."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from datetime import date, datetime, time
from typing import Any

from sqlalchemy import Connection, delete, insert, select

from dictate.errors import Damaged, RecordError
from dictate.model import Severity
from dictate.records.chain import ERASED, WITHDRAWN, Row
from dictate.records.kept import Fault, Listed, Stored
from dictate.records.ledger import Ledger
from dictate.records.standing import needed, stand
from dictate.records.tables import findings, records, revisions

MEND = "`dictate records verify --mend-index` makes it anew"


def stored(ledger: Ledger, db: Connection, rows: Sequence[Row]) -> Stored:
    """A record as it stands, from its revisions."""
    return stand(rows, [ledger.leaf(db, row) for row in needed(rows)])


def index(ledger: Ledger, db: Connection, one: Stored, rows: Sequence[Row]) -> None:
    """Write the record's lines of the index anew."""
    record, lines = _lines(ledger, one, rows)
    db.execute(delete(findings).where(findings.c.record == one.key))
    db.execute(delete(records).where(records.c.record == one.key))
    db.execute(insert(records).values(**record, shown=ledger.keys.lock(_shown(one))))
    if lines:
        db.execute(insert(findings), lines)


def fill(ledger: Ledger, db: Connection) -> None:
    """Make the whole index anew. A record that was changed behind the program's back is left out: verify names it."""
    db.execute(delete(findings))
    db.execute(delete(records))
    for rows in by_record(ledger.rows(db)).values():
        try:
            checked = ledger.rows_of(db, rows[0]["record"])
            index(ledger, db, stored(ledger, db, checked), checked)
        except (Damaged, RecordError):
            continue


def by_record(rows: Iterable[Row]) -> dict[str, list[Row]]:
    """Revisions of each record, in order."""
    groups: dict[str, list[Row]] = {}
    for row in rows:
        groups.setdefault(row["record"], []).append(row)
    return groups


def find(
    ledger: Ledger, db: Connection, *, patient: str | None, since: date | None, until: date | None,
    item: str | None, open_only: bool, last: bool,
) -> list[Listed]:  # fmt: skip
    """Newest first. since, until: both included; a date means the whole day. last: the newest before now, alone."""
    wanted = select(records, revisions.c.revision, revisions.c.at, revisions.c.who)
    wanted = wanted.join(revisions, revisions.c.seq == records.c.seq).order_by(
        records.c.day.desc(), records.c.seq.desc()
    )
    if patient is not None:
        wanted = wanted.where(records.c.patient == ledger.keys.mark(patient))
    if since is not None:
        wanted = wanted.where(records.c.day >= _local(_moment(since, time.min)))
    if until is not None:
        wanted = wanted.where(records.c.day <= _local(_moment(until, time.max)))
    if item is not None:
        having = select(findings.c.record).where(findings.c.item == ledger.keys.mark(item))
        wanted = wanted.where(records.c.record.in_(having))
    if open_only:
        wanted = wanted.where(records.c.open > 0)
    if last:
        unusable = records.c.state.in_((WITHDRAWN, ERASED))
        wanted = wanted.where(records.c.day <= _local(ledger.now()), ~unusable).limit(1)
    return [_listed(ledger, row) for row in db.execute(wanted)]


def faults(ledger: Ledger, db: Connection, rows: Sequence[Row]) -> list[Fault]:
    """Where the index tells something else than the revisions."""
    found = []
    groups = by_record(rows)
    for key, own in groups.items():
        try:
            one = stored(ledger, db, ledger.rows_of(db, key))
        except (Damaged, RecordError):
            continue  # said where the revision is
        if not _tells(ledger, db, one, own):
            found.append(Fault(where=f"index of record {key}", what=f"differs from its revisions: {MEND}"))
    for (key,) in db.execute(select(records.c.record)):
        if key not in groups:
            found.append(Fault(where=f"index of record {key}", what=f"no revision is of this record: {MEND}"))
    return found


def _tells(ledger: Ledger, db: Connection, one: Stored, rows: Sequence[Row]) -> bool:
    """Whether the index says of a record what its revisions say."""
    record, lines = _lines(ledger, one, rows)
    told = db.execute(select(records).where(records.c.record == one.key)).mappings().one_or_none()
    if told is None or any(told[name] != value for name, value in record.items()):
        return False
    listed = db.execute(select(findings).where(findings.c.record == one.key).order_by(findings.c.place)).mappings()
    try:
        return [dict(line) for line in listed] == lines and ledger.keys.unlock(told["shown"]) == _shown(one)
    except Damaged:
        return False


def _lines(ledger: Ledger, one: Stored, rows: Sequence[Row]) -> tuple[dict[str, object], list[dict[str, object]]]:
    """The record's line of the index, and those of its findings."""
    mark = ledger.keys.mark
    day = _local(one.exam.examined_at or datetime.fromisoformat(rows[0]["at"]))
    record: dict[str, object] = {
        "record": one.key,
        "seq": rows[-1].seq,
        "state": one.state,
        "patient": mark(one.exam.patient),
        "day": day,
        "open": len(one.exam.open_queries) if one.state == "draft" else 0,
    }
    lines: list[dict[str, object]] = [
        {
            "record": one.key,
            "place": at,
            "item": mark(finding.item),
            "side": mark(finding.side.value if finding.side else ""),
            "value": mark(finding.status.value if finding.value is None else str(finding.value)),
            "patient": mark(one.exam.patient),
            "day": day,
        }
        for at, finding in enumerate(one.exam.findings)
    ]
    return record, lines


def _shown(one: Stored) -> bytes:
    """What a list shows beside the columns of the index."""
    musts = len(one.exam.open_musts) if one.state == "draft" else 0
    looks = sum(query.severity is Severity.LOOK for query in one.exam.open_queries) if one.state == "draft" else 0
    examined = "" if one.exam.examined_at is None else one.exam.examined_at.isoformat()
    return json.dumps([one.exam.patient, examined, musts, looks], ensure_ascii=False).encode()


def _listed(ledger: Ledger, row: Any) -> Listed:
    try:
        patient, examined, musts, looks = json.loads(ledger.keys.unlock(row.shown))
        return Listed(
            key=row.record,
            revision=row.revision,
            state=row.state,
            patient=patient,
            examined_at=datetime.fromisoformat(examined) if examined else None,
            saved_at=datetime.fromisoformat(row.at),
            who=row.who,
            open_musts=musts,
            open_looks=looks,
        )
    except (Damaged, ValueError, TypeError) as fault:
        raise Damaged(f"record {row.record}: the index was changed behind the program's back: {MEND}") from fault


def _moment(day: date, of_day: time) -> datetime:
    return day if isinstance(day, datetime) else datetime.combine(day, of_day)


def _local(moment: datetime) -> str:
    """As the clock on the wall shows it, so that times with and without zone can stand in one order."""
    local = moment if moment.tzinfo is None else moment.astimezone().replace(tzinfo=None)
    return local.isoformat(timespec="microseconds")
