"""Tests that are named by what was done."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


def rows(grammar: Grammar, text: str) -> list[tuple[str, str, str, str]]:
    found = read(transcript_of_text(text), grammar).findings
    return [(f.item, f.side.value if f.side else "", f.status.value, str(f.value or "")) for f in found]


@pytest.mark.parametrize(
    "text", ["Walking he is unsteady.", "On walking unsteady.", "Face normal. Walking is unsteady."]
)
def test_walking_that_opens_a_sentence_is_the_gait(grammar: Grammar, text: str) -> None:
    assert rows(grammar, text)[-1] == ("gait", "", "abnormal", "unsteady")


def test_a_neck_that_opens_a_sentence_is_not_what_was_told_before_it(grammar: Grammar) -> None:
    assert rows(grammar, "Gag normal. Neck not examined.")[-1] == ("neck", "", "not_examined", "")
    assert rows(grammar, "Tone: arms normal. Neck normal.")[-1][0] == "tone"


def test_a_toe_with_a_grade_is_a_muscle_and_without_one_the_plantar_response(grammar: Grammar) -> None:
    assert rows(grammar, "Big toe up, that's four on the right.") == [
        ("strength_extensor_hallucis_longus", "right", "measured", "4")
    ]
    assert rows(grammar, "Big toe up on the right.") == [("plantar_response", "right", "abnormal", "extensor")]


def test_nothing_on_the_other_side_denies_a_sign_and_no_strength(grammar: Grammar) -> None:
    assert rows(grammar, "Ptosis on the left, nothing on the right.")[-1] == ("ptosis", "right", "absent", "")
    assert len(rows(grammar, "Power 4 on the left, nothing on the right.")) == 1
