"""Loudness of a murmur against its thrill. Source: Freeman and Levine 1933 (looked up, secondary)."""

from __future__ import annotations

import pytest

from dictate.grammar import load_grammar
from dictate.pipeline import Typed, examine


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("Systolic murmur grade two with a thrill.", True),
        ("Systolic murmur 3/6 with a thrill.", True),
        ("Systolic murmur 4/6 with a thrill.", False),
        ("Systolic murmur two out of six, no thrill.", False),
        ("Systolic murmur four out of six, no thrill.", True),
        ("Systolic murmur four out of six.", False),
        ("Systolic murmur with a thrill.", False),
        ("Systolic murmur two out of six. Thrill over the left carotid.", False),
        ("Systolic murmur two out of four with a thrill.", False),
        ("Systolic murmur 2/6 at the apex. Diastolic murmur 4/6 at the base. No thrill.", False),
    ],
)
def test_a_thrill_goes_with_a_loud_murmur(text, asked):
    """From grade 4 of 6 on; a look, for the grade and the thrill are both kept as said."""
    exam = examine([Typed("typed", text)], engine=None, grammar=load_grammar())
    found = [query for query in exam.queries if query.code == "value-implausible"]
    assert [query.severity for query in found] == (["look"] if asked else [])
