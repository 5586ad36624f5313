"""A movement alone is of the joint named before it in the sentence."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dictate.reading.phrases.joints import shared_joints
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.tokens import Token, tokenize, transcript_of_text


def shared(lexicon: Lexicon, text: str) -> list[str]:
    """Items of the movements that have no joint of their own."""
    tokens: list[Token] = tokenize(transcript_of_text(text))
    return [mark.roles[0].item for mark in shared_joints(tokens, [], lexicon.meanings)]


def test_movements_after_a_joint(lexicon: Lexicon) -> None:
    """Each list has its own joint."""
    text = "hip flexion five, extension four; knee flexion five, extension four"
    assert shared(lexicon, text) == ["strength_gluteus_maximus", "strength_quadriceps"]


def test_a_sentence_ends_the_joint(lexicon: Lexicon) -> None:
    """What comes after a full stop may be of any joint."""
    assert shared(lexicon, "Hip flexion five. Extension four.") == []


def test_no_movement_the_joint_does_not_have(lexicon: Lexicon) -> None:
    """A movement nobody grades at that joint stays a word."""
    assert shared(lexicon, "knee flexion five, inversion four") == []


@pytest.mark.parametrize(
    ("text", "item"),
    [
        ("sh abd 4/5 R", "deltoid"),
        ("Power: elb flexn 4/5 R", "biceps"),
        ("Power: el ext 4/5 R", "triceps"),
        ("wr flx 4/5 R", "wrist_flexors"),
        ("kn ext 4/5 R", "quadriceps"),
        ("hip abdn 4/5 R", "hip_abductors"),
        ("Power: ank DF 4/5 R", "tibialis_anterior"),
    ],
)
def test_joint_and_movement_in_short(rows, text, item):
    """Common practice, no source: typed notes shorten both words; neither is the strength as a whole."""
    assert rows(text) == [f"strength_{item} right measured 4"]


def test_a_joint_with_a_grade_that_no_jerk_has_is_a_strength(rows: Callable[[str], list[str]]) -> None:
    """And a list of joints goes on, where the first of them can only be one."""
    assert rows("Knees 5, ankles 4 minus.") == [
        "strength_lower_limb knee measured 5",
        "strength_lower_limb_distal measured 4-",
    ]
    assert rows("Hips 4 plus, knees 4.") == [
        "strength_lower_limb_proximal measured 4+",
        "strength_lower_limb knee measured 4",
    ]
    assert rows("Knees 2, ankles 1.") == ["reflex_patellar measured 2+", "reflex_achilles measured 1+"]
