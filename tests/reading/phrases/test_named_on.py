"""Sides in front of names that begin with a part of the body."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Ptosis on the left eye movements full.", [("ptosis", "left", "present"), ("eye_movements", "", "normal")]),
        ("Left eye movements full.", [("eye_movements", "left", "normal")]),
        ("Left eye closure weak.", [("facial_strength", "left", "abnormal")]),
    ],
)
def test_the_part_belongs_to_the_name_behind_it(grammar: Grammar, text: str, told: list[tuple[str, str, str]]) -> None:
    found = read(transcript_of_text(text), grammar).findings
    assert [(one.item, one.side.value if one.side else "", one.status.value) for one in found] == told
