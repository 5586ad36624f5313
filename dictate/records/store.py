"""Records: save, open, find, sign, amend, withdraw, move, erase, verify."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path
from types import TracebackType
from typing import Self

from dictate.errors import Damaged, InputError, RecordError
from dictate.model import Examination, Query
from dictate.records import place, search, signing
from dictate.records.changing import changing
from dictate.records.kept import Fault, Keep, Leaf, Listed, Stored
from dictate.records.ledger import Clock, Ledger, local_now
from dictate.records.verifying import verify
from dictate.settings import records_folder

WriteNote = Callable[[Examination], str]


def open_records(folder: Path | None = None, *, passphrase: str | None = None, now: Clock = local_now) -> Records:
    """Open the records, or make them; folder None: the usual one.

    passphrase: sets it on the first opening, unlocks later. Raises: MachineError, Damaged, RecordError.
    """
    return Records(Ledger(folder or records_folder(), fill=search.fill, passphrase=passphrase, now=now))


class Records:
    """The records of one folder; close it, or use it in `with`."""

    def __init__(self, ledger: Ledger) -> None:
        self._ledger = ledger

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, fault: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    def close(self) -> None:
        """Give the database back."""
        self._ledger.close()

    @property
    def folder(self) -> Path:
        """Where the records lie."""
        return self._ledger.folder

    def save(
        self, exam: Examination, *, who: str, why: str, base: int | None = None, audio: Sequence[Path] = (),
        key: str = "", keep: Keep = "always",
    ) -> Stored:  # fmt: skip
        """A new record; with `base`, the revision that was seen, a further revision of record `key`.

        audio: recordings of the examination, to be kept with it. keep: for how long.
        Raises: MovedOn, RecordError, InputError.
        """
        signing.must_be_draft(exam)
        who, why = signing.must_be_said(who, "who"), signing.must_be_said(why, "why")
        if bool(key) != (base is not None):
            raise InputError("a further revision needs both the record and the revision that was seen")
        with changing(self._ledger, key, base) as change:
            if change.stored is not None:
                signing.must_be(change.stored, ("draft",), "saved again")
            new = change.take_sounds(exam, audio, keep)
            change.add("save", who, Leaf(why=why, exam=exam, sounds=(*change.sounds, *new)))
        return change.result

    def open(self, key: str) -> Stored:
        """The record as it stands. Raises: RecordError when there is none; Damaged when it was changed."""
        with self._ledger.read() as db:
            return search.stored(self._ledger, db, self._ledger.rows_of(db, key))

    def audio(self, key: str, source: int, *, addendum: int | None = None) -> Path | bytes | None:
        """The kept recording of transcript source `source`: a file, or its bytes where records are locked.

        addendum: place of the addendum whose transcript is meant. None comes back when the recording was not kept or
        was erased, or the source is text. Raises: Damaged when it is missing.
        """
        one = self.open(key)
        exam = one.exam if addendum is None else one.addenda[addendum].exam
        sources = () if exam is None else exam.transcript.sources
        wanted = sources[source].sha256 if 0 <= source < len(sources) else ""
        sound = next((sound for sound in one.sounds if sound.sha256 == wanted), None)
        if sound is None:
            return None
        path = place.sound_file(self.folder, sound.file)
        if path is None:
            raise Damaged(f"record {key}: a recording is missing from {self.folder / place.SOUNDS}: put it back")
        return self._ledger.keys.unlock(path.read_bytes()) if self._ledger.keys.locked else path

    def find(
        self, *, patient: str | None = None, since: date | None = None, until: date | None = None,
        item: str | None = None, open_only: bool = False, last: bool = False,
    ) -> list[Listed]:  # fmt: skip
        """Newest first. patient: the reference; item: id of an item with a finding; last: the newest before now."""
        with self._ledger.read() as db:
            return search.find(
                self._ledger, db, patient=patient, since=since, until=until, item=item, open_only=open_only, last=last
            )

    def sign(
        self, key: str, *, by: str, note: WriteNote, base: int | None = None, passed: Sequence[int] = (),
        countersign: str = "", examined_by: str = "", dictated_by: str = "",
    ) -> Stored:  # fmt: skip
        """Close a draft. note: writes the text that is stored and printed from then on.

        passed: places in Examination.queries of the looks that were seen and passed over. Recordings kept until
        signing go. Raises: OpenQueries, MovedOn, RecordError.
        """
        by = signing.must_be_said(by, "--by")
        if countersign.strip():
            countersign = signing.must_be_another(signing.must_be_said(countersign, "--countersign"), None, by)
        with changing(self._ledger, key, base) as change:
            one = change.one
            signing.must_be(one, ("draft",), "signed")
            signing.must_be_settled(one.exam, f"record {key}", signing.REVIEW.format(where=key), passed=passed)
            exam = signing.pass_over(one.exam, [at for at, _ in signing.open_looks(one.exam)])
            exam = signing.signed(
                exam, by=by, countersign=countersign, examined_by=examined_by, dictated_by=dictated_by,
                at=self._ledger.now(),
            )  # fmt: skip
            change.add("sign", by, Leaf(why="signed", exam=exam, text=note(exam), sounds=change.sounds))
            change.drop([sound for sound in one.sounds if sound.keep == "until-signed"], by, "kept until signed")
        return change.result

    def countersign(self, key: str, *, by: str, base: int | None = None) -> Stored:
        """A second name under a signed note, of somebody else; the text stays. Raises: InputError, RecordError."""
        by = signing.must_be_said(by, "--countersign")
        with changing(self._ledger, key, base) as change:
            signing.must_be(change.one, signing.SIGNED_STATES, "countersigned")
            signing.must_be_another(by, change.one, change.one.exam.signed_by)
            change.add("countersign", by, Leaf(why="countersigned"))
        return change.result

    def amend(
        self, key: str, *, by: str, why: str, text: str, base: int | None = None, exam: Examination | None = None,
        audio: Sequence[Path] = (),
    ) -> Stored:  # fmt: skip
        """Add a dated addendum to a signed record. exam: of the further dictation, when it was not typed."""
        by, why = signing.must_be_said(by, "--by"), signing.must_be_said(why, "--reason")
        text = "\n".join(signing.must_be_said(text, "addendum").splitlines())  # a form sends its lines with \r\n
        with changing(self._ledger, key, base) as change:
            signing.must_be(change.one, signing.SIGNED_STATES, "amended")
            if exam is not None:
                signing.must_be_draft(exam)
                signing.must_be_settled(exam, f"addendum to record {key}", signing.RETYPE)
            new = change.take_sounds(exam, audio, "always")
            change.add("amend", by, Leaf(why=why, exam=exam, text=text, sounds=(*change.sounds, *new)))
        return change.result

    def withdraw(self, key: str, *, by: str, why: str, base: int | None = None) -> Stored:
        """Mark a signed record as entered in error; its text stays."""
        by, why = signing.must_be_said(by, "--by"), signing.must_be_said(why, "--reason")
        with changing(self._ledger, key, base) as change:
            signing.must_be(change.one, signing.SIGNED_STATES, "withdrawn")
            change.add("withdraw", by, Leaf(why=why))
        return change.result

    def move(
        self, key: str, *, patient: str, who: str, why: str, base: int | None = None, queries: Sequence[Query] = ()
    ) -> Stored:
        """Give a record to another reference. queries: doubts that this raises about a draft."""
        patient = signing.must_be_said(patient, "--patient")
        who, why = signing.must_be_said(who, "who"), signing.must_be_said(why, "--reason")
        with changing(self._ledger, key, base) as change:
            one = change.one
            signing.must_be(one, ("draft", *signing.SIGNED_STATES, "withdrawn"), "moved")
            if one.exam.patient == patient:
                raise RecordError(f"record {key}: has that reference: nothing was moved")
            change.add("move", who, Leaf(why=why, patient=patient))
            if queries and one.state == "draft":
                exam = one.exam.model_copy(update={"patient": patient, "queries": (*one.exam.queries, *queries)})
                change.add("save", who, Leaf(why="queries of the new reference", exam=exam, sounds=change.sounds))
        return change.result

    def erase(self, key: str, *, who: str, why: str, sound_only: bool = False, base: int | None = None) -> Stored:
        """Remove a record's content, or its recordings alone; that it was done, by whom, when and why stays."""
        who, why = signing.must_be_said(who, "who"), signing.must_be_said(why, "--reason")
        with changing(self._ledger, key, base) as change:
            signing.must_be(change.one, ("draft", *signing.SIGNED_STATES, "withdrawn"), "erased")
            if sound_only and not change.sounds:
                raise RecordError(f"record {key}: has no recordings: nothing was erased")
            if sound_only:
                change.drop(change.sounds, who, why)
            else:
                change.forget(who, why)
        self._ledger.flush()
        return change.result

    def verify(self, *, head: str = "") -> list[Fault]:
        """Everything that is not as it was written; head: one that a note was printed with, and must be there."""
        return verify(self._ledger, head=head)

    def mend_index(self) -> None:
        """Make the index anew from the revisions."""
        with self._ledger.write() as db:
            search.fill(self._ledger, db)
