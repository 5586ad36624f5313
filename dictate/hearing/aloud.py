"""A written word as it is said: numerals, signs, units and single letters become the words they stand for."""

from __future__ import annotations

import re

from dictate.grammar.number_words import BELOW_TWENTY, TENS

_ONES, _TENS = tuple(BELOW_TWENTY), tuple(TENS)
_UNITS = {
    "kg": "kilograms",
    "mm": "millimeters",
    "cm": "centimeters",
    "m": "meters",
    "s": "seconds",
    "Hz": "hertz",
    "mmHg": "millimeters of mercury",
    "%": "percent",
    "°": "degrees",
    "=": "equals",
    "+": "plus",
    "x": "times",
    "&": "and",
}
_ORDINALS = {"1st": "first", "2nd": "second", "3rd": "third"}
# Names of the letters as they would be spelled, for those that are said by name: T4, the S1 root, MRC.
_NAMES = "ay bee see dee ee eff jee aitch eye jay kay ell em en oh pee cue ar ess tee you vee double-you ex why zee"
_LETTERS = dict(zip("abcdefghijklmnopqrstuvwxyz", _NAMES.split(), strict=True))
_ABBREVIATION = 4  # capitals in a row, at most, that are said letter by letter
_ACUITY = {"6", "20"}  # 20/40 is said "twenty forty", and 132/84 "one thirty two over eighty four"
_PARTS = re.compile(
    r"(?P<ordinal>\d+(?:st|nd|rd|th)\b)|(?P<number>\d+(?:\.\d+)?)|(?P<word>[A-Za-z]+(?:'[a-z]+)?)|(?P<sign>[+/%°=&\-\u2212])"
)
_CENTURIES = range(19, 21)  # of years, said in pairs


def aloud(text: str, *, hundreds: bool) -> str:
    """Words that are said for a written one; with `hundreds` 113 is "one hundred and thirteen", else "one thirteen"."""
    found = list(_PARTS.finditer(text))
    said = []
    for at, part in enumerate(found):
        before = found[at - 1].group() if at else ""
        after = found[at + 1].group() if at + 1 < len(found) else ""
        said.append(_said(part, before, after, hundreds))
    return " ".join(filter(None, said))


def _said(part: re.Match[str], before: str, after: str, hundreds: bool) -> str:
    word = part.group()
    if part.lastgroup == "number":
        return _number(word, hundreds)
    if part.lastgroup == "ordinal":
        return _ORDINALS.get(word) or f"{_number(word[:-2], hundreds)} th"
    if part.lastgroup == "word":
        return _word(word, before)
    if word == "/":
        return "" if before in _ACUITY else "over"
    if word in "-\u2212":  # 4- is a grade, 1-16 only a number that came in pieces
        return "minus" if before[-1:].isdigit() and not after[:1].isalnum() else ""
    return _UNITS[word]


def _word(word: str, before: str) -> str:
    if word in _UNITS:
        return _UNITS[word]
    if before[-1:].isdigit() and word.lower() in _UNITS:
        return _UNITS[word.lower()]
    if (len(word) == 1 and word not in "aI") or (1 < len(word) <= _ABBREVIATION and word.isupper()):
        return " ".join(_LETTERS[letter] for letter in word.lower())
    return word


def _number(text: str, hundreds: bool) -> str:
    whole, _, fraction = text.partition(".")
    digits = " ".join(_ONES[int(digit)] for digit in fraction)
    return _whole(int(whole[:6]), hundreds) + (f" point {digits}" if digits else "")


def _whole(number: int, hundreds: bool) -> str:
    high, rest = divmod(number, 100)
    if not high:
        return _below_hundred(rest)
    if 10 <= high < 100 and not rest:
        return f"{_below_hundred(high)} hundred"
    if number >= 10_000 or (high >= 10 and high not in _CENTURIES):
        return " ".join(_ONES[int(digit)] for digit in str(number))
    if high in _CENTURIES and rest >= 10:
        return f"{_below_hundred(high)} {_below_hundred(rest)}"
    if high >= 10:
        return f"{_below_hundred(high)} hundred {_below_hundred(rest)}"
    if rest and hundreds:
        return f"{_ONES[high]} hundred and {_below_hundred(rest)}"
    return " ".join(filter(None, (_ONES[high], "" if rest >= 10 else "hundred", _below_hundred(rest) if rest else "")))


def _below_hundred(number: int) -> str:
    if number < 20:
        return _ONES[number]
    return _TENS[number // 10 - 2] + (f" {_ONES[number % 10]}" if number % 10 else "")
