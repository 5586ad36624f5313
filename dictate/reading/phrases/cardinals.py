"""Plain numbers, spoken or in digits: "one oh four", "thirty six point six", "two and a half"."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from functools import cached_property

from dictate.grammar.number_words import DIGITS, TEENS, TENS
from dictate.reading.marks import Number
from dictate.reading.tokens import Token

UNITS = DIGITS | {"nought": 0, "naught": 0}
STONES = frozenset({"stone", "stones", "st"})
_POUNDS = 14  # to the stone
_VERBS = frozenset({"is", "are", "was", "were"})
_POUND = frozenset({"lb", "lbs", "pound", "pounds"})


class Cardinals:
    """Reads a plain number at a place of the token list."""

    def __init__(self, tokens: Sequence[Token]) -> None:
        self.tokens = tokens
        self.words = [token.lower for token in tokens]

    def crosses(self, i: int) -> int:
        """ "++", "knees plus plus plus": how many, where no number stands before; a plus alone beside others."""
        if self.at(i, same_sentence=False) == "+":
            count = next(n for n in itertools.count(1) if self.at(i + n) != "+" or not self.tokens[i + n].glued)
            return count if count > 1 else 0
        if self.at(i) != "plus" or (i and self.cardinal(i - 1) is not None):
            return 0
        count = next(n for n in itertools.count() if self.at(i + n) != "plus")
        return count if count > 1 or (self.at(i - 1) in _VERBS and self._spells_crosses) else 0

    def in_a_row(self, i: int) -> int:
        """The end of "2/2/2": grades in a row, and no number of one thing; 0 where none begins."""
        end = i
        while self.at(end).isdigit() and len(self.at(end)) == 1 and self.at(end + 1) == "/":
            end += 2
        return end + 1 if end > i + 2 and self.at(end).isdigit() and len(self.at(end)) == 1 else 0

    @cached_property
    def _spells_crosses(self) -> bool:
        return any(one == two == "plus" for one, two in itertools.pairwise(self.words))

    def at(self, place: int, *, same_sentence: bool = True) -> str:
        """The word at a place; empty past the end or past a sentence end."""
        if place >= len(self.words):
            return ""
        if same_sentence and place > 0 and self.tokens[place - 1].ends_sentence:
            return ""
        return self.words[place]

    def cardinal(self, i: int) -> tuple[float, int] | None:
        """A plain number from place i: (number, place after it)."""
        word = self.at(i, same_sentence=False)
        if not word:
            return None
        if word[0].isdigit():
            number, end = float(word), i + 1
            if (
                number == 100
                and self.at(end) == "and"
                and self.at(end + 1).isdigit()
                and float(self.words[end + 1]) < 100
            ):
                return number + float(self.words[end + 1]), end + 2
            return self._tail(number, end)
        if word in {"half", "a"} and (word == "half" or self.at(i + 1) == "half"):
            return (
                None
                if self.at(i + 1) not in {"a", "an", "half"} and word == "half"
                else (0.5, i + 1 if word == "half" else i + 2)
            )
        found = self._spoken(i)
        return self._tail(*found) if found else None

    def _tail(self, number: float, end: int) -> tuple[float, int]:
        """Decimals and halves: "point six", "and a half"."""
        test = self.at(end + 1).isdigit() and self.at(end - 1) == "two"  # "two point 12 mm": a test of two points
        if self.at(end) == "point" and self._digit(self.at(end + 1)) is not None and not test:
            digits, end = "", end + 1
            while (digit := self._digit(self.at(end))) is not None:
                digits, end = digits + str(digit), end + 1
            return float(f"{int(number)}.{digits}"), end
        if self.words[end : end + 3] == ["and", "a", "half"]:
            return number + 0.5, end + 3
        return number, end

    @staticmethod
    def _digit(word: str) -> int | None:
        if word.isdigit():
            return int(word)
        return 0 if word == "oh" else UNITS.get(word, TEENS.get(word))

    def _below_hundred(self, i: int, *, first: bool = False) -> tuple[int, int] | None:
        """Tens and units; first: the number starts here, so it may stand at the start of a sentence."""
        word = self.at(i, same_sentence=not first)
        if word in TENS:
            unit = UNITS.get(self.at(i + 1), 0)
            # "twenty five" is 25; "eighty one forty" is 80, 140: the unit belongs to the number after it
            if unit and not (
                unit <= 3 and (self.at(i + 2) in TENS or self.at(i + 2) in TEENS or self.at(i + 2) == "oh")
            ):
                return TENS[word] + unit, i + 2
            if unit and self.at(i + 2) in TENS | TEENS and self.at(i + 1) == "one":
                return TENS[word], i + 1
            return TENS[word] + unit if unit else TENS[word], i + 2 if unit else i + 1
        if word in TEENS:
            return TEENS[word], i + 1
        return None

    def _spoken(self, i: int) -> tuple[float, int] | None:
        word = self.at(i, same_sentence=False)
        if word == "a" and self.at(i + 1) == "hundred":
            return self._hundred(1, i + 2)
        if word in UNITS:
            unit = UNITS[word]
            if self.at(i + 1) == "hundred":
                return self._hundred(unit, i + 2)
            if 1 <= unit <= 3:
                if self.at(i + 1) in {"oh", "o", "zero"} and self.at(i + 2) in UNITS:
                    return 100.0 * unit + UNITS[self.at(i + 2)], i + 3
                rest = self._below_hundred(i + 1)
                if rest is not None and rest[0] >= 10:
                    return 100.0 * unit + rest[0], rest[1]
            return float(unit), i + 1
        found = self._below_hundred(i, first=True)
        return (float(found[0]), found[1]) if found else None

    def _hundred(self, unit: int, i: int) -> tuple[float, int]:
        after = i + 1 if self.at(i) == "and" else i
        rest = self._below_hundred(after)
        if rest is None and self.at(after) in UNITS and self.at(after + 1) not in {"over", "plus", "minus"}:
            rest = (UNITS[self.at(after)], after + 1)
        if rest is None and self.at(after) in UNITS:
            rest = (UNITS[self.at(after)], after + 1)
        return (100.0 * unit, i) if rest is None else (100.0 * unit + rest[0], rest[1])

    def stones(self, stone: float, end: int) -> tuple[Number, int] | None:
        """ "Eleven stone four", "11 st 4 lb": a weight in stones and pounds."""
        found = self.cardinal(end)
        if found is None or found[0] not in range(_POUNDS):
            return None
        stop = found[1] + (self.at(found[1]) in _POUND)
        return Number(a=stone, op="st", b=found[0]), stop
