"""Batch: candidates in, result files and batch.csv out; what is done is passed over, what fails stops nothing."""

from __future__ import annotations

import hashlib
import queue
import time
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from pydantic import ValidationError

from dictate.batch.contents import CHANGED, bytes_of, content_of
from dictate.batch.crew import DIED, Crew, outcome_of
from dictate.batch.found import of_address
from dictate.batch.jobs import Candidate, Job, Outcome, Setting, printable
from dictate.batch.keeping import Keeping, Waiting, unsaved
from dictate.batch.ledger import REVIEWED, Entry, Ledger, Write
from dictate.batch.table import batch_csv
from dictate.batch.work import files_of, open_counts
from dictate.errors import InputError, RecordError
from dictate.model import Examination

WAIT_S = 0.5
TABLE_EVERY_S = 5.0
TABLE_SHARE = 20  # batch.csv is written anew only after so many times what writing it took
TABLE = "batch.csv"


@dataclass
class Tally:
    """How far the batch is."""

    done: int = 0
    before: int = 0  # done in an earlier run
    failed: int = 0
    same: int = 0
    reviewed: int = 0  # of those done before: another reading was asked for, and what was decided stays
    findings: int = 0
    musts: int = 0
    looks: int = 0
    sound_s: float = 0.0
    size_done: int = 0  # bytes of the sources that are settled, for the bar

    @property
    def settled(self) -> int:
        """Examinations that need nothing more."""
        return self.done + self.before + self.failed + self.same


