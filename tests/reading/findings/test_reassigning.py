"""Drafts that get their side or item from the whole sentence."""

from __future__ import annotations

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


def said(grammar: Grammar, text: str) -> list[tuple[str, str, str]]:
    """Item, side and value or status of every finding."""
    findings = read(transcript_of_text(text), grammar).findings
    return [(f.item, f.side or "", str(f.value or f.status.value)) for f in findings]


def test_what_is_excepted_from_the_same_is_of_that_side(grammar: Grammar) -> None:
    """The left biceps is 5, and not the 4 of the right one as well."""
    found = said(grammar, "Right arm: deltoid 3, biceps 4. Left arm the same except biceps 5.")
    assert found[2:] == [("strength_deltoid", "left", "3"), ("strength_biceps", "left", "5")]


def test_normal_is_no_rating_but_what_was_rated(grammar: Grammar) -> None:
    """The arms had normal tone; nobody rated them on the Ashworth scale."""
    found = said(grammar, "Tone: legs spastic (Ashworth 2 R, 1+ L), arms normal.")
    assert found[-1] == ("tone", "", "normal")
