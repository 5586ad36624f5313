"""Sentences about a place that are parts of others: "pinprick on the face is symmetric"."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from dictate.reading.marks import Role
from dictate.reading.tokens import Token

_VERBS = frozenset("is are was were looks feels appears".split())
_PLACING = frozenset("on over in of across at around".split())
_DETERMINERS = frozenset("the his her their".split())
_SHORTEST = 3  # words of such a sentence


def is_only_a_place(tokens: Sequence[Token], start: int, end: int, meanings: Callable[[str], set[Role]]) -> bool:
    """Whether the sentence ("face is symmetric") begins with what is only the place of something else here.

    It does behind a preposition, and where it goes on to what was felt there ("to pinprick").
    """
    if end - start < _SHORTEST or tokens[start + 1].lower not in _VERBS:
        return False
    if not any(role.kind == "site" for role in meanings(tokens[start].lower)):
        return False
    before = [token.lower for token in tokens[max(0, start - 2) : start] if token.lower not in _DETERMINERS]
    after = [token.lower for token in tokens[end : end + 2]]
    felt = after[:1] == ["to"] and any(role.kind == "item" for role in meanings(" ".join(after[1:])))
    return felt or bool(before and before[-1] in _PLACING)
