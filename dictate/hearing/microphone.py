"""Live blocks of sound from a microphone, or from a file at the same pace."""

from __future__ import annotations

import queue
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

import numpy as np

from dictate.errors import InputError, MachineError
from dictate.hearing.audio import RATE_HZ, Recording, Samples

BLOCK_S = 0.1
BLOCK = int(BLOCK_S * RATE_HZ)
SILENT_S = 1.5  # a running microphone delivers ten blocks a second: none for so long means it is gone
FIRST_S = 5.0  # until its first block: sound servers were seen to need two seconds
RETRY_S = 1.0
CLOSING_S = 2.0
SLEPT_S = 2.0  # the wall clock ran on by so much more than the sound: the machine slept
PULSE_NAMES = ("pulse", "default")


@dataclass(frozen=True)
class Piece:
    """A block of sound as 16-bit samples, mono, 16 kHz."""

    pcm: bytes


@dataclass(frozen=True)
class Trouble:
    """Something happened to the source; sound before and after it does not join where `gap` is set."""

    text: str
    gap: bool = False


def to_pcm(samples: Samples) -> bytes:
    """Float samples (-1..1) as 16-bit ones, rounded."""
    return bytes(np.clip(np.rint(samples * 32768.0), -32768, 32767).astype("<i2").tobytes())


def to_samples(pcm: bytes) -> Samples:
    """16-bit samples as float32 (-1..1)."""
    return np.frombuffer(pcm, "<i2").astype(np.float32) / 32768.0


class FileSource:
    """A recording that arrives as a microphone's sound does: in real time, or as fast as it is taken."""

    plays = False  # sounds of the program do not come back through it

    def __init__(self, path: Path, *, fast: bool = False, skip: int = 0) -> None:
        self._recording = Recording(path)
        self.name = path.name
        self.created_at: datetime | None = self._recording.created_at
        self._fast, self._skip = fast, skip

    def pieces(self, stop: threading.Event) -> Iterator[Piece | Trouble]:
        """Blocks until the recording ends or `stop` is set; the first `skip` samples were heard before."""
        begin, given, passed = time.monotonic(), 0, 0
        for block in self._recording.blocks():
            for start in range(0, len(block.samples), BLOCK):
                piece = block.samples[start : start + BLOCK]
                passed += len(piece)
                if passed <= self._skip:
                    continue
                piece = piece[-min(len(piece), passed - self._skip) :]
                given += len(piece)
                if not self._fast and stop.wait(max(0.0, begin + given / RATE_HZ - time.monotonic())):
                    return
                if stop.is_set():
                    return
                yield Piece(to_pcm(piece))


class Microphone:
    """A microphone by part of its name; when it vanishes, it is looked for until it is back."""

    plays = True
    created_at: datetime | None = None  # the session knows when it began

    def __init__(self, name: str = "") -> None:
        self._wanted = name
        self._sound = _sounddevice()
        self._device = find_microphone(name, self._sound)
        self._closing: threading.Thread | None = None
        self.name = str(self._sound.query_devices(self._device, "input")["name"])

    def pieces(self, stop: threading.Event) -> Iterator[Piece | Trouble]:
        """Blocks until `stop` is set; troubles in between are said."""
        gone = False
        while not stop.is_set():
            try:
                for piece in self._run(stop):
                    if gone:
                        gone = False
                        yield Trouble("the microphone is back", gap=True)
                    yield piece
            except _Gone as fault:
                if not gone:
                    yield Trouble(f"the microphone is gone ({fault}): it is being looked for")
                gone = True
                stop.wait(RETRY_S)
                self._look_again()

    def _run(self, stop: threading.Event) -> Iterator[Piece | Trouble]:
        arrived: queue.Queue[bytes] = queue.Queue()
        lost = threading.Event()

        def take(data: Any, _frames: int, _time: Any, status: Any) -> None:
            if status.input_overflow:
                lost.set()
            arrived.put(bytes(data))

        try:
            stream = self._sound.RawInputStream(
                samplerate=RATE_HZ, blocksize=BLOCK, device=self._device, channels=1, dtype="int16", callback=take
            )
            stream.start()
        except self._sound.PortAudioError as fault:
            raise _Gone(_first_line(fault)) from fault
        watch, patience_s = _Watch(), FIRST_S
        try:
            while not stop.is_set():
                try:
                    pcm = arrived.get(timeout=patience_s)
                except queue.Empty:
                    raise _Gone("no sound comes") from None
                patience_s = SILENT_S
                slept_s = watch.slept_s()
                if slept_s:
                    yield Trouble(
                        f"the machine stood still for {slept_s:.0f} s: sound of that time is missing", gap=True
                    )
                if lost.is_set():
                    lost.clear()
                    yield Trouble("the machine was too slow to take the sound: a moment of it is missing")
                yield Piece(pcm)
        finally:
            self._close(stream)

    def _close(self, stream: Any) -> None:
        """Let the device go; the library may hang over one that vanished, and nothing may wait for that."""
        self._closing = threading.Thread(target=_close, args=(stream, self._sound), daemon=True)
        self._closing.start()
        self._closing.join(CLOSING_S)

    def _look_again(self) -> None:
        """The list of devices is made when the library starts: start it anew, unless it hangs."""
        if self._closing is not None and self._closing.is_alive():
            return
        self._sound._terminate()
        self._sound._initialize()
        try:
            self._device = find_microphone(self._wanted, self._sound)
        except MachineError:
            return


class _Gone(Exception):
    """The device gives no sound."""


class _Watch:
    """Notices that the machine slept: the wall clock jumps while nothing else goes on."""

    def __init__(self) -> None:
        self._last = time.time()

    def slept_s(self) -> float:
        now = time.time()
        gap, self._last = now - self._last, now
        return gap if gap > SLEPT_S else 0.0


def microphones() -> list[str]:
    """Names of the devices that take sound in. Raises MachineError when the extra is missing."""
    return [str(each["name"]) for each in _sounddevice().query_devices() if each["max_input_channels"] > 0]


def find_microphone(name: str, sound: Any) -> int | None:
    """Number of the first input device whose name holds `name`; None: the system's own choice."""
    inputs = [(at, str(each["name"])) for at, each in enumerate(sound.query_devices()) if each["max_input_channels"]]
    if not inputs:
        raise MachineError("no microphone found: plug one in, or check the sound system's settings")
    if not name:
        return None
    for at, known in inputs:
        if name.lower() in known.lower():
            return at
    raise InputError(f"--microphone {name}: no such microphone: use one of {', '.join(known for _, known in inputs)}")


def _sounddevice() -> Any:
    try:
        import sounddevice
    except ImportError as fault:
        raise MachineError("no microphone support: pip install 'dictate[live]'") from fault
    except OSError as fault:
        raise MachineError("no sound library: install PortAudio (Debian: apt install libportaudio2)") from fault
    return sounddevice


def _close(stream: Any, sound: Any) -> None:
    try:
        stream.abort()
        stream.close()
    except sound.PortAudioError:
        return  # the device is gone already


def _first_line(fault: Exception) -> str:
    return (str(fault).splitlines() or ["unknown"])[0][:100]
