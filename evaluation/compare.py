"""What was heard against what was said: words, numbers, terms, and rows of findings."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

Row = dict[str, str]

KEYS = ("item", "side", "site", "position", "minutes")
ONES = {
    word: at
    for at, word in enumerate(
        "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
        "seventeen eighteen nineteen".split()
    )
}
TENS = {word: 10 * at for at, word in enumerate("twenty thirty forty fifty sixty seventy eighty ninety".split(), 2)}
SPELLINGS = {"oedema": "edema", "metres": "meters", "metre": "meter", "millimetres": "mm", "millimeters": "mm"}
SPELLINGS |= {"seconds": "s", "percent": "%", "kilograms": "kg", "plus": "+", "minus": "-", "over": "/", "litres": "l"}


def words_of(text: str) -> list[str]:
    """Plain words; spoken numbers in digits, so that "one forty two over eighty four" is 142 / 84."""
    plain = re.findall(r"[a-z]+|\d+(?:\.\d+)?|[+/%-]", text.lower().replace("'", ""))
    plain = [SPELLINGS.get(word, word) for word in plain]
    found: list[str] = []
    at = 0
    while at < len(plain):
        number, after = _number(plain, at)
        found.append(plain[at] if number is None else str(number))
        at = at + 1 if number is None else after
    return found


def _below_hundred(plain: Sequence[str], at: int) -> tuple[int | None, int]:
    word = plain[at] if at < len(plain) else ""
    if word in TENS:
        unit = ONES.get(plain[at + 1], 0) if at + 1 < len(plain) else 0
        return (TENS[word] + unit, at + 2) if 0 < unit < 10 else (TENS[word], at + 1)
    return (ONES[word], at + 1) if word in ONES else (None, at)


def _number(plain: Sequence[str], at: int) -> tuple[int | None, int]:
    first, after = _below_hundred(plain, at)
    if first is None or not 0 < first < 10:
        return first, after
    if plain[after : after + 1] == ["hundred"]:
        follows = after + 2 if plain[after + 1 : after + 2] == ["and"] else after + 1
        rest, end = _below_hundred(plain, follows)
        return (100 * first, after + 1) if rest is None else (100 * first + rest, end)
    rest, end = _below_hundred(plain, after)
    if rest is not None and rest >= 10 and first <= 2:
        return 100 * first + rest, end
    return first, after


def pairs(said: Sequence[str], heard: Sequence[str]) -> list[tuple[str, str]]:
    """Words said with the words heard for them, by least changes; empty: nothing was said, or heard, there."""
    costs = [list(range(len(heard) + 1))]
    for row, word in enumerate(said, 1):
        line = [row]
        for column, other in enumerate(heard, 1):
            line.append(min(costs[-1][column] + 1, line[-1] + 1, costs[-1][column - 1] + (0 if word == other else 1)))
        costs.append(line)
    found: list[tuple[str, str]] = []
    row, column = len(said), len(heard)
    while row or column:
        same = row and column and said[row - 1] == heard[column - 1]
        if row and column and costs[row][column] == costs[row - 1][column - 1] + (0 if same else 1):
            row, column = row - 1, column - 1
            found.append((said[row], heard[column]))
        elif row and costs[row][column] == costs[row - 1][column] + 1:
            row -= 1
            found.append((said[row], ""))
        else:
            column -= 1
            found.append(("", heard[column]))
    return found[::-1]


@dataclass
class Tally:
    """Counts of one recording, or of several added up."""

    recordings: int = 0
    words: int = 0
    word_errors: int = 0
    numbers: int = 0
    numbers_right: int = 0
    terms: int = 0
    terms_right: int = 0
    gold: int = 0
    rows: int = 0
    right: int = 0
    silent_wrong: int = 0
    silent_wrong_must: int = 0
    silent_missing: int = 0
    must: int = 0
    look: int = 0
    own_musts: int = 0  # of the codes that hearing raises
    sound_s: float = 0.0
    work_s: float = 0.0
    faults: list[str] = field(default_factory=list)

    def add(self, other: Tally) -> None:
        """Add another recording's counts."""
        for name, value in vars(other).items():
            setattr(self, name, getattr(self, name) + value)


def compare_words(said: str, heard: str, terms: Iterable[str], tally: Tally) -> None:
    """Count words, numbers and words of the trade."""
    trade = set(terms)
    for word, other in pairs(words_of(said), words_of(heard)):
        tally.words += bool(word)
        tally.word_errors += word != other
        if word[:1].isdigit():
            tally.numbers += 1
            tally.numbers_right += word == other
        if word in trade:
            tally.terms += 1
            tally.terms_right += word == other


def same_value(one: Row, other: Row) -> bool:
    """Whether status and numbers agree; words only where nothing was measured do not count."""
    if one["status"] != other["status"]:
        return False
    return one["status"] != "measured" or _signs(one["value"]) == _signs(other["value"])


def _signs(value: str) -> list[str]:
    return re.findall(r"\d+(?:\.\d+)?[+-]?|trace", value)


def compare_rows(gold: Sequence[Row], rows: Sequence[Row], queries: Sequence[Row], tally: Tally) -> None:
    """Count findings that are wrong or missing without a query that points at them.

    A finding is right when item, side, site, position, minutes, status and numbers are those of a gold row.
    A query points at a row when it has its item and not another side; one about sound without words excuses a
    missing row.
    """
    open_gold = Counter(range(len(gold)))
    tally.gold += len(gold)
    tally.rows += len(rows)
    for row in rows:
        match = next((at for at in open_gold if _key(gold[at]) == _key(row) and same_value(gold[at], row)), None)
        if match is not None:
            del open_gold[match]
            tally.right += 1
        elif not _asked(row, queries):
            tally.silent_wrong += 1
            tally.faults.append(f"wrong: {row['item']} {row['side']} {row['status']} {row['value']} <- {row['quote']}")
        if match is None and not _asked(row, [query for query in queries if query["severity"] == "must"]):
            tally.silent_wrong_must += 1
    without = sum(query["code"] == "speech-not-transcribed" for query in queries)
    missing = [gold[at] for at in open_gold if not _asked(gold[at], queries)]
    missing = [row for row in missing if all(_key(row) != _key(other) for other in rows)]
    tally.silent_missing += max(0, len(missing) - without)
    tally.must += sum(query["severity"] == "must" for query in queries)
    tally.look += sum(query["severity"] == "look" for query in queries)
    tally.own_musts += sum(query["code"] in ("unsure-hearing", "speech-not-transcribed") for query in queries)


def _key(row: Row) -> tuple[str, ...]:
    return tuple(row[name] for name in KEYS)


def _asked(row: Row, queries: Sequence[Row]) -> bool:
    return any(query["item"] == row["item"] and query["side"] in ("", row["side"]) for query in queries)
