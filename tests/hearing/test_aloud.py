"""Written words as they are said; every expectation is common usage in dictation, no source."""

from __future__ import annotations

import pytest

from dictate.hearing.aloud import aloud


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("132/84", "one thirty two over eighty four"),
        ("20/40", "twenty forty"),
        ("6/9,", "six nine"),
        ("36.8", "thirty six point eight"),
        ("0.05", "zero point zero five"),
        ("T4", "tee four"),
        ("L5-S1", "ell five ess one"),
        ("MRC", "em ar see"),
        ("4+/5", "four plus over five"),
        ("4-,", "four minus"),
        ("3+", "three plus"),
        ("1-16", "one sixteen"),
        ("5th", "five th"),
        ("2nd", "second"),
        ("10m", "ten meters"),
        ("mmHg", "millimeters of mercury"),
        ("90%", "ninety percent"),
        ("2026", "twenty twenty six"),
        ("1945", "nineteen forty five"),
        ("2005", "twenty hundred five"),
        ("1200", "twelve hundred"),
        ("3417", "three four one seven"),
        ("100", "one hundred"),
        ("108", "one hundred eight"),
        ("Biceps", "Biceps"),
        ("a", "a"),
        ("I", "I"),
        ("...", ""),
    ],
)
def test_a_written_word_becomes_what_is_said(written: str, said: str) -> None:
    """Numerals, signs, units, letters said by name; words stay."""
    assert aloud(written, hundreds=False) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("113", "one hundred and thirteen"),
        ("142/84", "one hundred and forty two over eighty four"),
        ("200", "two hundred"),
    ],
)
def test_hundreds_may_be_said_in_full(written: str, said: str) -> None:
    """British usage says hundred and; round ones are said alike by all."""
    assert aloud(written, hundreds=True) == said
