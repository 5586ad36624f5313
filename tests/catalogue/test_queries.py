"""The questions of queries and their answers."""

from __future__ import annotations

import re

from dictate.catalogue import queries

ANSWERS = (
    "NEITHER",
    "NOTHING_BELONGS",
    "NOT_EXAMINED",
    "KEEP_WORDS",
    "LEAVE_OUT",
    "LEAVE_AS_HISTORY",
    "LEAVE_AS_TALK",
    "NONE_FURTHER",
    "ANOTHER_FROM_HERE",
    "SAME_PATIENT",
    "ANOTHER_PATIENT",
    "NOTES_PATIENT",
)


def test_answers_are_told_apart() -> None:
    """Review goes by the words: no two answers may read alike."""
    said = [getattr(queries, name) for name in ANSWERS]
    assert len(set(said)) == len(said)


def test_a_question_asks() -> None:
    """What begins with its subject is a question; the others are parts of one."""
    whole = [text for name, text in vars(queries).items() if re.match(r"[A-Z_]+$", name) and text.startswith("{topic}")]
    assert len(whole) > 5
    assert [text for text in whole if not text.endswith(("?", "before"))] == []
