"""Words of the trade heard in the midst of talk: the stretch is heard once more as talk, and they stay if heard again."""

from __future__ import annotations

import difflib
import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from dictate.model.words import Hints, Stretch, Word

# Given as what was said before, it makes the same decoder expect talk (docs/hearing.md).
PROMPT = (
    "Well, thank you for coming. We talked about the weather and the garden, and then he went home by bus. "
    "She put the letter on the table, closed the window and made some tea."
)
SURE = 0.8  # likelier words stand
MOST_TRADE = 0.34  # share of a sentence's words that belong to the trade: above it, the sentence may be a finding
FEWEST = 3  # words of a sentence that can be told to be talk
LONGEST_PHRASE = 5  # words of a name
MOST_CHANGED = 6  # words in a row: where the two hearings differ by more, nobody knows which are which
ENDS = (".", "?", "!")


@dataclass(frozen=True)
class Reheard:
    """Words of a stretch, as they were heard first, and what stands in their place."""

    stretch: Stretch
    first: str
    now: str


def doubted(words: Sequence[Word], hints: Hints) -> list[int]:
    """Places of unsure words of the trade that stand by themselves in sentences of talk."""
    plain = [bare(word.text) for word in words]
    found = []
    for start, end in pairwise(_ends(words)):
        trade = [at for at in range(start, end) if plain[at] in hints.trade_words]
        if end - start >= FEWEST and len(trade) <= MOST_TRADE * (end - start):
            found += [
                at
                for at in trade
                if (words[at].probability or 0.0) < SURE and not _in_name(plain, at, (start, end), hints)
            ]
    return found


def spliced(words: Sequence[Word], fresh: Sequence[Word], doubts: Sequence[int], hints: Hints) -> list[Word]:
    """The words, with those heard as talk in place of a doubted one that was not heard again."""
    first, second = [bare(word.text) for word in words], [bare(word.text) for word in fresh]
    result: list[Word] = []
    for tag, a, b, c, d in difflib.SequenceMatcher(None, first, second, autojunk=False).get_opcodes():
        told = second[c:d]
        changed = (
            tag == "replace"
            and any(a <= at < b for at in doubts)
            and max(b - a, d - c) <= MOST_CHANGED
            and not any(word in hints.trade_words for word in told)
        )
        result += fresh[c:d] if changed else words[a:b]
    return result


def changes(before: Sequence[Word], after: Sequence[Word]) -> list[Reheard]:
    """What differs between the words heard first and those that stand now."""
    olds, news = [word.text for word in before], [word.text for word in after]
    return [
        Reheard(
            Stretch(start_s=before[a].start_s or 0.0, end_s=before[b - 1].end_s or 0.0),
            " ".join(olds[a:b]),
            " ".join(news[c:d]),
        )
        for tag, a, b, c, d in difflib.SequenceMatcher(None, olds, news, autojunk=False).get_opcodes()
        if tag == "replace"
    ]


def bare(text: str) -> str:
    """A word in small letters without marks."""
    return (re.findall(r"[a-z0-9']+", text.lower()) or [""])[0]


def _ends(words: Sequence[Word]) -> list[int]:
    """Where sentences begin and end."""
    ends = [at + 1 for at, word in enumerate(words) if word.text.endswith(ENDS)]
    return list(dict.fromkeys([0, *ends, len(words)]))


def _in_name(plain: Sequence[str], at: int, sentence: tuple[int, int], hints: Hints) -> bool:
    """Whether the word is part of a name of several words that is said whole."""
    for first in range(max(sentence[0], at - LONGEST_PHRASE + 1), at + 1):
        for end in range(max(at + 1, first + 2), min(sentence[1], first + LONGEST_PHRASE) + 1):
            if tuple(plain[first:end]) in hints.trade_names:
                return True
    return False
