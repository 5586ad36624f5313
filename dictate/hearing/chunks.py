"""Spans of speech → chunks for the recogniser, and times of a chunk → times of the recording."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from dictate.hearing.audio import RATE_HZ, Samples

CHUNK_S = 18.0  # of 15, 18 and 24 s the quickest without loss: the encoder's cost grows faster than its window
PAD_S = 0.2  # kept on either side of speech, so a pause inside a chunk is never longer than 0.4 s
NEAR_S = 0.3  # times of words may lie so far outside of what was kept
FRAME_S = 0.05  # step in which a long span without pauses is searched for its quietest place


@dataclass(frozen=True)
class Span:
    """Voiced samples of a block, end not included."""

    start: int
    end: int


@dataclass(frozen=True)
class Chunk:
    """Stretches of a block that are decoded together, with the pauses between them cut down."""

    block_start_s: float
    pieces: tuple[Span, ...]  # what is kept of the block, in order

    @property
    def seconds(self) -> float:
        """Length of what is kept."""
        return sum(piece.end - piece.start for piece in self.pieces) / RATE_HZ

    def samples(self, block: Samples) -> Samples:
        """The kept sound, joined."""
        return np.concatenate([block[piece.start : piece.end] for piece in self.pieces])

    def at(self, time_s: float, *, end: bool = False) -> float:
        """Time in the recording of a time in the chunk; `end`: at a join, the end of the earlier piece."""
        left = max(0.0, time_s) * RATE_HZ
        for piece in self.pieces:
            length = piece.end - piece.start
            if left < length or (end and left <= length) or piece is self.pieces[-1]:
                return self.block_start_s + (piece.start + min(left, length)) / RATE_HZ
            left -= length
        return self.block_start_s

    def inside(self, time_s: float, *, near_s: float = NEAR_S) -> float | None:
        """Time in the chunk of a time in the recording, or of the nearest kept one; None where that is further off."""
        sample, before = (time_s - self.block_start_s) * RATE_HZ, 0
        found: list[tuple[float, float]] = []
        for piece in self.pieces:
            kept = min(max(sample, piece.start), piece.end)
            found.append((abs(kept - sample) / RATE_HZ, (before + kept - piece.start) / RATE_HZ))
            before += piece.end - piece.start
        off, time = min(found)
        return time if off <= near_s else None


def cut_chunks(
    spans: Sequence[Span], block: Samples, *, block_start_s: float = 0.0, longest_s: float = CHUNK_S
) -> list[Chunk]:
    """Chunks of at most `longest_s`, cut at the widest pause of their second half."""
    longest = int(longest_s * RATE_HZ)
    pieces = _padded(_short_spans(spans, block, longest), len(block))
    chunks: list[Chunk] = []
    while pieces:
        count = _how_many(pieces, longest)
        chunks.append(Chunk(block_start_s, tuple(pieces[:count])))
        pieces = pieces[count:]
    return chunks


def _short_spans(spans: Sequence[Span], block: Samples, longest: int) -> list[Span]:
    """Spans that fit a chunk with their padding; longer ones are cut where they are quietest."""
    most = longest - 2 * int(PAD_S * RATE_HZ)
    fitting: list[Span] = []
    for span in spans:
        rest = span
        while rest.end - rest.start > most:
            middle = _quietest(block, rest.start + most // 2, rest.start + most)
            fitting.append(Span(rest.start, middle))
            rest = Span(middle, rest.end)
        fitting.append(rest)
    return fitting


def _quietest(block: Samples, start: int, end: int) -> int:
    frame = int(FRAME_S * RATE_HZ)
    frames = block[start : start + (end - start) // frame * frame].reshape(-1, frame)
    return start + int(np.argmin((frames.astype(np.float64) ** 2).sum(axis=1))) * frame + frame // 2


def _padded(spans: list[Span], length: int) -> list[Span]:
    """Spans with PAD_S on either side, never beyond the middle of a pause."""
    pad = int(PAD_S * RATE_HZ)
    pieces = []
    for index, span in enumerate(spans):
        before = (spans[index - 1].end + span.start) // 2 if index else 0
        after = (span.end + spans[index + 1].start) // 2 if index + 1 < len(spans) else length
        pieces.append(Span(max(before, span.start - pad), min(after, span.end + pad)))
    return pieces


def _how_many(pieces: list[Span], longest: int) -> int:
    """How many of the first pieces make the next chunk."""
    total = 0
    ends: list[int] = []
    for piece in pieces:
        total += piece.end - piece.start
        if total > longest and ends:
            break
        ends.append(total)
    if len(ends) == len(pieces):
        return len(pieces)
    late = [index for index, end in enumerate(ends) if end >= longest // 2] or [len(ends) - 1]
    return 1 + max(late, key=lambda index: (pieces[index + 1].start - pieces[index].end, index))
