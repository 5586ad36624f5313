"""Loudness of a murmur against the thrill that was, or was not, felt with it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import queries as say
from dictate.checks.registry import Doubt
from dictate.checks.wording import said, topic
from dictate.grammar import Grammar
from dictate.model import Examination, Finding, Status

# Source: Freeman and Levine 1933 (looked up, secondary): a thrill is felt from grade 4 of 6 on, not below.
THRILL_FROM = 4
GRADE = re.compile(r"\b([1-6])/6\b|\bgrade ([1-6])\b")
WITH_THRILL = "with a thrill"


def thrill_and_grade(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A graded murmur and a thrill that do not go together; a thrill that was not spoken of says nothing."""
    murmurs = [one for one in exam.findings if one.item == "murmur" and one.status is Status.PRESENT]
    thrills = [one for one in exam.findings if one.item == "thrill" and one.status in (Status.PRESENT, Status.ABSENT)]
    graded = [(one, int(found[1] or found[2])) for one in murmurs if (found := GRADE.search(str(one.value or "")))]
    if len(murmurs) != 1 or len(graded) != 1 or len(thrills) > 1:
        return  # of several murmurs nothing says which the thrill belongs to
    murmur, grade = graded[0]
    felt = _felt(murmur, thrills)
    if felt is None or felt is (grade >= THRILL_FROM):
        return
    reason = say.THRILL_BELOW if felt else say.NO_THRILL_FROM
    message = f"{topic(murmur, grammar)} {said(murmur)}: {reason.format(grade=THRILL_FROM)}"
    yield Doubt(murmur, message, severity="look", others=tuple(thrills))


def _felt(murmur: Finding, thrills: list[Finding]) -> bool | None:
    """Whether a thrill was felt; None: not said."""
    if WITH_THRILL in str(murmur.value or ""):
        return True
    return thrills[0].status is Status.PRESENT if thrills else None
