"""Proximal and distal of a limb."""

from __future__ import annotations

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


def grades(grammar: Grammar, text: str) -> list[tuple[str, str, str]]:
    """Item, side and grade of every finding."""
    findings = read(transcript_of_text(text), grammar).findings
    return [(f.item, f.side or "", str(f.value)) for f in findings]


def test_a_part_is_of_the_limb_in_front_of_it(grammar: Grammar) -> None:
    """With its side."""
    assert grades(grammar, "Power in the right arm 4 proximally, 3 distally.") == [
        ("strength_upper_limb_proximal", "right", "4"),
        ("strength_upper_limb_distal", "right", "3"),
    ]


def test_a_limb_behind_two_parts_is_of_both(grammar: Grammar) -> None:
    """And of no part named later."""
    assert grades(grammar, "Power 4 proximally and 3 distally in the right leg.") == [
        ("strength_lower_limb_proximal", "right", "4"),
        ("strength_lower_limb_distal", "right", "3"),
    ]
