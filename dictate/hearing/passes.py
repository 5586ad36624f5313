"""Chunks of a block → words with times: heard once or, with lists of terms, twice; and guards."""

from __future__ import annotations

import re
import zlib
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from dictate.hearing.audio import Block, Samples
from dictate.hearing.chunks import Chunk
from dictate.hearing.engine import FULL_WINDOW_S, Decoded, Timed
from dictate.hearing.kept import Encoded, Views
from dictate.model.words import Hints, Word

BEAM = 3  # for the text that is kept: 5 is slower and no better
LISTED_BEAM = 2  # under a long list of terms a beam costs more
LIST_TOKENS = 120  # a prompt costs time with its length; 20 to 47 terms of a component fit
# Limits past which text is a loop or a fancy. Normal chunks stay under 1.7 and 4 words a second.
MOST_COMPRESSION = 2.0
MOST_WORDS_PER_S = 4.8
MOST_NO_SPEECH = 0.6
LEAST_LOGPROB = -1.0
SPARE_S = 1.0  # silence that a short window holds behind the sound, without which the decoder may go on talking
FEW_WORDS = 6  # below this neither rate nor compression says anything


class Ears(Protocol):
    """What the passes ask of an engine."""

    @property
    def knows_trade(self) -> bool: ...  # noqa: D102

    def encode(self, samples: Samples, *, window_s: int | None = None) -> Encoded: ...  # noqa: D102
    def prompt(self, terms: Sequence[str], *, fill: Sequence[str] = (), length: int | None = None) -> list[int]: ...  # noqa: D102
    def decode(self, encoded: Sequence[Encoded], prompts: Sequence[list[int]], *, beam: int = 5) -> list[Decoded]: ...  # noqa: D102
    def align(  # noqa: D102
        self, encoded: Sequence[Encoded], decoded: Sequence[Decoded], seconds: Sequence[float]
    ) -> list[list[Timed]]: ...


@dataclass
class Memory:
    """What is carried from one block to the next: the components in force, and views for a later weighing."""

    components: tuple[str, ...] = ()
    views: Views | None = None


def hear_chunks(
    ears: Ears, block: Block, chunks: Sequence[Chunk], hints: Hints, memory: Memory, *, beam: int = BEAM,
    encoded: list[Encoded] | None = None,
) -> list[Word]:  # fmt: skip
    """Words of all chunks of a block, in recording time; `encoded`: their views, where they are at hand."""
    if not chunks:
        return []
    if encoded is None:
        encoded = encode_chunks(ears, block, chunks)
    if ears.knows_trade:  # a list would only make it hear terms that were not said
        decoded = ears.decode(encoded, [ears.prompt(())] * len(encoded), beam=beam)
    else:
        decoded = _heard_twice(ears, encoded, hints, memory, beam)
    encoded, decoded = _guarded(ears, block, chunks, encoded, decoded)
    if memory.views is not None:
        for chunk, view in zip(chunks, encoded, strict=True):
            memory.views.keep(chunk, view)
    timed = ears.align(encoded, decoded, [chunk.seconds for chunk in chunks])
    return [word for chunk, words in zip(chunks, timed, strict=True) for word in to_words(words, chunk)]


def encode_chunks(ears: Ears, block: Block, chunks: Sequence[Chunk], *, short_s: int | None = None) -> list[Encoded]:
    """The encoder's view of each chunk; with `short_s`, chunks that fit into so short a window get it."""
    return [
        ears.encode(
            chunk.samples(block.samples), window_s=short_s if short_s and chunk.seconds <= short_s - SPARE_S else None
        )
        for chunk in chunks
    ]


