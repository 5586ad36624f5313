"""A record of the records under review."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from dictate.errors import MovedOn, OpenQueries, RecordError
from dictate.grammar import Grammar
from dictate.model import Action, Decision, Examination
from dictate.records import Records, open_records
from dictate.review.kept import RecordShelf
from dictate.review.shelf import Signing
from dictate.review.sitting import Sitting
from dictate.review.typed import Refused

Exam = Callable[..., Examination]


@pytest.fixture
def records(tmp_path: Path) -> Iterator[Records]:
    """Empty records."""
    with open_records(tmp_path / "records") as one:
        yield one


def shelf(records: Records, key: str, grammar: Grammar) -> RecordShelf:
    """A shelf as the command line opens it."""
    return RecordShelf(records, key, grammar, account="somebody")


def test_a_decision_is_a_revision_of_the_record(records: Records, exam: Exam, grammar: Grammar) -> None:
    """Who and why stand beside it; the record is settled there, not in a file."""
    key = records.save(exam("Biceps reflex two plus."), who="A", why="dictated").key
    sitting = Sitting(shelf(records, key, grammar), grammar, who="A. Examiner")
    at = next(at for at in sitting.open_places() if sitting.exam.queries[at].code == "side-missing")
    sitting.decide(Decision(query=at, action=Action.ANSWER, answer="right"))
    stored = records.open(key)
    assert stored.revision == 2
    assert [finding.side for finding in stored.exam.findings] == ["right"]


def test_two_windows(records: Records, exam: Exam, grammar: Grammar) -> None:
    """The second is told, and nothing is overwritten."""
    key = records.save(exam("Gait normal."), who="A", why="dictated").key
    first, second = shelf(records, key, grammar), shelf(records, key, grammar)
    first.open()
    second.open()
    first.save(exam("Gait unsteady."), who="A", why="corrected")
    assert second.moved_on()
    with pytest.raises(MovedOn, match="nothing was overwritten"):
        second.save(exam("Gait normal. Romberg negative."), who="B", why="corrected")
    assert records.open(key).exam == exam("Gait unsteady.")


def test_signed_from_review_only_when_settled(records: Records, exam: Exam, grammar: Grammar) -> None:
    """And what is signed is changed no more."""
    key = records.save(exam("Biceps reflex two plus."), who="A", why="dictated").key
    one = shelf(records, key, grammar)
    assert isinstance(one, Signing)
    with pytest.raises(OpenQueries):
        one.sign(one.open(), who="A. Examiner")
    plain = records.save(exam("Gait normal."), who="A", why="dictated").key
    done = shelf(records, plain, grammar)
    sitting = Sitting(done, grammar, who="A. Examiner")
    for at in sitting.open_places():
        sitting.decide(Decision(query=at, action=Action.SEEN, answer=""))
    sitting.sign(by="A. Examiner", countersign="B. Examiner")
    assert records.open(plain).exam.countersigned_by == "B. Examiner"
    assert records.open(plain).state == "signed"
    with pytest.raises(Refused, match="never changes"):
        sitting.decide(Decision(action=Action.ADD, answer="Romberg negative."))
    records.erase(plain, who="A", why="test")
    with pytest.raises(RecordError, match="erased"):
        shelf(records, plain, grammar).open()
