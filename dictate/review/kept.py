"""Shelf of a record in the records: opened, saved as a further revision, signed."""

from __future__ import annotations

from pathlib import Path

from dictate.errors import MovedOn, RecordError
from dictate.grammar import Grammar
from dictate.model import Examination
from dictate.notes import write_note
from dictate.records import Records
from dictate.review.shelf import MOVED_ON


class RecordShelf:
    """One draft of the records; every save is a revision behind the one that was seen."""

    def __init__(self, records: Records, key: str, grammar: Grammar, *, account: str) -> None:
        """account: who saves where nobody gave a name."""
        self._records, self._key, self._grammar, self._account = records, key, grammar, account
        self._revision = 0
        self.name = f"record {key}"

    def open(self) -> Examination:
        """The examination as it stands. Raises: RecordError when there is none, or nothing is left of it."""
        one = self._records.open(self._key)
        if one.state == "erased":
            raise RecordError(f"{self.name}: was erased: nothing is left to review")
        self._revision = one.revision
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

    def sign(self, exam: Examination, *, who: str) -> None:
        """Close the note. Raises: OpenQueries, MovedOn, RecordError."""
        one = self._records.sign(
            self._key, by=who, note=lambda signed: write_note(signed, self._grammar), base=self._revision
        )
        self._revision = one.revision
