"""Speak the demonstration dictations: NAME.txt becomes NAME.flac, 16 kHz mono.

Run `python make.py` in this folder for all of them, or `python make.py NAME ...` for some. The voice is no part of what
`dictate` needs: `pip install hibari-tts==0.2.1 numpy av`. Everything random is seeded, so the same versions of these
packages give the same samples again.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import numpy.typing as npt

Samples = npt.NDArray[np.float32]  # (n,), mono, 16 kHz, -1..1
Voice = Callable[[str, int], Samples]  # a statement and a seed, spoken

FOLDER = Path(__file__).parent
RATE_HZ = 16_000
SPEECH_LEVEL_DB = -23.0  # root mean square of the spoken parts, against full scale
ROOM_LEVEL_DB = -72.0  # a faint hiss, so that pauses are not digital zero
FRAME = RATE_HZ // 50
HEADINGS = frozenset(
    {"general examination", "mental status", "cranial nerves", "motor", "sensory", "coordination and gait", "reflexes"}
)

# Words the neural voice says otherwise than a neurologist does, with the sounds it is given instead.
PRONUNCIATIONS = {
    "dysarthric": "dɪsˈɑɹθɹɪk",
    "nystagmus": "nɪstˈæɡməs",
    "pronator": "pɹOnˈATəɹ",
    "romberg": "ɹˈɑmbɜɹɡ",
    "fundi": "fˈʌndI",
    "plantar": "plˈæntˌɑɹ",
}


@dataclass(frozen=True, kw_only=True)
class Recording:
    """How one dictation is spoken."""

    name: str
    seed: int
    speed: float = 0.92  # 1 is the voice's own pace
    pause_s: tuple[float, float] = (0.4, 1.0)  # between statements, drawn evenly
    heading_pause_s: tuple[float, float] = (1.1, 2.0)  # before a component's name
    noise_below_speech_db: float | None = None  # None: no noise but the room's


RECORDINGS = (
    Recording(name="clinic-examination", seed=11),
    Recording(name="postural-series", seed=12),
    Recording(name="stroke-corrections", seed=13, speed=0.95, pause_s=(0.4, 0.7), heading_pause_s=(0.8, 1.3)),
    Recording(name="noisy-queries", seed=14, noise_below_speech_db=13.0),
)


def statements(name: str) -> list[str]:
    """The lines of NAME.txt, one statement each."""
    return [line for line in (FOLDER / f"{name}.txt").read_text(encoding="utf-8").splitlines() if line.strip()]


def is_heading(statement: str) -> bool:
    """Whether the statement only names a component."""
    return statement.lower().rstrip(".").split(",")[0] in HEADINGS and len(statement.split()) <= 4


def heart(speed: float) -> Voice:
    """The neural voice `heart` of hibari-tts."""
    import av
    from hibari import Hibari

    synthesis = Hibari(voice="heart")

    def say(statement: str, seed: int) -> Samples:
        for word, sounds in PRONUNCIATIONS.items():
            statement = re.sub(rf"\b({word})\b", rf"[\1](/{sounds}/)", statement, flags=re.IGNORECASE)
        spoken = np.asarray(synthesis(statement, speed=speed, seed=seed), dtype=np.float32)
        frame = av.AudioFrame.from_ndarray(spoken[np.newaxis, :], format="fltp", layout="mono")
        frame.sample_rate = synthesis.sample_rate
        resampler = av.AudioResampler(format="fltp", layout="mono", rate=RATE_HZ)
        parts = [part.to_ndarray()[0] for source in (frame, None) for part in resampler.resample(source)]
        return np.concatenate(parts).astype(np.float32)

    return say


def frames(samples: Samples) -> npt.NDArray[np.float32]:
    """The samples cut into whole frames of 20 ms, one a row."""
    return samples[: len(samples) // FRAME * FRAME].reshape(-1, FRAME)


def louder_than(samples: Samples, below_loudest_db: float) -> npt.NDArray[np.bool_]:
    """Which frames come within so many decibels of the loudest."""
    power = np.mean(np.square(frames(samples)), axis=1)
    return np.asarray(power > power.max() * gain(-below_loudest_db) ** 2)


def level(samples: Samples) -> float:
    """Root mean square of the frames in which somebody speaks."""
    return float(np.sqrt(np.mean(np.square(frames(samples)[louder_than(samples, 40.0)]))))


def trimmed(samples: Samples) -> Samples:
    """Without the silence at either end but 100 ms of it: the pauses are ours."""
    loud = np.flatnonzero(louder_than(samples, 55.0))
    return samples[max(0, loud[0] - 5) * FRAME : (loud[-1] + 6) * FRAME]


def silence(duration_s: float) -> Samples:
    """Digital silence."""
    return np.zeros(round(duration_s * RATE_HZ), dtype=np.float32)


def speech(recording: Recording, chance: np.random.Generator) -> Samples:
    """Statements and pauses in turn, at SPEECH_LEVEL_DB."""
    voice = heart(recording.speed)
    pieces = [silence(0.6)]
    for number, statement in enumerate(statements(recording.name)):
        if number:
            limits = recording.heading_pause_s if is_heading(statement) else recording.pause_s
            pieces.append(silence(chance.uniform(*limits)))
        pieces.append(trimmed(voice(statement, recording.seed * 1000 + number)))
    whole = np.concatenate([*pieces, silence(0.8)])
    return np.asarray(whole * (gain(SPEECH_LEVEL_DB) / level(whole)), dtype=np.float32)


def pink_noise(length: int, chance: np.random.Generator) -> Samples:
    """Noise whose power falls as 1/f from 40 Hz up, root mean square 1."""
    spectrum = np.fft.rfft(chance.standard_normal(length))
    frequency_hz = np.fft.rfftfreq(length, 1 / RATE_HZ)
    shaped = np.fft.irfft(spectrum / np.sqrt(np.maximum(frequency_hz, 40.0)), length)
    return (shaped / np.sqrt(np.mean(np.square(shaped)))).astype(np.float32)


def gain(decibels: float) -> float:
    """The ratio of amplitudes for a difference in level."""
    return float(10 ** (decibels / 20))


def record(recording: Recording) -> Samples:
    """The whole recording, speech at SPEECH_LEVEL_DB and noise below it."""
    chance = np.random.default_rng(recording.seed)
    clean = speech(recording, chance)
    below_db = recording.noise_below_speech_db
    noise_db = ROOM_LEVEL_DB if below_db is None else SPEECH_LEVEL_DB - below_db
    return np.clip(clean + gain(noise_db) * pink_noise(len(clean), chance), -0.99, 0.99).astype(np.float32)


def save(samples: Samples, path: Path) -> None:
    """Write 16-bit FLAC."""
    import av

    with av.open(str(path), "w") as container:
        stream = container.add_stream("flac", rate=RATE_HZ, layout="mono", options={"compression_level": "12"})
        pcm = np.round(samples * 32767).astype(np.int16)
        for start in range(0, len(pcm), 4096):
            frame = av.AudioFrame.from_ndarray(pcm[np.newaxis, start : start + 4096], format="s16", layout="mono")
            frame.sample_rate, frame.pts = RATE_HZ, start
            container.mux(stream.encode(frame))
        container.mux(stream.encode(None))


def main(names: list[str]) -> int:
    """Make the named recordings, or all; 2 for a name that is none of them."""
    known = {recording.name: recording for recording in RECORDINGS}
    for unknown in (name for name in names if name not in known):
        print(f"{unknown}: no such recording; choose from {', '.join(known)}", file=sys.stderr)
        return 2
    for name in names or known:
        samples = record(known[name])
        path = FOLDER / f"{name}.flac"
        save(samples, path)
        print(f"{path.name}: {len(samples) / RATE_HZ:.0f} s, {path.stat().st_size / 1e6:.2f} MB")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
