"""Voiced stretches without words."""

from __future__ import annotations

import numpy as np
from hearing.ears import FakeEars, heard
from hearing.sounds import tone

from dictate.hearing.audio import RATE_HZ, Block
from dictate.hearing.chunks import CHUNK_S, Span
from dictate.hearing.engine import Decoded
from dictate.hearing.lost import fill_gaps, find_gaps, letters
from dictate.model import Word

BLOCK = Block(0.0, tone(20.0))
SPANS = [Span(0, 10 * RATE_HZ)]


def words(*entries: tuple[str, float, float]) -> list[Word]:
    """Words with their times."""
    return [Word(text=text, start_s=start, end_s=end, probability=0.9) for text, start, end in entries]


HEARD = words(("pulse", 0.0, 1.0), ("seventy", 1.0, 2.0), ("two", 2.0, 4.0), ("regular", 7.0, 10.0))


def test_a_gap_is_filled_by_a_second_hearing() -> None:
    """Words found in a voiced hole take their place in the order."""
    found, lost = fill_gaps(FakeEars(lambda *_: heard("no murmur")), BLOCK, SPANS, HEARD)
    assert [word.text for word in found] == ["pulse", "seventy", "two", "no", "murmur", "regular"]
    assert lost == []


def test_a_gap_without_words_is_reported() -> None:
    """Voiced for three seconds and nothing heard, twice: named with its time."""
    found, lost = fill_gaps(FakeEars(lambda *_: heard("")), BLOCK, SPANS, HEARD)
    assert found == HEARD
    assert [(each.start_s, each.end_s) for each in lost] == [(4.0, 7.0)]


def test_an_unsure_second_hearing_is_not_taken() -> None:
    """A short stretch tempts the decoder to invent: what it is not sure of becomes a query instead."""
    ears = FakeEars(lambda *_: heard("coordination", mean_logprob=-0.75))
    found, lost = fill_gaps(ears, BLOCK, SPANS, HEARD)
    assert found == HEARD
    assert len(lost) == 1


def test_a_word_heard_again_is_not_doubled() -> None:
    """A second hearing that only repeats the neighbours adds nothing."""
    found, lost = fill_gaps(FakeEars(lambda *_: heard("two regular")), BLOCK, SPANS, HEARD)
    assert found == HEARD
    assert len(lost) == 1


def test_a_silent_hole_is_no_gap() -> None:
    """Where the search for voice bridged a pause, nothing is asked."""
    samples = tone(20.0)
    samples[4 * RATE_HZ : 7 * RATE_HZ] *= 0.05
    found, lost = fill_gaps(FakeEars(lambda *_: heard("invented")), Block(0.0, samples), SPANS, HEARD)
    assert (found, lost) == (HEARD, [])


def test_far_too_few_words_for_the_time_are_heard_again() -> None:
    """A span whose one word is stretched over eight seconds is replaced by a fuller hearing."""
    spans = [Span(0, 2 * RATE_HZ), Span(3 * RATE_HZ, 5 * RATE_HZ), Span(6 * RATE_HZ, 14 * RATE_HZ)]
    thin = words(("blood", 0, 1), ("pressure", 1, 2), ("standing", 3, 4), ("normal", 4, 5), ("gait", 6, 14))
    full = "gait slow and wide based with a stick"
    found, lost = fill_gaps(FakeEars(lambda *_: heard(full)), BLOCK, spans, thin)
    assert " ".join(word.text for word in found).endswith(full)
    assert lost == []


def test_speech_without_any_word_is_found() -> None:
    """A span with no words at all is one gap; covered speech is none."""
    gaps = find_gaps([(0.0, 4.0), (12.0, 15.0)], HEARD)
    assert [(gap.start_s, gap.end_s) for gap in gaps] == [(12.0, 15.0)]


def test_a_gap_behind_a_number_whose_word_ends_early_is_none() -> None:
    """As long behind a word that had its time it is one; behind "113" the time belongs to the number."""
    spans = [*((5.0 * at, 5.0 * at + 1.1) for at in range(4)), (20.0, 23.0)]
    said = [
        entry
        for at in range(4)
        for entry in (("tone", 5.0 * at, 5.0 * at + 0.4), ("normal", 5.0 * at + 0.4, 5.0 * at + 1.1))
    ]
    for last, gaps in (("113", []), ("tone", [(21.0, 21.9)])):
        after = words(*said, ("pulse", 20.0, 20.6), (last, 20.6, 21.0), ("and", 21.9, 22.2), ("regular", 22.2, 23.0))
        assert [(gap.start_s, gap.end_s) for gap in find_gaps(spans, after)] == gaps


def test_digits_count_as_the_words_they_stand_for() -> None:
    """ "142" is longer to say than "at"."""
    assert letters(words(("142", 0, 1))) == 12
    assert letters(words(("at,", 0, 1))) == 2


def test_block_without_speech() -> None:
    """Nothing voiced, nothing lost."""
    assert fill_gaps(FakeEars(lambda *_: heard("x")), Block(0.0, np.zeros(RATE_HZ, np.float32)), [], []) == ([], [])


def test_a_long_gap_is_heard_in_pieces_that_the_recogniser_can_take() -> None:
    """Sixty seconds without words: no piece is longer than a chunk, and all of it is heard."""
    lengths: list[float] = []

    def say(seconds: float, *_: object) -> Decoded:
        lengths.append(seconds)
        return heard("gait slow and wide based with a stick in the right hand")

    found, lost = fill_gaps(FakeEars(say), Block(0.0, tone(62.0)), [Span(RATE_HZ, 61 * RATE_HZ)], [])
    assert max(lengths) <= CHUNK_S
    assert sum(lengths) >= 60.0
    assert len(found) >= 4 * 12 - 2
    assert lost == []


def test_a_long_gap_that_is_unsure_in_one_piece_is_reported_whole() -> None:
    """Half a phrase would read as another one."""
    answers = iter([heard("gait slow and wide based"), heard("coordination", mean_logprob=-0.75)] * 4)
    found, lost = fill_gaps(
        FakeEars(lambda *_: next(answers)), Block(0.0, tone(62.0)), [Span(RATE_HZ, 61 * RATE_HZ)], []
    )
    assert found == []
    assert [(each.start_s, each.end_s) for each in lost] == [(1.0, 61.0)]
