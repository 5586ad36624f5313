"""What the encoder made of a recording, kept aside so that single phrases can be weighed later."""

from __future__ import annotations

import tempfile
import weakref
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from dictate.hearing.chunks import Chunk

Encoded = npt.NDArray[np.float32]  # (frames of 20 ms, width)

FRAMES_PER_S = 50
IN_MEMORY = 8_000_000  # bytes; some minutes of speech, more goes to an unnamed file that ends with the program
MOST_RECORDINGS = 16  # pieces of one examination
MARGIN_S = 0.3  # times of words are this loose
LEAST_S = 0.8  # a shorter stretch is widened: the decoder needs something to listen to


@dataclass(frozen=True)
class _Place:
    chunk: Chunk
    offset: int
    frames: int
    width: int


class Views:
    """The encoder's views of the chunks of one recording, in half precision."""

    def __init__(self) -> None:
        self._file = tempfile.SpooledTemporaryFile(max_size=IN_MEMORY)  # noqa: SIM115  kept open as long as the views
        self._closing = weakref.finalize(self, self._file.close)
        self._places: list[_Place] = []
        self._size = 0

    def keep(self, chunk: Chunk, view: Encoded) -> None:
        """Keep the view of a chunk, less what its window holds beyond the sound."""
        used = np.ascontiguousarray(view[: int(np.ceil(chunk.seconds * FRAMES_PER_S))], np.float16)
        self._file.seek(self._size)
        self._file.write(used.tobytes())
        self._places.append(_Place(chunk, self._size, used.shape[0], used.shape[1] if used.ndim > 1 else 1))
        self._size += used.nbytes

    def stretch(self, start_s: float, end_s: float) -> Encoded | None:
        """The view of a stretch of the recording; None where no chunk holds it."""
        for place in self._places:
            first, last = place.chunk.inside(start_s), place.chunk.inside(end_s)
            if first is not None and last is not None and last > first:
                spare = max(MARGIN_S, (LEAST_S - (last - first)) / 2)
                begin = max(0, int((first - spare) * FRAMES_PER_S))
                end = min(place.frames, int((last + spare) * FRAMES_PER_S) + 1)
                return self._read(place, begin, end) if end > begin else None
        return None

    def sample(self, count: int) -> list[Encoded]:
        """The views of up to so many chunks, from all over the recording."""
        step = max(1, len(self._places) // count)
        return [self._read(place, 0, place.frames) for place in self._places[::step][:count] if place.frames]

    def _read(self, place: _Place, begin: int, end: int) -> Encoded:
        self._file.seek(place.offset + 2 * begin * place.width)
        raw = self._file.read(2 * (end - begin) * place.width)
        return np.frombuffer(raw, np.float16).reshape(end - begin, place.width).astype(np.float32)

    def close(self) -> None:
        """Let go of everything."""
        self._closing()
        self._places.clear()


class Shelf:
    """Views of the recordings heard last, by their digest."""

    def __init__(self) -> None:
        self._views: dict[str, Views] = {}

    def keep(self, sha256: str, views: Views) -> None:
        """Keep the views of a recording; those of the earliest go when there are too many."""
        self._views[sha256] = views
        while len(self._views) > MOST_RECORDINGS:
            self._views.pop(next(iter(self._views))).close()

    def stretch(self, sha256: str, start_s: float, end_s: float) -> Encoded | None:
        """The view of a stretch of a recording; None where it is not at hand."""
        return self._views[sha256].stretch(start_s, end_s) if sha256 in self._views else None

    def forget(self) -> None:
        """Let go of all of them."""
        for views in self._views.values():
            views.close()
        self._views.clear()
