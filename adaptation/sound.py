"""Clips of clips.py or held_out.py → sound for train.py and listen.py, in several processes.

    python sound.py CLIPS.json OUT.npz [--kokoro MODEL.onnx --vocabulary vocab.json --voices DIR] [--seconds 300]

Ends in time: what was not spoken after `--seconds` is left out; what is longer than `--longest` seconds, too.
"""

from __future__ import annotations

import argparse
import itertools
import json
import random
import time
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

import numpy as np
from voices import NEURAL_HELD_OUT, NEURAL_LEARN, RATE, Kokoro, Sound, neural_sounds, parametric

NEURAL = NEURAL_LEARN + NEURAL_HELD_OUT
QUIET = 0.02  # of the loudest: below it is silence at the ends of an utterance
_KOKORO: list[Kokoro] = []


def _ready(model: Path | None, vocabulary: Path, voices: Path) -> None:
    if model:
        _KOKORO.append(Kokoro(model, vocabulary, voices))


def _speak(clip: dict[str, Any], until: float) -> np.ndarray | None:
    if time.time() > until:
        return None
    if clip["voice"] in NEURAL and not _KOKORO:
        return None
    pieces = []
    for said, pause_s in itertools.zip_longest(clip["speech"].split("|"), clip.get("pauses", ()), fillvalue=0.0):
        sound = _said(said.strip(), clip)
        pieces += [_voiced(sound) if pause_s or pieces else sound, np.zeros(int(pause_s * RATE), np.float32)]
    return (np.concatenate(pieces) * 32000).astype(np.int16)


def _said(words: str, clip: dict[str, Any]) -> Sound:
    if clip["voice"] in NEURAL:
        return _KOKORO[0].say(neural_sounds(words, clip["voice"]), clip["voice"], clip["rate"] / 160)
    return parametric(words, clip["voice"], clip["rate"], clip["pitch"])


def _voiced(sound: Sound) -> Sound:
    """Without the silence at its ends, which would lengthen the pauses."""
    loud = np.flatnonzero(np.abs(sound) > QUIET * np.abs(sound).max(initial=1e-6))
    return sound[loud[0] : loud[-1] + 1] if len(loud) else sound


def main() -> None:
    """Write the sound."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("clips", type=Path)
    ask.add_argument("out", type=Path)
    ask.add_argument("--kokoro", type=Path)
    ask.add_argument("--vocabulary", type=Path, default=Path("vocab.json"))
    ask.add_argument("--voices", type=Path, default=Path("voices"))
    ask.add_argument("--seconds", type=float, default=300)
    ask.add_argument("--workers", type=int, default=2)
    ask.add_argument("--longest", type=float, default=14.6)
    ask.add_argument("--only", type=int, help="the first so many, of a random order")
    given = ask.parse_args()
    began = time.time()
    clips = json.loads(given.clips.read_text(encoding="utf-8"))
    random.Random(0).shuffle(clips)
    clips = clips[: given.only]
    start = (given.kokoro, given.vocabulary, given.voices)
    with ProcessPoolExecutor(given.workers, initializer=_ready, initargs=start) as pool:
        sounds = list(pool.map(_speak, clips, [began + given.seconds] * len(clips)))
    pairs = zip(clips, sounds, strict=True)
    whole = [(c, s) for c, s in pairs if s is not None and RATE // 4 < len(s) < given.longest * RATE]
    np.savez(
        given.out,
        sound=np.concatenate([sound for _, sound in whole]),
        ends=np.cumsum([len(sound) for _, sound in whole]),
        clips=np.frombuffer(json.dumps([clip for clip, _ in whole]).encode(), np.uint8),
    )
    print(given.out.name, len(whole), "of", len(clips), "clips,", f"{time.time() - began:.0f} s", flush=True)


if __name__ == "__main__":
    main()
