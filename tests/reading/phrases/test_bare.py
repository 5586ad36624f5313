"""Numbers that name their item by themselves."""

from __future__ import annotations

import pytest

from dictate.reading.read import read
from dictate.reading.tokens import transcript_of_text


@pytest.mark.parametrize(
    ("say", "item", "value", "unit"),
    [
        ("Afebrile, 80BPM.", "heart_rate", "80", "/min"),
        ("BP 158/98, 16 rpm.", "respiratory_rate", "16", "/min"),
        ("RR 12, 35.8 C.", "temperature", "35.8", "Cel"),
        ("Alert. 128 over 84.", "blood_pressure", "128/84", "mm[Hg]"),
    ],
)
def test_number_names_its_item(grammar, say, item, value, unit):
    """A unit that only one item has, or a pair that can only be a pressure."""
    findings = read(transcript_of_text(say), grammar).findings
    assert (item, value, unit) in [(one.item, str(one.value), one.unit) for one in findings if one.value]


def test_unit_of_the_item_just_named_names_no_other(grammar):
    """The second rate is a second reading of the item named before."""
    findings = read(transcript_of_text("Heart rate 72 bpm lying, 95 bpm standing."), grammar).findings
    assert [(one.item, str(one.value)) for one in findings] == [("heart_rate", "72"), ("heart_rate", "95")]
