"""Words that became no finding: kept as remarks, so that nothing said is lost."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.model import Remark, RemarkKind, Transcript
from dictate.reading.layout.sections import Kept, found_in, sentences_of
from dictate.reading.marks import Mark
from dictate.reading.senses.company import AGREED
from dictate.reading.statements.drafts import Draft
from dictate.reading.tokens import Token, evidence

_CARRY_NOTHING = frozenset(
    {
        "filler",
        "comma",
        "semicolon",
        "colon",
        "stop",
        "conj",
        "contrast",
        "hedge",
        "heading",
        "severity",
        "correction",
        "strike",
        "swap",
        "except",
        "rest",
        "throughout",
        "right_then_left",
        "left_then_right",
        "next_patient",
        "reason",
        "section",
    }
)


def leftovers(
    transcript: Transcript,
    tokens: Sequence[Token],
    marks: Sequence[Mark],
    drafts: Sequence[Draft],
    kept: Sequence[Kept],
    noted: Sequence[tuple[RemarkKind, int, int]],
    covered: set[int],
) -> tuple[Remark, ...]:
    """Remarks in the order said: sections kept verbatim, corrected words, talk, and what was not placed.

    One not-placed remark a sentence: its uncovered words that carry something, joined.
    """
    remarks = [(kind, start, end) for kind, start, end in (*kept, *noted)]
    excepted: dict[int, tuple[str, ...]] = {}
    taken = set(covered)
    for draft in drafts:
        for start, end in draft.spans:
            taken.update(range(start, end))
    for _, start, end in remarks:
        taken.update(range(start, end))
    for sentence in sentences_of(marks, tokens):
        loose = [m for m in _spoken(sentence) if _is_loose(m, taken)]
        if loose:
            remarks.append((RemarkKind.NOT_PLACED, loose[0].start, loose[-1].end))
            excepted[loose[0].start] = _excepted_from(sentence, loose[-1].end, drafts)
    token_list = list(tokens)
    return tuple(
        Remark(
            kind=kind,
            evidence=evidence(transcript, token_list, start, end - 1),
            readings=excepted.get(start, ())
            if kind is RemarkKind.NOT_PLACED
            else _found(kind, [m for m in marks if start <= m.start < end]),
        )
        for kind, start, end in sorted(remarks, key=lambda r: (r[1], r[2]))
    )


def _excepted_from(sentence: Sequence[Mark], end: int, drafts: Sequence[Draft]) -> tuple[str, ...]:
    """ "Cranial nerves intact apart from a left sixth": items that say too much, as their exception became no finding.

    end: of the words left over; what stands behind them is no part of the exception.
    """
    exception = next((m.start for m in reversed(sentence) if m.has("except") and m.start < end), None)
    if exception is None:
        return ()
    here = range(sentence[0].start, sentence[-1].end)
    spans = [(draft, start) for draft in drafts for start, _ in draft.spans if start in here]
    if exception == sentence[0].start and spans and all(start >= end for _, start in spans):
        return tuple(dict.fromkeys(draft.item for draft, _ in spans))  # "Except for the left foot, pin is normal"
    if any(start > exception for _, start in spans):
        return ()  # some of it was read
    return tuple(dict.fromkeys(draft.item for draft, start in spans if start < exception))


def _found(kind: RemarkKind, marks: Sequence[Mark]) -> tuple[str, ...]:
    """Items of an examination in words that were set aside: what a history measured, what talk tells of."""
    if kind in (RemarkKind.HISTORY, RemarkKind.IMPRESSION, RemarkKind.PLAN):
        return found_in(marks, measured=True)
    return found_in(marks) if kind is RemarkKind.TALK else ()


def _spoken(sentence: Sequence[Mark]) -> list[Mark]:
    """The marks that carry something; "Objective:" at the start is a heading, "okay" before anything says nothing."""
    headed = sentence[0].has("closed_section") and any(mark.text in (":", ".") for mark in sentence[1:2])
    headed = headed or (sentence[0].text in AGREED and not any(mark.has("stop") for mark in sentence[1:2]))
    return [mark for mark in sentence[headed:] if not _carries_nothing(mark)]


def _is_loose(mark: Mark, taken: set[int]) -> bool:
    """Some of its words are in nothing; of a phrase that was taken in part, words that carry something."""
    words = range(mark.start, mark.end)
    if mark.inner and not taken.isdisjoint(words):
        return any(_is_loose(part, taken) for part in mark.inner if not _carries_nothing(part))
    return any(place not in taken for place in words)


def _carries_nothing(mark: Mark) -> bool:
    if mark.number is not None:
        return False
    kinds = {role.kind for role in mark.roles if not role.item}
    return bool(kinds & _CARRY_NOTHING) and not any(role.kind in ("item", "sign", "alone") for role in mark.roles)
