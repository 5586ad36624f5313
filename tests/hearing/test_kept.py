"""Views kept for a later weighing."""

from __future__ import annotations

import numpy as np

from dictate.hearing.audio import RATE_HZ
from dictate.hearing.chunks import Chunk, Span
from dictate.hearing.kept import FRAMES_PER_S, MOST_RECORDINGS, Shelf, Views


def view(seconds: float, first: float = 0.0) -> np.ndarray:
    """Frames that carry their own number."""
    count = int(seconds * FRAMES_PER_S)
    return np.repeat(np.arange(first, first + count, dtype=np.float32)[:, np.newaxis], 4, axis=1)


def test_a_stretch_is_found_in_its_chunk() -> None:
    """Frames around the stretch, from the chunk that holds it, whatever was kept before."""
    views = Views()
    views.keep(Chunk(0.0, (Span(0, 4 * RATE_HZ),)), view(15.0))
    views.keep(Chunk(100.0, (Span(0, 4 * RATE_HZ),)), view(15.0, 500.0))
    found = views.stretch(101.0, 103.0)
    assert found is not None
    assert found.shape == (int(2.6 * FRAMES_PER_S) + 1, 4)
    assert found[0, 0] == 500 + 0.7 * FRAMES_PER_S


def test_what_lies_behind_the_sound_is_not_kept() -> None:
    """A window of 15 s that holds 4 s of sound keeps those."""
    views = Views()
    views.keep(Chunk(0.0, (Span(0, 4 * RATE_HZ),)), view(15.0))
    found = views.stretch(0.0, 4.0)
    assert found is not None
    assert len(found) == 4 * FRAMES_PER_S


def test_a_stretch_over_two_chunks_is_not_at_hand() -> None:
    """Nothing is told about sound that no single chunk holds."""
    views = Views()
    views.keep(Chunk(0.0, (Span(0, 4 * RATE_HZ),)), view(4.0))
    views.keep(Chunk(0.0, (Span(5 * RATE_HZ, 9 * RATE_HZ),)), view(4.0))
    assert views.stretch(3.0, 6.0) is None
    assert views.stretch(20.0, 21.0) is None
    views.close()
    assert views.stretch(1.0, 2.0) is None


def test_the_shelf_holds_a_few_recordings() -> None:
    """The earliest go first, and all when told to."""
    shelf = Shelf()
    for number in range(MOST_RECORDINGS + 1):
        views = Views()
        views.keep(Chunk(0.0, (Span(0, 4 * RATE_HZ),)), view(4.0))
        shelf.keep(str(number), views)
    assert shelf.stretch("0", 1.0, 2.0) is None
    assert shelf.stretch("1", 1.0, 2.0) is not None
    shelf.forget()
    assert shelf.stretch("1", 1.0, 2.0) is None


def test_a_sample_comes_from_all_over() -> None:
    """At most as many as asked for, in order."""
    views = Views()
    for number in range(10):
        views.keep(Chunk(10.0 * number, (Span(0, RATE_HZ),)), view(1.0, 100.0 * number))
    assert [one[0, 0] for one in views.sample(3)] == [0, 300, 600]
