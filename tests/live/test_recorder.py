"""Sound goes to the disk before it goes to the recogniser, whatever happens."""

from __future__ import annotations

import queue
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from dictate.errors import InputError
from dictate.hearing.microphone import Piece, Trouble
from dictate.live.recorder import Ended, Gap, Notice, Recorder
from dictate.live.safe_sound import HEAD_BYTES, SafeSound
from dictate.live.tones import Muting

BLOCK = b"\x07\x01" * 1600


class Script:
    """A source that gives what it is told."""

    plays = True

    def __init__(self, *pieces: Piece | Trouble | InputError) -> None:
        self._given = pieces

    def pieces(self, stop: threading.Event) -> Iterator[Piece | Trouble]:
        for piece in self._given:
            if isinstance(piece, InputError):
                raise piece
            yield piece


class Heap:
    """An ear that only collects, and checks that the sound is on the disk already."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.sound, self.behind_s, self.early = folder, b"", 0.0, 0

    def add(self, pcm: bytes) -> None:
        self.sound += pcm
        on_disk = sum(path.stat().st_size - HEAD_BYTES for path in self.folder.glob("*.wav"))
        self.early += on_disk < len(self.sound)


def recorded(folder: Path, *pieces: Any, muting: Muting | None = None) -> tuple[Heap, list[object], Recorder]:
    """Run to the end of the script."""
    events: queue.SimpleQueue[Any] = queue.SimpleQueue()
    ear = Heap(folder)
    paths = (folder / f"{number}.wav" for number in range(2, 9))
    recorder = Recorder(
        Script(*pieces), ear, muting or Muting(on_mute=lambda _: None), events, next_piece=lambda: next(paths),  # type: ignore[arg-type]
        sound=SafeSound(folder / "1.wav"), before=0,
    )  # fmt: skip
    recorder.start()
    recorder.join(10)
    said = []
    while not events.empty():
        said.append(events.get())
    return ear, said, recorder


def test_disk_first(tmp_path: Path) -> None:
    """And all of it, to both."""
    ear, said, recorder = recorded(tmp_path, *[Piece(BLOCK)] * 12)
    assert (tmp_path / "1.wav").read_bytes()[HEAD_BYTES:] == ear.sound == 12 * BLOCK
    assert ear.early == 0
    assert said == [Ended()]
    assert recorder.now_s == 1.2


def test_gap_starts_a_new_piece(tmp_path: Path) -> None:
    """No statement joins sound from before and after a vanished microphone; both are kept."""
    gone, back = Trouble("the microphone is gone"), Trouble("the microphone is back", gap=True)
    _, said, recorder = recorded(tmp_path, Piece(BLOCK), gone, back, Piece(BLOCK), Piece(BLOCK))
    assert (tmp_path / "1.wav").read_bytes()[HEAD_BYTES:] == BLOCK
    assert (tmp_path / "2.wav").read_bytes()[HEAD_BYTES:] == 2 * BLOCK
    assert [each for each in said if not isinstance(each, Gap)] == [Notice(gone.text), Notice(back.text), Ended()]
    (gap,) = [each for each in said if isinstance(each, Gap)]
    assert 0 <= gap.seconds < 10
    assert round(recorder.now_s, 3) == 0.3


def test_broken_source(tmp_path: Path) -> None:
    """What came before it is kept; why it ended is said."""
    _, said, _ = recorded(tmp_path, Piece(BLOCK), InputError("a.flac: damaged at 0.1 s"))
    assert said == [Ended("a.flac: damaged at 0.1 s")]
    assert (tmp_path / "1.wav").read_bytes()[HEAD_BYTES:] == BLOCK


def test_recogniser_hears_the_muted_sound_the_disk_keeps_all(tmp_path: Path) -> None:
    """What is said while the program speaks can still be listened to."""
    muting = Muting(on_mute=lambda _: None)
    muting.begin("own voice", 9.0, now_s=0.0)
    ear, _, _ = recorded(tmp_path, Piece(BLOCK), muting=muting)
    assert ear.sound == bytes(len(BLOCK))
    assert (tmp_path / "1.wav").read_bytes()[HEAD_BYTES:] == BLOCK


def test_full_disk_is_said(tmp_path: Path) -> None:
    """Once when it fills, once when there is room; the recogniser hears on."""
    import errno

    events: queue.SimpleQueue[Any] = queue.SimpleQueue()
    now, calls = [0.0], [0]

    def write(file: int, data: bytes) -> int:
        import os

        calls[0] += 1
        if 3 <= calls[0] <= 4:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        return os.write(file, data)

    def clock() -> float:
        now[0] += 0.5
        return now[0]

    ear = Heap(tmp_path)
    recorder = Recorder(
        Script(*[Piece(BLOCK)] * 12), ear, Muting(on_mute=lambda _: None), events, before=0,  # type: ignore[arg-type]
        next_piece=lambda: tmp_path / "x.wav", sound=SafeSound(tmp_path / "1.wav", write=write, now=clock),
    )  # fmt: skip
    recorder.start()
    recorder.join(10)
    said = [events.get().text for _ in range(2)]
    assert "no space left" in said[0]
    assert said[1] == "the sound is on the disk again"
    assert ear.sound == (tmp_path / "1.wav").read_bytes()[HEAD_BYTES:] == 12 * BLOCK
