"""Voiced stretches without words: heard again alone, and reported when nothing comes of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

import numpy as np

from dictate.hearing.audio import RATE_HZ, Block, Samples
from dictate.hearing.chunks import Chunk, Span, cut_chunks
from dictate.hearing.engine import Decoded, Timed
from dictate.hearing.passes import BEAM, Ears, is_doubtful, to_words
from dictate.hearing.shortfall import Pace, count_sounds, pace_of, thin_stretches
from dictate.model.words import Stretch, Word

LONGEST_GAP_S = 0.65  # word times are this loose at commas; voiced and without words for longer: something may be lost
LEAST_RATE = 0.5  # share of the speaker's usual letters per second, below which words may be lost
LEAST_SPAN_S = 1.0  # shorter spans say nothing about the rate
LETTERS_PER_DIGIT = 4  # "142" stands for "one forty two"
MORE = 1.3  # the second hearing replaces the first when it has this many times its letters
HALF = 0.5  # or when it fills this share of the time that the words of the first left over
FRAME_S = 0.05
LOUD = 0.35  # share of the usual level of speech: a pause that the search for voice bridged stays below it
LEAST_VOICED_S = 0.4  # loud for longer within the gap: a word may be there
# A short stretch heard by itself tempts the decoder to make something up: only what it is sure of is taken.
SURE_LOGPROB = -0.6
SURE_WORD = 0.5


@dataclass(frozen=True)
class Gap:
    """A voiced stretch to be heard again; `whole`: its own words are in doubt too."""

    start_s: float
    end_s: float
    whole: bool
    missing: float = 0.0  # sounds that its words lack for the time


def fill_gaps(
    ears: Ears, block: Block, spans: Sequence[Span], words: Sequence[Word]
) -> tuple[list[Word], list[Stretch]]:
    """The words with what a second hearing found in the gaps, and the gaps that stayed without words."""
    seconds = [_seconds(span, block) for span in spans]
    gaps = suspects(block, spans, words)
    result, lost = list(words), []
    for gap, found in zip(gaps, _hear_alone(ears, block, gaps), strict=True):
        inside = [word for word in result if _within(word, gap)]
        fresh = [word for word in found if _within(word, gap)]
        if not gap.whole:
            fresh = _without_neighbours(fresh, result, gap)
        if fresh and _is_fuller(fresh, inside, gap):
            result = sorted(
                [word for word in result if word not in inside] + fresh, key=lambda word: word.start_s or 0.0
            )
        elif not inside:
            lost.append(Stretch(start_s=round(gap.start_s, 2), end_s=round(gap.end_s, 2)))
    for thin in thin_stretches(seconds, result):
        if not any(one.start_s < thin.end_s and thin.start_s < one.end_s for one in lost):
            lost.append(Stretch(start_s=round(thin.start_s, 2), end_s=round(thin.end_s, 2)))
    return result, sorted(lost, key=lambda one: one.start_s)


def suspects(block: Block, spans: Sequence[Span], words: Sequence[Word]) -> list[Gap]:
    """All stretches that are heard again: loud ones without words, and those with too few words for their time."""
    level = _usual_level(block, spans)
    seconds = [_seconds(span, block) for span in spans]
    gaps = [gap for gap in find_gaps(seconds, words) if gap.whole or _voiced_s(block, gap, level) > LEAST_VOICED_S]
    return gaps + [Gap(thin.start_s, thin.end_s, True, thin.missing) for thin in thin_stretches(seconds, words)]


def _is_fuller(fresh: Sequence[Word], inside: Sequence[Word], gap: Gap) -> bool:
    """Whether the second hearing says so much more that it takes the place of the first."""
    if gap.missing:
        more = sum(count_sounds(word.text) for word in fresh) - sum(count_sounds(word.text) for word in inside)
        return more > HALF * gap.missing
    return letters(fresh) > MORE * letters(inside)


def find_gaps(spans: Sequence[tuple[float, float]], words: Sequence[Word]) -> list[Gap]:
    """Voiced stretches (start, end in seconds) that words do not cover, or cover far too thinly."""
    held = [[word for word in words if _middle(word) >= start and _middle(word) < end] for start, end in spans]
    rates = [letters(own) / (end - start) for own, (start, end) in zip(held, spans, strict=True) if own]
    usual = median(rates) if rates else 0.0
    pace = pace_of(spans, words)
    gaps: list[Gap] = []
    for own, (start, end) in zip(held, spans, strict=True):
        thin = end - start >= LEAST_SPAN_S and letters(own) < LEAST_RATE * usual * (end - start)
        if own and thin:
            gaps.append(Gap(start, end, whole=True))
        else:
            gaps += [Gap(*run, whole=False) for run in _uncovered(start, end, words, pace)]
    return gaps


def letters(words: Sequence[Word]) -> int:
    """Length of the words as spoken: a digit counts as the word it stands for."""
    text = "".join(word.text for word in words)
    return sum(LETTERS_PER_DIGIT if char.isdigit() else char.isalpha() for char in text)


def _uncovered(start: float, end: float, words: Sequence[Word], pace: Pace | None) -> list[tuple[float, float]]:
    """Runs without words that stay too long when the words beside them get the time that their sounds need."""
    runs, at, short_s = [], start, 0.0
    for word in words:
        if word.start_s is None or word.end_s is None or word.end_s <= at:
            continue
        if word.start_s >= end:
            break
        own_s = pace.short_s(word) if pace else 0.0
        if word.start_s - at > LONGEST_GAP_S + short_s + own_s:
            runs.append((at, word.start_s))
        at, short_s = max(at, word.end_s), own_s
    if end - at > LONGEST_GAP_S + short_s:
        runs.append((at, end))
    return runs


def _hear_alone(ears: Ears, block: Block, gaps: Sequence[Gap]) -> list[list[Word]]:
    """Words of each gap, heard by itself without terms; none where the hearing of any part of it is doubtful."""
    parts = [_chunks(gap, block) for gap in gaps]
    chunks = [chunk for own in parts for chunk in own]
    encoded = [ears.encode(chunk.samples(block.samples)) for chunk in chunks]
    decoded = ears.decode(encoded, [ears.prompt(())] * len(chunks), beam=BEAM)
    timed = ears.align(encoded, decoded, [chunk.seconds for chunk in chunks])
    heard = iter(
        (to_words(words, chunk), _is_sure(text, words, chunk))
        for chunk, text, words in zip(chunks, decoded, timed, strict=True)
    )
    found = [[next(heard) for _ in own] for own in parts]
    return [[word for words, _ in own for word in words] if all(sure for _, sure in own) else [] for own in found]


def _is_sure(text: Decoded, words: Sequence[Timed], chunk: Chunk) -> bool:
    return (
        not is_doubtful(text, chunk.seconds)
        and text.mean_logprob > SURE_LOGPROB
        and all(word.probability >= SURE_WORD for word in words)
    )


def _usual_level(block: Block, spans: Sequence[Span]) -> float:
    """Median strength of the voiced frames of a block."""
    frames = [_levels(block, span.start, span.end) for span in spans]
    return float(np.median(np.concatenate(frames))) if frames else 0.0


def _voiced_s(block: Block, gap: Gap, level: float) -> float:
    """Seconds of a gap that are about as loud as speech."""
    span = _span(gap, block)
    return float(np.count_nonzero(_levels(block, span.start, span.end) > LOUD * level)) * FRAME_S


def _levels(block: Block, start: int, end: int) -> Samples:
    frame = int(FRAME_S * RATE_HZ)
    frames = block.samples[start : start + (end - start) // frame * frame].reshape(-1, frame)
    levels: Samples = np.sqrt(np.mean(frames**2, axis=1))
    return levels


def _chunks(gap: Gap, block: Block) -> list[Chunk]:
    """The gap with a little around it; cut where it is longer than the recogniser can take."""
    return cut_chunks([_span(gap, block)], block.samples, block_start_s=block.start_s)


def _span(gap: Gap, block: Block) -> Span:
    first, last = ((at - block.start_s) * RATE_HZ for at in (gap.start_s, gap.end_s))
    return Span(max(0, int(first)), min(len(block.samples), int(last)))


def _without_neighbours(fresh: list[Word], words: Sequence[Word], gap: Gap) -> list[Word]:
    """Words of the gap less those that only repeat the word before or after it."""
    before = [word for word in words if _middle(word) < gap.start_s][-1:]
    after = [word for word in words if _middle(word) >= gap.end_s][:1]
    if fresh and before and _same(fresh[0], before[0]):
        fresh = fresh[1:]
    if fresh and after and _same(fresh[-1], after[0]):
        fresh = fresh[:-1]
    return fresh


def _same(one: Word, other: Word) -> bool:
    return one.text.strip(".,?!").lower() == other.text.strip(".,?!").lower()


def _within(word: Word, gap: Gap) -> bool:
    return gap.start_s <= _middle(word) <= gap.end_s


def _middle(word: Word) -> float:
    return ((word.start_s or 0.0) + (word.end_s or 0.0)) / 2


def _seconds(span: Span, block: Block) -> tuple[float, float]:
    return block.start_s + span.start / RATE_HZ, block.start_s + span.end / RATE_HZ
