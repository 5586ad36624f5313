"""Numbers that count nothing in the patient."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import lexicon_of
from dictate.reading.senses.counting import counts_nothing
from dictate.reading.tokens import tokenize


def kinds_at(grammar: Grammar, text: str, word: str) -> set[str] | None:
    """What the mark may be there; None where it stays as it is."""
    marks = lexicon_of(grammar).find(tokenize(transcript_of_text(text)))
    place = next(at for at, mark in enumerate(marks) if mark.text == word)
    found = counts_nothing(marks, place)
    return None if found is None else {role.kind for role in found.roles}


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("propofol 2 mg an hour", "2"),
        ("nasal when he has counted to fifty", "fifty"),
        ("needs help of two people", "two"),
        ("day four of the weakness", "four"),
        ("improved by three after rest", "three"),
        ("after twenty repetitions", "twenty"),
        ("fell on one occasion", "one"),
    ],
)
def test_a_number_of_something_else_is_a_plain_word(grammar: Grammar, text: str, word: str) -> None:
    assert kinds_at(grammar, text, word) == {"word"}


@pytest.mark.parametrize(
    "text", ["hopping, right one wobbly, left fine", "a fine one in the left hand", "the left one is up"]
)
def test_one_stands_for_a_name(grammar: Grammar, text: str) -> None:
    assert kinds_at(grammar, text, "one") == {"filler"}


@pytest.mark.parametrize("text", ["ankle jerks right one, left two", "ankle jerks right one left two", "biceps one"])
def test_one_is_a_grade_where_nothing_goes_on_about_it(grammar: Grammar, text: str) -> None:
    assert kinds_at(grammar, text, "one") is None