def _heard_twice(ears: Ears, encoded: list[Encoded], hints: Hints, memory: Memory, beam: int) -> list[Decoded]:
    """Without a list first; then, chunk by chunk, with the terms of the component heard in it.

    A list mends terms and, on poor voices, spoils numbers: where the two differ in a number the first one stands.
    """
    decoded = ears.decode(encoded, [ears.prompt(())] * len(encoded), beam=beam)
    redo = {
        index: ears.prompt(terms, fill=hints.first, length=LIST_TOKENS)
        for index, text in enumerate(decoded)
        if (terms := _terms_for(text.text, hints, memory))
    }
    again = ears.decode([encoded[index] for index in redo], list(redo.values()), beam=LISTED_BEAM)
    best = list(decoded)
    for index, text in zip(redo, again, strict=True):
        if _numbers(text.text) == _numbers(decoded[index].text) or compression(decoded[index].text) > MOST_COMPRESSION:
            best[index] = text
    return best


def _numbers(text: str) -> list[str]:
    return re.findall(r"\d+", text)


def _terms_for(text: str, hints: Hints, memory: Memory) -> tuple[str, ...]:
    """Terms of the components named in the text, after those of the component in force before it."""
    named = heard_components(text, hints)
    components = tuple(dict.fromkeys((*memory.components[-1:], *named)))
    if named:
        memory.components = named
    lists = [hints.by_component.get(component, ()) for component in components]
    longest = max(map(len, lists), default=0)
    in_turn = [terms[rank] for rank in range(longest) for terms in lists if rank < len(terms)]
    return tuple(dict.fromkeys(reversed(in_turn)))  # the first of each list last: nearest to the text


def heard_components(text: str, hints: Hints) -> tuple[str, ...]:
    """Components whose heading is in the text, in the order heard."""
    plain = " " + re.sub(r"[^a-z0-9]+", " ", text.lower()) + " "
    found = []
    for component, headings in hints.headings.items():
        places = [plain.rfind(f" {heading.lower()} ") for heading in headings]
        if max(places, default=-1) >= 0:
            found.append((max(places), component))
    return tuple(component for _, component in sorted(found))


def is_doubtful(text: Decoded, seconds: float) -> bool:
    """Whether the text looks like a loop or was made from no speech."""
    count = len(text.text.split())
    looped = count >= FEW_WORDS and (
        compression(text.text) > MOST_COMPRESSION or count > MOST_WORDS_PER_S * max(seconds, 0.1)
    )
    return looped or text.no_speech > MOST_NO_SPEECH or text.mean_logprob < LEAST_LOGPROB


def compression(text: str) -> float:
    """How many times shorter the text gets; over 2 it repeats itself."""
    raw = text.encode()
    return len(raw) / len(zlib.compress(raw)) if raw else 0.0


def _guarded(
    ears: Ears, block: Block, chunks: Sequence[Chunk], encoded: list[Encoded], decoded: list[Decoded]
) -> tuple[list[Encoded], list[Decoded]]:
    """Hear doubtful chunks again in the full window without terms; what stays doubtful is dropped."""
    views, texts = list(encoded), list(decoded)
    for index, chunk in enumerate(chunks):
        if not is_doubtful(texts[index], chunk.seconds):
            continue
        views[index] = ears.encode(chunk.samples(block.samples), window_s=FULL_WINDOW_S)
        (again,) = ears.decode([views[index]], [ears.prompt(())], beam=BEAM)
        keep = not is_doubtful(again, chunk.seconds)
        texts[index] = again if keep else Decoded("", (), again.mean_logprob, again.no_speech)
    return views, texts


def to_words(timed: Sequence[Timed], chunk: Chunk) -> list[Word]:
    """Words in recording time; parts without white space between them ("142", "/84") become one word."""
    groups: list[list[Timed]] = []
    for each in timed:
        if groups and not each.text[:1].isspace():
            groups[-1].append(each)
        else:
            groups.append([each])
    return [
        Word(
            text="".join(each.text for each in group).strip(),
            start_s=round(chunk.at(group[0].start_s), 2),
            end_s=round(max(chunk.at(group[-1].end_s, end=True), chunk.at(group[0].start_s)), 2),
            probability=round(min(each.probability for each in group), 3),
        )
        for group in groups
    ]
