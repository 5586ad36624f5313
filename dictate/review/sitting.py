"""Sitting: one review from opening to signing; the page and the terminal speak to it alone."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from dictate.errors import InputError, MovedOn
from dictate.grammar import Grammar
from dictate.model import Decision, Examination
from dictate.notes import write_note
from dictate.review.clips import Clips
from dictate.review.decisions import apply, in_order, undo
from dictate.review.earlier import put_right
from dictate.review.effects import Difference, difference
from dictate.review.learning import Lesson, forget, learn, learnt, lessons_of
from dictate.review.questions import Question, card_of, question_of, raised
from dictate.review.shelf import MOVED_ON, Shelf, Signing
from dictate.review.typed import Refused
from dictate.settings import is_to_come


class Sitting:
    """The examination under review; every decision is saved before it counts as made."""

    def __init__(
        self,
        shelf: Shelf,
        grammar: Grammar,
        *,
        who: str = "",
        now: Callable[[], datetime] | None = None,
        own_folder: Path | None = None,
    ) -> None:
        """now: the clock that decisions are dated with; None: undated. own_folder: where phrases are learnt."""
        self.shelf, self.grammar, self.who = shelf, grammar, who
        self.exam = put_right(shelf.open(), grammar)
        self.own_folder = own_folder
        self.revision = 0  # counts changes, so that an answer to an older view is told apart
        self.offered: tuple[Lesson, ...] = ()  # what the last decision could teach
        self._now = now
        self._clips: dict[int, Clips] = {}
        self._has_sound: bool | None = None  # None: not looked for yet

    def open_places(self) -> tuple[int, ...]:
        """Places of the open queries, the most dangerous first."""
        return in_order(self.exam)

    def question(self, at: int) -> Question:
        """The open query at that place. Raises Refused."""
        return question_of(self.exam, at, self.grammar)

    def card(self, at: int) -> Question:
        """One finding of the note. Raises Refused."""
        return card_of(self.exam, at, self.grammar)

    def preview(self, decision: Decision) -> tuple[Difference, tuple[str, ...]]:
        """What the decision would change, and the doubts it would bring. Raises Refused."""
        after = self._after(decision)
        return difference(self.exam, after, self.grammar), raised(self.exam, after)

    def decide(self, decision: Decision) -> Difference:
        """Carry the decision out and save it. Raises Refused, MovedOn, MachineError; then nothing has changed."""
        self._must_be_open()
        stamped = decision.model_copy(update={"who": self.who, "at": self._now() if self._now else None})
        after = self._after(stamped)
        change = difference(self.exam, after, self.grammar)
        self._keep(after, why=stamped.answer)
        return change

    def _after(self, decision: Decision) -> Examination:
        """Raises Refused."""
        after = apply(self.exam, decision, self.grammar)
        moment = after.examined_at
        if moment is not None and moment != self.exam.examined_at and self._now and is_to_come(moment, self._now()):
            raise Refused(f"{moment:%Y-%m-%d %H:%M} is still to come: type when the patient was examined")
        return after

    def undo(self, *, everything: bool = False) -> Difference:
        """Take the last decision back, or all of them. Raises Refused, MovedOn."""
        self._must_be_open()
        count = len(self.exam.decisions) if everything else 1
        after = undo(self.exam, self.grammar, count=count)
        change = difference(self.exam, after, self.grammar)
        self._keep(after, why="taken back")
        return change

    def lessons(self) -> tuple[Lesson, ...]:
        """What the last decision could teach; worked out when asked, for it reads the dictation again."""
        if self.own_folder is None or not self.exam.decisions:
            return ()
        known = {(one.file, one.path, one.phrase) for one in self.learnt()}
        found = lessons_of(self.exam, self.exam.decisions[-1], self.grammar)
        self.offered = tuple(one for one in found if (one.file, one.path, one.phrase) not in known)
        return self.offered

    def can_teach(self) -> bool:
        """Whether the last decision is of a kind that may be worth keeping."""
        last = self.exam.decisions[-1] if self.exam.decisions else None
        if self.own_folder is None or last is None or last.asked is None:
            return False
        return (last.asked.code == "repaired-hearing" and bool(last.key)) or (
            last.asked.code == "not-placed" and bool(last.typed)
        )

    def learn(self) -> tuple[Lesson, ...]:
        """Keep what was offered in the user's folder. Raises Refused, MachineError."""
        if not self.offered or self.own_folder is None:
            raise Refused("nothing is offered to be learnt: settle a mended word or an unplaced phrase first")
        taught, self.offered = self.offered, ()
        for lesson in taught:
            learn(lesson, self.own_folder)
        return taught

    def learnt(self) -> tuple[Lesson, ...]:
        """Everything that was learnt so far."""
        return () if self.own_folder is None else learnt(self.own_folder)

    def forget(self, at: int) -> Lesson:
        """Take one learnt phrase out again. Raises Refused, MachineError."""
        known = self.learnt()
        if self.own_folder is None or not 0 <= at < len(known):
            raise Refused("no such phrase: it was taken out before")
        forget(known[at], self.own_folder)
        return known[at]

    def clip(self, source: int, start_s: float, end_s: float) -> bytes:
        """The stretch of the recording as a WAV file. Raises InputError."""
        if source not in self._clips:
            sound = self.shelf.audio(source)
            if sound is None:
                raise InputError("the recording is not at hand: name it with --recording")
            self._clips[source] = Clips(sound)
        return self._clips[source].cut(start_s, end_s)

    def has_sound(self) -> bool:
        """Whether any recording of the examination is at hand."""
        if self._has_sound is None:
            sources = range(len(self.exam.transcript.sources))
            self._has_sound = any(self.shelf.audio(source) is not None for source in sources)
        return self._has_sound

    def note(self) -> str:
        """The note as plain text: a draft with its marks, a signed one as it was signed."""
        signed = self.shelf.text() if isinstance(self.shelf, Signing) else ""
        return signed or write_note(self.exam, self.grammar)

    def can_sign(self) -> bool:
        """Whether the shelf can close a note."""
        return isinstance(self.shelf, Signing)

    @property
    def state(self) -> str:
        """What may be done with the note: draft, signed, amended or withdrawn."""
        if isinstance(self.shelf, Signing):
            return self.shelf.state
        return "signed" if self.exam.signed_by else "draft"

    def sign(self, *, by: str, countersign: str = "") -> None:
        """Close the note. Raises Refused while queries are open or no name is given; DictateError from the shelf."""
        self._must_be_open()
        if not isinstance(self.shelf, Signing):
            raise Refused("a file is signed by `dictate sign FILE --by NAME`, which keeps it in the records")
        if self.exam.open_queries:
            raise Refused(f"{len(self.exam.open_queries)} still open: settle each, and pass over each to look at once")
        self.shelf.sign(self.exam, who=_given(by, "your name"), countersign=countersign)
        self._look_again()

    def countersign(self, *, by: str) -> None:
        """Put a second name under the signed note. Raises Refused, MovedOn, DictateError from the shelf."""
        self._closed().countersign(who=_given(by, "your name"))
        self._look_again()

    def amend(self, text: str, *, by: str, why: str) -> None:
        """Add to the signed note. Raises Refused, MovedOn, DictateError from the shelf."""
        by, why, text = _given(by, "your name"), _given(why, "the reason"), _given(text, "what to add")
        self._closed().amend(text, who=by, why=why)
        self._look_again()

    def withdraw(self, *, by: str, why: str) -> None:
        """Mark the signed note as entered in error. Raises Refused, MovedOn, DictateError from the shelf."""
        by, why = _given(by, "your name"), _given(why, "the reason")
        self._closed().withdraw(who=by, why=why)
        self._look_again()

    def moved_on(self) -> bool:
        """Whether the record is another than the one that is shown here."""
        return self.shelf.moved_on()

    def open_again(self) -> None:
        """Go on with the record as it stands now. Raises DictateError when nothing is left of it."""
        self._look_again()

    def _closed(self) -> Signing:
        if not isinstance(self.shelf, Signing) or self.state not in ("signed", "amended"):
            raise Refused("only a signed note of the records is amended or withdrawn")
        return self.shelf

    def _look_again(self) -> None:
        self.exam, self.offered, self._has_sound = put_right(self.shelf.open(), self.grammar), (), None
        self.revision += 1

    def _must_be_open(self) -> None:
        if self.exam.signed_by:
            raise Refused("the note is signed: it never changes; add to it with `dictate amend`")
        if self.shelf.moved_on():
            raise MovedOn(MOVED_ON.format(name=self.shelf.name))

    def _keep(self, exam: Examination, *, why: str) -> None:
        self.shelf.save(exam, who=self.who, why=why)
        self.exam, self.offered = exam, ()
        self.revision += 1


def _given(text: str, what: str) -> str:
    if not text.strip():
        raise Refused(f"nothing was changed: {what} is missing: type it")
    return text.strip()
