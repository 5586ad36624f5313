"""Passages: the words a question is about, with the words around them and the stretch of sound they come from."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from dictate.model import Evidence, Examination, Finding, Query, Transcript

AROUND = 12  # words shown before and behind
AROUND_S = 3.0  # seconds played before and behind, on request


@dataclass(frozen=True, slots=True)
class Passage:
    """Words of one stretch; without times they were typed, without words nothing was made of the sound."""

    before: str
    words: str
    behind: str
    source: int = 0
    start_s: float | None = None
    end_s: float | None = None
    name: str = ""  # of the recording or text

    @property
    def playable(self) -> bool:
        """Whether there is sound to it."""
        return self.start_s is not None and self.end_s is not None and self.end_s > self.start_s


def passages_of(exam: Examination, query: Query) -> tuple[Passage, ...]:
    """The words the query is about: of its findings, its remark, or of sound that gave none."""
    if query.findings:
        pieces = [piece for at in query.findings for piece in exam.findings[at].evidence]
        return tuple(_passage(exam.transcript, piece) for piece in dict.fromkeys(pieces))
    for remark in exam.remarks:
        if (remark.evidence.quote, remark.evidence.start_s) == (query.quote, query.start_s) and query.quote:
            return (_passage(exam.transcript, remark.evidence),)
    if query.start_s is not None and query.end_s is not None:
        return tuple(_of_sound(exam.transcript, query))
    return ()


def passages_of_finding(exam: Examination, finding: Finding) -> tuple[Passage, ...]:
    """The words a finding was taken from."""
    return tuple(_passage(exam.transcript, piece) for piece in finding.evidence)


def _passage(transcript: Transcript, piece: Evidence) -> Passage:
    word = transcript.words[piece.first] if piece.first < len(transcript.words) else None
    source = word.source if word else 0
    own = [at for at, one in enumerate(transcript.words) if one.source == source]
    first, last = (own[0], own[-1]) if own else (0, -1)
    start = max(first, piece.first - AROUND)
    return Passage(
        before=_line(transcript.quote(start, piece.first - 1)) if piece.first > start else "",
        words=_line(piece.quote),
        behind=_line(transcript.quote(piece.last + 1, min(last, piece.last + AROUND))),
        source=source,
        start_s=piece.start_s,
        end_s=piece.end_s,
        name=transcript.sources[source].name if source < len(transcript.sources) else "",
    )


def _of_sound(transcript: Transcript, query: Query) -> Iterator[Passage]:
    """Sound without words, between the words before and behind it."""
    if query.start_s is None or query.end_s is None:
        return
    stretch = next(
        (one for one in transcript.untranscribed if (one.start_s, one.end_s) == (query.start_s, query.end_s)), None
    )
    source = stretch.source if stretch else 0
    words = [word for word in transcript.words if word.source == source and word.start_s is not None]
    before = [word.text for word in words if (word.start_s or 0) < query.start_s][-AROUND:]
    behind = [word.text for word in words if (word.start_s or 0) >= query.start_s][:AROUND]
    name = transcript.sources[source].name if source < len(transcript.sources) else ""
    yield Passage(" ".join(before), query.quote, " ".join(behind), source, query.start_s, query.end_s, name)


def _line(text: str) -> str:
    return " ".join(text.split())
