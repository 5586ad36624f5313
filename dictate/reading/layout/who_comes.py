"""Who comes and why, at the head of a sentence: "72 year old man with ptosis", "Left foot drop, three weeks."."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.reading.marks import Mark

_PEOPLE = frozenset("lady gentleman man woman boy girl chap lad fellow male female patient m f".split())
_AGED = frozenset("old yo y year yr years month months aged".split())
_WHY = frozenset({"with", "who", "presenting", "presents", "seen", "referred", "known", "for"})
_COMES = frozenset("back returns returned again here attends attending came comes".split())
_OWN = frozenset("his her their eyes arms feet legs no normal".split())  # "the lady with her eyes closed sways"
_TELLERS = frozenset({"he", "she", "they", "i"})
_ASIDE = ("examination_conditions",)  # "off levodopa since this morning"
_OPENING = 20  # words in front of which a dictation says what it is about
_HEAD = 9  # marks in which the person and the reason follow
_ENDS = ("comma", "semicolon", "stop", "contrast", "colon")
_TOLD = ("normal", "negation", "not_examined", "not_assessable")


def who_comes(marks: Sequence[Mark]) -> int:
    """How many marks at the head of the sentence say who comes and why; 0: none.

    A list of complaints is one reason; it ends where something measured, normal or denied is told.
    """
    why = _reason(marks)
    if not why:
        return 0
    end = why
    for start, stop in _clauses(marks, why):
        clause = marks[start:stop]
        if any(mark.number is not None or mark.has(*_TOLD) or mark.role("absent", "") for mark in clause):
            break
        end = stop
    return end if end > why else 0


def is_complaint(marks: Sequence[Mark]) -> bool:
    """ "Left foot drop, three weeks.", "Weak legs for five days." at the head of a dictation: what it is about.

    Nothing but one sign with its place and how long it has been so, in days and more; anything measured, normal or
    denied is a finding.
    """
    said = [mark for mark in marks if not mark.has("stop", "filler", "comma")]
    if (
        any(mark.text in _TELLERS for mark in marks)
        or marks[0].start > _OPENING
        or len(said) < len(("sign", "time"))
        or not said[-1].has("time_span")
    ):
        return False
    told = said[:-1]
    plain = all(mark.number is None and not mark.has(*_TOLD, "heading", "contrast", "time_span") for mark in told)
    plain = plain and not any(role.item in _ASIDE for mark in told for role in mark.roles)
    return plain and any(mark.has("sign", "alone") or mark.role("abnormal", "") for mark in told)


def _reason(marks: Sequence[Mark]) -> int:
    """The place behind the person, where the reason begins; 0: no such person."""
    words = [mark.text.split()[-1:] for mark in marks[:_HEAD]]
    person = next((at for at, word in enumerate(words) if word and word[0] in _PEOPLE), None)
    if person is None or any(mark.has(*_ENDS) for mark in marks[:person]) or person + 2 >= len(marks):
        return 0
    if any(mark.has("item", "sign", "alone") and "handed" not in mark.text for mark in marks[:person]):
        return 0
    aged = marks[0].text[:1].isdigit() or any(mark.number is not None for mark in marks[:person])
    aged = aged and not _AGED.isdisjoint(" ".join(mark.text for mark in marks[:person]).split())
    if marks[person + 1].text.split()[0] not in (_WHY if aged else {"with"}) or marks[person + 2].text in _OWN:
        return 0
    clause = itertools.takewhile(lambda mark: not mark.has(*_ENDS), marks[person + 2 :])
    returns = any(mark.text in _COMES for mark in clause)
    return person + 1 if aged or returns else 0


def _clauses(marks: Sequence[Mark], start: int) -> list[tuple[int, int]]:
    found = []
    for place in range(start, len(marks)):
        if marks[place].has(*_ENDS) or place + 1 == len(marks):
            found.append((start, place + 1))
            start = place + 1
    return found
