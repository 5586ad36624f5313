"""What was taken from a phrase: new findings, what changed, doubts, and words that found no place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from dictate.checks.scope import missing_of_scope
from dictate.grammar import Grammar
from dictate.model import Component, Examination, Finding, Query, RemarkKind, Source, Transcript, Word
from dictate.notes.phrases import capital, circumstances, place, statement, title
from dictate.pipeline import Weigher, examine_transcript
from dictate.reckoning import reckon

MOST_WORDS = 250  # read again with each phrase; more would make it slow, fewer lose what was said before
HEADING_WORDS = 120  # a heading so far back starts what is read again
SOURCE = Source(name="dictation", kind="recording", sha256="")
WHOLE_ONLY = {"scope-item-missing"}  # asked of the whole, not of a phrase
BY_WEIGHING = {"unsure-hearing", "repaired-hearing"}
Key = tuple[object, ...]


@dataclass(frozen=True)
class Taken:
    """What one phrase gave."""

    findings: tuple[Finding, ...] = ()
    gone: tuple[Finding, ...] = ()  # taken earlier, and no longer so
    queries: tuple[Query, ...] = ()
    not_placed: tuple[str, ...] = ()

    @property
    def empty(self) -> bool:
        """Whether nothing at all came of it."""
        return not (self.findings or self.gone or self.queries or self.not_placed)


@dataclass(frozen=True)
class Phrase:
    """What a phrase was read with, and what was taken from all of it: for a weighing that follows."""

    start_s: float
    words: tuple[Word, ...]
    known: frozenset[Key]


@dataclass
class Taker:
    """Reads each phrase together with what was said before it."""

    grammar: Grammar
    scope: str = ""
    words: list[Word] = field(default_factory=list)
    _first: int = 0
    _known: dict[Key, Finding] = field(default_factory=dict)
    _past: list[Finding] = field(default_factory=list)  # of words that are read no more

    def take_up(self, words: Sequence[Word]) -> tuple[Finding, ...]:
        """All that was said before an interruption, read at once."""
        if not words:
            return ()
        self.words += words
        self._first = self._start()
        from_s = self.words[self._first].start_s or 0.0
        findings = self.whole().findings
        self._past = [finding for finding in findings if _start_s(finding) < from_s]
        exam = self._examine(self.words[self._first :], scope="")
        self._known = {_key(finding): finding for finding in exam.findings}
        return findings

    def take(self, words: Sequence[Word]) -> Taken:
        """The next phrase."""
        if not words:
            return Taken()
        start_s = words[0].start_s or 0.0
        self.words += words
        self._first = self._start()
        exam = self._examine(self.words[self._first :], scope="")
        from_s = self.words[self._first].start_s or 0.0
        now = {_key(finding): finding for finding in exam.findings}
        before = {key: finding for key, finding in self._known.items() if _start_s(finding) >= from_s}
        self._past += (finding for finding in self._known.values() if _start_s(finding) < from_s)
        self._known = now
        new = {key: finding for key, finding in now.items() if key not in before}
        concerned = {at for at, finding in enumerate(exam.findings) if _key(finding) in new}
        return Taken(
            findings=tuple(new.values()),
            gone=tuple(finding for key, finding in before.items() if key not in now),
            queries=tuple(
                query
                for query in exam.queries
                if query.code not in WHOLE_ONLY
                and (concerned.intersection(query.findings) or (query.start_s is not None and query.start_s >= start_s))
                and query.code != "not-placed"
            ),
            not_placed=tuple(
                remark.evidence.quote
                for remark in exam.remarks
                if remark.kind is RemarkKind.NOT_PLACED and (remark.evidence.end_s or 0.0) > start_s
            ),
        )

    def whole(self) -> Examination:
        """Everything heard live, read at once."""
        return self._examine(self.words, scope=self.scope)

    def missing(self) -> dict[Component, tuple[str, ...]]:
        """What the scope still asks for, by component and by what was taken so far; nothing is read again."""
        exam = Examination(
            program="", grammar_sha256="", scope=self.scope, transcript=Transcript(),
            findings=(*self._past, *self._known.values()),
        )  # fmt: skip
        exam = exam.model_copy(update={"figures": reckon(exam.findings, grammar=self.grammar, scope=self.scope)})
        return missing_of_scope(exam, self.grammar)

    def phrase(self, start_s: float) -> Phrase:
        """The phrase just taken, with what it was read with."""
        return Phrase(start_s, tuple(self.words[self._first :]), frozenset(self._known))

    def doubts(self, phrase: Phrase, *, from_s: float, weigher: Weigher) -> Taken:
        """What weighing changes in what was taken since a time; may run beside `take`."""
        exam = self._examine(phrase.words, scope="", weigher=weigher)
        now = {_key(finding): finding for finding in exam.findings}
        return Taken(
            findings=tuple(one for key, one in now.items() if key not in phrase.known and _start_s(one) >= from_s),
            queries=tuple(
                query
                for query in exam.queries
                if query.code in BY_WEIGHING and query.start_s is not None and query.start_s >= from_s
            ),
        )

    def _examine(self, words: Sequence[Word], *, scope: str, weigher: Weigher | None = None) -> Examination:
        transcript = Transcript(words=tuple(words), sources=(SOURCE,))
        return examine_transcript(transcript, grammar=self.grammar, scope=scope, weigher=weigher)

    def _start(self) -> int:
        """First word that is read again: at a heading, or at a sentence, so that it is not too many."""
        count = len(self.words)
        if count - self._first <= MOST_WORDS:
            return self._first
        headings = {heading.lower() for part in self.grammar.components.values() for heading in part.headings}
        starts = [at for at in range(count - MOST_WORDS, count - 1) if self.words[at].text.endswith((".", "?", "!"))]
        with_heading = [at for at in starts if at < count - HEADING_WORDS and self._says(at + 1, headings)]
        late = [at for at in starts if at <= count - HEADING_WORDS]
        return (with_heading or late or [count - HEADING_WORDS])[-1] + 1

    def _says(self, at: int, headings: set[str]) -> bool:
        said = [word.text.lower().strip(".,:;") for word in self.words[at : at + 3]]
        return any(" ".join(said[:length]) in headings for length in (1, 2, 3))


def describe(finding: Finding, grammar: Grammar) -> str:
    """A finding in a line: `Knee jerk right: 2+`."""
    where = " ".join(filter(None, (place(finding), circumstances(finding))))
    said = statement(finding, grammar).replace("\u00a0", " ")
    return f"{capital(title(finding, grammar))}{' ' + where if where else ''}: {said}"


def differences(live: Examination, final: Examination, grammar: Grammar) -> list[str]:
    """What hearing the whole again changed, one line each."""
    before = {_bare(finding): finding for finding in live.findings}
    after = {_bare(finding): finding for finding in final.findings}
    gone = [f"- {describe(finding, grammar)}" for key, finding in before.items() if key not in after]
    new = [f"+ {describe(finding, grammar)}" for key, finding in after.items() if key not in before]
    return [*gone, *new]


def _bare(finding: Finding) -> Key:
    value = str(finding.value or "")
    return (
        finding.item, finding.side, finding.site, finding.position, finding.minutes, finding.status, value,
        finding.certainty,
    )  # fmt: skip


def _key(finding: Finding) -> Key:
    return (*_bare(finding), _start_s(finding))


def _start_s(finding: Finding) -> float:
    return finding.evidence[0].start_s or 0.0
