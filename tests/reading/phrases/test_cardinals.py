"""Plain numbers, spoken or in digits."""

from __future__ import annotations

import pytest

from dictate.reading import transcript_of_text
from dictate.reading.phrases.numbers import find_numbers
from dictate.reading.tokens import tokenize


@pytest.mark.parametrize(
    ("phrase", "value"),
    [
        ("zero", 0),
        ("seven", 7),
        ("fourteen", 14),
        ("twenty", 20),
        ("thirty two", 32),
        ("ninety eight", 98),
        ("66", 66),
        ("36.8", 36.8),
        ("thirty six point eight", 36.8),
        ("thirty seven point oh", 37.0),
        ("eight and a half", 8.5),
        ("8 and a half", 8.5),
        ("half a centimetre", 0.5),
        ("a hundred", 100),
        ("one hundred", 100),
        ("one hundred and six", 106),
        ("one hundred six", 106),
        ("100 and 6", 106),
        ("two hundred", 200),
        ("one oh six", 106),
        ("one o six", 106),
        ("one zero six", 106),
        ("two oh one", 201),
        ("one eighteen", 118),
        ("one eighty", 180),
        ("one forty two", 142),
        ("one nineteen", 119),
        ("two ten", 210),
        ("one hundred and seventeen", 117),
        ("one hundred and forty two", 142),
    ],
)
def test_a_number_is_read_as_spoken(number, phrase, value):
    """Hundreds said with or without "hundred", "oh" for zero, decimals, halves."""
    found = number(phrase)
    assert (found.a, found.a_sign, found.op, found.b) == (value, "", "", None)


@pytest.mark.parametrize("phrase", ["gait normal", "a tremor", "to the left", "for the patient", "half normal"])
def test_other_words_are_no_numbers(cut, phrase):
    """ "a", "to", "for" and a lone "half" count nothing."""
    assert find_numbers(cut(phrase)) == []


@pytest.mark.parametrize(
    ("phrase", "values"),
    [
        ("pulse sixty. Four beats", [60, 4]),
        ("deltoid four, biceps five", [4, 5]),
        ("forty, two", [40, 2]),
    ],
)
def test_a_number_ends_with_its_sentence_or_comma(cut, phrase, values):
    """What follows a full stop or comma is another number."""
    assert [mark.number.a for mark in find_numbers(cut(phrase))] == values


def test_a_number_may_start_a_sentence():
    """ "Ten seconds after standing" behind another sentence is a number as well."""
    tokens = tokenize(transcript_of_text("Pulse regular. Ten seconds. Twenty five feet. Fifteen."))
    assert [mark.number.a for mark in find_numbers(tokens) if mark.number] == [10, 25, 15]
