"""Examinations of a batch into the records: each once, whatever kills the run, never over what somebody did since."""

from __future__ import annotations

import contextlib
from collections import defaultdict
from typing import TYPE_CHECKING, Literal

from dictate.batch.contents import at_hand
from dictate.batch.jobs import Candidate
from dictate.batch.ledger import Entry
from dictate.errors import Damaged, RecordError
from dictate.model import Examination
from dictate.pipeline import is_text

if TYPE_CHECKING:
    from dictate.records import Records, Stored

KeepAudio = Literal["no", "until-signed", "always"]


class Keeping:
    """The records that a batch saves to, and how long they keep the recordings."""

    def __init__(self, records: Records, *, who: str, keep_audio: KeepAudio) -> None:
        self._records, self._who, self._audio = records, who, keep_audio
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


def _kept(entry: Entry, one: Stored) -> Entry:
    return entry.model_copy(update={"record": one.key, "revision": one.revision, "kept": entry.key, "error": ""})


def _sources(exam: Examination) -> tuple[str, ...]:
    return tuple(source.sha256 for source in exam.transcript.sources)


def _reading(exam: Examination) -> tuple[object, ...]:
    """What review does not change."""
    return exam.program, exam.grammar_sha256, exam.scope, exam.transcript
