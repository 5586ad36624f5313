"""Short tones of the program, a voice for reading back, and how both are kept out of the dictation."""

from __future__ import annotations

import shutil
import subprocess
import threading
from collections.abc import Callable, Iterable
from typing import Any, Literal

import numpy as np
import numpy.typing as npt

from dictate.live.kept import Mute, Why

Pcm = npt.NDArray[np.int16]
Tone = Literal["taken", "doubtful", "not placed", "order", "clock"]

RATE_HZ = 16_000
HIGH_HZ, LOW_HZ = 3_200, 2_600  # whole numbers of waves in a block: narrow to take out again
TONES: dict[Tone, tuple[int, ...]] = {  # one beep each, in a row; 0: a pause
    "taken": (HIGH_HZ,),
    "doubtful": (HIGH_HZ, LOW_HZ),
    "not placed": (LOW_HZ,),
    "order": (LOW_HZ, HIGH_HZ),
    "clock": (HIGH_HZ, 0, HIGH_HZ, 0, HIGH_HZ),
}
BEEP_S = 0.09
RAMP_S = 0.02  # soft edges: a click would be heard at every pitch
LOUD = 0.12
TAIL_S = 0.6  # a sound leaves the loudspeaker and comes back through the microphone this much later at most
NOTCH_HZ = 150
VOICES = ("espeak-ng", "espeak", "say")
LONGEST_VOICE_S = 60.0
MOST_SPOKEN = 20  # words, some eight seconds: while it speaks the program hears nothing
MORE = ", and more on the screen"


def render(tone: Tone) -> Pcm:
    """A tone as 16-bit samples, mono, 16 kHz."""
    at = np.arange(int(BEEP_S * RATE_HZ)) / RATE_HZ
    ramp = np.clip(np.minimum(at, BEEP_S - at) / RAMP_S, 0, 1)
    envelope = 0.5 - 0.5 * np.cos(np.pi * ramp)
    sound = np.concatenate([LOUD * envelope * np.sin(2 * np.pi * hz * at) for hz in TONES[tone]])
    return (sound * 32767).astype("<i2")


def without_tones(samples: Pcm) -> Pcm:
    """A block with the pitches of the tones, and their double, taken out; a voice stays in it."""
    spectrum = np.fft.rfft(samples.astype(np.float64))
    pitch = np.fft.rfftfreq(len(samples), 1 / RATE_HZ)
    for hz in (HIGH_HZ, LOW_HZ, 2 * HIGH_HZ, 2 * LOW_HZ):
        spectrum[np.abs(pitch - hz) <= NOTCH_HZ] = 0
    return np.clip(np.rint(np.fft.irfft(spectrum, len(samples))), -32768, 32767).astype("<i2")


def cleaned(pcm: bytes, whys: Iterable[Why]) -> bytes:
    """A block as the recogniser gets it: silent where it is no dictation, without the tones where they sound."""
    kinds = set(whys)
    if kinds & {"own voice", "paused"}:
        return bytes(len(pcm))
    return without_tones(np.frombuffer(pcm, "<i2")).tobytes() if kinds and pcm else pcm


class Muting:
    """Knows, for every block of sound, whether the program itself is heard in it. Safe between threads."""

    def __init__(self, *, on_mute: Callable[[Mute], None]) -> None:
        self._on_mute = on_mute
        self._lock = threading.Lock()
        self._until: dict[Why, float] = {}
        self._since: dict[Why, float] = {}

    def begin(self, why: Why, seconds: float, *, now_s: float) -> None:
        """A sound starts that lasts at most so long; `now_s`: seconds of the dictation's sound."""
        with self._lock:
            self._since.setdefault(why, now_s)
            self._until[why] = max(self._until.get(why, 0.0), now_s + seconds + TAIL_S)

    def end(self, why: Why, *, now_s: float) -> None:
        """It has ended, earlier than foreseen."""
        with self._lock:
            if why in self._until:
                self._until[why] = now_s + TAIL_S

    def clean(self, pcm: bytes, *, start_s: float) -> bytes:
        """The block as the recogniser gets it."""
        with self._lock:
            over = [why for why, until in self._until.items() if until <= start_s]
            ended = [Mute(start_s=self._since.pop(why), end_s=self._until.pop(why), why=why) for why in over]
            whys = list(self._until)
        for mute in ended:
            self._on_mute(mute)
        return cleaned(pcm, whys)

    def covers(self, why: Why) -> bool:
        """Whether what comes in now is not heard, or in part, for that reason."""
        with self._lock:
            return why in self._until

    def finish(self) -> None:
        """Say what is still sounding."""
        with self._lock:
            left = [Mute(start_s=self._since[why], end_s=until, why=why) for why, until in self._until.items()]
            self._until, self._since = {}, {}
        for mute in left:
            self._on_mute(mute)


class Sounds:
    """Plays tones and reads aloud; silent where the machine has no way to."""

    def __init__(self, muting: Muting, *, play: Callable[[Pcm], None] | None, voice: str | None = None) -> None:
        self._muting, self._play, self._voice = muting, play, voice

    def tone(self, tone: Tone, *, now_s: float) -> None:
        """Play a tone; the microphone is told first."""
        if self._play is None:
            return
        sound = render(tone)
        self._muting.begin("own tone", len(sound) / RATE_HZ, now_s=now_s)
        self._play(sound)

    @property
    def speaks(self) -> bool:
        """Whether it reads aloud, and hears nothing."""
        return self._muting.covers("own voice")

    def read_aloud(self, text: str, *, now_s: Callable[[], float]) -> bool:
        """Say a text, or its beginning; False when there is no voice."""
        if self._play is None or self._voice is None or not text:
            return False
        self._muting.begin("own voice", LONGEST_VOICE_S, now_s=now_s())
        threading.Thread(target=self._speak, args=(shortened(text), now_s), daemon=True).start()
        return True

    def _speak(self, text: str, now_s: Callable[[], float]) -> None:
        try:
            subprocess.run(
                [str(self._voice), text], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                timeout=LONGEST_VOICE_S, check=False,
            )  # fmt: skip
        except (OSError, subprocess.TimeoutExpired):
            pass
        finally:
            self._muting.end("own voice", now_s=now_s())


def shortened(text: str) -> str:
    """As much of a text as may be read aloud."""
    words = text.split()
    return text if len(words) <= MOST_SPOKEN else " ".join(words[:MOST_SPOKEN]).rstrip(",.;:") + MORE


def find_voice() -> str | None:
    """A speech synthesiser of the system; None: there is none."""
    return next((path for name in VOICES if (path := shutil.which(name))), None)


def loudspeaker() -> Callable[[Pcm], None] | None:
    """Plays samples and returns at once; None without the extra or a device."""
    try:
        import sounddevice
    except (ImportError, OSError):
        return None
    library: Any = sounddevice

    def play(samples: Pcm) -> None:
        try:
            library.play(samples, RATE_HZ)
        except library.PortAudioError:
            return  # no loudspeaker: the screen says the same

    return play
