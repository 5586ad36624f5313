"""Sound survives kill -9, a cut header, and a disk that takes no more."""

from __future__ import annotations

import errno
import mmap
import os
import random
import signal
import stat
import struct
import time
import wave
from pathlib import Path

import numpy as np
import pytest

from dictate.errors import MachineError
from dictate.hearing.audio import Recording
from dictate.live.safe_sound import BYTES_PER_S, HEAD_BYTES, SafeSound, header, repair

BLOCK = np.random.default_rng(3).integers(-9000, 9000, 1600).astype("<i2").tobytes()
KILLS = 20


def test_sound_comes_back_as_it_went_in(tmp_path: Path) -> None:
    """A plain WAV file, the owner's alone."""
    sound = SafeSound(tmp_path / "a.wav")
    for _ in range(25):
        sound.add(BLOCK)
    assert sound.samples == 25 * 1600
    assert sound.close()
    with wave.open(str(tmp_path / "a.wav")) as file:
        assert (file.getframerate(), file.getnchannels(), file.getsampwidth()) == (16_000, 1, 2)
        assert file.readframes(file.getnframes()) == 25 * BLOCK
    assert stat.S_IMODE((tmp_path / "a.wav").stat().st_mode) == 0o600
    assert Recording(tmp_path / "a.wav").declared_s == pytest.approx(2.5)


def test_what_was_there_is_gone_on_with(tmp_path: Path) -> None:
    """Opened again, the sound joins; half a sample is cut off."""
    path = tmp_path / "a.wav"
    path.write_bytes(header(0) + BLOCK + b"\x01")  # a header never brought up to date, and a torn sample
    sound = SafeSound(path)
    assert sound.samples == 1600
    sound.add(BLOCK)
    sound.close()
    assert path.read_bytes()[HEAD_BYTES:] == 2 * BLOCK


def test_never_more_than_half_a_second_is_not_synced(tmp_path: Path) -> None:
    """With a block of 0.1 s, by a clock of the test; and the header promises only what was synced."""
    now, synced, worst = [0.0], [0], 0
    sound = SafeSound(tmp_path / "a.wav", now=lambda: now[0], sync=lambda _: synced.__setitem__(0, sound.written))
    for _ in range(100):
        now[0] += 0.1
        sound.add(BLOCK)
        worst = max(worst, sound.written - synced[0])
        promised = struct.unpack("<I", (tmp_path / "a.wav").read_bytes()[40:44])[0]
        assert promised <= synced[0]
        assert promised >= sound.written - BYTES_PER_S / 2
    assert 0 < worst <= BYTES_PER_S / 2


def test_late_blocks_that_come_at_once_are_synced_too(tmp_path: Path) -> None:
    """A second of sound in no time, as after a thread was held up."""
    synced, worst = [0], 0
    sound = SafeSound(tmp_path / "a.wav", now=lambda: 0.0, sync=lambda _: synced.__setitem__(0, sound.written))
    for _ in range(10):
        sound.add(BLOCK)
        worst = max(worst, sound.written - synced[0])
    assert 0 < worst <= BYTES_PER_S / 2


@pytest.mark.parametrize("number", range(KILLS))
def test_kill_at_a_random_moment(tmp_path: Path, number: int) -> None:
    """kill -9: at most half a second of what was taken in is missing, and the file is readable before any repair."""
    path, count = tmp_path / "a.wav", mmap.mmap(-1, 8)
    child = os.fork()
    if child == 0:  # pragma: no cover - killed
        sound = SafeSound(path)
        taken = 0
        while True:
            sound.add(BLOCK)
            taken += len(BLOCK)
            count[:8] = struct.pack("<Q", taken)
            time.sleep(0.002)
    time.sleep(random.Random(number).uniform(0.02, 0.5))
    while not path.exists() or path.stat().st_size <= HEAD_BYTES:
        time.sleep(0.01)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    (taken,) = struct.unpack("<Q", count[:8])
    with wave.open(str(path)) as file:
        promised = file.getnframes()
    held = repair(path) * BYTES_PER_S
    assert promised * 2 <= held
    assert held >= taken - BYTES_PER_S / 2
    data = path.read_bytes()[HEAD_BYTES:]
    assert data == (BLOCK * (len(data) // len(BLOCK) + 1))[: len(data)]
    recording = Recording(path)
    assert sum(len(block.samples) for block in recording.blocks()) * 2 == len(data)


def test_full_disk_is_said_and_the_sound_is_held(tmp_path: Path) -> None:
    """A part is taken, then nothing; with room again all of it is written, in order."""
    now, room = [0.0], [BYTES_PER_S // 10 + 700]

    def write(file: int, data: bytes) -> int:
        if room[0] <= 0:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        count = min(len(data), room[0])
        room[0] -= count
        return os.write(file, data[:count])

    sound = SafeSound(tmp_path / "a.wav", write=write, now=lambda: now[0])
    sent = []
    for number in range(20):
        block = bytes([number]) * len(BLOCK)
        sent.append(block)
        now[0] += 0.1
        sound.add(block)
    assert "no space left" in sound.fault
    assert sound.held_s == pytest.approx(2.0 - room_s(700 + BYTES_PER_S // 10), abs=0.01)
    assert sound.everything() == b"".join(sent)
    room[0] = 10**9
    now[0] += 2.0
    sound.add(BLOCK)
    assert sound.fault == ""
    assert sound.close()
    assert (tmp_path / "a.wav").read_bytes()[HEAD_BYTES:] == b"".join(sent) + BLOCK


def room_s(count: int) -> float:
    """Bytes as seconds of sound."""
    return count / BYTES_PER_S


def test_disk_full_at_the_end(tmp_path: Path) -> None:
    """Closing says that not all is on the disk."""

    def full(_file: int, _data: bytes) -> int:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    sound = SafeSound(tmp_path / "a.wav", write=full)
    sound.add(BLOCK)
    assert not sound.close()
    assert sound.everything() == BLOCK


@pytest.mark.skipif(os.geteuid() != 0, reason="a small file system is mounted by root only")
def test_small_file_system(tmp_path: Path) -> None:
    """A real disk that is full, then has room again."""
    place = tmp_path / "small"
    place.mkdir()
    if os.system(f"mount -t tmpfs -o size=64k tmpfs {place} 2>/dev/null"):
        pytest.skip("mounting is not allowed here")
    try:
        filler = place / "filler"
        filler.write_bytes(bytes(20_000))
        now = [0.0]
        sound = SafeSound(place / "a.wav", now=lambda: now[0])
        for _ in range(30):
            now[0] += 0.1
            sound.add(BLOCK)
        assert sound.fault
        filler.unlink()
        assert sound.everything() == 30 * BLOCK
        os.system(f"mount -o remount,size=1m {place}")
        now[0] += 2
        sound.add(BLOCK)
        assert sound.fault == ""
        assert sound.close()
        assert (place / "a.wav").read_bytes()[HEAD_BYTES:] == 31 * BLOCK
    finally:
        os.system(f"umount {place}")


def test_no_folder(tmp_path: Path) -> None:
    """One line says where and what to do."""
    with pytest.raises(MachineError, match="sound cannot be kept there"):
        SafeSound(tmp_path / "none" / "a.wav")
