"""Word and Transcript."""

from __future__ import annotations

import pytest

from dictate.model import Transcript, Word

WORDS = tuple(
    Word(text=text, lead=lead) for text, lead in (("Knees", ""), ("two", " "), ("plus,", " "), ("ankles", "\n"))
)


@pytest.mark.parametrize(
    ("first", "last", "quote"), [(0, 2, "Knees two plus,"), (2, 3, "plus,\nankles"), (3, 3, "ankles"), (0, 0, "Knees")]
)
def test_quote_is_what_stands_there(first: int, last: int, quote: str) -> None:
    """Both ends belong to it; white space inside is kept."""
    assert Transcript(words=WORDS).quote(first, last) == quote


def test_typed_words_have_no_times() -> None:
    """None means typed, not zero."""
    assert (WORDS[0].start_s, WORDS[0].end_s, WORDS[0].probability) == (None, None, None)
