"""How a written word sounds, roughly, by rules of spelling; and how far apart two words sound."""

from __future__ import annotations

import itertools
import re
import string
from functools import lru_cache

# Letters → sounds, tried in order at each place; upper case: T as in thin, S shin, C chin, J gin, vowels in lower case.
# Own rules, for terms of Greek and Latin and for what a recogniser makes of them; rough is enough to rank candidates.
_RULES: tuple[tuple[str, str], ...] = (
    (r"^(?:kn|gn|pn)", "n"),
    (r"^ps", "s"),
    (r"^pt", "t"),
    (r"^wr", "r"),
    (r"^x", "z"),
    (r"tch", "C"),
    (r"sch", "sk"),
    (r"[ts]ion|cian", "Sn"),
    (r"tu(?=re|al)", "Cu"),
    (r"ch(?=[rlno]|or|ia$)", "k"),
    (r"ch", "C"),
    (r"ck|cc(?![ei])|qu?(?=[ei]$)", "k"),
    (r"cc", "ks"),
    (r"qu", "kw"),
    (r"ph", "f"),
    (r"gh(?=t|$)", ""),
    (r"th", "T"),
    (r"sh", "S"),
    (r"rrh|rh", "r"),
    (r"wh", "w"),
    (r"dg|j", "J"),
    (r"g(?=[eiy])", "J"),
    (r"c(?=[eiy])", "s"),
    (r"sc(?=[eiy])", "s"),
    (r"ng", "n"),
    (r"x", "ks"),
    (r"mb$", "m"),
    (r"que$", "k"),
    (r"e$", ""),
    (r"(?<=[sxzh])es$", "es"),
    (r"es$", "s"),
    (r"ee|ea|ie|oe|ae", "i"),
    (r"oo|ui|ew", "u"),
    (r"ou|ow|au|aw", "o"),
    (r"ai|ay|ei|ey", "e"),
    (r"oi|oy", "o"),
    (r"y", "i"),
    (r"c", "k"),
    (r"z", "z"),
    (r"h", "h"),
)
_COMPILED = tuple((re.compile(pattern), sound) for pattern, sound in _RULES)
_VOWELS = frozenset("aeiou")
_NEAR = {frozenset(pair) for pair in "pb td kg fv sz mn lr Ts Tf Tt Td SC CJ SJ Ss kC Js wv nl Jg mb nd kt pt".split()}
_SOUNDS = string.ascii_lowercase + "TSCJ"
VOWEL_SWAP, NEAR_SWAP, VOWEL_GAP, GAP = 0.4, 0.5, 0.7, 1.0


@lru_cache(maxsize=20_000)
def sounds(text: str) -> str:
    """The sounds of a word or phrase in plain letters, doubled ones once."""
    return "".join(_word(word) for word in re.findall(r"[a-z]+", text.lower()))


@lru_cache(maxsize=20_000)  # a grammar's twenty thousand terms are made of some thousand words
def _word(word: str) -> str:
    found: list[str] = []
    place = 0
    while place < len(word):
        for pattern, sound in _COMPILED:
            match = pattern.match(word, place)
            if match and (not pattern.pattern.startswith("^") or place == 0):
                found.append(sound)
                place = match.end()
                break
        else:
            found.append(word[place])
            place += 1
    return re.sub(r"(.)\1+", r"\1", "".join(found))


def distance(one: str, other: str, *, most: float = 1.0) -> float:
    """0: sounds alike, 1: nothing in common; sounds as given by sounds(). Over `most` it may be anything above."""
    longer = max(len(one), len(other))
    if not longer:
        return 0.0
    if (longer - min(len(one), len(other))) * VOWEL_GAP > most * longer:
        return 1.0
    gaps = [_gap(sound) for sound in other]
    before = [0.0, *itertools.accumulate(gaps)]
    for sound in one:
        own, swaps = _gap(sound), _swaps(sound)
        last = before[0] + own
        line = [last]
        for column, rival in enumerate(other):  # asked for millions of pairs: no call inside
            least = before[column] + swaps[rival]
            gone = before[column + 1] + own
            last += gaps[column]
            last = min(last, least, gone)
            line.append(last)
        before = line
    return before[-1] / longer


@lru_cache(maxsize=64)
def _swaps(sound: str) -> dict[str, float]:
    """What it costs to take any sound for this one."""
    return {other: _swap(sound, other) for other in _SOUNDS}


def _gap(sound: str) -> float:
    return VOWEL_GAP if sound in _VOWELS else GAP


def _swap(one: str, other: str) -> float:
    if one == other:
        return 0.0
    if one in _VOWELS and other in _VOWELS:
        return VOWEL_SWAP
    return NEAR_SWAP if frozenset((one, other)) in _NEAR else GAP
