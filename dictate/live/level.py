"""Level of the sound: a meter, and what is wrong with a microphone."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

CLIPPED = 32_700  # of 32 767: the loudest the format holds
MOST_CLIPPED = 0.002  # share of samples
QUIET_DB = -45.0  # speech that stays below this is hard to hear
FLOOR_DB = -90.0
CHECK_S = 3.0  # the first seconds decide whether the microphone is alive
MUTED_S = 15.0  # without any sound at all later on: muted; one that cuts noise off is silent between phrases too
RATE_HZ = 16_000
SILENT = "the microphone gives perfect silence: is it muted, or the wrong one?"


class Level:
    """Follows the sound as it comes."""

    def __init__(self) -> None:
        self._samples = self._clipped = 0
        self._loudest_db = FLOOR_DB
        self._zeros = 0  # samples without any sound, up to now
        self.now_db = FLOOR_DB
        self._said: set[str] = set()

    def add(self, pcm: bytes) -> str:
        """Take a block in; what is wrong, said once each, else empty."""
        samples: npt.NDArray[np.int16] = np.frombuffer(pcm, "<i2")
        if not samples.size:
            return ""
        self._samples += samples.size
        if samples.any():
            self._zeros = 0
            self._said.discard(SILENT)
        else:
            self._zeros += samples.size
        self._clipped += int(np.count_nonzero(np.abs(samples.astype(np.int32)) >= CLIPPED))
        strength = float(np.sqrt(np.mean((samples.astype(np.float64) / 32768) ** 2)))
        self.now_db = max(FLOOR_DB, 20 * float(np.log10(strength))) if strength > 0 else FLOOR_DB
        self._loudest_db = max(self._loudest_db, self.now_db)
        return self._wrong()

    def heard_speech(self) -> str:
        """A phrase was heard: was it too quiet?"""
        too_quiet = self._loudest_db < QUIET_DB
        return (
            self._once(f"the sound is very quiet ({self._loudest_db:.0f} dB): nearer, or raise it") if too_quiet else ""
        )

    def bar(self, width: int = 20) -> str:
        """The level now as a bar."""
        share = (self.now_db - FLOOR_DB * 2 / 3) / (-FLOOR_DB * 2 / 3)
        filled = round(min(1.0, max(0.0, share)) * width)
        return "█" * filled + "·" * (width - filled)

    def _wrong(self) -> str:
        if self._samples < CHECK_S * RATE_HZ:
            return ""
        if self._zeros == self._samples or self._zeros >= MUTED_S * RATE_HZ:
            return self._once(SILENT)
        if self._clipped > MOST_CLIPPED * self._samples:
            return self._once("the sound is too loud and is cut off (clipping): lower it, or move away")
        return ""

    def _once(self, text: str) -> str:
        kind = text.split("(")[0]
        if kind in self._said:
            return ""
        self._said.add(kind)
        return text
