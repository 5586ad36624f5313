"""Speech that lasts longer than its words take."""

from __future__ import annotations

import pytest

from dictate.hearing.shortfall import count_sounds, pace_of, thin_stretches
from dictate.model import Word

NUMBERS = "Pulse 113 sitting|Pressure 142/84 right|Pulse 108 standing|Pressure 118/76 lying|Pulse 121 and regular"
STATEMENTS = "Biceps 2 plus right|Knee jerk 3 plus left|Tone normal in both arms|No pronator drift|Gait slow and steady"
PACE_S = 0.075  # a sound
Span = tuple[float, float]


def spoken(
    *, without: int = -1, statements: str = STATEMENTS, hundreds: bool = False, comma_s: float = 0.0
) -> tuple[list[Span], list[Word]]:
    """Ten statements with pauses; of one of them the words were lost, those before it fill its time.

    hundreds: 113 takes the time of "one hundred and thirteen"; comma_s: a pause behind a mark.
    """
    spans: list[Span] = []
    words: list[Word] = []
    at = 0.0
    for number, statement in enumerate(statements.split("|") * 2):
        start = at
        for word in statement.split():
            length = count_sounds(word, hundreds=hundreds) * PACE_S
            if number == without:
                words[-1] = words[-1].model_copy(update={"end_s": at + length})
            else:
                words.append(Word(text=word, start_s=at, end_s=at + length, probability=0.9))
            at += length + (comma_s if word.endswith(",") else 0.0)
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


@pytest.mark.parametrize("hundreds", [True, False])
def test_numbers_in_full_and_in_short_are_no_loss(hundreds: bool) -> None:
    """How the speaker says hundreds is told from the time that they take."""
    spans, words = spoken(statements=NUMBERS, hundreds=hundreds)
    pace = pace_of(spans, words)
    assert pace
    assert pace.hundreds is hundreds
    assert pace.sound_s == pytest.approx(PACE_S, rel=0.2)
    assert thin_stretches(spans, words) == []


@pytest.mark.parametrize("lost", range(1, 10))
@pytest.mark.parametrize("hundreds", [True, False])
def test_a_lost_statement_among_numbers_is_noticed(lost: int, hundreds: bool) -> None:
    """However they are said."""
    assert thin_stretches(*spoken(statements=NUMBERS, hundreds=hundreds, without=lost))


def test_a_pause_behind_a_comma_is_no_loss() -> None:
    """Lists of "5 right, 4 plus left" pause for less than would end a span, and five of them add up to a second."""
    lists = (
        "Biceps 5 right, 4 plus left|Triceps 5 right, 4 left|Hip flexors 5 right, 3 left|No pronator drift|Gait slow"
    )
    assert thin_stretches(*spoken(statements=lists, comma_s=0.25)) == []


def test_a_numeral_with_too_little_time_is_short_by_the_rest() -> None:
    """The aligner ends digits early: "113" of 0.6 s lacks what "one hundred and thirteen" needs."""
    pace = pace_of(*spoken(statements=NUMBERS, hundreds=True))
    assert pace
    word = Word(text="113", start_s=1.0, end_s=1.6, probability=0.9)
    assert pace.short_s(word) == pytest.approx(count_sounds("113", hundreds=True) * pace.sound_s - 0.6)
    assert pace.short_s(word.model_copy(update={"end_s": 9.0})) == 0.0
    assert pace.short_s(word.model_copy(update={"end_s": None})) == 0.0
