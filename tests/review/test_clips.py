"""A clip is exactly the stretch asked for."""

from __future__ import annotations

import io
import wave
from pathlib import Path

import numpy as np
import pytest
from by_hand import DEMOS

from dictate.errors import InputError
from dictate.hearing.audio import RATE_HZ, Recording
from dictate.review.clips import LONGEST_S, Clips

RECORDING = DEMOS / "noisy-queries.flac"


def samples(content: bytes) -> np.ndarray:
    """What a WAV file holds, as a player reads it."""
    with wave.open(io.BytesIO(content)) as file:
        assert (file.getnchannels(), file.getsampwidth(), file.getframerate()) == (1, 2, RATE_HZ)
        return np.frombuffer(file.readframes(file.getnframes()), dtype="<i2")


def test_clip_is_that_span_of_the_recording() -> None:
    """Sample by sample what the decoder gives between the two times."""
    whole = np.concatenate([block.samples for block in Recording(RECORDING).blocks()])
    got = samples(Clips(RECORDING).cut(3.22, 6.08))
    wanted = whole[round(3.22 * RATE_HZ) : round(6.08 * RATE_HZ)]
    assert len(got) == len(wanted)
    assert np.abs(got / 32767 - wanted).max() <= 1 / 32767


def test_sound_held_in_memory_gives_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """And leaves no file behind."""
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    assert Clips(RECORDING.read_bytes()).cut(1, 2) == Clips(RECORDING).cut(1, 2)
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(("start_s", "end_s"), [(2, 1), (1, 1), (-1, 1), (0, LONGEST_S + 1), (9000, 9001)])
def test_stretch_that_is_none_is_refused(start_s: float, end_s: float) -> None:
    """Backwards, empty, endless, behind the end."""
    with pytest.raises(InputError):
        Clips(RECORDING).cut(start_s, end_s)


def test_end_behind_the_recording_is_its_end() -> None:
    """The last clip is as long as there is sound."""
    length = sum(len(block.samples) for block in Recording(RECORDING).blocks()) / RATE_HZ
    assert 0 < len(samples(Clips(RECORDING).cut(length - 1, length + 5))) <= RATE_HZ + 1
