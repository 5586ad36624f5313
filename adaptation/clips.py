"""Training clips: made-up dictations and ordinary talk, spoken by the voices that may be learnt from.

    python adaptation/clips.py OUT.json --count 2400 --neural 700 --wordnet FOLDER

writes what is to be said, by which voice, and the tokens of every clip; sound.py speaks them.
"""

from __future__ import annotations

import argparse
import json
import random
from collections import Counter
from pathlib import Path
from typing import Any

from dictations import Dictator, Said, bare, withheld_from
from lists import Lister, cut_off, pauses_in, rested, together
from talk import dictionary_sentences, talk
from voices import ESPEAK_LEARN, FLITE_LEARN, NEURAL_LEARN, VARIANTS

from dictate.grammar import load_grammar
from dictate.hearing.engine import Engine

ROOT = Path(__file__).resolve().parent.parent
MIXED, DRILLED = 0.1, 0.12  # shares of clips with ordinary talk beside statements, and of what is heard wrong most
LISTED = 0.3  # share of clips with runs of findings under one side, posture or heading
CUT, RESTED = 0.12, 0.15  # shares of such clips that end inside the run, of statements with a pause inside them
MOST_CHARACTERS = 190  # about 14 s of speech
TRIES = 4  # of so many dictations the one with the rarest words so far is taken, in RARE of the clips
RARE = 0.6


def rarest(maker: Dictator, count: int, drilled: bool, spoken: Counter[str]) -> list[Said]:
    """The one of some dictations whose words were spoken least often so far, so that rare terms come again."""

    def worth(made: list[Said]) -> float:
        words = bare(" ".join(each.speech for each in made)).split()
        return sum(1 / (1 + spoken[word]) ** 0.5 for word in words) / len(words) ** 0.5

    tries = TRIES if maker.chance.random() < RARE else 1
    make = maker.drill if drilled else maker.dictation
    chosen = max((make(count) for _ in range(tries)), key=worth)
    spoken.update(bare(" ".join(each.speech for each in chosen)).split())
    return chosen


def clip_texts(
    maker: Dictator, lister: Lister, prose: list[str], spoken: Counter[str], share: float
) -> tuple[str, str, bool]:
    """Speech and text of one clip, and whether it is ordinary talk only, which `share` of the clips are."""
    chance, kind = maker.chance, maker.chance.random()

    def ordinary() -> Said:
        sentence = talk(chance) if chance.random() < 0.5 else chance.choice(prose)
        return Said(sentence, sentence)

    listed = share + MIXED <= kind < share + MIXED + LISTED
    if kind < share:
        parts = [ordinary() for _ in range(chance.randint(1, 3))]
    elif listed:
        parts = lister.run()
        if chance.random() < 0.5:
            parts[:0] = rarest(maker, 1, False, spoken)
        elif chance.random() < 0.3:
            parts += lister.run()
    else:
        parts = rarest(maker, chance.choice((1, 2, 2, 3, 3, 4)), kind > 1 - DRILLED, spoken)
        if kind < share + MIXED:
            parts.insert(chance.choice((0, len(parts))), ordinary())
    while sum(len(each.speech) for each in parts) > MOST_CHARACTERS and len(parts) > 1:
        parts.pop()
    if listed and "," in parts[-1].text and chance.random() < CUT:
        parts[-1] = cut_off(parts[-1])
    if kind < share:
        return " ".join(each.speech for each in parts), " ".join(each.text for each in parts), True
    parts = [rested(each, chance) if chance.random() < RESTED else each for each in parts]
    return together(parts, chance), " ".join(each.text for each in parts), False


def tokens_of(engine: Engine, maker: Dictator, text: str) -> dict[str, Any]:
    """Prompts (none, and two lists of terms) and the tokens of the text."""
    plain = engine.prompt(())
    listed = [engine.prompt(maker.wanted(maker.chance.randint(10, 36))) for _ in range(2)]
    return {"prompts": [plain, *listed], "target": engine.prompt((text,))[1 : -len(plain)], "text": text}


def main() -> None:
    """Write the clips."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("out", type=Path)
    ask.add_argument("--count", type=int, default=2400)
    ask.add_argument("--neural", type=int, default=700)
    ask.add_argument("--ordinary", type=float, default=0.3, help="share of clips with ordinary talk only")
    ask.add_argument("--wordnet", type=Path, default=Path("/usr/share/wordnet"))
    ask.add_argument("--seed", type=int, default=1)
    given = ask.parse_args()
    withheld = withheld_from(ROOT / "tests" / "reading" / "ways_of_saying.csv")
    maker = Dictator(load_grammar(), random.Random(given.seed), withheld)
    prose, engine = dictionary_sentences(given.wordnet), Engine("base-plain", offline=True)
    spoken: Counter[str] = Counter()
    lister = Lister(maker)
    texts = [clip_texts(maker, lister, prose, spoken, given.ordinary) for _ in range(given.count + given.neural)]
    clips = [tokens_of(engine, maker, text) for _, text, _ in texts]
    for number, (clip, (speech, _, ordinary)) in enumerate(zip(clips, texts, strict=True)):
        chance = maker.chance
        clip.update(speech=speech, pauses=pauses_in(speech, chance), ordinary=ordinary)
        clip.update(rate=chance.randint(125, 185), pitch=chance.randint(20, 80))
        parametric = (
            FLITE_LEARN if chance.random() < 0.25 else [f"{each}{chance.choice(VARIANTS)}" for each in ESPEAK_LEARN]
        )
        clip["voice"] = chance.choice(NEURAL_LEARN if number >= given.count else parametric)
    given.out.write_text(json.dumps(clips), encoding="utf-8")
    print(len(clips), "clips")


if __name__ == "__main__":
    main()
