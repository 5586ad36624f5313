"""Sound that survives a crash: written as it comes, synced twice a second and more, readable at any moment."""

from __future__ import annotations

import os
import struct
import time
from collections import deque
from collections.abc import Callable
from pathlib import Path

from dictate.errors import MachineError

RATE_HZ = 16_000
BYTES_PER_SAMPLE = 2
BYTES_PER_S = RATE_HZ * BYTES_PER_SAMPLE
HEAD_BYTES = 44
SYNC_S = 0.25  # of time, or of sound where late blocks come at once: half a second at most may be missing after a crash
RETRY_S = 1.0  # a full disk is tried again this often
MODE = 0o600
DATA_MOST = 0xFFFFFFFF - HEAD_BYTES


class SafeSound:
    """One WAV file, 16-bit mono 16 kHz, whose header is brought up to date at every sync.

    What the disk refuses is held in memory and written as soon as it can be.
    Raises: MachineError when the file cannot be opened.
    """

    def __init__(
        self,
        path: Path,
        *,
        write: Callable[[int, bytes], int] = os.write,
        sync: Callable[[int], None] = os.fsync,
        now: Callable[[], float] = time.monotonic,
    ) -> None:
        self.path = path
        self.fault = ""  # why the disk refuses; empty: all is well
        self._write, self._sync, self._now = write, sync, now
        self._held: deque[bytes] = deque()
        self._synced_s = self._tried_s = now()
        self._synced = 0  # bytes of sound
        try:
            self._file = os.open(path, os.O_RDWR | os.O_CREAT, MODE)
            self.written = self._synced = mend(self._file)
        except OSError as fault:
            raise MachineError(
                f"{path.parent}: sound cannot be kept there: {_reason(fault)}: make room or give the folder back"
            ) from fault

    @property
    def held_s(self) -> float:
        """Seconds of sound that are in memory only."""
        return sum(map(len, self._held)) / BYTES_PER_S

    @property
    def samples(self) -> int:
        """Samples taken in, those in memory included."""
        return (self.written + sum(map(len, self._held))) // BYTES_PER_SAMPLE

    def add(self, pcm: bytes) -> None:
        """Take sound in and put it on the disk; never raises: see `fault`."""
        self._held.append(pcm)
        now = self._now()
        if self.fault and now - self._tried_s < RETRY_S:
            return
        self._tried_s = now
        try:
            self._flush()
            if now - self._synced_s >= SYNC_S or self.written - self._synced >= SYNC_S * BYTES_PER_S:
                self._commit()
                self._synced_s = now
            self.fault = ""
        except OSError as fault:
            self.fault = _reason(fault)

    def everything(self) -> bytes:
        """All its sound, also what is in memory only."""
        return self.path.read_bytes()[HEAD_BYTES : HEAD_BYTES + self.written] + b"".join(self._held)

    def close(self) -> bool:
        """Write what is left; False when the disk still refuses."""
        try:
            self._flush()
            self._commit()
            self.fault = ""
        except OSError as fault:
            self.fault = _reason(fault)
        os.close(self._file)
        return not self.fault

    def _flush(self) -> None:
        while self._held:
            os.lseek(self._file, HEAD_BYTES + self.written, os.SEEK_SET)
            first = self._held[0]
            count = self._write(self._file, first)
            self.written += count
            if count == len(first):
                self._held.popleft()
            else:  # the disk took a part: the rest follows, or is refused with a reason
                self._held[0] = first[count:]

    def _commit(self) -> None:
        self._sync(self._file)  # the sound first, then a header that promises no more than there is
        os.pwrite(self._file, header(self.written), 0)
        self._synced = self.written


def header(data_bytes: int) -> bytes:
    """The 44 bytes in front of the sound."""
    data = min(data_bytes - data_bytes % BYTES_PER_SAMPLE, DATA_MOST)
    return struct.pack(
        "<4sI4s4sIHHIIHH4sI", b"RIFF", data + HEAD_BYTES - 8, b"WAVE", b"fmt ", 16, 1, 1, RATE_HZ, BYTES_PER_S,
        BYTES_PER_SAMPLE, 8 * BYTES_PER_SAMPLE, b"data", data,
    )  # fmt: skip


def mend(file: int) -> int:
    """Make an interrupted file whole: half a sample is cut off, the header counts what is there; bytes of sound."""
    size = os.fstat(file).st_size
    data = max(0, size - HEAD_BYTES)
    data -= data % BYTES_PER_SAMPLE
    if size > HEAD_BYTES + data:
        os.ftruncate(file, HEAD_BYTES + data)
    os.pwrite(file, header(data), 0)
    os.fsync(file)
    return data


def repair(path: Path) -> float:
    """Make the file whole after a crash; seconds of sound it holds."""
    file = os.open(path, os.O_RDWR)
    try:
        return mend(file) / BYTES_PER_S
    finally:
        os.close(file)


def _reason(fault: OSError) -> str:
    return (fault.strerror or str(fault)).lower()
