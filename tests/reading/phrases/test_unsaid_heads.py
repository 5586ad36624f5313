"""Senses named without the word that makes them one."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import read, transcript_of_text


def rows(grammar: Grammar, say: str) -> list[str]:
    """Item, side, site, status and value of each finding."""
    found = read(transcript_of_text(say), grammar).findings
    told = ((f.item, f.side and f.side.value, f.site, f.status.value, f.value and str(f.value)) for f in found)
    return [" ".join(part for part in parts if part) for parts in told]


@pytest.mark.parametrize(
    ("say", "wanted"),
    [
        ("Sensory. Pain and temperature intact.", ["pinprick normal", "temperature_sense normal"]),
        (
            "Sensory. Loss of pain and temperature below T4 on the left.",
            ["pinprick left t4 abnormal loss", "temperature_sense left t4 abnormal loss"],
        ),
        ("Temperature 37.2 degrees.", ["temperature measured 37.2"]),
    ],
)
def test_pain_and_temperature_are_two_senses(grammar: Grammar, say: str, wanted: list[str]) -> None:
    """Under their heading only."""
    assert rows(grammar, say) == wanted
