"""Words that are no words of the examination in their company."""

from __future__ import annotations

import pytest

from dictate.reading.marks import Mark
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.senses.company import measured, plain_word
from dictate.reading.tokens import tokenize, transcript_of_text


def marks(lexicon: Lexicon, text: str) -> list[Mark]:
    """The marks of one phrase."""
    return lexicon.find(tokenize(transcript_of_text(text)))


@pytest.mark.parametrize(
    ("text", "word", "part"),
    [
        ("okay, sensory", "okay", "filler"),
        ("gait okay, tandem normal", "okay", "normal"),
        ("the right one fatigues", "one", "filler"),
        ("on the right one, on the left two", "one", "number"),
    ],
)
def test_what_a_word_is_in_its_company(lexicon: Lexicon, text: str, word: str, part: str) -> None:
    """Its neighbours decide."""
    found = marks(lexicon, text)
    place = next(i for i, mark in enumerate(found) if mark.text == word)
    assert plain_word(found, place).has(part)


def test_a_name_with_its_number_is_measured(lexicon: Lexicon) -> None:
    """And ends a reason in speech without commas."""
    assert measured(marks(lexicon, "knee extension four plus"), 0)
    assert not measured(marks(lexicon, "knee extension painful"), 0)