class Batch:
    """One run over candidates."""

    def __init__(
        self, setting: Setting, crew: Crew, ledger: Ledger, *, write: Write,
        watch: Callable[[Tally], None] = lambda tally: None, keeping: Keeping | None = None,
    ) -> None:  # fmt: skip
        self.setting, self.crew, self.ledger = setting, crew, ledger
        self.tally = Tally()
        self._write, self._watch, self._keeping = write, watch, keeping
        self._ended: queue.SimpleQueue[tuple[Job, Callable[[], Outcome]]] = queue.SimpleQueue()
        self._under_way: dict[str, tuple[Entry, Candidate]] = {}
        self._first = {entry.key: entry.source for entry in ledger.entries.values() if entry.state == "done"}
        self._heard = {one: entry.source for entry in ledger.entries.values() for one in entry.contents}
        self._deadly: list[Job] = []  # jobs that workers died of: once more, alone, at the end
        self._copies: dict[str, list[Candidate]] = {}  # by key: said to be the same as another source
        self._later: dict[str, Candidate] = {}
        self._last: dict[str, Waiting] = {}  # heard, and saved when all others are
        self._sends = False
        self._model = ""
        self._table_due = time.monotonic() + TABLE_EVERY_S

    def run(self, candidates: Iterable[Candidate | None]) -> Tally:
        """Settle every candidate; None among them: nothing new at the moment. Raises: MachineError."""
        waiting = iter(candidates)
        more = True
        try:
            while more or len(self._under_way) > len(self._deadly):
                more = more and self._feed(waiting)
                self._collect()
            self._try_alone()
            self._save_last()
        finally:
            self._write_table()
        return self.tally

    def _feed(self, waiting: Iterator[Candidate | None]) -> bool:
        """Start jobs while there is room; False when no more will come."""
        while len(self._under_way) - len(self._deadly) < self.crew.room():
            try:
                candidate = next(waiting)
            except StopIteration:
                return False
            if candidate is None:
                if not self._under_way:
                    self._save_last()
                return True
            if candidate.name in self._under_way:  # changed meanwhile: taken again when that has ended
                self._later[candidate.name] = candidate
            else:
                self._take(candidate)
        return True

    def _take(self, candidate: Candidate) -> None:
        self._last.pop(candidate.name, None)
        entry = self._entry(candidate)
        try:
            if candidate.fault:
                raise InputError(f"{candidate.source}: {candidate.fault}")
            contents = tuple(map(content_of, candidate.places))
        except InputError as fault:
            self._let_go(entry)
            return self._settle(entry.model_copy(update={"error": printable(str(fault))}), candidate)
        model = self._model_of(candidate)
        key = self.setting.key_of(contents, model)
        entry = entry.model_copy(update={"contents": contents, "key": key})
        if self.ledger.is_done(entry.name, key):
            return self._passed_over(entry, candidate)
        if self.ledger.is_reviewed(entry.name):
            if self.ledger.stands_for(entry.name, contents):
                self.tally.reviewed += 1
                return self._passed_over(entry, candidate)
            self._let_go(entry)
            return self._settle(entry.model_copy(update={"error": REVIEWED}), candidate)
        self._let_go(entry)
        if self._first.setdefault(key, entry.source) != entry.source:
            self._copies.setdefault(key, []).append(candidate)
            return self._settle(entry.model_copy(update={"state": "same", "same_as": self._first[key]}), candidate)
        shared = [self._heard.setdefault(content, entry.source) for content in contents]
        others = sorted({source for source in shared if source != entry.source})
        entry = entry.model_copy(update={"same_as": "; ".join(others)})  # a part of it: heard, and said
        self._under_way[entry.name] = (entry, candidate)
        places = candidate.places
        paths, sizes = tuple(place.path for place in places), tuple(place.size for place in places)
        job = Job(entry.source, entry.name, paths, contents, model, sizes)
        return self._send(job) if self._sends else self.crew.submit(job, self._on_end)

    def _entry(self, candidate: Candidate) -> Entry:
        """To be filled in; it knows the record of an earlier reading."""
        entry = Entry(source=candidate.source, name=candidate.name, key="", state="failed", error=candidate.fault)
        before = self.ledger.entries.get(candidate.name)
        if before is None:
            return entry
        return entry.model_copy(
            update={"record": before.record, "revision": before.revision, "kept": before.kept}
        )  # fmt: skip

    def _let_go(self, entry: Entry) -> None:
        """A source whose content changed no longer stands for its copies: the first of them does."""
        before = self.ledger.entries.get(entry.name)
        if before and before.key != entry.key and self._first.get(before.key) == entry.source:
            del self._first[before.key]
            for copy in self._copies.pop(before.key, []):
                self.tally.same -= 1
                self.tally.size_done -= copy.size
                self._take(copy)

    def _model_of(self, candidate: Candidate) -> str:
        """SHA-256 of the model; asked for when the first recording comes, for text needs none."""
        if all(place.path.lower().endswith(".txt") for place in candidate.places):
            return ""
        self._model = self._model or self.crew.identify().sha256
        return self._model

    def _on_end(self, job: Job, outcome: Callable[[], Outcome]) -> None:
        self._ended.put((job, outcome))

    def _collect(self) -> None:
        """Settle what has ended; wait a moment where nothing has."""
        try:
            job, ended = self._ended.get(timeout=WAIT_S)
        except queue.Empty:
            self.crew.check()
            self._watch(self.tally)
        else:
            self._close(job, outcome_of(ended))
        if time.monotonic() > self._table_due:
            self._write_table()

    def _close(self, job: Job, outcome: Outcome) -> None:
        if outcome.unseen and not job.sent:
            return self._send(job)
        if outcome.error == DIED and job not in self._deadly:
            self._deadly.append(job)
            return None
        entry, candidate = self._under_way.pop(job.name)
        if outcome.files and self.ledger.is_reviewed(job.name):  # while it was heard
            outcome = Outcome(error=REVIEWED)
        if outcome.files:
            self._write(self.ledger.folder, {f"{job.name}.{end}": text for end, text in outcome.files.items()})
        elif outcome.error != REVIEWED and self.ledger.has_files(job.name):
            outcome = replace(outcome, error=f"{outcome.error} (the files of that name are of an earlier reading)")
        entry = entry.with_outcome(outcome)
        if self._keeping and entry.state == "done":
            self.ledger.record(entry)  # its files stand: the next run saves what a kill leaves unsaved here
            self._save(self._keeping, entry, candidate, anew=True)
        else:
            self._settle(entry, candidate)
        if later := self._later.pop(job.name, None):
            self._take(later)
        return None

    def _send(self, job: Job) -> None:
        """The worker does not see the files: from now on they travel with the job."""
        try:
            sent = tuple(map(bytes_of, job.paths, job.sizes))
            if not of_address(job) and tuple(hashlib.sha256(one).hexdigest() for one in sent) != job.contents:
                raise InputError(f"{job.source}: {CHANGED}")
        except InputError as fault:
            return self._close(replace(job, sent=(b"",)), Outcome(error=printable(str(fault))))
        self._sends = not of_address(job)
        return self.crew.submit(replace(job, sent=sent), self._on_end)

    def _try_alone(self) -> None:
        """Jobs that workers died of may have died of a neighbour's: each once more, with nothing beside it."""
        for job in list(self._deadly):
            self.crew.submit(job, self._on_end)
            while job.name in self._under_way:
                self._collect()

    def _passed_over(self, entry: Entry, candidate: Candidate) -> None:
        """Done in an earlier run; what is asked for now and was not then is added: further formats, a record."""
        self._first.setdefault(entry.key, entry.source)
        before = self.ledger.entries[entry.name]
        try:
            for ending, write in self.setting.further.items():
                name = f"{before.name}.{ending}"
                if not (self.ledger.folder / name).is_file():
                    self._write(self.ledger.folder, {name: write(self._exam(before.name), self.setting.grammar)})
        except InputError as fault:
            return self._end(before.model_copy(update={"error": printable(str(fault))}), candidate, anew=False)
        if self._keeping and before.kept != before.key:
            return self._save(self._keeping, before, candidate, anew=False)
        return self._end(before, candidate, anew=False)

    def _save(self, keeping: Keeping, entry: Entry, candidate: Candidate, *, anew: bool) -> None:
        """Into the records now, or when all others are; tried again in the next run where it fails."""
        try:
            exam = self._exam(entry.name)
            if keeping.waits(exam, self.setting.grammar):
                self._last[entry.name] = Waiting(exam, entry, candidate, anew)
                return
            entry = (keeping.save if anew else keeping.save_once)(exam, entry, candidate)
        except (InputError, RecordError) as fault:
            entry = unsaved(entry, fault)
        self._end(entry, candidate, anew=anew)

    def _save_last(self) -> None:
        """Tie what was called unchanged to the visit before, as far as it is known, and save that."""
        if self._keeping is None:
            return
        waiting, self._last = sorted(self._last.values(), key=Waiting.order), {}
        for _, entry, candidate, anew in waiting:
            batch = [one.record for one in self.ledger.entries.values()]
            try:
                exam = self._exam(entry.name)  # with what was decided while it waited
                exam = self._keeping.tied(exam, self.setting.grammar, own=entry.record, batch=batch)
                files = files_of(self.setting, exam)
                self._write(self.ledger.folder, {f"{entry.name}.{end}": text for end, text in files.items()})
                entry = entry.model_copy(update=dict(zip(("musts", "looks"), open_counts(exam), strict=True)))
                entry = (self._keeping.save if anew else self._keeping.save_once)(exam, entry, candidate)
            except (InputError, RecordError) as fault:
                entry = unsaved(entry, fault)
            self._end(entry, candidate, anew=anew)

    def _exam(self, name: str) -> Examination:
        """Its examination, from the folder of results. Raises: InputError."""
        try:
            return Examination.model_validate_json((self.ledger.folder / f"{name}.exam.json").read_bytes())
        except (OSError, ValidationError) as fault:
            raise InputError(f"{name}.exam.json: cannot be read: remove it, and run again") from fault

    def _end(self, entry: Entry, candidate: Candidate, *, anew: bool) -> None:
        """Settle one that stands in the folder of results. anew: it was heard in this run."""
        if anew or entry.error:
            return self._settle(entry, candidate)
        if entry != self.ledger.entries[entry.name]:
            self.ledger.record(entry)
        self.tally.before += 1
        self.tally.size_done += candidate.size
        return self._watch(self.tally)

    def _settle(self, entry: Entry, candidate: Candidate) -> None:
        self.ledger.record(entry)
        tally = self.tally
        tally.done += entry.state == "done" and not entry.error
        tally.failed += bool(entry.error)
        tally.same += entry.state == "same"
        tally.findings, tally.musts = tally.findings + entry.findings, tally.musts + entry.musts
        tally.looks, tally.sound_s = tally.looks + entry.looks, tally.sound_s + entry.sound_s
        tally.size_done += candidate.size
        self._watch(tally)

    def _write_table(self) -> None:
        begin = time.monotonic()
        self._write(self.ledger.folder, {TABLE: batch_csv(self.ledger.entries.values())})
        took = time.monotonic() - begin
        self._table_due = begin + max(TABLE_EVERY_S, TABLE_SHARE * took)
