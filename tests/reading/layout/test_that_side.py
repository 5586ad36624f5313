"""A side that is pointed back to."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


def rows(grammar: Grammar, text: str) -> list[tuple[str, str]]:
    found = read(transcript_of_text(text), grammar).findings
    return [(one.item, one.side.value if one.side else "") for one in found]


@pytest.mark.parametrize("pointing", ["On that side", "On the same side", "On this side", "On that same side"])
def test_is_the_side_said_last(grammar: Grammar, pointing: str) -> None:
    found = rows(grammar, f"There is pronator drift on the right. {pointing} biceps 4, triceps 3.")
    assert found[1:] == [("strength_biceps", "right"), ("strength_triceps", "right")]


def test_is_no_side_where_the_sentence_before_names_both(grammar: Grammar) -> None:
    found = rows(grammar, "Biceps jerk brisk on the left and normal on the right. On that side deltoid 4.")
    assert found[-1] == ("strength_deltoid", "")


def test_is_no_side_where_none_was_said_near_it(grammar: Grammar) -> None:
    found = rows(grammar, "Left ptosis. Gait normal. Speech normal. Neck normal. On that side deltoid 4.")
    assert found[-1] == ("strength_deltoid", "")


def test_follows_a_limb_named_with_its_side(grammar: Grammar) -> None:
    found = rows(grammar, "Tone increased in the left leg. On the same side hip flexion 4.")
    assert found[-1] == ("strength_iliopsoas", "left")
