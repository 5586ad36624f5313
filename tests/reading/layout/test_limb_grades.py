"""Limbs in one word with one grade for all."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


def rows(grammar: Grammar, text: str) -> list[tuple[str, str, str]]:
    found = read(transcript_of_text(text), grammar).findings
    return [(one.item, one.side.value if one.side else "", str(one.value or "")) for one in found]


ARM, LEG = "strength_upper_limb", "strength_lower_limb"


@pytest.mark.parametrize("row", ["RUE and RLE 5/5.", "RUE/RLE 5/5.", "RUE, RLE 5/5.", "RUE and RLE are 5/5."])
def test_each_limb_of_the_row_has_the_grade(grammar: Grammar, row: str) -> None:
    assert rows(grammar, row) == [(ARM, "right", "5"), (LEG, "right", "5")]


def test_the_next_limb_has_its_own(grammar: Grammar) -> None:
    assert rows(grammar, "RUE and RLE 5/5, LUE 4/5.") == [(ARM, "right", "5"), (LEG, "right", "5"), (ARM, "left", "4")]


def test_one_limb_alone_is_read_as_it_stands(grammar: Grammar) -> None:
    assert rows(grammar, "Tone decreased LUE. LUE 2/5.") == [("tone", "left", "decreased"), (ARM, "left", "2")]


def test_quotes_hold_the_limb_and_the_grade(grammar: Grammar) -> None:
    found = read(transcript_of_text("RUE and RLE 4/5."), grammar).findings
    assert [piece.quote for piece in found[0].evidence] == ["RUE and RLE 4/5."]
