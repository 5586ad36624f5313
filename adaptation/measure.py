"""Words, terms and numbers heard right, and terms invented: for texts of listen.py, or by the program's own way.

    python adaptation/measure.py texts HEARD.json CLIPS.npz
    python adaptation/measure.py program FOLDER [--adapter FILE --strength N] [--lists] [--plain]

FOLDER holds recordings beside their texts. Every way is scored against the words spoken: numbers as digits, small letters,
American spelling, no marks.
"""

from __future__ import annotations

import argparse
import difflib
import json
import re
import tempfile
from collections import Counter, defaultdict
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
from dictations import US
from numerals import written
from talk import FILLS, SENTENCES, dictionary_sentences

from dictate.grammar import load_grammar
from dictate.hearing import trade
from dictate.hearing.engine import Engine
from dictate.hearing.hear import hear_recording
from dictate.pipeline import hints_of

CLINIC = 3  # a word of a term is the trade's own when ordinary sentences hold it less often than this


def words(text: str) -> list[str]:
    """A text as it is compared."""
    text = text.lower().replace("’", "'")
    text = re.sub(r"(?<=\d)\+", " plus", re.sub(r"(?<=\d)-(?!\d)", " minus", text))
    text = re.sub(r"(?<=\d)\s*/\s*(?=\d)|(?<=\d) (?:over|out of|of) (?=\d)", " ", text)
    text = re.sub(r"(?<=\d),(?=\d{3})", "", text).replace("%", " percent")
    text = re.sub(r"\b([tclsv])[ -]?(?=\d)", r"\1", re.sub(r"(?<=[a-z])-(?=[a-z])", " ", text))
    marked = re.sub(r"[^a-z0-9.,;:?!' ]+", " ", text)
    digits = re.sub(r"(?<=\d)\s*/\s*(?=\d)", " ", written(marked).lower())
    digits = re.sub(r"(?<=\d) (?:over|out of|of) (?=\d)", " ", digits)
    found = re.findall(r"[a-z]*\d+(?:\.\d+)?|[a-z']+", digits)
    return [US.get(each, each).replace("'", "") for each in found]


@cache
def trade_words(wordnet: Path) -> frozenset[str]:
    """Words of the items' names that ordinary sentences hardly hold."""
    filled = [*SENTENCES, *(each for part in FILLS.values() for each in part)]
    prose = [*dictionary_sentences(wordnet), *dictionary_sentences(wordnet, held_out=True), *filled]
    usual = Counter(word for sentence in prose for word in words(sentence))
    named = {
        word for item in load_grammar().items.values() for term in (*item.terms, item.name) for word in words(term)
    }
    return frozenset(word for word in named if usual[word] < CLINIC and len(word) > 3)


def score(spoken: str, heard: str, own: frozenset[str]) -> Counter[str]:
    """Counts of one text: words, errors, terms and numbers with those heard right, and terms that were not said."""
    said, got = words(spoken), words(heard)
    counts: Counter[str] = Counter(words=len(said))
    matched = [False] * len(said)
    table = np.arange(len(got) + 1)
    rows = [table]
    for i, word in enumerate(said):
        new = np.empty(len(got) + 1, int)
        new[0] = i + 1
        for j, other in enumerate(got):
            new[j + 1] = min(table[j] + (word != other), table[j + 1] + 1, new[j] + 1)
        rows.append(new)
        table = new
    counts["errors"] = int(table[-1])
    i, j = len(said), len(got)
    while i and j:
        if said[i - 1] == got[j - 1] and rows[i][j] == rows[i - 1][j - 1]:
            matched[i - 1] = True
            i, j = i - 1, j - 1
        elif rows[i][j] == rows[i - 1][j - 1] + 1:
            i, j = i - 1, j - 1
        elif rows[i][j] == rows[i - 1][j] + 1:
            i -= 1
        else:
            j -= 1
    for word, right in zip(said, matched, strict=True):
        kind = "numbers" if re.search(r"\d", word) else "terms" if word in own else ""
        counts[kind] += 1
        counts[kind + " right"] += right
    near = [word for word in set(got) - set(said) if word in own and not difflib.get_close_matches(word, said, 1, 0.6)]
    counts["invented"] = len(near)
    return counts


