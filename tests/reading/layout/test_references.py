"""A patient's reference is no finding, and is known as what it is."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.model import RemarkKind
from dictate.reading import read, transcript_of_text


@pytest.mark.parametrize(
    ("text", "spoken"),
    [
        ("Patient number four seven one. Gait normal.", "471"),
        ("patient number is four seven one, gait normal", "471"),
        ("Record reference is P-104, gait normal.", "P104"),
        ("Patient reference P 17. Gait normal.", "P17"),
        ("Hospital number: X3 oh two. Gait normal.", "X302"),
        ("MRN 0012345\ngait normal", "0012345"),
        ("The patient walks a number of times, gait normal.", None),
        ("Patient reference unknown. Gait normal.", None),
    ],
)
def test_a_reference_is_set_apart(grammar: Grammar, text: str, spoken: str | None) -> None:
    """Its letters and digits are never a pulse, and what is said next is still read."""
    reading = read(transcript_of_text(text), grammar)
    told = [one.readings for one in reading.remarks if one.kind is RemarkKind.REFERENCE]
    assert told == ([(spoken,)] if spoken else [])
    assert [finding.item for finding in reading.findings] == ["gait"]
