"""What is wrong with a microphone is said once."""

from __future__ import annotations

import numpy as np

from dictate.live.level import Level


def blocks(level: Level, samples: np.ndarray, count: int = 40) -> list[str]:
    """What is said over four seconds."""
    return [text for _ in range(count) if (text := level.add(samples.astype("<i2").tobytes()))]


def sine(loud: float) -> np.ndarray:
    """A tenth of a second."""
    return np.clip(32767 * loud * np.sin(np.arange(1600) / 7), -32768, 32767)


def test_muted_microphone() -> None:
    """Nothing but zeros."""
    (said,) = blocks(Level(), np.zeros(1600))
    assert "muted" in said


def test_muted_in_the_midst() -> None:
    """Each time, and not in a pause of a device that cuts noise off."""
    level, said = Level(), []
    for silent_s in (10, 20, 20):
        for block in [sine(0.2)] * 50 + [np.zeros(1600)] * (10 * silent_s):
            said.append(level.add(block.astype("<i2").tobytes()))
        assert level.bar().count("█") == 0
    assert ["muted" in each for each in said if each] == [True, True]


def test_clipping() -> None:
    """Cut off at the top."""
    (said,) = blocks(Level(), sine(3.0))
    assert "clipping" in said


def test_good_level_says_nothing() -> None:
    """And the bar moves with it."""
    level = Level()
    assert blocks(level, sine(0.2)) == []
    assert level.heard_speech() == ""
    assert level.bar().count("█") > 10
    level.add(bytes(3200))
    assert level.bar().count("█") == 0


def test_quiet_speech() -> None:
    """Said when a phrase was heard, once."""
    level = Level()
    assert blocks(level, sine(0.002)) == []
    assert "very quiet" in level.heard_speech()
    assert level.heard_speech() == ""


def test_no_sound_is_no_block() -> None:
    """Nothing arrives, nothing is said."""
    assert Level().add(b"") == ""
