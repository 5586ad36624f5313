"""The adapter, added to a small file of weights."""

from __future__ import annotations

import struct
from pathlib import Path

import numpy as np
import pytest

from dictate.errors import MachineError
from dictate.hearing import trade
from dictate.hearing.trade import adapt, adapted_sha256


def text(name: str) -> bytes:
    """A name as the file of weights writes it."""
    return struct.pack("<H", len(name) + 1) + name.encode() + b"\0"


@pytest.fixture
def base(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A model of one matrix of ones, and an adapter for it."""
    folder = tmp_path / "base"
    folder.mkdir()
    matrix = np.ones((3, 2), np.float16)
    head = struct.pack("<I", 6) + text("WhisperSpec") + struct.pack("<II", 3, 1)
    entry = text("decoder/x/weight") + struct.pack("<BIIBI", 2, 3, 2, trade.HALF, matrix.nbytes)
    (folder / "model.bin").write_bytes(head + entry + matrix.tobytes() + b"tail")
    (folder / "config.json").write_text("{}")
    np.savez(tmp_path / "a.npz", **{"decoder|x|A": np.ones((1, 2), "f2"), "decoder|x|B": np.full((3, 1), 2, "f2")})
    monkeypatch.setattr(trade, "ADAPTER", tmp_path / "a.npz")
    return folder


def test_the_change_is_added_and_nothing_else(base: Path, tmp_path: Path) -> None:
    """1 + strength * scale * (2 x 1), and every other byte stays."""
    adapt(base, "sha", tmp_path / "out")
    before, after = (base / "model.bin").read_bytes(), (tmp_path / "out" / "model.bin").read_bytes()
    assert len(before) == len(after)
    matrix = np.frombuffer(after[-16:-4], np.float16)
    assert matrix.tolist() == [1 + trade.STRENGTH * trade.RANK_SCALE * 2] * 6
    assert before[:-16] == after[:-16]
    assert after.endswith(b"tail")


def test_an_adapted_model_is_verified(base: Path, tmp_path: Path) -> None:
    """It is known by its base, its adapter and its own digest; a changed byte is noticed."""
    out = tmp_path / "out"
    adapt(base, "sha", out)
    assert adapted_sha256(out, "sha")
    assert adapted_sha256(out, "another base") is None
    with (out / "model.bin").open("ab") as file:
        file.write(b"x")
    assert adapted_sha256(out, "sha") is None
    assert adapted_sha256(tmp_path / "none", "sha") is None


def test_an_adapter_that_does_not_fit_is_refused(base: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another model's matrices are not changed silently."""
    np.savez(tmp_path / "b.npz", **{"decoder|y|A": np.ones((1, 2), "f2"), "decoder|y|B": np.ones((3, 1), "f2")})
    monkeypatch.setattr(trade, "ADAPTER", tmp_path / "b.npz")
    with pytest.raises(MachineError, match="does not fit"):
        adapt(base, "sha", tmp_path / "out")
