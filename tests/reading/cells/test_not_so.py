"""What a negation denies."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.cells.not_so import denies
from dictate.reading.read import read


@pytest.mark.parametrize(
    ("phrase", "word", "expected"),
    [("gait not ataxic", "not", True), ("ptosis, no", "no", True), ("tremor no zebra", "no", False)],
)
def test_a_negation_after_a_name_denies_what_follows(after, phrase, word, expected):
    """A word for how it was, or nothing more."""
    node, following = after(phrase, word)
    assert denies(node, following) is expected


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("The tongue is weak on the left but not wasted.", ["tongue left abnormal weak (not wasted)"]),
        ("The left disc is pale but not swollen.", ["fundi left abnormal discs pale (not swollen)"]),
        ("The tongue has no wasting, deviates to the right.", ["tongue right abnormal deviates (no wasting)"]),
        ("Ptosis on the left but not on the right.", ["ptosis left present", "ptosis right absent"]),
    ],
)
def test_what_was_not_so_is_no_finding(grammar: Grammar, text: str, wanted: list[str]) -> None:
    """ "But not" and a word for how it was: said of what was found, and never that it was so."""
    found = read(transcript_of_text(f"Cranial nerves. {text}"), grammar).findings
    said = [
        f"{f.item} {f.side.value if f.side else ''} {f.status.value} {f.value or ''}".strip()
        + (f" ({'; '.join(f.detail)})" if f.detail else "")
        for f in found
    ]
    assert said == wanted
