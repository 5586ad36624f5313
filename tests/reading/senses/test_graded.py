"""What is said of a limb by its own name. No source: how limbs are dictated, from memory."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.marks import Mark
from dictate.reading.read import lexicon_of
from dictate.reading.senses.graded import is_called_weak, is_graded, is_of_limb
from dictate.reading.tokens import tokenize


def marks_and_place(grammar: Grammar, text: str, word: str) -> tuple[list[Mark], int]:
    found = lexicon_of(grammar).find(tokenize(transcript_of_text(text)))
    marks = [part for mark in found for part in (mark.inner or (mark,))]
    return marks, next(at for at, mark in enumerate(marks) if mark.text == word)


@pytest.mark.parametrize(
    ("text", "limb", "weak"),
    [
        ("the right leg is weak", "leg", True),
        ("the right arm and the right leg are very weak", "arm", True),
        ("left arm weak for two days", "arm", False),
        ("her legs are weak, she says", "legs", False),
        ("the right arm is numb", "arm", False),
    ],
)
def test_a_limb_is_called_weak(grammar: Grammar, text: str, limb: str, *, weak: bool) -> None:
    """Not for how long, and not by the patient."""
    assert is_called_weak(*marks_and_place(grammar, text, limb)) is weak


@pytest.mark.parametrize(
    ("text", "word", "of_limb"),
    [
        ("both legs are spastic", "spastic", True),
        ("the right arm is very stiff, the left normal", "stiff", True),
        ("the leg has a clumsy, spastic stance", "spastic", False),
        ("her gait is spastic", "spastic", False),
    ],
)
def test_a_word_is_said_of_the_limb_in_front_of_it(grammar: Grammar, text: str, word: str, *, of_limb: bool) -> None:
    assert is_of_limb(*marks_and_place(grammar, text, word)) is of_limb


@pytest.mark.parametrize(
    ("text", "limb", "graded"),
    [
        ("right leg, five throughout", "leg", True),
        ("right leg not tested", "leg", True),
        ("left arm, standing, one minute, 118/76", "arm", False),
        ("left arm 3 cm shorter", "arm", False),
    ],
)
def test_a_grade_beside_a_limb(grammar: Grammar, text: str, limb: str, *, graded: bool) -> None:
    """A time and a length are none."""
    assert is_graded(*marks_and_place(grammar, text, limb)) is graded
