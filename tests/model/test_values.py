"""One class per value kind."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter

from dictate.model import Acuity, Choice, Grade, Pressure, Quantity, Score, Text, Value, number_text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (Pressure(systolic=142, diastolic=84), "142/84"),
        (Pressure(systolic=90), "90/palpable"),
        (Quantity(number=72.0), "72"),
        (Quantity(number=36.9), "36.9"),
        (Quantity(number=4, then=2), "4->2"),
        (Quantity(number=3, upto=4), "3-4"),
        (Grade(scale="mrc", grade="4-"), "4-"),
        (Grade(scale="tendon_reflex", grade="trace"), "trace"),
        (Score(points=2, of=3), "2/3"),
        (Score(points=4), "4"),
        (Score(points=None, mark="T"), "T"),
        (Score(points=3, mark="T"), "3T"),
        (Acuity(text="20/30"), "20/30"),
        (Choice(choice="irregularly_irregular"), "irregularly irregular"),
        (Text(words="wide based"), "wide based"),
    ],
)
def test_written_form(value: Value, text: str) -> None:
    """Values are written as the tables promise, and read back as the same kind."""
    assert str(value) == text
    adapter: TypeAdapter[Value] = TypeAdapter(Value)
    assert adapter.validate_json(adapter.dump_json(value)) == value


@given(st.floats(allow_nan=False, allow_infinity=False, min_value=-1e6, max_value=1e6))
def test_number_keeps_its_value(number: float) -> None:
    """Shorter, never another number."""
    assert float(number_text(number)) == number
