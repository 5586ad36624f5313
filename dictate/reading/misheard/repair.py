"""Mishearings mended towards terms of the grammar: by how they sound, then by how well the term fits the sound."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from dictate.grammar import DoubtFile
from dictate.grammar.sounds import distance, sounds
from dictate.model import Word
from dictate.reading.misheard.margins import CONTEXTS, Weigh, context, phrase_with
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.tokens import Token

if TYPE_CHECKING:
    import numpy.typing as npt

Known = Callable[[str], bool]  # whether a word is English

LONGEST_WINDOW = 3  # words that one term may have been cut into
LEAST_SOUNDS = 4  # shorter windows are like too much
RANKED = 150  # terms compared exactly, of all that are there
WEIGHED = 4  # candidates whose fit to the sound is weighed
_KINDS = ("item", "sign", "context", "value", "alone", "site")
_CLASSES = {
    **dict.fromkeys("aeiou", 0),
    **dict.fromkeys("pbm", 1),
    **dict.fromkeys("tdnT", 2),
    **dict.fromkeys("kg", 3),
}
_CLASSES |= {**dict.fromkeys("fvw", 4), **dict.fromkeys("szSCJ", 5), **dict.fromkeys("lr", 6)}
_OTHER = 7
_SOUNDS = "abdefghiklmnoprstuvwzSCJT"


@dataclass(frozen=True, slots=True)
class Proposal:
    """What a window of tokens may have been."""

    start: int  # tokens start..end-1
    end: int
    term: str
    apart: float  # of the sounds, 0..1
    margin: float  # nats by which what was heard fits better than the term


@dataclass(frozen=True, slots=True)
class Mending:
    """Tokens after mending, and windows that stayed open: (first word, last word, terms that it may have been)."""

    tokens: list[Token]
    open: tuple[tuple[int, int, tuple[str, ...]], ...]


def mend(
    tokens: list[Token], words: Sequence[Word], lexicon: Lexicon, *, known: Known, weigh: Weigh, table: DoubtFile
) -> Mending:
    """Replace windows around words unknown to English and to the trade where one term fits and no other does."""
    limits = {name: limit.at for name, limit in table.limits.items()}
    result, unsure, done = list(tokens), [], 0
    shift = 0
    for place in _strange(tokens, words, lexicon, known):
        if place < done or "repair" not in limits:
            continue
        proposals = propose(place, tokens, words, lexicon, weigh=weigh, most_apart=limits["repair_apart"])
        if not proposals:
            continue
        best = proposals[0]
        clear = all(_cost(other) - _cost(best) >= limits["repair_lead"] for other in _others(best, proposals, lexicon))
        if _cost(best) <= limits["repair"] and clear:
            fresh = _mended(tokens[best.start : best.end], best.term)
            result[best.start + shift : best.end + shift] = fresh
            shift += len(fresh) - (best.end - best.start)
            done = best.end
        elif _cost(best) <= limits["repair_unsure"]:
            terms = tuple(dict.fromkeys(each.term for each in proposals if _cost(each) <= limits["repair_unsure"]))
            unsure.append((tokens[best.start].word, tokens[best.end - 1].word, terms[:WEIGHED]))
            done = best.end
    return Mending(result, tuple(unsure))


def _cost(proposal: Proposal) -> float:
    """Nats that the term loses against what was heard, and what it lacks in likeness."""
    return proposal.margin + APART_NATS * proposal.apart


APART_NATS = 15.0  # a term a tenth further off in sound must fit this tenth better


def _others(best: Proposal, proposals: Sequence[Proposal], lexicon: Lexicon) -> Iterator[Proposal]:
    """Proposals that mean something else: "knee jerk" and "knee jerks" are one."""
    meant = lexicon.meanings(best.term)
    return (each for each in proposals if not meant & lexicon.meanings(each.term))


def _strange(tokens: Sequence[Token], words: Sequence[Word], lexicon: Lexicon, known: Known) -> Iterator[int]:
    """Tokens of recordings that neither the trade nor English knows."""
    for place, token in enumerate(tokens):
        heard = words[token.word].start_s is not None
        plain = heard and token.lower.isalpha() and len(token.lower) > 3 and not token.heard
        if plain and not lexicon.knows(token.lower) and not known(token.lower):
            yield place


def propose(
    place: int, tokens: Sequence[Token], words: Sequence[Word], lexicon: Lexicon, *, weigh: Weigh, most_apart: float
) -> list[Proposal]:
    """Terms that a window around the token may be, the likeliest first."""
    found: dict[tuple[int, int, str], float] = {}
    for start, end in _windows(place, tokens):
        said = sounds(" ".join(token.lower for token in tokens[start:end]))
        if len(said) < LEAST_SOUNDS:
            continue
        for term in _ranked(said, lexicon):
            apart = distance(said, sounds(term), most=most_apart)
            if apart <= most_apart:
                found[start, end, term] = apart
    near = sorted(found.items(), key=lambda entry: entry[1])[:WEIGHED]
    return sorted(
        (
            Proposal(start, end, term, apart, margin)
            for (start, end, term), apart in near
            if (margin := _margin(start, end, term, tokens, words, weigh)) is not None
        ),
        key=_cost,
    )


def _windows(place: int, tokens: Sequence[Token]) -> Iterator[tuple[int, int]]:
    """Windows of one to three words in one sentence that hold the token."""
    for length in range(1, LONGEST_WINDOW + 1):
        for start in range(max(0, place - length + 1), place + 1):
            end = start + length
            inside = tokens[start:end]
            whole = end <= len(tokens) and not any(token.ends_sentence for token in inside[:-1])
            if whole and all(token.lower.isalpha() for token in inside):
                yield start, end


def _margin(
    start: int, end: int, term: str, tokens: Sequence[Token], words: Sequence[Word], weigh: Weigh
) -> float | None:
    first, last = tokens[start].word, tokens[end - 1].word
    for before, after in CONTEXTS:
        left, right = context(first, words, before, 0)[0], context(last, words, 0, after)[1]
        begin, finish = words[left].start_s, words[right].end_s
        if begin is None or finish is None:
            return None
        texts = [
            phrase_with(words, left, right),
            phrase_with(words, left, right, first, last, _cased(words[first], term, words[last])),
        ]
        scores = weigh(words[first].source, begin, finish, texts)
        if scores:
            return float(scores[0] - scores[1])
    return None


def _cased(first: Word, term: str, last: Word) -> str:
    """The term with the capital and the full stop of the words it stands for."""
    tail = last.text[len(last.text.rstrip(".,;:?!")) :]
    return (term[:1].upper() + term[1:] if first.text[:1].isupper() else term) + tail


def _mended(window: Sequence[Token], term: str) -> list[Token]:
    """Tokens of the term in the place of the window; the first says what was heard."""
    parts = term.split()
    heard = " ".join(token.text for token in window)
    return [
        replace(
            window[min(at, len(window) - 1)] if at + 1 < len(parts) else window[-1],
            lower=part,
            heard=heard if at == 0 else "",
            glued=False,
            ends_sentence=window[-1].ends_sentence and at + 1 == len(parts),
            ends_line=window[-1].ends_line and at + 1 == len(parts),
        )
        for at, part in enumerate(parts)
    ]


@lru_cache(maxsize=4)
def _profiles(lexicon: Lexicon) -> tuple[list[str], npt.NDArray[np.int8]]:
    """Terms of the trade and how many sounds of each class they have."""
    terms = sorted(lexicon.terms(_KINDS, longest=LONGEST_WINDOW))
    return terms, np.array([_profile(sounds(term)) for term in terms], np.int8)


def _profile(said: str) -> list[int]:
    """Sounds counted by class and one by one."""
    counts = [0] * (_OTHER + 1 + len(_SOUNDS))
    for sound in said:
        counts[_CLASSES.get(sound, _OTHER)] += 1
        counts[_OTHER + 1 + _SOUNDS.find(sound)] += 1
    return counts


def _ranked(said: str, lexicon: Lexicon) -> list[str]:
    """The terms that share most sounds with what was heard."""
    terms, profiles = _profiles(lexicon)
    off = np.abs(profiles - np.array(_profile(said), np.int8)).sum(axis=1)
    return [terms[at] for at in np.argsort(off, kind="stable")[:RANKED]]
