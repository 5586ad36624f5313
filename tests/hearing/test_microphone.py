"""Blocks of sound from a file at its own pace, and from a device that misbehaves."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from by_hand import DEMOS
from hearing.sounds import tone, write_sound

from dictate.errors import InputError, MachineError
from dictate.hearing import microphone
from dictate.hearing.audio import Recording
from dictate.hearing.microphone import FileSource, Microphone, Piece, Trouble, find_microphone, to_pcm, to_samples


def sound_of(source: FileSource) -> bytes:
    """All of it."""
    pieces = source.pieces(threading.Event())
    return b"".join(piece.pcm for piece in pieces if isinstance(piece, Piece))


def test_file_comes_sample_by_sample() -> None:
    """16-bit sound at 16 kHz is not changed by a bit; the rest after an interruption joins."""
    path = DEMOS / "postural-series.flac"
    (block,) = Recording(path).blocks()
    whole = sound_of(FileSource(path, fast=True))
    assert (to_samples(whole) == block.samples).all()
    skip = 100_003
    assert sound_of(FileSource(path, fast=True, skip=skip)) == whole[2 * skip :]


def test_file_at_the_pace_of_speech(tmp_path: Path) -> None:
    """Never ahead of the clock."""
    path = write_sound(tmp_path / "a.wav", tone(0.5))
    begin, got = time.monotonic(), 0
    for piece in FileSource(path).pieces(threading.Event()):
        assert isinstance(piece, Piece)
        got += len(piece.pcm) // 2
        assert got / 16_000 <= time.monotonic() - begin + 0.01
    assert got == 8_000


def test_stopped_in_the_middle(tmp_path: Path) -> None:
    """At once, also while it waits."""
    path, stop = write_sound(tmp_path / "a.wav", tone(30.0)), threading.Event()
    pieces = FileSource(path).pieces(stop)
    next(pieces)
    stop.set()
    begin = time.monotonic()
    assert list(pieces) == []
    assert time.monotonic() - begin < 1


def test_loud_samples_stay_in_range() -> None:
    """No overflow turns a loud sample over."""
    assert to_samples(to_pcm(np.array([2.0, -2.0, 0.5], np.float32))).round(3).tolist() == [1.0, -1.0, 0.5]


class Fault(Exception):
    """As the library raises it."""


class Machine:
    """A sound library whose devices come and go."""

    PortAudioError = Fault

    def __init__(self, names: list[str], plays: Callable[[Callable[..., None]], None]) -> None:
        self.names, self.plays, self.opened, self.looked = names, plays, 0, 0

    def query_devices(self, device: int | None = None, kind: str = "") -> Any:
        if kind:
            return {"name": self.names[device or 0]}
        return [{"name": name, "max_input_channels": int("out" not in name)} for name in self.names]

    def RawInputStream(self, *, callback: Callable[..., None], **_: Any) -> Any:
        self.opened += 1
        if self.opened == 2:
            raise Fault("Device unavailable\nmore")
        return SimpleNamespace(
            start=lambda: threading.Thread(target=self.plays, args=(callback,), daemon=True).start(),
            abort=lambda: None, close=lambda: None,
        )  # fmt: skip

    def _terminate(self) -> None:
        self.looked += 1

    def _initialize(self) -> None:
        pass


def speak(callback: Callable[..., None]) -> None:
    """Three blocks, then nothing more."""
    for _ in range(3):
        callback(b"\x01\x00" * 1600, 1600, None, SimpleNamespace(input_overflow=False))


def test_vanished_microphone_is_looked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    """Said once when it goes, once when it is back, and the sound after that is marked as not joining."""
    machine, stop = Machine(["bedside"], speak), threading.Event()
    monkeypatch.setattr(microphone, "_sounddevice", lambda: machine)
    monkeypatch.setattr(microphone, "SILENT_S", 0.1)
    monkeypatch.setattr(microphone, "RETRY_S", 0.01)
    got = []
    for piece in Microphone().pieces(stop):
        got.append(piece)
        if len([each for each in got if isinstance(each, Piece)]) == 6:
            stop.set()
    troubles = [each for each in got if isinstance(each, Trouble)]
    assert [each.gap for each in troubles] == [False, True]
    assert "gone" in troubles[0].text
    assert "back" in troubles[1].text
    assert got.index(troubles[1]) == 4
    assert machine.looked >= 2


def test_a_slow_start_is_no_vanished_microphone(monkeypatch: pytest.MonkeyPatch) -> None:
    """A sound server may need seconds for the first block."""

    def slowly(take: Callable[..., None]) -> None:
        threading.Timer(0.3, lambda: take(bytes(3_200), 1_600, None, SimpleNamespace(input_overflow=False))).start()

    monkeypatch.setattr(microphone, "SILENT_S", 0.1)
    monkeypatch.setattr(microphone, "_sounddevice", lambda: Machine(["room"], slowly))
    stop = threading.Event()
    pieces = Microphone().pieces(stop)
    assert next(pieces) == Piece(bytes(3_200))
    stop.set()


def test_library_that_hangs_over_a_vanished_microphone(monkeypatch: pytest.MonkeyPatch) -> None:
    """It is said that it is gone all the same, and it is looked for."""
    machine, stop, over = Machine(["bedside"], speak), threading.Event(), threading.Event()
    opened = machine.RawInputStream

    def hanging(**more: Any) -> Any:
        stream = opened(**more)
        stream.abort = over.wait
        return stream

    machine.RawInputStream = hanging  # type: ignore[method-assign]
    monkeypatch.setattr(microphone, "_sounddevice", lambda: machine)
    for name, seconds in (("SILENT_S", 0.1), ("RETRY_S", 0.01), ("CLOSING_S", 0.05)):
        monkeypatch.setattr(microphone, name, seconds)
    troubles = []
    for piece in Microphone().pieces(stop):
        troubles += [piece] if isinstance(piece, Trouble) else []
        if len(troubles) == 2:
            stop.set()
    over.set()
    assert [each.gap for each in troubles] == [False, True]
    assert machine.looked == 0


def test_machine_that_slept(monkeypatch: pytest.MonkeyPatch) -> None:
    """The wall clock jumps: sound before and after does not join."""
    monkeypatch.setattr(microphone, "_sounddevice", lambda: Machine(["bedside"], speak))
    times = iter([0.0, 0.1, 60.1, 60.2, 60.3])
    monkeypatch.setattr(microphone.time, "time", lambda: next(times))
    stop, got = threading.Event(), []
    for piece in Microphone().pieces(stop):
        got.append(piece)
        if len(got) == 4:
            stop.set()
    (trouble,) = [each for each in got if isinstance(each, Trouble)]
    assert trouble.gap
    assert "60 s" in trouble.text
    assert got.index(trouble) == 1


def test_by_part_of_its_name() -> None:
    """Capitals do not matter; outputs are no microphones; the names are given when none fits."""
    machine = Machine(["Speaker out", "Desk", "Bedside USB"], speak)
    assert find_microphone("bedside", machine) == 2
    assert find_microphone("", machine) is None
    with pytest.raises(InputError, match="use one of Desk, Bedside USB"):
        find_microphone("speaker", machine)
    with pytest.raises(MachineError, match="no microphone found"):
        find_microphone("", Machine(["out"], speak))
