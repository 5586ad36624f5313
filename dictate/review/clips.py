"""Clips: a stretch of a recording as a sound file in memory."""

from __future__ import annotations

import io
import wave
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from dictate.errors import InputError
from dictate.settings import temporary_folder

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

LONGEST_S = 120.0


class Clips:
    """Cuts stretches out of one recording, which is decoded once."""

    def __init__(self, sound: Path | bytes) -> None:
        self._sound = sound

    def cut(self, start_s: float, end_s: float) -> bytes:
        """The stretch as a WAV file: mono, 16 kHz, 16 bits. Raises InputError when there is no such stretch."""
        from dictate.hearing.audio import RATE_HZ

        if not 0 <= start_s < end_s or end_s - start_s > LONGEST_S:
            raise InputError(f"{start_s:g} to {end_s:g} s: no stretch that can be played: give up to {LONGEST_S:g} s")
        samples = _samples(self._sound)[round(start_s * RATE_HZ) : round(end_s * RATE_HZ)]
        if not len(samples):
            raise InputError(f"{start_s:g} s: the recording ends before")
        out = io.BytesIO()
        with wave.open(out, "wb") as file:
            file.setnchannels(1)
            file.setsampwidth(2)
            file.setframerate(RATE_HZ)
            file.writeframes(samples.tobytes())
        return out.getvalue()


@lru_cache(maxsize=2)
def _samples(sound: Path | bytes) -> npt.NDArray[np.int16]:
    """The whole recording as 16-bit samples; two bytes a sample keep an hour below 120 MB."""
    import numpy as np

    from dictate.hearing.audio import Recording

    if isinstance(sound, bytes):
        return _from_bytes(sound)
    pieces = [np.round(block.samples.clip(-1, 1) * 32767).astype("<i2") for block in Recording(sound).blocks()]
    return np.concatenate(pieces)


def _from_bytes(sound: bytes) -> npt.NDArray[np.int16]:
    """A recording held in memory: the decoder wants a file, which only the user can read and which is removed."""
    with temporary_folder() as folder:
        path = Path(folder) / "recording"
        path.write_bytes(sound)
        return _samples(path)
