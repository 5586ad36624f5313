"""Recordings made on the spot: tones, noise and any container."""

from __future__ import annotations

from pathlib import Path

import av
import numpy as np
import numpy.typing as npt

Sound = npt.NDArray[np.float32]
CODECS = {".wav": "pcm_s16le", ".flac": "flac", ".mp3": "mp3", ".m4a": "aac", ".mp4": "aac"} | dict.fromkeys(
    (".ogg", ".opus", ".webm"), "libopus"
)


def write_sound(path: Path, samples: Sound, *, rate_hz: int = 16_000, made: str | None = None) -> Path:
    """Write float samples (n,) or (channels, n) into the container that the name asks for."""
    sound = np.atleast_2d(samples).astype(np.float32)
    layout = "mono" if sound.shape[0] == 1 else "stereo"
    with av.open(str(path), "w") as container:
        if made:
            container.metadata["creation_time"] = made
        stream = container.add_stream(CODECS[path.suffix], rate=rate_hz, layout=layout)
        frame = av.AudioFrame.from_ndarray(np.ascontiguousarray(sound), format="fltp", layout=layout)
        frame.sample_rate = rate_hz
        for packet in (*stream.encode(frame), *stream.encode(None)):
            container.mux(packet)
    return path


def write_silent_film(path: Path) -> Path:
    """A film of a few grey frames, without a sound track."""
    with av.open(str(path), "w") as container:
        stream = container.add_stream("mpeg4", rate=10)
        stream.width = stream.height = 32
        stream.pix_fmt = "yuv420p"
        for _ in range(5):
            frame = av.VideoFrame.from_ndarray(np.full((32, 32, 3), 128, np.uint8), format="rgb24")
            container.mux(stream.encode(frame))
        container.mux(stream.encode(None))
    return path


def tone(seconds: float, *, rate_hz: int = 16_000, hz: float = 440.0, loud: float = 0.3) -> Sound:
    """A sine, as float32 (n,)."""
    at = np.arange(round(seconds * rate_hz)) / rate_hz
    return (loud * np.sin(2 * np.pi * hz * at)).astype(np.float32)


def silence(seconds: float, *, rate_hz: int = 16_000) -> Sound:
    """Digital silence, as float32 (n,)."""
    return np.zeros(round(seconds * rate_hz), np.float32)


def noise(seconds: float, *, loud: float = 0.05) -> Sound:
    """White noise at 16 kHz, the same every time, as float32 (n,)."""
    return np.random.default_rng(7).normal(0, loud, round(seconds * 16_000)).astype(np.float32)