def row(name: str, counts: Counter[str]) -> str:
    """One line of a table."""

    def share(kind: str) -> str:
        return f"{counts[kind + ' right']}/{counts[kind]}" if counts[kind] else "-"

    rate = counts["errors"] / max(1, counts["words"])
    return f"| {name} | {rate:.3f} | {share('terms')} | {share('numbers')} | {counts['invented']} |"


def table(results: Iterable[tuple[str, str, Counter[str]]]) -> str:
    """Tables by group of recordings: way, WER, terms, numbers, invented."""
    groups: dict[str, dict[str, Counter[str]]] = defaultdict(lambda: defaultdict(Counter))
    for group, way, counts in results:
        groups[group][way] += counts
    out = []
    for group, ways in groups.items():
        size = max(counts["words"] for counts in ways.values())
        out += [
            f"\n**{group}**, {size} words\n",
            "| way | WER | terms right | numbers right | terms invented |",
            "|---|---|---|---|---|",
        ]
        out += [row(way, counts) for way, counts in ways.items()]
    return "\n".join(out)


def of_texts(given: argparse.Namespace) -> str:
    """Score what listen.py heard."""
    with np.load(given.clips) as kept:
        clips: list[dict[str, Any]] = json.loads(kept["clips"].tobytes())
    own, tokenizer = trade_words(given.wordnet), Engine("base-plain", offline=True)._tokenizer
    results = []
    for way, found in json.loads(given.heard.read_text(encoding="utf-8")).items():
        whole: dict[tuple[str, str, str], list[str]] = {}
        for clip, tokens in zip(clips, found, strict=True):
            single = clip["voice"] != "recorded"
            key = (clip["group"], clip["name"] + (clip["text"] if single else ""), clip["voice"])
            spoken, heard = whole.setdefault(key, ["", ""])
            whole[key] = [spoken or clip["text"], heard + " " + tokenizer.decode(tokens)]
        for (group, _, voice), (spoken, heard) in whole.items():
            counts = score(spoken, heard, own)
            results += [(group, way, counts)]
            if given.voices:
                results += [(f"{group}, {voice}", way, counts)]
    return table(results)


class Ears:
    """The program's own engine, told whether to use lists of terms."""

    def __init__(self, engine: Engine, lists: bool) -> None:
        self._engine, self.knows_trade = engine, not lists

    def __getattr__(self, name: str) -> Any:
        return getattr(self._engine, name)


def of_program(given: argparse.Namespace) -> str:
    """Score the program's own way, with an adapter (the packaged one unless another is named) or `--plain` without."""
    own, hints = trade_words(given.wordnet), hints_of(load_grammar())
    plain = Engine("base-plain", offline=True)
    with tempfile.TemporaryDirectory() as folder:
        engine = plain
        if not given.plain:
            trade.ADAPTER, trade.STRENGTH = given.adapter or trade.ADAPTER, given.strength or trade.STRENGTH
            trade.adapt(plain.model.folder, plain.model.sha256, Path(folder) / "model")
            engine = Engine(str(Path(folder) / "model"), offline=True)
        results = []
        for path in sorted(each for each in given.folder.iterdir() if each.suffix in (".flac", ".wav", ".opus")):
            heard = hear_recording(Ears(engine, given.lists), path, hints=hints)
            text = " ".join(word.text for word in heard.words)
            counts = score(path.with_suffix(".txt").read_text(encoding="utf-8"), text, own)
            results += [(given.folder.name, path.stem, counts), (given.folder.name, "all", counts)]
            if given.show:
                print(path.stem, text)
    return table(results)


def main() -> None:
    """Print the tables."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("--wordnet", type=Path, default=Path("/usr/share/wordnet"))
    ways = ask.add_subparsers(required=True)
    texts = ways.add_parser("texts")
    texts.add_argument("heard", type=Path)
    texts.add_argument("clips", type=Path)
    texts.add_argument("--voices", action="store_true", help="a table for every voice too")
    texts.set_defaults(run=of_texts)
    program = ways.add_parser("program")
    program.add_argument("folder", type=Path)
    program.add_argument("--adapter", type=Path)
    program.add_argument("--strength", type=float)
    program.add_argument("--lists", action="store_true")
    program.add_argument("--plain", action="store_true")
    program.add_argument("--show", action="store_true")
    program.set_defaults(run=of_program)
    given = ask.parse_args()
    print(given.run(given))


if __name__ == "__main__":
    main()
