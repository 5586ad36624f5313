"""Rivals of each number, sign, side, negation, antonym and twin of a finding, and how much less the sound fits them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from dictate.grammar import DoubtFile, Grammar
from dictate.model import Finding, Grade, Rival, Side, Status, Transcript, Word
from dictate.reading.misheard.soundalikes import number_rivals

# (source, start_s, end_s, texts) → log-probability of each text in nats; empty where the sound is not at hand
Weigh = Callable[[int, float, float, Sequence[str]], Sequence[float]]

WORDS_BEFORE, WORDS_AFTER = 14, 3  # context weighed with a word; with less of it wrong numbers look right
# Words that differ in one sound (adductors, abductors) mostly come one after the other in an examination. The first
# primes the decoder to write the second alike and be sure of it: they are weighed always, without what stood before.
TWIN = "twin"
TWIN_BEFORE, TWIN_AFTER = 3, 2
FURTHEST_S = 2.0  # words further apart than this are no context of each other
SURE = "sure_word"  # the limit: words of a higher probability are not weighed
_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_SIGN = re.compile(r"(?<=\d)[+-](?!\d)")
_WORD = re.compile(r"[^\W\d_]+")
_DENIED = (Status.ABSENT, Status.NORMAL)


def contexts(most_before: int, most_after: int) -> list[tuple[int, int]]:
    """As much context as one piece of sound holds: first with words behind, which tell more."""
    return [(before, after) for after in range(most_after, -1, -1) for before in range(most_before, -1, -1)]


CONTEXTS = contexts(WORDS_BEFORE, WORDS_AFTER)
TWIN_CONTEXTS = contexts(TWIN_BEFORE, TWIN_AFTER)


@dataclass(frozen=True, slots=True)
class Stake:
    """A part of a word on which a finding hangs, and what may have been said instead."""

    kind: str
    word: int  # place in Transcript.words
    start: int  # letters start..end-1 of the word
    end: int
    others: tuple[str, ...]

    def with_other(self, text: str, other: str) -> str:
        """The word with another part, which takes the capital of what it replaces.

        At the start of a sentence a small letter costs some 6 nats that the sound knows nothing of.
        """
        if text[self.start : self.end][:1].isupper():
            other = other[:1].upper() + other[1:]
        return text[: self.start] + other + text[self.end :]


def with_rivals(
    findings: Sequence[Finding], transcript: Transcript, grammar: Grammar, weigh: Weigh
) -> tuple[Finding, ...]:
    """The findings of recordings, each with the rivals of its doubtful words and their margins."""
    table = grammar.doubt
    known: dict[Stake, tuple[Rival, ...]] = {}
    result = []
    for finding in findings:
        rivals: list[Rival] = []
        for stake in dict.fromkeys(stakes(finding, transcript, table)):
            if stake not in known:
                known[stake] = _weighed(stake, transcript.words, weigh)
            rivals += known[stake]
        result.append(finding.model_copy(update={"rivals": tuple(rivals)}) if rivals else finding)
    return tuple(result)


def stakes(finding: Finding, transcript: Transcript, table: DoubtFile) -> Iterator[Stake]:
    """The parts of a finding's words that it hangs on; of words that were heard for certain only twins."""
    sure = table.limits[SURE].at if SURE in table.limits else 1.0
    value = "" if finding.value is None else str(finding.value)
    denials = table.rivals.get("negation", {}).get("", ())
    if finding.status is Status.PRESENT and denials and finding.value is None:
        place = finding.evidence[0].first  # a small word before it may have been lost
        yield Stake("negation", place, 0, 0, denials)
    for piece in finding.evidence:
        for place in range(piece.first, piece.last + 1):
            word = transcript.words[place]
            if word.probability is None or word.start_s is None:
                continue
            for stake in _of_word(word.text, place, finding, value, table):
                if word.probability < sure or stake.kind == TWIN:
                    yield stake


