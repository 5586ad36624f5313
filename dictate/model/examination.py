"""Examination, AsRead, Figure, Around: findings, remarks, queries, decisions, provenance, format version."""

from __future__ import annotations

from datetime import datetime
from typing import Literal

from dictate.model.base import Frozen
from dictate.model.conventions import Conventions
from dictate.model.findings import Finding, Remark
from dictate.model.persons import Person
from dictate.model.queries import Decision, Query, Severity
from dictate.model.words import Transcript

FORMAT = "dictate/examination"
FORMAT_VERSION = 1
Origin = Literal["option", "spoken", "recording", ""]  # where the time of examination comes from


class Around(Frozen):
    """What the records put around a signed note: it is handed on with the note in every form that is read."""

    banners: tuple[str, ...] = ()  # above it: withdrawn, moved
    foot: str = ""  # record, revision and head it was signed with
    additions: tuple[str, ...] = ()  # below it: addenda, a second name, erased recordings; texts of several lines


class Figure(Frozen):
    """Something computed from findings: never dictated, never a diagnosis."""

    name: str  # "orthostatic hypotension criterion", "mean arterial pressure"
    text: str  # the sentence for the note
    formula: str = ""
    source: str = ""
    inputs: tuple[int, ...] = ()  # places in Examination.findings
    value: float | None = None
    unit: str = ""


class AsRead(Frozen):
    """What the words gave before the first decision that can be taken back: from here all are carried out again."""

    findings: tuple[Finding, ...] = ()
    remarks: tuple[Remark, ...] = ()
    words: int  # how many of the transcript's; those behind were typed at review
    sources: int
    patient: str = ""
    examined_at: datetime | None = None
    examined_at_from: Origin = ""
    decisions: int = 0  # made before a further dictation was joined, which holds what they changed; these stay
    queries: tuple[Query, ...] = ()  # what they settled


class Examination(Frozen):
    """One examination of one patient, as dictated."""

    format: Literal["dictate/examination"] = "dictate/examination"
    version: Literal[1] = 1
    program: str  # version of the program that read it
    grammar_sha256: str
    patient: str = ""  # the user's reference, never shown in file names
    examined_at: datetime | None = None
    examined_at_from: Origin = ""
    scope: str = ""
    person: Person = Person()
    conventions: Conventions = Conventions()  # that its figures were computed by
    transcript: Transcript
    findings: tuple[Finding, ...] = ()
    remarks: tuple[Remark, ...] = ()
    withheld: int = 0  # findings left out because the text as a whole is no examination
    figures: tuple[Figure, ...] = ()
    queries: tuple[Query, ...] = ()
    decisions: tuple[Decision, ...] = ()
    as_read: AsRead | None = None  # None: nothing was decided yet
    examined_by: str = ""
    dictated_by: str = ""
    signed_by: str = ""
    countersigned_by: str = ""
    signed_at: datetime | None = None

    @property
    def open_queries(self) -> tuple[Query, ...]:
        """Queries without a decision, in order."""
        settled = {decision.query for decision in self.decisions}
        return tuple(query for place, query in enumerate(self.queries) if place not in settled)

    @property
    def open_musts(self) -> tuple[Query, ...]:
        """Open queries that keep the note from being signed."""
        return tuple(query for query in self.open_queries if query.severity is Severity.MUST)
