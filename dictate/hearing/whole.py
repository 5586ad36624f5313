"""Does a sound file hold as much as its own header promises?"""

from __future__ import annotations

import struct
from pathlib import Path
from typing import BinaryIO

HEAD_BYTES = 65_536
STREAMED = {0, 0x7FFFFFFF, 0xFFFFFFFF}  # sizes written by programs that did not know the length beforehand
EBML_UNKNOWN = {0x7F, 0x3FFF, 0x1FFFFF, 0x0FFFFFFF, 0x7FFFFFFFF, 0x3FFFFFFFFFF, 0x1FFFFFFFFFFFF, 0xFFFFFFFFFFFFFF}
XING_FRAMES, XING_BYTES = 1, 2
OGG_LAST_PAGE = 0x04
OGG_PAGE_MOST = 65_307  # bytes of the longest page

SOUND_STARTS = (b"RIFF", b"RF64", b"fLaC", b"OggS", b"ID3", b"\x1a\x45\xdf\xa3", b"FORM", b"caff")


def looks_like_sound(path: Path) -> bool:
    """Whether the first bytes are those of a sound container, however damaged the rest is."""
    head = _head(path)
    return head.startswith(SOUND_STARTS) or head[4:8] == b"ftyp"


def cut_short(path: Path) -> bool:
    """Whether the file ends before its header says; False also where the header says nothing."""
    head = _head(path)
    size = path.stat().st_size
    if head[:4] == b"RIFF":
        with path.open("rb") as file:
            return _wave_ends_at(file) > size
    if head[:4] == b"OggS":
        return not _has_last_page(path, size)
    if head[:4] == b"\x1a\x45\xdf\xa3":
        return _segment_ends_at(head) > size
    return _mp3_ends_at(head) > size


def _head(path: Path) -> bytes:
    with path.open("rb") as file:
        return file.read(HEAD_BYTES)


def _wave_ends_at(file: BinaryIO) -> int:
    """Byte at which the `data` chunk ends; 0: not stated."""
    at = 12
    while True:
        file.seek(at)
        name = file.read(8)
        if len(name) < 8:
            return 0
        length = int(struct.unpack("<I", name[4:])[0])
        if name[:4] == b"data":
            return 0 if length in STREAMED else at + 8 + length
        at += 8 + length + length % 2


def _has_last_page(path: Path, size: int) -> bool:
    """Whether an Ogg file closes with a page marked as the last one."""
    with path.open("rb") as file:
        file.seek(max(0, size - 2 * OGG_PAGE_MOST))
        tail = file.read()
    at = tail.rfind(b"OggS")
    while at >= 0:
        if len(tail) - at >= 27 and tail[at + 4] == 0:
            segments = tail[at + 27 : at + 27 + tail[at + 26]]
            whole = len(segments) == tail[at + 26] and len(tail) - at >= 27 + len(segments) + sum(segments)
            return whole and bool(tail[at + 5] & OGG_LAST_PAGE)
        at = tail.rfind(b"OggS", 0, at)
    return False


def _segment_ends_at(head: bytes) -> int:
    """Byte at which the Matroska or WebM segment ends; 0: a live recording that does not state it."""
    length, width = _ebml_number(head, 4)
    at = 4 + width + length
    if head[at : at + 4] != b"\x18\x53\x80\x67":
        return 0
    length, width = _ebml_number(head, at + 4)
    return 0 if length in EBML_UNKNOWN else at + 4 + width + length


def _ebml_number(head: bytes, at: int) -> tuple[int, int]:
    """A number of variable width and that width; (0, 8) past the end."""
    if at >= len(head) or head[at] == 0:
        return 0, 8
    width = 9 - head[at].bit_length()
    return int.from_bytes(head[at : at + width], "big") & ((1 << (7 * width)) - 1), width


def _mp3_ends_at(head: bytes) -> int:
    """Byte at which an MP3 with a Xing or Info header ends; 0: not stated."""
    start = 0
    if head[:3] == b"ID3" and len(head) > 10:
        start = 10 + sum((byte & 0x7F) << shift for byte, shift in zip(head[6:10], (21, 14, 7, 0), strict=True))
    frame = head[start : start + 256]
    if len(frame) < 64 or frame[0] != 0xFF or frame[1] & 0xE0 != 0xE0:
        return 0
    at = max(frame.find(b"Xing"), frame.find(b"Info"))
    if at < 0:
        return 0
    flags = int.from_bytes(frame[at + 4 : at + 8], "big")
    if not flags & XING_BYTES:
        return 0
    at += 12 if flags & XING_FRAMES else 8
    return start + int.from_bytes(frame[at : at + 4], "big")
