"""Numbers said as about so much."""

from __future__ import annotations

import pytest
from by_hand import finding

from dictate.grammar.rough import rough_word
from dictate.model import Component, Pressure, Quantity, Status, Text, Value


@pytest.mark.parametrize(
    ("quote", "value", "word"),
    [
        ("Respiratory rate about 32.", Quantity(number=32), "about"),
        ("respiratory rate roughly thirty two", Quantity(number=32), "roughly"),
        ("Blood pressure around one forty over eighty", Pressure(systolic=140, diastolic=80), "around"),
        ("timed up and go about twelve seconds", Quantity(number=12), "about"),
        ("ten metres in about twelve seconds", Text(words="10 m in 12 s"), "about"),
        ("Respiratory rate 32", Quantity(number=32), ""),
        ("standing at about three minutes 120 over 76", Pressure(systolic=120, diastolic=76), ""),
        ("at about one minute one twenty over 76", Pressure(systolic=120, diastolic=76), ""),
        ("vibration about the left ankle 8 seconds", Quantity(number=8), ""),
        ("about 30, no, 32", Quantity(number=32), ""),
    ],
)
def test_word_in_front_of_the_number(quote: str, value: Value, word: str) -> None:
    """Of that number alone: not of a time, a place, or what was taken back."""
    said = finding(Component.GENERAL, "respiratory_rate", Status.MEASURED, value=value, quote=quote)
    assert rough_word(said) == word


def test_only_numbers_are_about_so_much() -> None:
    """A sign is not."""
    said = finding(Component.GENERAL, "gait", Status.ABNORMAL, value=Text(words="wide based"), quote="about 3")
    assert rough_word(said) == ""
