"""Shuffled, cut and joined dictations: nothing invented, nothing without evidence, no crash."""

from __future__ import annotations

import random

import pytest
from by_hand import DEMOS

from dictate.grammar import Grammar
from dictate.reading.read import read
from dictate.reading.tokens import transcript_of_text

ROUNDS, A_ROUND = 20, 10


@pytest.fixture(scope="module")
def spoken(grammar: Grammar) -> list[str]:
    """Lines of the demonstrations and the grammar's own examples."""
    lines = [line for path in sorted(DEMOS.glob("*.txt")) for line in path.read_text(encoding="utf-8").splitlines()]
    examples = [one.say for item in grammar.items.values() for one in item.examples]
    return [line for line in (*lines, *examples) if line.strip()]


def garbled(spoken: list[str], seed: int) -> str:
    """A few sentences: some cut off, some begun late, some shuffled; all joined."""
    chance = random.Random(seed)
    words: list[str] = []
    for sentence in chance.sample(spoken, 5):
        part = sentence.split()
        way = chance.randrange(5)
        if way == 0:
            part = part[: chance.randint(1, len(part))]
        elif way == 1:
            part = part[chance.randrange(len(part)) :]
        elif way == 2:
            chance.shuffle(part)
        words += part
    text = " ".join(words)
    if chance.random() < 0.3:
        text = text.replace(".", "").replace(",", "")
    return text.upper() if chance.random() < 0.1 else text


@pytest.mark.parametrize("turn", range(ROUNDS))
def test_any_words_can_be_read(grammar: Grammar, spoken: list[str], turn: int) -> None:
    """Every finding is of a known item and component, and its evidence is words that were said."""
    for seed in range(turn * A_ROUND, (turn + 1) * A_ROUND):
        transcript = transcript_of_text(garbled(spoken, seed))
        result = read(transcript, grammar)
        for finding in result.findings:
            assert finding.item in grammar.items, seed
            assert finding.component is grammar.component_of(finding.item), seed
            assert finding.evidence, seed
            for piece in finding.evidence:
                assert piece.quote, seed
                assert piece.quote == transcript.quote(piece.first, piece.last), seed
        for remark in result.remarks:
            assert remark.evidence.quote == transcript.quote(remark.evidence.first, remark.evidence.last), seed


def test_the_garbled_dictations_hold_something(grammar: Grammar, spoken: list[str]) -> None:
    """They are near enough to speech that most of them give findings."""
    found = [bool(read(transcript_of_text(garbled(spoken, seed)), grammar).findings) for seed in range(20)]
    assert sum(found) >= 15
