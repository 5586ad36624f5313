"""The index: patient, time, item, open queries."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest
from by_hand import examination, reflex
from records.visits import BY, START, doubtful, note_of, signed, tampering, visit

from dictate.errors import Damaged
from dictate.model import Severity
from dictate.records import Records, open_records


def keys(found: list[object]) -> list[str]:
    """Keys in the order in which they were found."""
    return [one.key for one in found]  # type: ignore[attr-defined]


def test_found_by_the_exact_reference_newest_first(records: Records) -> None:
    """By the time of examination, not by that of saving."""
    later = records.save(visit(examined_at=START), who=BY, why="dictated").key
    earlier = records.save(visit(examined_at=START - timedelta(days=9)), who=BY, why="dictated").key
    records.save(visit("P-11"), who=BY, why="dictated")
    assert keys(records.find(patient="P-1")) == [later, earlier]
    assert records.find(patient="P") == []
    assert records.find(patient="P-1' OR '1'='1") == []


def test_a_day_is_meant_from_its_beginning_to_its_end(records: Records) -> None:
    """Both ends are included; a moment is meant as it stands."""
    moment = datetime(2026, 3, 4, 23, 59)
    one = records.save(visit(examined_at=moment), who=BY, why="dictated").key
    assert keys(records.find(since=date(2026, 3, 4), until=date(2026, 3, 4))) == [one]
    assert records.find(since=date(2026, 3, 5)) == []
    assert records.find(until=date(2026, 3, 3)) == []
    assert records.find(until=moment - timedelta(minutes=1)) == []


def test_found_by_item(records: Records) -> None:
    """The findings of the newest revision count."""
    one = records.save(visit(), who=BY, why="dictated")
    records.save(examination(), who=BY, why="dictated")
    assert keys(records.find(item="gait")) == [one.key]
    records.save(examination(reflex("reflex_knee", "2+")), who=BY, why="corrected", key=one.key, base=1)
    assert records.find(item="gait") == []
    assert keys(records.find(item="reflex_knee")) == [one.key]


def test_open_only_finds_drafts_with_doubts(records: Records) -> None:
    """With how many of each."""
    one = records.save(doubtful(Severity.MUST, Severity.LOOK, Severity.LOOK), who=BY, why="dictated")
    signed(records)
    (found,) = records.find(open_only=True)
    assert (found.key, found.open_musts, found.open_looks) == (one.key, 1, 2)


def test_last_is_the_newest_before_now_that_counts(folder: Path, now: Callable[[], datetime]) -> None:
    """Neither one of the future, nor one that was withdrawn."""
    with open_records(folder, now=now) as records:
        good = signed(records, examined_at=START - timedelta(days=30))
        wrong = signed(records, examined_at=START - timedelta(days=3))
        records.withdraw(wrong.key, by=BY, why="wrong")
        records.save(visit(examined_at=START + timedelta(days=3)), who=BY, why="planned")
        assert keys(records.find(patient="P-1", last=True)) == [good.key]
        assert records.find(patient="P-2", last=True) == []


def test_moving_and_erasing_change_what_is_found(records: Records) -> None:
    """A moved record is found by its new reference, an erased one by none."""
    one = signed(records)
    records.move(one.key, patient="P-2", who=BY, why="wrong")
    assert records.find(patient="P-1") == []
    assert keys(records.find(patient="P-2")) == [one.key]
    records.erase(one.key, who=BY, why="asked for")
    assert records.find(patient="P-2") == []
    assert records.find(item="gait") == []
    assert [(found.state, found.patient) for found in records.find()] == [("erased", "")]


def test_a_changed_index_is_noticed_and_mended(records: Records, folder: Path) -> None:
    """It is only an index: the revisions say what is so."""
    one = records.save(visit(), who=BY, why="dictated")
    for change in (
        "UPDATE records SET patient = 'P-2'",
        "UPDATE findings SET value = '2+' WHERE item = 'reflex_biceps'",
        "UPDATE records SET state = 'signed'",
        'UPDATE records SET shown = CAST(\'["P-2", "", 0, 0]\' AS BLOB)',
        "DELETE FROM findings",
        "UPDATE records SET record = 'zzzzzz'",
    ):
        with tampering(folder) as db:
            db.execute(change)
        assert any(fault.where == f"index of record {one.key}" for fault in records.verify()), change
        records.mend_index()
        assert records.verify() == []
    with tampering(folder) as db:
        db.execute("UPDATE records SET shown = CAST('[' AS BLOB)")
    with pytest.raises(Damaged, match="--mend-index"):
        records.find()


def test_signing_takes_a_record_off_the_open_ones(records: Records) -> None:
    """Nothing is asked of a signed note."""
    one = records.save(doubtful(Severity.LOOK), who=BY, why="dictated")
    records.sign(one.key, by=BY, note=note_of, passed=(0,))
    assert records.find(open_only=True) == []
