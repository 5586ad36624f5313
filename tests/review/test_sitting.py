"""One review from opening to signing: saved before it counts, dated, never over somebody else's work."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime

import pytest
from by_hand import DEMOS

from dictate.errors import InputError, MovedOn
from dictate.model import Action, Decision
from dictate.review import Refused
from dictate.review.sitting import Sitting

Open = Callable[..., Sitting]

BICEPS = "Biceps reflex two plus."


def take(sitting: Sitting, answer: str = "left") -> None:
    """Answer the first question."""
    sitting.decide(Decision(query=sitting.open_places()[0], answer=answer))


def test_examination_of_a_day_to_come_is_refused(sitting_of: Callable[..., Sitting]) -> None:
    """Where the time was not said and is typed; the clock is the sitting's."""
    sitting = sitting_of("Gait normal.")
    for act in (sitting.decide, sitting.preview):
        with pytest.raises(Refused, match="2026-03-05 10:00 is still to come"):
            act(Decision(query=0, answer="2026-03-05 10:00"))
    assert sitting.decide(Decision(query=0, answer="2026-03-04 10:00")).after
    assert sitting.exam.examined_at == datetime(2026, 3, 4, 10, 0)


def test_decision_is_saved_with_who_and_when(sitting_of: Open) -> None:
    """The shelf has it before the next question is asked."""
    sitting = sitting_of(BICEPS)
    take(sitting)
    assert sitting.shelf.saved == [("Dr A", "left")]  # type: ignore[attr-defined]
    (decision,) = sitting.shelf.open().decisions
    assert (decision.who, decision.at) == ("Dr A", datetime(2026, 3, 4, 14, 30, tzinfo=UTC))
    assert sitting.revision == 1


def test_refused_answer_is_not_saved(sitting_of: Open) -> None:
    """Nothing changes, and the next answer can be given."""
    sitting = sitting_of(BICEPS)
    with pytest.raises(Refused):
        take(sitting, "blicket")
    assert sitting.shelf.saved == []  # type: ignore[attr-defined]
    assert (sitting.revision, sitting.exam.decisions) == (0, ())


def test_preview_saves_nothing(sitting_of: Open) -> None:
    """It says what would be read, and what would be asked."""
    sitting = sitting_of("Left knee jerk two plus. Right knee jerk three plus.")
    change, doubts = sitting.preview(Decision(finding=0, answer="right"))
    assert change.after == ("Knee jerk: right 2+, right 3+",)
    assert len(doubts) == 1
    assert sitting.exam.decisions == ()


def test_record_that_moved_on_is_not_overwritten(sitting_of: Open) -> None:
    """Neither by a decision nor by taking one back."""
    sitting = sitting_of(BICEPS)
    take(sitting)
    sitting.shelf.moved = True  # type: ignore[attr-defined]
    with pytest.raises(MovedOn):
        sitting.decide(Decision(finding=0, answer="right"))
    with pytest.raises(MovedOn):
        sitting.undo()
    assert [str(one.side) for one in sitting.exam.findings] == ["left"]


def test_taken_back_one_or_all(sitting_of: Open) -> None:
    """And saved so."""
    sitting = sitting_of(BICEPS)
    take(sitting)
    sitting.decide(Decision(finding=0, answer="3+"))
    sitting.undo()
    assert str(sitting.exam.findings[0].value) == "2+"
    sitting.undo(everything=True)
    assert sitting.exam.findings[0].side is None
    assert sitting.shelf.open() == sitting.exam
    with pytest.raises(Refused):
        sitting.undo()


def test_clip_comes_from_the_recording_or_says_why_not(sitting_of: Open) -> None:
    """A sitting without sound can still be answered."""
    sitting = sitting_of("Gait normal.", sound=DEMOS / "noisy-queries.flac")
    assert sitting.has_sound()
    assert sitting.clip(0, 1, 2)[:4] == b"RIFF"
    silent = sitting_of("Gait normal.")
    assert not silent.has_sound()
    with pytest.raises(InputError, match="--recording"):
        silent.clip(0, 1, 2)


def test_note_is_signed_when_nothing_is_open(sitting_of: Open) -> None:
    """Not before; and then it never changes."""
    sitting = sitting_of(BICEPS, signing=True)
    with pytest.raises(Refused, match="still open"):
        sitting.sign(by="Dr A")
    while sitting.open_places():
        at = sitting.open_places()[0]
        look = Decision(query=at, action=Action.SEEN, answer="seen")
        sitting.decide(look if sitting.exam.queries[at].severity == "look" else Decision(query=at, answer="left"))
    with pytest.raises(Refused, match="your name is missing"):
        sitting.sign(by=" ")
    with pytest.raises(Refused, match="only a signed note"):
        sitting.amend("Gait normal.", by="Dr A", why="forgotten")
    sitting.sign(by=" Dr B ", countersign="Dr C")
    assert (sitting.exam.signed_by, sitting.exam.countersigned_by, sitting.state) == ("Dr B", "Dr C", "signed")
    for change in (
        lambda: sitting.decide(Decision(finding=0, answer="right")),
        sitting.undo,
        lambda: sitting.sign(by="Dr A"),
    ):
        with pytest.raises(Refused, match="never changes"):
            change()


def test_shelf_that_cannot_sign(sitting_of: Open) -> None:
    """Says where to sign."""
    sitting = sitting_of(BICEPS)
    assert not sitting.can_sign()
    with pytest.raises(Refused, match="records"):
        sitting.sign(by="Dr A")


def test_lesson_is_offered_kept_and_taken_out(sitting_of: Open) -> None:
    """Only on request, only once, and not a second time."""
    sitting = sitting_of("Nostagmus on left gaze.", heard=True)
    with pytest.raises(Refused, match="nothing is offered"):
        sitting.learn()
    sitting.decide(Decision(query=sitting.open_places()[0], answer="on left gaze present"))
    assert sitting.can_teach()
    assert len(sitting.lessons()) == 1
    sitting.learn()
    assert (len(sitting.learnt()), sitting.lessons()) == (1, ())
    sitting.forget(0)
    assert sitting.learnt() == ()
    with pytest.raises(Refused):
        sitting.forget(0)
