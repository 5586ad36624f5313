"""hear_recording(): the order of the steps from a recording to its transcript, nothing else."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Protocol

from dictate.hearing.audio import RATE_HZ, Block, Recording, Samples
from dictate.hearing.chunks import Span, cut_chunks
from dictate.hearing.kept import Encoded, Views
from dictate.hearing.lost import fill_gaps
from dictate.hearing.passes import Ears, Memory, hear_chunks
from dictate.hearing.quality import Quality
from dictate.hearing.slack import give_back_slack
from dictate.model.words import Hints, ModelIdentity, Stretch, Transcript, Word

LANGUAGE_CHUNKS = 6  # of a recording, listened to for their language


class Listener(Ears, Protocol):
    """What is asked of an engine here."""

    @property
    def identity(self) -> ModelIdentity: ...  # noqa: D102
    def spans(self, samples: Samples, *, silence_ms: int = ...) -> list[Span]: ...  # noqa: D102
    def keep(self, sha256: str, views: Views) -> None: ...  # noqa: D102
    def weigh(self, sha256: str, start_s: float, end_s: float, texts: Sequence[str]) -> list[float]: ...  # noqa: D102
    def knows(self, word: str) -> bool: ...  # noqa: D102
    def language(self, view: Encoded) -> tuple[str, float]: ...  # noqa: D102


def hear_recording(
    engine: Listener, path: Path, *, hints: Hints, progress: Callable[[float], None] | None = None
) -> Transcript:
    """Block by block: where voice is, chunks, words, and a second hearing of voiced stretches without words."""
    recording = Recording(path)
    identity = engine.identity
    words: list[Word] = []
    speech: list[Stretch] = []
    untranscribed: list[Stretch] = []
    views, quality = Views(), Quality()
    memory = Memory(views=views)
    engine.keep(recording.sha256, views)
    with ThreadPoolExecutor(max_workers=1) as aside:
        for block in recording.blocks():
            spans = engine.spans(block.samples)
            judged = aside.submit(quality.add, block, spans)  # while the recogniser, which needs no Python, is at work
            chunks = cut_chunks(spans, block.samples, block_start_s=block.start_s)
            heard, lost = fill_gaps(engine, block, spans, hear_chunks(engine, block, chunks, hints, memory))
            words += heard
            judged.result()
            speech += [_stretch(span, block) for span in spans]
            untranscribed += lost
            give_back_slack()
            if progress and recording.declared_s:
                progress(min(1.0, block.end_s / recording.declared_s))
    languages = [engine.language(view) for view in views.sample(LANGUAGE_CHUNKS)]
    if progress:
        progress(1.0)
    return Transcript(
        words=tuple(words),
        sources=(recording.source().model_copy(update={"sound": quality.sound(languages)}),),
        speech=tuple(speech),
        untranscribed=tuple(untranscribed),
        model=identity,
    )


def _stretch(span: Span, block: Block) -> Stretch:
    return Stretch(
        start_s=round(block.start_s + span.start / RATE_HZ, 2), end_s=round(block.start_s + span.end / RATE_HZ, 2)
    )
