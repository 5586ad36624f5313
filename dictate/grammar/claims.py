"""What "unchanged" was said of: the values that were told in the same breath ("deltoid 4 on the left, unchanged")."""

from __future__ import annotations

import re
from collections.abc import Iterable

from dictate.grammar.schema import Grammar
from dictate.model import Examination, Finding, Status

SILENT = (Status.NOT_EXAMINED, Status.NOT_ASSESSABLE, Status.UNCHANGED)


def told_beside(claim: Finding, exam: Examination, grammar: Grammar) -> list[int]:
    """Places of the findings of that item, wherever they are, that were told in the same breath.

    Empty for what is no claim, and for one of all that was not told: "2+ on the right, otherwise unchanged".
    """
    if claim.status is not Status.UNCHANGED:
        return []
    same = [at for at, one in enumerate(exam.findings) if one.item == claim.item and one.status not in SILENT]
    if not same or _is_of_rest(claim, exam, grammar):
        return []
    bare = one_line(claim.quote).strip(" .,;:") in grammar.common.words.unchanged
    return [at for at in same if _in_one_breath(exam.findings[at], claim, bare=bare)]


def _in_one_breath(one: Finding, claim: Finding, *, bare: bool) -> bool:
    """Whether they share words, or the claim is nothing but that word, right behind ("Deltoid 4. Unchanged.")."""
    shared = any(a.first <= b.last and b.first <= a.last for a in one.evidence for b in claim.evidence)
    return shared or (bare and one.evidence[-1].last + 1 == claim.evidence[0].first)


def _is_of_rest(claim: Finding, exam: Examination, grammar: Grammar) -> bool:
    first, last = claim.evidence[0].first, claim.evidence[-1].last
    said = " ".join(word.text for word in exam.transcript.words[first : last + 1])
    return holds(one_line(said), grammar.common.words.rest)


def holds(text: str, phrases: Iterable[str]) -> bool:
    """Whether one of the phrases stands in the text, as whole words."""
    return any(re.search(rf"(?<!\w){re.escape(said)}(?!\w)", text) for said in phrases)


def one_line(text: str) -> str:
    """Small letters, single spaces."""
    return " ".join(text.lower().split())
