"""Speech for measuring: texts by other hands and ordinary sentences, spoken by the voices that nothing was learnt from.

    python adaptation/held_out.py OUT --dictations FOLDER --wordnet FOLDER [--recordings FOLDER]

OUT.json has the form of clips.py's. `--recordings` makes OUT-recorded.npz of recordings (NAME.flac beside NAME.txt), cut
as the program cuts them.
"""

from __future__ import annotations

import argparse
import csv
import itertools
import json
import random
import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import numpy as np
from dictations import speakable
from talk import dictionary_sentences
from voices import ESPEAK_HELD_OUT, FLITE_HELD_OUT, NEURAL_HELD_OUT

from dictate.grammar import load_grammar
from dictate.hearing.audio import Recording
from dictate.hearing.chunks import cut_chunks
from dictate.hearing.engine import Engine
from dictate.pipeline import hints_of

ROOT = Path(__file__).resolve().parent.parent
WAYS = ROOT / "tests" / "reading" / "ways_of_saying.csv"
LONGEST_CHARACTERS, LONGEST_WORDS = 150, 14
PLAIN_VOICES = (*FLITE_HELD_OUT, *ESPEAK_HELD_OUT, ESPEAK_HELD_OUT[0] + "+f4")


def phrases(text: str) -> list[str]:
    """A dictation in stretches of a breath, as it would be spoken."""
    text = re.sub(r"(?<=\d)/(?=\d)", " over ", " ".join(text.split()))
    out: list[str] = []
    for sentence in re.split(r"(?<=[.?!;:])\s+", text):
        words = sentence.split()
        parts = [" ".join(words[i : i + LONGEST_WORDS]) for i in range(0, len(words), LONGEST_WORDS)]
        for part in parts:
            if out and len(out[-1]) + len(part) < LONGEST_CHARACTERS and out[-1][-1] in ".?!;:":
                out[-1] += " " + part
            else:
                out.append(part)
    return out


def ways() -> list[str]:
    """The ways of saying that can be spoken as they stand, three to a clip."""
    with WAYS.open(encoding="utf-8", newline="") as file:
        says = dict.fromkeys(row["say"] for row in csv.DictReader(file))
    usable = [say.rstrip(" .") + "." for say in says if speakable(say)]
    return [" ".join(usable[i : i + 3]) for i in range(0, len(usable), 3)]


def texts(given: argparse.Namespace) -> list[tuple[str, str, str]]:
    """Group, name and text of every clip."""
    out = [("ways of saying", f"ways-{i}", text) for i, text in enumerate(ways())]
    for path in sorted(given.dictations.iterdir()):
        out += [("dictations", path.stem, text) for text in phrases(path.read_text(encoding="utf-8"))]
    prose = random.Random(9).sample(dictionary_sentences(given.wordnet, held_out=True), given.ordinary)
    out += [("ordinary", f"ordinary-{i}", " ".join(prose[i : i + 2])) for i in range(0, len(prose), 2)]
    return out


def recorded(folder: Path, engine: Engine) -> Iterable[dict[str, Any]]:
    """The chunks of real recordings as the program cuts them; the text stands with the first one."""
    for path in sorted(each for each in folder.iterdir() if each.suffix in (".flac", ".wav", ".opus")):
        text = path.with_suffix(".txt").read_text(encoding="utf-8")
        for block in Recording(path).blocks():
            for chunk in cut_chunks(engine.spans(block.samples), block.samples, block_start_s=block.start_s):
                yield {
                    "group": folder.name,
                    "name": path.stem,
                    "voice": "recorded",
                    "text": text,
                    "sound": chunk.samples(block.samples),
                }
                text = ""


def main() -> None:
    """Write the pack."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("out", type=Path)
    ask.add_argument("--dictations", type=Path, required=True)
    ask.add_argument("--wordnet", type=Path, default=Path("/usr/share/wordnet"))
    ask.add_argument("--recordings", type=Path, action="append", default=[])
    ask.add_argument("--more", type=Path, help="more dictations: two thirds of their breaths, each by one voice")
    ask.add_argument("--ordinary", type=int, default=260)
    given = ask.parse_args()
    engine = Engine("base-plain", offline=True)
    prompts = [engine.prompt(()), engine.prompt(hints_of(load_grammar()).first)]
    clips: list[dict[str, Any]] = []
    plain, neural = itertools.cycle(PLAIN_VOICES), itertools.cycle(NEURAL_HELD_OUT)
    for number, (group, name, text) in enumerate(texts(given)):
        for voice in (next(plain), next(neural))[: 2 - number % 2]:
            clips.append(
                {"group": group, "name": name, "voice": voice, "text": text, "speech": text, "rate": 150, "pitch": 50}
            )
    if given.more:
        said = [
            (path.stem, text) for path in sorted(given.more.glob("*.txt")) for text in phrases(path.read_text("utf-8"))
        ]
        for number, (name, text) in enumerate(said):
            for voice in (next(plain), next(neural))[number % 3 : number % 3 + 1]:
                clips.append(
                    {
                        "group": "more",
                        "name": name,
                        "voice": voice,
                        "text": text,
                        "speech": text,
                        "rate": 150,
                        "pitch": 50,
                    }
                )
    cut = [clip for folder in given.recordings for clip in recorded(folder, engine)]
    sounds = [(32767 * clip.pop("sound")).astype(np.int16) for clip in cut]
    for clip in clips + cut:
        clip.update(prompts=prompts, target=[])
    given.out.with_suffix(".json").write_text(json.dumps(clips), encoding="utf-8")
    if cut:
        kept = np.frombuffer(json.dumps(cut).encode(), np.uint8)
        ends = np.cumsum([len(sound) for sound in sounds])
        np.savez_compressed(f"{given.out}-recorded.npz", sound=np.concatenate(sounds), ends=ends, clips=kept)
    print(len(clips), "clips to speak,", len(cut), "recorded")


if __name__ == "__main__":
    main()
