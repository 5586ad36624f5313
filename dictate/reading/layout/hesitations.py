"""Hesitations ("um"), their commas, and the number begun before one ("two, um, two plus"): nothing was said by them."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from dictate.grammar.number_words import TEENS, TENS
from dictate.reading.phrases.cardinals import UNITS
from dictate.reading.tokens import Token

_GOES_ON = frozenset("on in at to up of over under from with the a an about".split())  # what was told before it
_SIDES = ("left", "right")  # "the left, er, not so good"
_NUMBERS = frozenset({*UNITS, *TEENS, *TENS})


def without_hesitations(tokens: Sequence[Token], said: Collection[str]) -> list[Token]:
    """The tokens without those of `said`; of the commas around one, one is left where something new may begin.

    "Reduced, um, on the left leg" is one statement; "knees three plus, um, ankles one" are two.
    """
    result: list[Token] = []
    place = 0
    while place < len(tokens):
        if tokens[place].lower not in said or tokens[place].text.isupper() or tokens[place].ends_sentence:
            result.append(tokens[place])
            place += 1
            continue
        while place < len(tokens) and (tokens[place].lower in said or _is_comma(tokens[place])):
            place += 1
        comma = result.pop() if result and _is_comma(result[-1]) else None
        after = tokens[place].lower if place < len(tokens) else ""
        if result and result[-1].lower == after and _is_number(after):
            result.pop()  # begun, and said anew
            comma = None
        if comma is not None and after not in _GOES_ON and not (result and result[-1].lower in _SIDES):
            result.append(comma)
    return result


def _is_comma(token: Token) -> bool:
    return token.text == "," and not token.ends_sentence


def _is_number(word: str) -> bool:
    return word in _NUMBERS or word.isdigit()
