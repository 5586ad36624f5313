"""Headers that promise more than the file holds."""

from __future__ import annotations

import struct
from pathlib import Path

import pytest
from hearing.sounds import noise, write_sound

from dictate.hearing.whole import cut_short, looks_like_sound

ENDINGS = [".wav", ".flac", ".mp3", ".m4a", ".ogg", ".webm"]


@pytest.mark.parametrize("ending", ENDINGS)
def test_a_whole_file_is_whole(tmp_path: Path, ending: str) -> None:
    path = write_sound(tmp_path / f"whole{ending}", noise(2.0))
    assert looks_like_sound(path) or ending == ".mp3"
    assert not cut_short(path)


@pytest.mark.parametrize("ending", [".wav", ".mp3", ".ogg", ".webm"])
@pytest.mark.parametrize("lost", [1, 500, 10_000])
def test_a_file_that_lacks_its_end_is_cut_short(tmp_path: Path, ending: str, lost: int) -> None:
    data = write_sound(tmp_path / f"whole{ending}", noise(6.0)).read_bytes()
    (tmp_path / f"cut{ending}").write_bytes(data[:-lost])
    assert cut_short(tmp_path / f"cut{ending}")


@pytest.mark.parametrize("length", [0, 0xFFFFFFFF])
def test_a_wave_file_written_as_a_stream_promises_nothing(tmp_path: Path, length: int) -> None:
    """The program that wrote it did not know the length beforehand."""
    path = write_sound(tmp_path / "stream.wav", noise(1.0))
    data = bytearray(path.read_bytes())
    at = data.index(b"data") + 4
    data[at : at + 4] = struct.pack("<I", length)
    path.write_bytes(data)
    assert not cut_short(path)


def test_a_chunk_before_the_sound_is_passed_over(tmp_path: Path) -> None:
    path = write_sound(tmp_path / "noted.wav", noise(1.0))
    data = path.read_bytes()
    at = data.index(b"data")
    path.write_bytes(data[:at] + b"note" + struct.pack("<I", 3) + b"odd\0" + data[at:])
    assert not cut_short(path)
    path.write_bytes(path.read_bytes()[:-10])
    assert cut_short(path)


@pytest.mark.parametrize("data", [b"", b"R", b"RIFF", b"OggS", b"\x1a\x45\xdf\xa3", b"ID3", b"ID3" + b"\x7f" * 40])
def test_a_scrap_of_a_header_is_no_fault_of_the_program(tmp_path: Path, data: bytes) -> None:
    (tmp_path / "scrap").write_bytes(data)
    assert cut_short(tmp_path / "scrap") in (True, False)
    assert looks_like_sound(tmp_path / "scrap") is (
        data[:4] in (b"RIFF", b"OggS", b"\x1a\x45\xdf\xa3", b"ID3") or data[:3] == b"ID3"
    )


def test_a_text_does_not_look_like_sound(tmp_path: Path) -> None:
    (tmp_path / "text").write_text("Gait normal.", encoding="utf-8")
    assert not looks_like_sound(tmp_path / "text")
