"""Examinations of a batch into the records: each once, whatever kills the run, never over what somebody did since."""

from __future__ import annotations

import contextlib
from collections import defaultdict
from collections.abc import Collection, Iterable
from datetime import datetime
from typing import TYPE_CHECKING, Literal, NamedTuple, Protocol

from dictate.batch.contents import at_hand
from dictate.batch.jobs import Candidate, printable
from dictate.batch.ledger import Entry
from dictate.errors import Damaged, RecordError
from dictate.model import Examination
from dictate.notes.tying import wants_earlier
from dictate.pipeline import is_text

if TYPE_CHECKING:
    from dictate.grammar import Grammar
    from dictate.records import Records, Stored

KeepAudio = Literal["no", "until-signed", "always"]


class Waiting(NamedTuple):
    """One that is saved when all others are. anew: it was heard in this run."""

    exam: Examination
    entry: Entry
    candidate: Candidate
    anew: bool

    def order(self) -> tuple[datetime, str]:
        """By time of examination, those without one at the end."""
        time = self.exam.examined_at
        return (time or datetime.max).replace(tzinfo=None), self.entry.source


class Tie(Protocol):
    """Ties what an examination calls unchanged to the patient's last record before it."""

    def __call__(
        self, exam: Examination, grammar: Grammar, records: Records, *, apart_from: Collection[str]
    ) -> Examination:
        """apart_from: keys of records that do not count."""


class Keeping:
    """The records that a batch saves to, and how long they keep the recordings."""

    def __init__(self, records: Records, *, who: str, keep_audio: KeepAudio, tie: Tie) -> None:
        self._records, self._who, self._audio, self._tie = records, who, keep_audio, tie
        self._known: dict[tuple[str, ...], list[str]] | None = None  # keys of records by digests of their sources

    def save(self, exam: Examination, entry: Entry, candidate: Candidate) -> Entry:
        """Save what was just heard: a new draft, or a further revision of the draft of an earlier reading.

        Raises: InputError when a recording changed meanwhile; RecordError, MachineError.
        """
        with at_hand([place.path for place in candidate.places], ()) as paths:
            audio = [] if self._audio == "no" else [path for path in paths if not is_text(path)]
            how_long = "always" if self._audio == "no" else self._audio
            if entry.record:
                try:
                    one = self._records.save(
                        exam, who=self._who, why="read anew", base=entry.revision, key=entry.record, audio=audio,
                        keep=how_long,
                    )  # fmt: skip
                    return _kept(entry, one)
                except Damaged:
                    raise
                except RecordError:  # reviewed, signed, withdrawn or erased since: that stays as it is
                    pass
            return _kept(
                entry, self._records.save(exam, who=self._who, why="dictated", audio=audio, keep=how_long)
            )  # fmt: skip

    def save_once(self, exam: Examination, entry: Entry, candidate: Candidate) -> Entry:
        """The same for results of an earlier run, which a kill may have ended after the record was written."""
        found = self._find(exam)
        return _kept(entry, found) if found else self.save(exam, entry, candidate)

    def waits(self, exam: Examination, grammar: Grammar) -> bool:
        """Whether it is saved last: what it calls unchanged may stand in a record that the batch has yet to save."""
        return bool(exam.patient) and any(wants_earlier(finding, grammar) for finding in exam.findings)

    def tied(self, exam: Examination, grammar: Grammar, *, own: str, batch: Iterable[str]) -> Examination:
        """The examination tied to the patient's last record. own: key of its own record. batch: those of the folder.

        Two of one folder are earlier and later by their times alone: in which order they were saved says nothing.
        """
        here = set(batch)
        unordered = {
            listed.key
            for listed in self._records.find(patient=exam.patient)
            if listed.key in here and None in (listed.examined_at, exam.examined_at)
        }
        return self._tie(exam, grammar, self._records, apart_from=unordered | {own})

    def _find(self, exam: Examination) -> Stored | None:
        """A record of the same reading, whatever was decided about it since."""
        if self._known is None:
            self._known = defaultdict(list)
            for listed in self._records.find():
                if listed.state == "erased":
                    continue
                with contextlib.suppress(Damaged):  # `records verify` tells of it
                    self._known[_sources(self._records.open(listed.key).exam)].append(listed.key)
        stored = map(self._records.open, self._known.get(_sources(exam), ()))
        return next((one for one in stored if _reading(one.exam) == _reading(exam)), None)


def unsaved(entry: Entry, fault: Exception) -> Entry:
    """What batch.csv says of one whose files stand, and that could not be saved."""
    error = f"its files are written, but it is not in the records: {printable(str(fault))}"
    return entry.model_copy(update={"error": error})


def _kept(entry: Entry, one: Stored) -> Entry:
    return entry.model_copy(update={"record": one.key, "revision": one.revision, "kept": entry.key, "error": ""})


def _sources(exam: Examination) -> tuple[str, ...]:
    return tuple(source.sha256 for source in exam.transcript.sources)


def _reading(exam: Examination) -> tuple[object, ...]:
    """What review does not change."""
    return exam.program, exam.grammar_sha256, exam.scope, exam.transcript
