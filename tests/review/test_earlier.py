"""Drafts of an earlier version: a finding removed before a further dictation, two decisions after it.

`joined-earlier.exam.json` and `undone-earlier.exam.json` were written by the version before undo counted decisions;
in the second its undo had been used once, and had removed the triceps reflex in the place of the biceps reflex.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from dictate.cli.files import write_files
from dictate.grammar import Grammar
from dictate.model import Action, Decision, Examination
from dictate.review import Refused, apply, undo
from dictate.review.earlier import put_right
from dictate.review.shelf import FileShelf
from dictate.review.sitting import Sitting

HERE = Path(__file__).parent
JOINED = ["reflex_triceps both", "gait None", "reflex_patellar right"]


def earlier(name: str) -> Examination:
    """An examination as that version saved it."""
    return Examination.model_validate_json((HERE / f"{name}-earlier.exam.json").read_bytes())


def items(exam: Examination) -> list[str]:
    """Item and side of every finding."""
    return [f"{one.item} {one.side}" for one in exam.findings]


def test_undo_takes_back_what_was_decided_since_and_nothing_else(grammar: Grammar) -> None:
    """One by one, down to the further dictation."""
    exam = put_right(earlier("joined"), grammar)
    assert items(exam) == items(earlier("joined")) == [*JOINED, "reflex_achilles left"]
    exam = undo(exam, grammar)
    assert items(exam) == JOINED
    assert [getattr(one.value, "grade", "") for one in exam.findings] == ["2+", "", "3+"]
    exam = undo(exam, grammar)
    assert items(exam) == JOINED
    assert [getattr(one.value, "grade", "") for one in exam.findings] == ["2+", "", "2+"]
    with pytest.raises(Refused, match="since the further dictation"):
        undo(exam, grammar)


def test_what_was_removed_twice_stands_again(grammar: Grammar) -> None:
    """The finding that an undo of that version took away is put back; the words removed are kept once."""
    exam = earlier("undone")
    assert "reflex_triceps both" not in items(exam)
    right = put_right(exam, grammar)
    assert items(right) == JOINED
    assert right.decisions == exam.decisions
    assert len(right.remarks) == len(exam.remarks) - 1
    assert put_right(right, grammar) == right


def test_a_review_opens_the_draft_put_right(grammar: Grammar, tmp_path: Path) -> None:
    """And keeps it so with the next decision."""
    path = tmp_path / "visit.exam.json"
    path.write_bytes((HERE / "undone-earlier.exam.json").read_bytes())
    sitting = Sitting(FileShelf(path, grammar, write=write_files), grammar, who="A")
    sitting.undo()
    saved = Examination.model_validate_json(path.read_bytes())
    assert items(saved) == JOINED
    assert len(saved.decisions) == 1


def test_others_stay_as_they_are(exam: Callable[..., Examination], grammar: Grammar) -> None:
    """Nothing decided, nothing joined, or signed."""
    one = exam("Reflexes. Left biceps seven plus. Triceps two plus on both sides.")
    assert put_right(one, grammar) is one
    for decision in (
        Decision(query=0, answer="3+"),
        Decision(finding=1, answer="3+"),
        Decision(action=Action.REMOVE, finding=0, answer="remove"),
        Decision(action=Action.ADD, answer="Gait normal."),
    ):
        one = apply(one, decision, grammar)
        assert put_right(one, grammar) is one
    signed = earlier("undone").model_copy(update={"signed_by": "A"})
    assert put_right(signed, grammar) is signed
