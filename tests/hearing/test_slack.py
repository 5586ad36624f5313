"""What is free goes back to the system."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from dictate.hearing import slack
from dictate.hearing.slack import give_back_slack


def resident_mb() -> float:
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * 4096 / 1e6


@pytest.mark.skipif(not Path("/proc/self/statm").exists(), reason="no /proc here: what is resident cannot be told")
def test_free_pieces_go_back() -> None:
    """Many small arrays freed but for a few."""
    pieces = [np.ones(8_000, np.float32) for _ in range(4_000)]  # 128 MB, each below the size that is mapped apart
    kept = pieces[::200]  # pages between them stay resident though free
    del pieces
    before = resident_mb()
    assert give_back_slack()
    assert resident_mb() < before - 50
    assert len(kept) == 20


def test_another_c_library_has_no_way(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(slack.sys, "platform", "darwin")
    slack._trim.cache_clear()
    assert not give_back_slack()
    monkeypatch.undo()
    slack._trim.cache_clear()
