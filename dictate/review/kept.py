"""Shelf of a record in the records: opened, saved as a further revision, signed, amended, withdrawn."""

from __future__ import annotations

from pathlib import Path

from dictate.errors import MovedOn, RecordError
from dictate.grammar import Grammar
from dictate.model import Examination
from dictate.notes import write_note
from dictate.records import Records, Stored
from dictate.review.shelf import MOVED_ON


class RecordShelf:
    """One record; every save is a revision behind the one that was seen."""

    def __init__(self, records: Records, key: str, grammar: Grammar, *, account: str) -> None:
        """account: who saves where nobody gave a name."""
        self._records, self._key, self._grammar, self._account = records, key, grammar, account
        self._revision, self._text = 0, ""
        self.state = "draft"
        self.name = f"record {key}"

    def open(self) -> Examination:
        """The examination as it stands. Raises: RecordError when there is none, or nothing is left of it."""
        one = self._records.open(self._key)
        if one.state == "erased":
            raise RecordError(f"{self.name}: was erased: nothing is left to review")
        self._take(one)
        return one.exam

    def save(self, exam: Examination, *, who: str, why: str) -> None:
        """A further revision. Raises: MovedOn."""
        try:
            one = self._records.save(
                exam, who=who or self._account, why=why or "settled at review", base=self._revision, key=self._key
            )
        except MovedOn as fault:
            raise MovedOn(MOVED_ON.format(name=self.name)) from fault
        self._revision = one.revision

    def moved_on(self) -> bool:
        """Whether somebody else saved, signed or erased it since."""
        return self._records.open(self._key).revision != self._revision

    def audio(self, source: int) -> Path | bytes | None:
        """The recording that was kept with it."""
        return self._records.audio(self._key, source)

    def text(self) -> str:
        """The note as it is printed since it was signed."""
        return self._text

    def sign(self, exam: Examination, *, who: str, countersign: str = "") -> None:
        """Close the note. Raises: OpenQueries, MovedOn, RecordError."""
        one = self._records.sign(
            self._key, by=who, note=lambda signed: write_note(signed, self._grammar), base=self._revision,
            countersign=countersign,
        )  # fmt: skip
        self._take(one)

    def countersign(self, *, who: str) -> None:
        """A second name under the signed note. Raises: InputError, MovedOn, RecordError."""
        self._take(self._records.countersign(self._key, by=who, base=self._revision))

    def amend(self, text: str, *, who: str, why: str) -> None:
        """Add to the signed note. Raises: InputError, MovedOn, RecordError."""
        self._take(self._records.amend(self._key, by=who, why=why, text=text, base=self._revision))

    def withdraw(self, *, who: str, why: str) -> None:
        """Mark the signed note as entered in error. Raises: InputError, MovedOn, RecordError."""
        self._take(self._records.withdraw(self._key, by=who, why=why, base=self._revision))

    def _take(self, one: Stored) -> None:
        self._revision, self._text, self.state = one.revision, one.note, one.state
