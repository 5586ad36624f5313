"""What a file holds: its digest, and whether it stood still while it was read."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

import pytest

from dictate.batch.contents import at_hand, bytes_of, content_of, digest_of
from dictate.batch.jobs import Place
from dictate.errors import InputError


def test_digest_is_of_the_content(tmp_path: Path) -> None:
    """SHA-256, whatever name and time."""
    path = tmp_path / "a.wav"
    path.write_bytes(b"sound")
    assert content_of(Place(str(path), 5, "any")) == hashlib.sha256(b"sound").hexdigest()
    marks = {content_of(Place(f"s3://bucket/{name}.wav", 5, mark)) for name in "ab" for mark in "xy"}
    assert len(marks) == 4, "another address, another mark: another recording"


def test_what_is_no_file_is_one_line(tmp_path: Path) -> None:
    """A pipe would be waited for without end; a link to nothing and an unreadable file are said."""
    os.mkfifo(tmp_path / "pipe.wav")
    with pytest.raises(InputError, match=r"pipe\.wav: not a regular file"):
        digest_of(str(tmp_path / "pipe.wav"))
    with pytest.raises(InputError, match=r"none\.wav: no such file"):
        digest_of(str(tmp_path / "none.wav"))
    with pytest.raises(InputError, match="cannot be read"):
        digest_of(str(tmp_path / ("x" * 300)))


def test_in_place_fetched_or_sent(tmp_path: Path) -> None:
    """A file of this machine is not copied; others are there under their own name, and gone afterwards."""
    path = tmp_path / "a.wav"
    path.write_bytes(b"sound")
    with at_hand([str(path)], ()) as ready:
        assert ready == [path]
    with at_hand([f"file://{path}", f"file://{path}"], ()) as fetched:
        assert [one.read_bytes() for one in fetched] == [b"sound", b"sound"]
        assert {one.name for one in fetched} == {"a.wav"}
    assert not fetched[0].exists()
    with at_hand([f"file://{path}"], (), [5]) as fetched, at_hand([f"file://{path}"], (), [0]) as unknown:
        assert fetched[0].read_bytes() == unknown[0].read_bytes()
    with pytest.raises(InputError, match="changed while it was read"), at_hand([f"file://{path}"], (), [4]):
        pass
    with at_hand(["/elsewhere/b.wav"], (b"other",)) as sent:
        assert (sent[0].name, sent[0].read_bytes()) == ("b.wav", b"other")
        assert sent[0].parent.parent.stat().st_mode & 0o077 == 0
    assert not sent[0].exists()


def test_bytes_to_be_sent_along(tmp_path: Path) -> None:
    """Of a file and of an address."""
    path = tmp_path / "a.wav"
    path.write_bytes(b"sound")
    assert bytes_of(str(path), 5) == bytes_of(f"file://{path}", 5) == b"sound"
    for there in (tmp_path / "none.wav", f"file://{tmp_path}/none.wav"):
        with pytest.raises(InputError, match=r"^none\.wav: cannot be"):
            bytes_of(str(there), 5)


def test_name_that_no_text_can_hold(tmp_path: Path) -> None:
    """It is read under a name that a transcript can state."""
    odd = os.fsdecode(os.fsencode(tmp_path) + b"/a\xff.wav")
    Path(odd).write_bytes(b"sound")
    with at_hand([odd], ()) as ready:
        assert ready[0].name.encode() == b"a\\xff.wav"
        assert ready[0].read_bytes() == b"sound"


def test_address_that_gives_nothing(tmp_path: Path) -> None:
    """One line with the file's name, without its address."""
    with pytest.raises(InputError, match=r"^none.wav: cannot be fetched"), at_hand([f"file://{tmp_path}/none.wav"], ()):
        pass
