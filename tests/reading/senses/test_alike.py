"""What "symmetric" and "none" are of."""

from __future__ import annotations

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


def rows(grammar: Grammar, text: str) -> list[tuple[str, str, str]]:
    found = read(transcript_of_text(text), grammar).findings
    return [(one.item, one.side.value if one.side else "", one.status.value) for one in found]


def test_a_grade_alike_in_a_limb_is_one_finding(grammar: Grammar) -> None:
    assert rows(grammar, "Reflexes two plus and symmetric in the arms.") == [("reflex_upper_limb", "", "measured")]


def test_none_between_two_sides_is_of_the_second(grammar: Grammar) -> None:
    assert rows(grammar, "Clonus on the right none on the left.") == [
        ("clonus", "right", "present"),
        ("clonus", "left", "absent"),
    ]


def test_a_sign_alike_on_both_sides_is_not_normal(grammar: Grammar) -> None:
    assert rows(grammar, "Wasting of both hands, symmetrical.") == [("bulk", "both", "abnormal")]
    assert rows(grammar, "Face symmetrical.") == [("facial_strength", "", "normal")]
