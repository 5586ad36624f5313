"""What happens to a voice on its way: noise, telephone, room, level, clipping; and sound files."""

from __future__ import annotations

import wave
from collections.abc import Callable
from pathlib import Path

import numpy as np
import numpy.typing as npt

Samples = npt.NDArray[np.float32]  # (n,), mono, 16 kHz, -1..1

RATE_HZ = 16_000
SPEECH_DB = -23.0  # root mean square of what is spoken, against full scale
HISS_DB = -72.0  # a faint hiss, so that pauses are not digital zero
MU = 255.0  # of the telephone's companding


def gain(decibels: float) -> float:
    """The ratio of amplitudes for a difference in level."""
    return float(10 ** (decibels / 20))


def levelled(samples: Samples, level_db: float = SPEECH_DB) -> Samples:
    """The samples with their loud frames at a level."""
    frames = samples[: len(samples) // 320 * 320].reshape(-1, 320)
    power = np.mean(np.square(frames), axis=1)
    loud = power[power > power.max() * 1e-4]
    return (samples * gain(level_db) / np.sqrt(loud.mean())).astype(np.float32)


def pink(length: int, chance: np.random.Generator) -> Samples:
    """Noise whose power falls as 1/f from 40 Hz up, root mean square 1."""
    spectrum = np.fft.rfft(chance.standard_normal(length))
    shaped = np.fft.irfft(spectrum / np.sqrt(np.maximum(np.fft.rfftfreq(length, 1 / RATE_HZ), 40.0)), length)
    return (shaped / np.sqrt(np.mean(np.square(shaped)))).astype(np.float32)


def noisy(below_db: float) -> Callable[[Samples, np.random.Generator], Samples]:
    """Pink noise so many decibels below the speech."""
    return lambda samples, chance: samples + gain(SPEECH_DB - below_db) * pink(len(samples), chance)


def telephone(samples: Samples, chance: np.random.Generator) -> Samples:
    """300 to 3400 Hz, companded to 8 bits."""
    spectrum = np.fft.rfft(samples)
    hertz = np.fft.rfftfreq(len(samples), 1 / RATE_HZ)
    spectrum[(hertz < 300) | (hertz > 3400)] = 0
    narrow = np.clip(np.fft.irfft(spectrum, len(samples)), -1, 1)
    pressed = np.sign(narrow) * np.log1p(MU * np.abs(narrow)) / np.log1p(MU)
    coarse = np.round(pressed * 127) / 127
    return (np.sign(coarse) * np.expm1(np.abs(coarse) * np.log1p(MU)) / MU).astype(np.float32)


def room(samples: Samples, chance: np.random.Generator) -> Samples:
    """A small bare room: 0.4 s of decay, the microphone a metre and a half away."""
    length = int(0.4 * RATE_HZ)
    tail = chance.standard_normal(length) * np.exp(-6.9 * np.arange(length) / length)
    tail *= 0.7 / np.sqrt(np.sum(tail**2))
    tail[0] = 1.0
    size = len(samples) + length
    wet = np.fft.irfft(np.fft.rfft(samples, size) * np.fft.rfft(tail, size), size)[: len(samples)]
    return levelled(wet.astype(np.float32))


def music(below_db: float) -> Callable[[Samples, np.random.Generator], Samples]:
    """Plucked chords and a tune over them, so many decibels below the speech."""
    return lambda samples, chance: samples + gain(SPEECH_DB - below_db) * _played(len(samples), chance)


def _played(length: int, chance: np.random.Generator) -> Samples:
    """Two notes a second, each of six harmonics that die away, on chords of a major key; root mean square 1."""
    sound = np.zeros(length + 2 * RATE_HZ, np.float32)
    beat = np.arange(2 * RATE_HZ) / RATE_HZ
    for number, start in enumerate(range(0, length, RATE_HZ // 2)):
        root = (0, 5, 7, 0)[number // 8 % 4]
        for step in (root, root + 4, root + 7, root + 12 + int(chance.choice((0, 2, 4, 7)))):
            hertz = 196.0 * 2 ** (step / 12)
            note = sum(np.sin(2 * np.pi * k * hertz * beat) * np.exp(-(1 + k) * beat) / k for k in range(1, 7))
            sound[start : start + len(beat)] += np.asarray(note, np.float32)
    return (sound[:length] / np.sqrt(np.mean(np.square(sound[:length])))).astype(np.float32)


def too_loud(by_db: float) -> Callable[[Samples, np.random.Generator], Samples]:
    """Cut off at 0.6 of full scale after so much gain."""
    return lambda samples, chance: np.clip(samples * gain(by_db), -0.6, 0.6)


CONDITIONS: dict[str, Callable[[Samples, np.random.Generator], Samples]] = {
    "clean": lambda samples, chance: samples,
    "noise20": noisy(20.0),
    "noise10": noisy(10.0),
    "telephone": telephone,
    "room": room,
    "quiet": lambda samples, chance: samples * gain(-25.0),
    "music25": music(25.0),
    "music15": music(15.0),
    "clipped": too_loud(18.0),
    "clipped12": too_loud(12.0),
    "clipped24": too_loud(24.0),
}


def read_wave(path: Path) -> tuple[Samples, int]:
    """First channel and rate of a 16-bit wave file."""
    with wave.open(str(path)) as file:
        raw = np.frombuffer(file.readframes(file.getnframes()), np.int16).reshape(-1, file.getnchannels())
        return (raw[:, 0] / 32768).astype(np.float32), file.getframerate()


def write_wave(path: Path, samples: Samples) -> None:
    """16-bit, mono, 16 kHz."""
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE_HZ)
        file.writeframes((np.clip(samples, -0.999, 0.999) * 32767).astype("<i2").tobytes())


def resampled(samples: Samples, rate_hz: int) -> Samples:
    """At 16 kHz, by way of the spectrum; what lies above 8 kHz is cut."""
    if rate_hz == RATE_HZ:
        return samples
    count = round(len(samples) * RATE_HZ / rate_hz)
    spectrum = np.fft.rfft(samples)
    fitting = np.zeros(count // 2 + 1, complex)
    most = min(len(fitting), len(spectrum))
    fitting[:most] = spectrum[:most]
    return (np.fft.irfft(fitting, count) * count / len(samples)).astype(np.float32)
