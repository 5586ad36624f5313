"""Recordings made on the spot: tones, noise and any container."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import av
import numpy as np
import pytest


def write_sound(path: Path, samples: np.ndarray, *, rate_hz: int = 16_000, codec: str | None = None) -> Path:
    """Write float samples (n,) or (channels, n) into the container that the name asks for."""
    by_ending = {".wav": "pcm_s16le", ".flac": "flac", ".mp3": "mp3", ".m4a": "aac", ".ogg": "libopus",
                 ".opus": "libopus", ".webm": "libopus", ".mp4": "aac", ".aac": "aac"}  # fmt: skip
    sound = np.atleast_2d(samples).astype(np.float32)
    layout = "mono" if sound.shape[0] == 1 else "stereo"
    with av.open(str(path), "w") as container:
        stream = container.add_stream(codec or by_ending[path.suffix], rate=rate_hz, layout=layout)
        frame = av.AudioFrame.from_ndarray(np.ascontiguousarray(sound), format="fltp", layout=layout)
        frame.sample_rate = rate_hz
        for packet in (*stream.encode(frame), *stream.encode(None)):
            container.mux(packet)
    return path


def tone(seconds: float, *, rate_hz: int = 16_000, hz: float = 440.0, loud: float = 0.3) -> np.ndarray:
    """A sine, as float32 (n,)."""
    at = np.arange(int(seconds * rate_hz)) / rate_hz
    return (loud * np.sin(2 * np.pi * hz * at)).astype(np.float32)


@pytest.fixture
def spoken(tmp_path: Path) -> Path:
    """A sentence in a synthetic voice, or skip where no voice is installed."""
    voice = shutil.which("espeak-ng")
    if voice is None:
        pytest.skip("espeak-ng is not installed")
    path = tmp_path / "spoken.wav"
    text = "Blood pressure one hundred and forty over eighty. Pulse seventy two."
    subprocess.run([voice, "-s", "140", "-v", "en-us", "-w", str(path), text], check=True)
    return path
