"""Speech that lasts longer than its words take."""

from __future__ import annotations

import pytest

from dictate.hearing.shortfall import count_sounds, thin_stretches
from dictate.model import Word

STATEMENTS = "Biceps 2 plus right|Knee jerk 3 plus left|Tone normal in both arms|No pronator drift|Gait slow and steady"
PACE_S = 0.075  # a sound
Span = tuple[float, float]


def spoken(*, without: int = -1) -> tuple[list[Span], list[Word]]:
    """Ten statements with pauses; of one of them the words were lost, those before it fill its time."""
    spans: list[Span] = []
    words: list[Word] = []
    at = 0.0
    for number, statement in enumerate(STATEMENTS.split("|") * 2):
        start = at
        for word in statement.split():
            length = count_sounds(word) * PACE_S
            if number == without:
                words[-1] = words[-1].model_copy(update={"end_s": at + length})
            else:
                words.append(Word(text=word, start_s=at, end_s=at + length, probability=0.9))
            at += length
        spans.append((start, at))
        at += 0.5
    return spans, words


def test_speech_with_all_its_words_is_left_alone() -> None:
    """No stretch is thin."""
    assert thin_stretches(*spoken()) == []


@pytest.mark.parametrize("lost", range(1, 10))
def test_a_lost_statement_is_noticed(lost: int) -> None:
    """Also where the word before it was stretched over its time."""
    spans, words = spoken(without=lost)
    (thin,) = thin_stretches(spans, words)
    assert thin.start_s <= spans[lost][0]
    assert thin.end_s >= spans[lost][1]
    assert thin.missing > 4


def test_too_little_speech_tells_nothing_of_the_pace() -> None:
    """A single sentence has no usual pace to be held against."""
    spans, words = spoken(without=1)
    assert thin_stretches(spans[:2], words) == []
    assert thin_stretches([], []) == []


# Sounds counted by hand: ten 3, one forty two 3 + 4 + 2 (rough rules write "one" as on, "two" as tw).
@pytest.mark.parametrize(
    ("written", "spoken_as"), [("10", "ten"), ("142", "one forty two"), ("108", "one hundred eight")]
)
def test_numbers_count_as_they_are_spoken(written: str, spoken_as: str) -> None:
    """And units as their words."""
    assert count_sounds(written) == sum(map(count_sounds, spoken_as.split()))
    assert count_sounds("kg") == count_sounds("kilograms")
