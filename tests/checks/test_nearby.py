"""The words around a statement."""

from __future__ import annotations

import pytest

from dictate.checks.nearby import is_rest, joined_by_but, nearby
from dictate.grammar import load_grammar
from dictate.model import Examination
from dictate.pipeline import examine_transcript
from dictate.reading import transcript_of_text


def examined(text: str) -> Examination:
    """The examination of a typed text."""
    return examine_transcript(transcript_of_text(text), grammar=load_grammar())


@pytest.mark.parametrize(
    ("text", "joined"),
    [
        ("Face symmetric at rest but the left side lags.", True),
        ("Cranial nerves intact, although there is a left facial droop.", True),
        ("Face symmetric at rest. But the left side of the face is weak.", False),
        ("Cranial nerves intact, left facial droop.", False),
    ],
)
def test_a_but_joins_within_a_sentence(text: str, joined: bool) -> None:
    """Behind a full stop it is another statement, and may contradict the first."""
    exam = examined(text)
    normal, found = exam.findings
    assert joined_by_but(normal, found, exam) is joined
    assert ("contradiction" in {query.code for query in exam.queries}) is not joined


def test_the_rest_is_said_near_it() -> None:
    """ "Otherwise", in front of the name or behind it."""
    exam = examined("Left ptosis. Cranial nerves otherwise normal. Gait normal.")
    assert [is_rest(finding, exam) for finding in exam.findings] == [False, True, False]


def test_words_of_other_sentences_are_not_near() -> None:
    """Nothing runs over a full stop."""
    exam = examined("Otherwise well. Left ptosis.")
    assert nearby(exam.findings[-1], exam, behind=3) == "Left ptosis."
