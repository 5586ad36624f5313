"""Cranial nerves counted in words ("Five: sensation normal", "Cranial nerve two, acuity 6/6"): as Roman numbers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from dictate.reading.phrases.nerves import is_roman
from dictate.reading.phrases.numbers import ROMAN
from dictate.reading.tokens import Token

_NUMERALS = {value: text for text, value in ROMAN.items()}
_WORDS = (
    "one two three four five six seven eight nine ten eleven twelve",
    "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth",
    "1 2 3 4 5 6 7 8 9 10 11 12",
)
_NUMBERS = {word: number for words in _WORDS for number, word in enumerate(words.split(), start=1)}
_ORDINALS = _WORDS[1].split()
_LINKS = frozenset({",", "/", "-", "&", "and"})
_ENDS = frozenset({",", ":"})
_TOLD = frozenset(
    {"normal", "intact", "unremarkable", "fine", "okay", "ok"}
)  # behind a nerve, never in front of a name
_COUNT = 3  # titles that count upwards and are no other list


def with_nerve_titles(tokens: Sequence[Token]) -> list[Token]:
    """The tokens, with numbers of nerves that are titles in Roman, and a colon behind each.

    A number is one where "cranial nerve" stands in front of it, or where at least three sentences behind those words
    begin with numbers that count upwards.
    """
    tokens = _ended(tokens)
    heads = [at for at in range(len(tokens)) if _is_head(tokens, at)] or _ordinals(tokens)
    if not heads:
        return list(tokens)
    named = [run for at in heads if (run := _run(tokens, at + 1, named=True)) is not None]
    counted = list(_counted(tokens, heads[0]))
    runs = {start: (start, end) for start, end in (*counted, *named)}
    result: list[Token] = []
    place = 0
    while place < len(tokens):
        if place not in runs:
            result.append(tokens[place])
            place += 1
            continue
        start, end = runs[place]
        result.extend(_in_roman(token) for token in tokens[start:end])
        last = tokens[end - 1]
        result.append(replace(last, text=":", lower=":", glued=True, ends_sentence=False, ends_line=False, heard=""))
        place = end + (tokens[end].lower in _ENDS)
    return result


def _ended(tokens: Sequence[Token]) -> list[Token]:
    """ "II: 6/6 both, III/IV/VI: full, V: normal": each title in a row of them begins a sentence."""
    result = list(tokens)
    commas = []
    for at, token in enumerate(tokens):
        if token.lower not in (",", ";"):
            continue
        end = at + 1
        while end < len(tokens) and (is_roman(tokens[end]) or (end > at + 1 and tokens[end].lower in _LINKS)):
            end += 1
        titled = end > at + 1 and end < len(tokens) and tokens[end].lower == ":" and is_roman(tokens[end - 1])
        if titled and not (at and is_roman(tokens[at - 1])):
            commas.append(at)
    for at in commas if len(commas) > 1 else ():
        result[at] = replace(tokens[at], ends_sentence=True)
    return result


def _ordinals(tokens: Sequence[Token]) -> list[int]:
    """ "Third nerve: ptosis. Fourth: full. Fifth: normal.": the nerve that heads the row, or the place in front of it.

    Titles from "second" on, at least three that count upwards, each with a colon; "first" opens any list.
    """
    named = [
        at for at in range(1, len(tokens)) if tokens[at].lower == "nerve" and tokens[at - 1].lower in _ORDINALS[1:]
    ]
    starts = [at for at in range(len(tokens)) if not at or tokens[at - 1].ends_sentence]
    runs = [
        run for at in starts if tokens[at].lower in _ORDINALS and (run := _run(tokens, at, named=False)) is not None
    ]
    titles = [start for start, end in runs if tokens[end].lower == ":"]
    numbers = [_number(tokens[at]) for at in titles]
    rising = len(titles) >= _COUNT - bool(named) and numbers == sorted(set(numbers)) and numbers[0] > 1
    return (named[:1] if named and named[0] < titles[0] else [titles[0] - 1]) if rising else []


def _is_head(tokens: Sequence[Token], at: int) -> bool:
    """The last word of "cranial nerve", "cranial nerves" or "CN"."""
    word = tokens[at].lower
    return word == "cn" or (word in ("nerve", "nerves") and at > 0 and tokens[at - 1].lower == "cranial")


def _run(tokens: Sequence[Token], start: int, *, named: bool) -> tuple[int, int] | None:
    """From the first number of a list to behind its last, where what was found follows."""
    end = start
    while end < len(tokens) and (_number(tokens[end]) or (end > start and tokens[end].lower in _LINKS)):
        end += 1
    while end > start and tokens[end - 1].lower in _LINKS:
        end -= 1
    ranged = any(token.hyphened or token.lower == "-" for token in tokens[start + 1 : end])  # "CN II-VI normal"
    if end == start or end >= len(tokens) or ranged or any(token.ends_sentence for token in tokens[start:end]):
        return None
    after = tokens[end]
    closed = after.lower in _ENDS and end + 1 < len(tokens) and not after.ends_sentence
    speaker = end == start + 1 and tokens[start].lower == "i"  # "the other cranial nerves I did not check"
    open_title = named and not speaker and after.lower.isalpha() and after.lower not in ("to", "through", "thru")
    told = after.lower in _TOLD and not after.ends_sentence and end + 1 < len(tokens)  # "CN II intact tone normal"
    open_title = open_title and not told
    spoken = all(not token.glued for token in tokens[start:end] if _number(token))
    return (start, end) if (closed or open_title) and spoken else None


def _counted(tokens: Sequence[Token], head: int) -> Iterator[tuple[int, int]]:
    """Runs at the beginning of sentences behind `head`, where they count upwards."""
    starts = [
        at + 1 for at in range(head, len(tokens) - 1) if at < 0 or tokens[at].ends_sentence or tokens[at].lower == ":"
    ]
    runs = [run for at in starts if (run := _run(tokens, at, named=False)) is not None]
    numbers = [_number(tokens[start]) for start, _ in runs]
    counted = len(runs) >= _COUNT and numbers == sorted(set(numbers))
    for start, end in runs:
        told = tokens[end].lower == ":" and tokens[start].lower.isalpha() and not is_roman(tokens[start])
        if counted or told or start == head + 2:  # "Cranial nerves: five, sensation normal"
            yield start, end


def _number(token: Token) -> int:
    """The number of the nerve, in words, digits or Roman; 0 for any other token."""
    return ROMAN[token.lower] if is_roman(token) else _NUMBERS.get(token.lower, 0)


def _in_roman(token: Token) -> Token:
    number = _NUMBERS.get(token.lower)
    if number is None:
        return token
    numeral = _NUMERALS[number]
    return replace(token, text=numeral.upper(), lower=numeral)
