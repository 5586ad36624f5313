"""Words cut out of what the recogniser wrote: how often the loss is noticed, and how often one is seen where none is.

The text of a chunk is aligned again without the words that were cut, so that its times stretch as after a real loss;
then the two rules of `dictate.hearing` look at it, before any second hearing. A cut is noticed where either names a
stretch that meets the time in which the words were spoken. A false alarm is a span of speech named with nothing cut.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from dictate.hearing import Engine
from dictate.hearing.audio import RATE_HZ, Block, Recording
from dictate.hearing.chunks import Chunk, Span, cut_chunks
from dictate.hearing.engine import Decoded, Timed
from dictate.hearing.kept import Encoded
from dictate.hearing.lost import suspects
from dictate.hearing.passes import BEAM, encode_chunks, to_words
from dictate.model.words import Word

PHRASE = 0  # instead of a number of words: all from one mark to the next
SIZES = (1, 2, 3, PHRASE)
LEAST_PHRASE = 4  # words; shorter ones count as one to three
MARKS = (".", ",", ";", "?", "!")

Seconds = tuple[float, float]


@dataclass
class Heard:
    """One block as it was heard: everything that is needed to align it again without some of its words."""

    block: Block
    spans: list[Span]
    chunks: list[Chunk]
    views: list[Encoded]
    texts: list[Decoded]
    timed: list[list[Timed]]

    def words(self, index: int, timed: Sequence[Timed]) -> list[Word]:
        """Words of the block when those of one chunk are others."""
        parts = [timed if at == index else own for at, own in enumerate(self.timed)]
        return [word for chunk, own in zip(self.chunks, parts, strict=True) for word in to_words(own, chunk)]

    def named(self, words: Sequence[Word]) -> list[Seconds]:
        """Stretches that would be heard again if these were the words."""
        return [(gap.start_s, gap.end_s) for gap in suspects(self.block, self.spans, words)]

    def seconds(self) -> list[Seconds]:
        """The spans in seconds of the recording."""
        first = self.block.start_s
        return [(first + span.start / RATE_HZ, first + span.end / RATE_HZ) for span in self.spans]


def measure(folder: Path, engine: Engine, *, seed: int = 1) -> Counter[str]:
    """Cuts and those noticed by their size, spans and false alarms, of all .wav of a folder."""
    chance = np.random.default_rng(seed)
    counts: Counter[str] = Counter()
    for path in sorted(folder.glob("*.wav")):
        for block in Recording(path).blocks():
            if heard := _hear(engine, block):
                named = heard.named(heard.words(-1, ()))
                counts["spans"] += len(heard.spans)
                counts["false alarms"] += sum(any(_meet(span, one) for one in named) for span in heard.seconds())
                _cut_each_chunk(engine, heard, chance, counts)
    return counts


def table(counts: Counter[str]) -> str:
    """Counts as lines of a Markdown table."""
    rows = [("false alarms, of spans of speech", counts["false alarms"], counts["spans"])]
    rows += [(_name(size), counts[f"{_name(size)} noticed"], counts[_name(size)]) for size in SIZES]
    lines = [f"| {name} | {part}/{whole} | {part / max(1, whole):.1%} |" for name, part, whole in rows]
    return "\n".join(("| cut | noticed | share |", "|---|---|---|", *lines))


def _hear(engine: Engine, block: Block) -> Heard | None:
    spans = engine.spans(block.samples)
    chunks = cut_chunks(spans, block.samples, block_start_s=block.start_s)
    if not chunks:
        return None
    views = encode_chunks(engine, block, chunks)
    texts = engine.decode(views, [engine.prompt(())] * len(views), beam=BEAM)
    timed = engine.align(views, texts, [chunk.seconds for chunk in chunks])
    return Heard(block, spans, chunks, views, texts, timed)


def _cut_each_chunk(engine: Engine, heard: Heard, chance: np.random.Generator, counts: Counter[str]) -> None:
    """One cut of each size in every chunk that has room for it."""
    for index, (chunk, view, text) in enumerate(zip(heard.chunks, heard.views, heard.texts, strict=True)):
        for size in SIZES:
            places = list(runs(heard.timed[index], size))
            if not places:
                continue
            first, last = places[int(chance.integers(len(places)))]
            lost = heard.timed[index][first : last + 1]
            when = chunk.at(lost[0].start_s), chunk.at(lost[-1].end_s, end=True)
            left = [word.text for at, word in enumerate(heard.timed[index]) if not first <= at <= last]
            shorter = replace(text, text="".join(left), tokens=_tokens(engine, "".join(left)))
            (timed,) = engine.align([view], [shorter], [chunk.seconds])
            named = heard.named(heard.words(index, timed))
            counts[_name(size)] += 1
            counts[f"{_name(size)} noticed"] += any(_meet(when, one) for one in named)


def runs(timed: Sequence[Timed], size: int) -> Iterator[tuple[int, int]]:
    """First and last place of every run of `size` words, or of every phrase between marks; never the whole chunk."""
    if size != PHRASE:
        yield from ((at, at + size - 1) for at in range(len(timed) - size) if len(timed) > size)
        return
    first = 0
    for at, word in enumerate(timed):
        if word.text.rstrip().endswith(MARKS):
            if LEAST_PHRASE <= at - first + 1 < len(timed):
                yield first, at
            first = at + 1


def _tokens(engine: Engine, text: str) -> tuple[int, ...]:
    """The text as the decoder spells it: a prompt less its marks."""
    return tuple(engine.prompt([text.strip()])[1 : -len(engine.prompt(()))])


def _meet(one: Seconds, other: Seconds) -> bool:
    return one[0] < other[1] and other[0] < one[1]


def _name(size: int) -> str:
    return "a phrase of four words and more" if size == PHRASE else f"{size} word{'s' if size > 1 else ''}"
