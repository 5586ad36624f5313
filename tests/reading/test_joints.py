"""A movement alone is of the joint named before it in the sentence."""

from __future__ import annotations

from dictate.reading.joints import shared_joints
from dictate.reading.lexicon import Lexicon
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
