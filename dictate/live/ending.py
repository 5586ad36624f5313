"""The end of a dictation: the whole is heard again with full context, and becomes the examination."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from pathlib import Path

from dictate.errors import MachineError
from dictate.grammar import Grammar
from dictate.grammar.sounds import distance, sounds
from dictate.live.kept import Kept, Mute, Said, seconds_samples
from dictate.live.safe_sound import HEAD_BYTES, RATE_HZ, header
from dictate.live.spoken import ALIKE
from dictate.live.tones import cleaned
from dictate.model import Transcript, Word
from dictate.pipeline import BREAK, join
from dictate.settings import passing_folder

LONGEST_ORDER = 9  # words, and one
NEAR_S = 1.5  # times of one sentence in two hearings
BLOCK_BYTES = 3_200  # a tenth of a second, as the sound came


def hear_whole(
    kept: Kept, hear: Callable[[Path], Transcript], grammar: Grammar, *, name: str, created_at: datetime | None,
    instead: Mapping[Path, Path] | None = None,
) -> tuple[Transcript, tuple[Path, ...]]:  # fmt: skip
    """All pieces heard again, less what was no dictation, and the sound as it was heard.

    instead: where a piece lies now. Raises: MachineError.
    """
    entries = list(kept.entries())
    mutes = [entry for entry in entries if isinstance(entry, Mute)]
    orders = [entry for entry in entries if isinstance(entry, Said) and entry.control]
    heard, sounds, start_s = [], [], 0.0
    for piece in kept.pieces():
        path = (instead or {}).get(piece, piece)
        samples = seconds_samples(path)
        if samples:
            sounds.append(_cleaned(path, _inside(mutes, start_s, samples / RATE_HZ), kept.folder))
            transcript = hear(sounds[-1])
            sources = tuple(
                source.model_copy(update={"name": name or piece.name, "created_at": created_at})
                for source in transcript.sources
            )
            words = drop_orders(transcript.words, grammar, orders, start_s=start_s)
            heard.append(transcript.model_copy(update={"sources": sources, "words": words}))
        start_s += samples / RATE_HZ
    return join(heard), tuple(sounds)


def drop_orders(
    words: Sequence[Word], grammar: Grammar, orders: Sequence[Said], *, start_s: float = 0.0
) -> tuple[Word, ...]:
    """Words less those said to the program: the phrases that live hearing took as such, at that time.

    Heard again they need be no sentence of their own; no statement runs on over them.
    """
    taken: set[int] = set()
    for said in orders:
        near = [at for at, word in enumerate(words) if abs(said.start_s - start_s - (word.start_s or 0.0)) <= NEAR_S]
        phrases = grammar.controls.get(said.control, ())  # type: ignore[call-overload]
        runs = ((first, last) for first in near for last in range(first + 1, first + LONGEST_ORDER))
        apart, run = min(((_apart(words[slice(*run)], phrases), run) for run in runs), default=(1.0, (0, 0)))
        if apart <= ALIKE:
            taken.update(range(*run))
    kept: list[Word] = []
    for at, word in enumerate(words):
        if at not in taken:
            kept.append(word.model_copy(update={"lead": BREAK}) if kept and at - 1 in taken else word)
    return tuple(kept)


def _apart(words: Sequence[Word], phrases: Sequence[str]) -> float:
    """How far the words are from the nearest of the phrases, by their sounds; a number is part of none."""
    if not all(sounds(word.text) for word in words):
        return 1.0
    said = sounds(" ".join(word.text for word in words))
    return min((distance(said, sounds(phrase)) for phrase in phrases), default=1.0)


def clean_piece(path: Path, mutes: Sequence[Mute], out: Path) -> None:
    """A copy of a piece without what was no dictation; times of the mutes are the piece's own."""
    out.touch(mode=0o600)
    with path.open("rb") as sound, out.open("wb") as copy:
        copy.write(header(2 * seconds_samples(path)))
        sound.seek(HEAD_BYTES)
        done = 0
        while block := sound.read(BLOCK_BYTES):
            first_s, last_s = done / 2 / RATE_HZ, (done + len(block)) / 2 / RATE_HZ
            copy.write(cleaned(block, [m.why for m in mutes if m.start_s < last_s and m.end_s > first_s]))
            done += len(block)


def rescue(pcm: bytes, folder: Path) -> Path:
    """Write sound that its own disk refused to another place. Raises: MachineError."""
    try:
        handle = os.open(folder / "rescued.wav", os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        with open(handle, "wb") as file:
            file.write(header(len(pcm)) + pcm)
    except OSError as fault:
        raise MachineError(f"{folder}: the sound cannot be written there either: make room") from fault
    return folder / "rescued.wav"


def _cleaned(path: Path, mutes: Sequence[Mute], folder: Path) -> Path:
    """The piece itself, or a copy without what was no dictation: beside it, or elsewhere when its disk is full."""
    if not mutes:
        return path
    beside = folder / f"heard-{path.name}"
    try:
        clean_piece(path, mutes, beside)
    except OSError:
        beside.unlink(missing_ok=True)
        elsewhere = passing_folder() / path.name
        try:
            clean_piece(path, mutes, elsewhere)
        except OSError as fault:
            raise MachineError(
                f"{elsewhere.parent}: cannot be written: make room: the dictation itself is kept"
            ) from fault
        return elsewhere
    return beside


def _inside(mutes: Sequence[Mute], start_s: float, length_s: float) -> list[Mute]:
    """Mutes of one piece, in its own time."""
    return [
        mute.model_copy(update={"start_s": mute.start_s - start_s, "end_s": mute.end_s - start_s})
        for mute in mutes
        if mute.start_s < start_s + length_s and mute.end_s > start_s
    ]
