"""Half a pressure is no number of an item that was named before it.

Source: none; how pressures are said (common practice).
"""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.model import RemarkKind
from dictate.reading import read, transcript_of_text


@pytest.mark.parametrize(
    ("text", "half"),
    [
        ("BP lying 138/82 HR 64, standing 1 min systolic below 90.", "systolic below 90."),
        ("Lying 138/82, pulse 64, systolic 90.", "systolic 90."),
        ("Pulse 64, diastolic blood pressure was only 40.", "diastolic blood pressure was only 40."),
    ],
)
def test_half_a_pressure_is_no_pulse(grammar: Grammar, text: str, half: str) -> None:
    """It is shown as not placed, whole."""
    reading = read(transcript_of_text(text), grammar)
    assert [str(one.value) for one in reading.findings if one.item == "heart_rate"] == ["64"]
    assert [one.evidence.quote for one in reading.remarks if one.kind is RemarkKind.NOT_PLACED] == [half]


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("Heart rate 80, 3/6 systolic murmur at the apex.", {"heart_rate": "80", "murmur": "3/6 systolic"}),
        ("Systolic murmur. Pulse 72.", {"murmur": "systolic", "heart_rate": "72"}),
        ("Systolic 90 palpable, pulse 110.", {"blood_pressure": "90/palpable", "heart_rate": "110"}),
        ("Blood pressure 142 over 84, pulse 72.", {"blood_pressure": "142/84", "heart_rate": "72"}),
    ],
)
def test_whole_pressures_and_murmurs_are_left_alone(grammar: Grammar, text: str, values: dict[str, str]) -> None:
    """Nor does a half reach over a full stop."""
    reading = read(transcript_of_text(text), grammar)
    assert {one.item: str(one.value) for one in reading.findings} == values


@pytest.mark.parametrize(
    ("text", "value", "limit"),
    [
        ("Standing blood pressure at least 100/60.", "100/60", "at least"),
        ("Heart rate over 120.", "120", "over"),
        ("Heart rate below 40.", "40", "below"),
    ],
)
def test_a_number_said_as_a_limit_keeps_its_word(grammar: Grammar, text: str, value: str, limit: str) -> None:
    """And the word is not asked about as left over."""
    reading = read(transcript_of_text(text), grammar)
    assert [(str(one.value), one.detail, one.is_bound) for one in reading.findings] == [(value, (limit,), True)]
    assert reading.remarks == ()