def _of_word(text: str, place: int, finding: Finding, value: str, table: DoubtFile) -> Iterator[Stake]:
    numbers, signs = table.rivals.get("number", {}), table.rivals.get("sign", {})
    for found in _NUMBER.finditer(text):
        if _counts(found.group(), finding, value):
            others = tuple(numbers.get(found.group(), ())) or number_rivals(found.group())
            yield Stake("number", place, found.start(), found.end(), others)
            if isinstance(finding.value, Grade) and value == found.group():
                yield Stake("sign", place, found.end(), found.end(), tuple(signs.get("", ())))
    if isinstance(finding.value, Grade):
        for found in _SIGN.finditer(text):
            yield Stake("sign", place, found.start(), found.end(), tuple(signs.get(found.group(), ())))
    for found in _WORD.finditer(text):
        lower = found.group().lower()
        for kind, words in table.rivals.items():
            if lower in words and _hangs_on(kind, lower, finding, value):
                yield Stake(kind, place, found.start(), found.end(), tuple(words[lower]))


def _counts(number: str, finding: Finding, value: str) -> bool:
    """Whether the number is in the value, or is the minutes since standing."""
    return number in _NUMBER.findall(value) or (finding.minutes is not None and float(number) == finding.minutes)


def _hangs_on(kind: str, word: str, finding: Finding, value: str) -> bool:
    """Whether another word there would be another finding."""
    if kind == "side":
        return finding.side in (Side.LEFT, Side.RIGHT) and finding.side.value == word
    if kind == "negation":
        return finding.status in _DENIED
    if kind == "sign":
        return isinstance(finding.value, Grade) and value[-1:] in "+-"
    return kind in ("antonym", TWIN) or word in value


def _weighed(stake: Stake, words: Sequence[Word], weigh: Weigh) -> tuple[Rival, ...]:
    """The rivals with their margins; none where the sound is not at hand.

    A rival that writes less than was heard needs words behind it: the end of a text costs the decoder nothing.
    """
    word = words[stake.word]
    heard = word.text[stake.start : stake.end]
    others = [other for other in stake.others if other != heard]
    for before, after in TWIN_CONTEXTS if stake.kind == TWIN else CONTEXTS:
        if not after:
            others = [other for other in others if other]
        first, last = context(stake.word, words, before, after)
        texts = [phrase_with(words, first, last)]
        texts += [
            phrase_with(words, first, last, stake.word, stake.word, stake.with_other(word.text, other))
            for other in others
        ]
        start_s, end_s = words[first].start_s, words[last].end_s
        if start_s is None or end_s is None or not others:
            return ()
        found = weigh(word.source, start_s, end_s, texts)
        if found:
            return tuple(
                Rival(
                    kind=stake.kind,
                    heard=heard,
                    other=other.strip(),
                    margin=round(found[0] - score, 2),
                    word=stake.word,
                )
                for other, score in zip(others, found[1:], strict=True)
            )
    return ()


def context(place: int, words: Sequence[Word], before: int, after: int) -> tuple[int, int]:
    """First and last word of the phrase around a word, within one recording and without long silences."""
    first = last = place
    while first > 0 and place - first < before and _near(words[first - 1], words[first]):
        first -= 1
    while last + 1 < len(words) and last - place < after and _near(words[last], words[last + 1]):
        last += 1
    return first, last


def _near(one: Word, other: Word) -> bool:
    if one.source != other.source or one.end_s is None or other.start_s is None:
        return False
    return other.start_s - one.end_s < FURTHEST_S


def phrase_with(words: Sequence[Word], first: int, last: int, start: int = -1, end: int = -1, instead: str = "") -> str:
    """The words first..last as one text, with another text in the place of the words start..end."""
    if start < 0:
        parts = [word.text for word in words[first : last + 1]]
    else:
        before = [word.text for word in words[first:start]]
        parts = [*before, instead, *(word.text for word in words[end + 1 : last + 1])]
    return " ".join(" ".join(parts).split())
