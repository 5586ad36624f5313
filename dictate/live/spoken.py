"""What is said to the program itself: whole sentences only, never words inside a finding."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import get_args

from dictate.grammar import Control, Grammar
from dictate.model import Word

STOPS = ".?!"
CONFIRMED: dict[Control, str] = {
    "pause": "paused: nothing is taken until you say it goes on",
    "resume": "listening again",
    "end": "end of dictation: the whole is heard again",
    "read_back": "read back",
    "still_open": "still open",
    "start_clock": "standing clock started",
}


@dataclass(frozen=True)
class Order:
    """A control as it was said: words first..last (both included) of those given."""

    control: Control
    first: int
    last: int


def find_orders(words: Sequence[Word], grammar: Grammar) -> list[Order]:
    """Controls among the words of a phrase, each a whole sentence."""
    known = {_plain(phrase): control for control, phrases in grammar.controls.items() for phrase in phrases}
    return [
        Order(known[text], first, last)
        for first, last in sentences(words)
        if (text := _plain(" ".join(word.text for word in words[first : last + 1]))) in known
    ]


def without_orders(words: Sequence[Word], grammar: Grammar) -> tuple[Word, ...]:
    """The words less those said to the program."""
    taken = {at for order in find_orders(words, grammar) for at in range(order.first, order.last + 1)}
    return tuple(word for at, word in enumerate(words) if at not in taken)


def sentences(words: Sequence[Word]) -> Iterator[tuple[int, int]]:
    """First and last word of each sentence."""
    first = 0
    for at, word in enumerate(words):
        if word.text.rstrip("\"')").endswith(tuple(STOPS)) or at == len(words) - 1:
            yield first, at
            first = at + 1


def controls_help(grammar: Grammar) -> str:
    """What can be said, one line each, for `--help`."""
    lines = [
        f"{control.replace('_', ' ')}: {', '.join(grammar.controls[control])}"
        for control in get_args(Control)
        if grammar.controls.get(control)
    ]
    return "\n".join(lines)


def _plain(text: str) -> str:
    return " ".join(re.sub(r"[^a-z0-9']+", " ", text.lower().replace("’", "'")).split())
