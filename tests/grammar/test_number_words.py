"""Number words against the names of numerals in Unicode: "AEGEAN NUMBER SIXTY" is 60, "CIRCLED NUMBER TWELVE" 12."""

from __future__ import annotations

import sys
import unicodedata

import pytest

from dictate.grammar.number_words import BELOW_TWENTY, TENS, whole_number

KINDS = ("DIGIT", "CIRCLED NUMBER", "AEGEAN NUMBER")


@pytest.fixture(scope="module")
def named() -> dict[str, float]:
    """Last word of a numeral's name → its number."""
    signs = (chr(code) for code in range(sys.maxunicode + 1))
    names = {sign: unicodedata.name(sign, "") for sign in signs if unicodedata.numeric(sign, None) is not None}
    plain = {sign: name for sign, name in names.items() if name.startswith(KINDS)}
    return {name.split()[-1].lower(): unicodedata.numeric(sign) for sign, name in plain.items()}


@pytest.mark.parametrize("word", [*BELOW_TWENTY, *TENS])
def test_a_word_is_the_number_that_unicode_calls_so(named: dict[str, float], word: str) -> None:
    """Every one of them."""
    assert (BELOW_TWENTY | TENS)[word] == named[word]


def test_a_word_is_a_number_in_digits_or_spelt_out() -> None:
    assert [whole_number(word) for word in ("12", "twelve", "thirty", "zero", "plus", "")] == [
        12,
        12,
        30,
        0,
        None,
        None,
    ]
