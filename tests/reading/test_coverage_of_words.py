"""Every word of any text is accounted for: evidence, a remark, or a word that carries nothing by itself."""

from __future__ import annotations

import csv
import random
from collections.abc import Iterator
from pathlib import Path

import pytest
from by_hand import DEMOS

from dictate.grammar import Grammar
from dictate.model import Transcript
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.read import lexicon_of, read
from dictate.reading.senses.company import AGREED
from dictate.reading.tokens import tokenize, transcript_of_text

TABLE = Path(__file__).with_name("ways_of_saying.csv")
# Words that carry nothing without a neighbour: fillers, punctuation, and the words that control how others are read.
CONTROL = frozenset(
    "filler comma semicolon colon stop conj contrast hedge heading heading_part severity correction strike swap except "
    "rest throughout right_then_left left_then_right next_patient reason section ability".split()
)


def unaccounted(transcript: Transcript, grammar: Grammar) -> list[str]:
    """Words that are in no evidence and no remark, and carry something."""
    result = read(transcript, grammar)
    pieces = [piece for finding in result.findings for piece in finding.evidence]
    pieces += [remark.evidence for remark in result.remarks]
    kept = {place for piece in pieces for place in range(piece.first, piece.last + 1)}
    return [text for place, text in _speaking(transcript, lexicon_of(grammar)) if place not in kept]


def _speaking(transcript: Transcript, lexicon: Lexicon) -> Iterator[tuple[int, str]]:
    """(place, text) of the words that are no heading and no control phrase of the grammar."""
    tokens = tokenize(transcript, misheard=lexicon.misheard)
    marks = lexicon.find(tokens)
    silent = {word for word in lexicon.grammar.common.words.fillers if " " not in word} | {"and", "or"}
    for place, mark in enumerate(marks):
        begins = place == 0 or tokens[marks[place - 1].end - 1].ends_sentence
        after = marks[place + 1] if place + 1 < len(marks) else mark
        declared = begins and mark.has("side", "site") and after.has("colon", "comma")  # "On the left: ..."
        declared = declared or (
            mark.text == "no" and (after.has("comma") or after.text.startswith("the"))
        )  # takes back
        declared = (
            declared or mark.has("rest") or mark.has("position", "manoeuvre", "minutes")
        )  # in force for what follows
        declared = declared or (begins and mark.text in AGREED and after is not mark)  # "okay, sensory"
        named = [lexicon.items[role.item] for role in mark.roles if role.kind in ("item", "context")]
        title = any(item.blanket or (item.kind == "score" and item.group) for item in named)
        groups = {lexicon.items[role.item].group for role in after.roles if role.item in lexicon.items} - {""}
        declared = declared or (mark.has("site", "item") and after.has("colon"))  # "he had Neck: supple"
        closes = after.has("colon") or after is mark or tokens[mark.end - 1].ends_sentence
        closes = closes or bool(groups & {item.group for item in named})  # "coma scale E4 V5 M6"
        declared = declared or (begins and title and closes)  # "NIHSS:" over its parts, "Power:" before muscles
        kinds = {role.kind for role in mark.roles if not role.item}
        controls = mark.number is None and bool(kinds & CONTROL) and not mark.has("item", "sign", "alone")
        if mark.has("heading") or declared or controls:
            continue
        headed = {part.start for part in mark.inner if part.has("heading")}  # "for motor response"
        for place_in_text in set(range(mark.start, mark.end)) - headed:
            token = tokens[place_in_text]
            if token.lower not in silent and token.lower.isalnum():
                yield token.word, transcript.words[token.word].text


def garbled(texts: list[str], seed: int) -> str:
    """Words of several texts, cut and shuffled."""
    chance = random.Random(seed)
    words = [word for text in chance.sample(texts, 4) for word in text.split()[: chance.randint(1, 30)]]
    if chance.random() < 0.5:
        chance.shuffle(words)
    return " ".join(words)


@pytest.fixture(scope="module")
def examples(grammar: Grammar) -> list[str]:
    """What the grammar's own examples say."""
    return [one.say for item in grammar.items.values() for one in item.examples]


@pytest.mark.parametrize("path", sorted(DEMOS.glob("*.txt")), ids=lambda path: path.stem)
def test_every_word_of_a_demonstration_is_accounted_for(grammar: Grammar, path: Path) -> None:
    """In a finding, a heading, a control phrase, a section kept verbatim, or what was not placed."""
    assert unaccounted(transcript_of_text(path.read_text(encoding="utf-8")), grammar) == []


def test_every_word_of_the_ways_of_saying(grammar: Grammar) -> None:
    """Also of the phrases that are not read right."""
    with TABLE.open(encoding="utf-8", newline="") as file:
        said = sorted({row["say"] for row in csv.DictReader(file)})
    lost = {say: words for say in said if (words := unaccounted(transcript_of_text(say), grammar))}
    assert lost == {}


def test_every_word_of_the_examples(grammar: Grammar, examples: list[str]) -> None:
    """Of every third example; the full count has them all."""
    lost = {say: words for say in examples[::3] if (words := unaccounted(transcript_of_text(say), grammar))}
    assert lost == {}


def test_every_word_of_garbled_texts(grammar: Grammar, examples: list[str]) -> None:
    """Cut, joined and shuffled."""
    texts = [garbled(examples, seed) for seed in range(100)]
    lost = {text: words for text in texts if (words := unaccounted(transcript_of_text(text), grammar))}
    assert lost == {}


@pytest.mark.slow
def test_every_word_of_thousands_of_texts(grammar: Grammar, examples: list[str]) -> None:
    """The full count."""
    texts = [*examples, *(garbled(examples, seed) for seed in range(100, 5_100))]
    lost = {text: words for text in texts if (words := unaccounted(transcript_of_text(text), grammar))}
    assert lost == {}


def test_a_lost_word_is_noticed(grammar: Grammar) -> None:
    """The check can fail: a word that speaks is told from one that carries nothing."""
    transcript = transcript_of_text("The tremor is mild and the zyzzyva is here.")
    said = [text for _, text in _speaking(transcript, lexicon_of(grammar))]
    assert said == ["tremor", "zyzzyva"]
