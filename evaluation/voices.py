"""Synthetic voices: flite and espeak-ng as programs, hibari-tts where it is installed; and a dictation spoken."""

from __future__ import annotations

import subprocess
import tempfile
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np

from evaluation.sound import CONDITIONS, HISS_DB, RATE_HZ, Samples, gain, levelled, pink, read_wave, resampled

# Thresholds are set on the first and reported on the second: no voice is in both.
SETTING = ("flite:slt", "flite:rms", "espeak:en-us", "espeak:en-gb-x-rp")
REPORTING = ("hibari:heart", "flite:awb", "flite:kal16", "espeak:en-gb-scotland", "espeak:en-gb")
PAUSE_S = (0.35, 0.9)  # between statements, drawn evenly
WORDS_PER_MINUTE = 155  # of espeak-ng at pace 1


def say(text: str, voice: str, *, pace: float = 1.0) -> Samples:
    """One statement by one voice (`flite:slt`, `espeak:en-us`, `hibari:heart`); pace 1 is its own."""
    kind, _, name = voice.partition(":")
    if kind == "hibari":
        speaker = _hibari(name)
        return resampled(np.asarray(speaker(text, speed=0.92 * pace, seed=1), np.float32), speaker.sample_rate)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "said.wav"
        if kind == "flite":
            stretch = f"duration_stretch={1 / pace:.3f}"
            command = ["flite", "-voice", name, "--setf", stretch, "-t", text, "-o", str(path)]
        elif kind == "espeak":
            command = ["espeak-ng", "-v", name, "-s", str(round(WORDS_PER_MINUTE * pace)), "-w", str(path), text]
        else:
            raise ValueError(f"{voice}: no such kind of voice: use flite:, espeak: or hibari:")
        subprocess.run(command, check=True, capture_output=True)
        return resampled(*read_wave(path))


@lru_cache
def _hibari(name: str) -> Any:
    from hibari import Hibari

    return Hibari(voice=name)


def dictation(
    statements: Sequence[str], voice: str, *, pace: float = 1.0, condition: str = "clean", seed: int = 1
) -> Samples:
    """All statements with pauses between them, at the usual level, after what the condition does to them."""
    chance = np.random.default_rng(seed)
    pieces = [np.zeros(RATE_HZ // 2, np.float32)]
    for statement in statements:
        pieces += [
            say(statement, voice, pace=pace),
            np.zeros(int(chance.uniform(*PAUSE_S) * RATE_HZ), np.float32),
        ]
    voiced = levelled(np.concatenate(pieces))
    hissing = voiced + gain(HISS_DB) * pink(len(voiced), chance)
    return np.asarray(CONDITIONS[condition](hissing, chance), np.float32)
