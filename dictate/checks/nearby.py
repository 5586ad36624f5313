"""The words around a statement: "the rest of the", "otherwise", "but"."""

from __future__ import annotations

import re

from dictate.model import Examination, Finding

NEAR = 4  # words before a statement that may say "the rest of the", "otherwise"
_REST = re.compile(r"\b(otherwise|(?:the|all) rest|rest of|remainder|remaining|else|elsewhere|other)\b", re.IGNORECASE)
_BUTS = frozenset({"but", "although", "though", "however"})
_ENDS = (".", "?", "!")


def is_rest(finding: Finding, exam: Examination) -> bool:
    """Whether it was said of the rest only: by its own words, or those just before or behind in the sentence."""
    return _REST.search(nearby(finding, exam, behind=1)) is not None


def joined_by_but(other: Finding, finding: Finding, exam: Examination) -> bool:
    """ "Face symmetric at rest, but the left side lags": within a sentence a "but" says that both stand."""
    first, last = other.evidence[-1].last, finding.evidence[-1].last
    between = [word.text.lower() for word in exam.transcript.words[begins(other) : last + 1]]
    whole = first < last and not any(text.endswith(_ENDS) for text in between[:-1])
    return whole and any(text.strip(",;") in _BUTS for text in between)


def nearby(finding: Finding, exam: Examination, *, behind: int) -> str:
    """The words of a statement with those before it and so many behind it, within the sentence."""
    words = exam.transcript.words
    first, last = finding.evidence[0].first, finding.evidence[-1].last
    before: list[str] = []
    for word in reversed(words[max(0, first - NEAR) : first]):
        if word.text.endswith(_ENDS):
            break
        before.insert(0, word.text)
    after: list[str] = []
    for word in words[last : last + behind + 1]:
        after.append(word.text)
        if word.text.endswith((".", ";", "?", "!")):
            break
    return " ".join((*before, finding.quote, *after[1:]))


def begins(finding: Finding) -> int:
    """The word at which it begins."""
    return finding.evidence[0].first
