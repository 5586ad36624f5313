"""Negations behind what they deny."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


def rows(grammar: Grammar, text: str) -> list[tuple[str, str, str]]:
    found = read(transcript_of_text(text), grammar).findings
    return [(one.item, one.side.value if one.side else "", one.status.value) for one in found]


@pytest.mark.parametrize(
    ("text", "item"),
    [
        ("Nystagmus I didn't see.", "nystagmus"),
        ("Clonus I couldn't find.", "clonus"),
        ("Carotid bruit I could not hear.", "carotid_bruit"),
        ("BP lying 120/80. Dizziness on standing he denies.", "orthostatic_symptoms"),
    ],
)
def test_a_sign_that_was_not_found_is_absent(grammar: Grammar, text: str, item: str) -> None:
    assert rows(grammar, text)[-1] == (item, "", "absent")


def test_what_everybody_has_and_was_not_seen_is_not_absent(grammar: Grammar) -> None:
    assert rows(grammar, "Left fundus I could not see.") == [("fundi", "left", "not_assessable")]


def test_what_is_not_done_fully_is_not_normal(grammar: Grammar) -> None:
    assert rows(grammar, "Face is symmetrical but the left eye doesn't close fully.") == [
        ("facial_strength", "", "normal")
    ]


def test_a_verb_left_unsaid_makes_an_exception(grammar: Grammar) -> None:
    found = rows(grammar, "Right pupil reacts, left does not.")
    assert found[0] == ("pupil_reaction", "right", "normal")
    assert ("pupil_reaction", "left", "normal") not in found
