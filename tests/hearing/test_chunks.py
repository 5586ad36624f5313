"""Chunks cover all that is spoken, no more, and know the time of the recording."""

from __future__ import annotations

import numpy as np
import pytest
from hearing.sounds import noise, silence
from hypothesis import given, settings
from hypothesis import strategies as st

from dictate.hearing.audio import RATE_HZ
from dictate.hearing.chunks import CHUNK_S, PAD_S, Chunk, Span, cut_chunks


def seconds(*pairs: tuple[float, float]) -> list[Span]:
    return [Span(round(start * RATE_HZ), round(end * RATE_HZ)) for start, end in pairs]


def test_silence_gives_no_chunk() -> None:
    assert cut_chunks([], silence(5.0)) == []


def test_a_short_dictation_is_one_chunk() -> None:
    (chunk,) = cut_chunks(seconds((1, 3), (4, 6)), silence(8.0))
    assert chunk.seconds == pytest.approx(4 + 4 * PAD_S)


def test_a_pause_inside_is_capped() -> None:
    """A minute of silence between two statements costs no time."""
    (chunk,) = cut_chunks(seconds((1, 3), (63, 65)), silence(70.0))
    assert chunk.seconds == pytest.approx(4 + 4 * PAD_S)
    assert 2 * PAD_S <= 0.4


def test_a_short_pause_is_kept_as_it_is() -> None:
    """Nothing of the sound is doubled by padding."""
    (chunk,) = cut_chunks(seconds((1, 3), (3.1, 5)), silence(8.0))
    assert chunk.seconds == pytest.approx(4 + 2 * PAD_S)


def test_the_cut_falls_into_the_widest_pause() -> None:
    spans = seconds((0, 8), (8.4, 15), (16.5, 20), (20.4, 30))
    first, second = cut_chunks(spans, silence(31.0), longest_s=24.0)
    assert (len(first.pieces), len(second.pieces)) == (2, 2)


def test_speech_without_a_pause_is_cut_where_it_is_quietest() -> None:
    block = noise(40.0)
    block[round(19.0 * RATE_HZ) : round(19.2 * RATE_HZ)] *= 0.01
    first, second = cut_chunks(seconds((0, 40)), block, longest_s=24.0)
    assert 19.0 < first.pieces[-1].end / RATE_HZ < 19.2
    assert first.pieces[-1].end == second.pieces[0].start


def test_times_of_a_chunk_become_times_of_the_recording() -> None:
    chunk = Chunk(100.0, tuple(seconds((1, 3), (10, 12))))
    assert [chunk.at(time_s) for time_s in (0.0, 1.5, 2.5, 4.0)] == pytest.approx([101.0, 102.5, 110.5, 112.0])


def test_at_a_join_a_word_ends_in_the_earlier_piece_and_starts_in_the_later() -> None:
    chunk = Chunk(0.0, tuple(seconds((1, 3), (10, 12))))
    assert chunk.at(2.0, end=True) == pytest.approx(3.0)
    assert chunk.at(2.0) == pytest.approx(10.0)


@pytest.mark.parametrize(("time_s", "expected"), [(-1.0, 1.0), (99.0, 3.0)])
def test_a_time_outside_the_chunk_is_its_edge(time_s: float, expected: float) -> None:
    assert Chunk(0.0, tuple(seconds((1, 3)))).at(time_s) == pytest.approx(expected)


@settings(deadline=None, max_examples=60)
@given(st.lists(st.tuples(st.floats(0.05, 45.0), st.floats(0.3, 5.0)), min_size=1, max_size=15))
def test_every_voiced_sample_is_in_just_one_chunk(lengths: list[tuple[float, float]]) -> None:
    """Whatever the lengths of speech and pauses, and no chunk is longer than it may be."""
    spans, at = [], RATE_HZ
    for speech_s, pause_s in lengths:
        spans.append(Span(at, at + int(speech_s * RATE_HZ)))
        at = spans[-1].end + int(pause_s * RATE_HZ)
    block = np.zeros(at, np.float32)
    chunks = cut_chunks(spans, block)
    times = np.zeros(len(block), np.int8)
    for chunk in chunks:
        assert chunk.seconds <= CHUNK_S + 1e-6
        assert len(chunk.samples(block)) == round(chunk.seconds * RATE_HZ)
        for piece in chunk.pieces:
            times[piece.start : piece.end] += 1
    assert times.max() == 1
    assert all(times[span.start : span.end].min() == 1 for span in spans)
    starts = [piece.start for chunk in chunks for piece in chunk.pieces]
    assert starts == sorted(starts)
