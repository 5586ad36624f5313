"""What is said to the program itself: whole sentences only, never words inside a finding."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import get_args

from dictate.grammar import Control, Grammar
from dictate.grammar.sounds import distance, sounds
from dictate.model import Word

STOPS = ".?!"
# "End of vacation", "red that back": 16 of 18 mishearings are .00 to .20 apart from what was said, two .24 and .29; of
# 14 677 phrases of the trade none is nearer than .25.
ALIKE = 0.2001
# Where the sound can be asked it must not speak against the order, and has to speak for one that is further apart:
# by -AGAINST at ALIKE, by FITS from FAR on, and in between by how far it is (docs/hearing.md). "Pause dictation" heard
# as "Positive dictation" is .21 apart and fits up to 4 nats less; "Continue the medication" fits 15 to 25 better.
AGAINST = 8.0
FITS = 6.0
FAR = 0.3
NEARLY = 0.4
# Further from what was heard than the nearest order: not asked. Of two, the shorter one fits its sound better, whatever
# was said: "Resumed dictation" was "End dictation".
AS_NEAR = 0.1
MOST_WEIGHED = 4
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


def find_orders(words: Sequence[Word], grammar: Grammar, *, fitting: str | None = None) -> list[Order]:
    """Controls among the words of a phrase, each a whole sentence; one that only sounds so is the whole phrase.

    fitting: the way of saying one that fits the sound of the phrase; empty: none does; None: nobody asked the sound.
    """
    known = {plain_words(phrase): control for control, phrases in grammar.controls.items() for phrase in phrases}
    found = [
        Order(known[text], first, last)
        for first, last in sentences(words)
        if (text := plain_words(" ".join(word.text for word in words[first : last + 1]))) in known
    ]
    if found or not words:
        return found
    alike = _sounding(plain_words(" ".join(word.text for word in words)), known, grammar, fitting)
    return [Order(alike, 0, len(words) - 1)] if alike else []


def fitting_order(
    words: Sequence[Word], orders: Sequence[str], weigh: Callable[[list[str]], list[float]]
) -> str | None:
    """The way of saying a control that a phrase sounds like and that fits its sound; empty: none; None: cannot tell.

    weigh: how well each text fits the sound of the phrase, in nats; empty: cannot tell. Asked of few phrases.
    """
    heard = " ".join(word.text for word in words)
    said = sounds(plain_words(heard))
    near = sorted((distance(said, sounds(order)), order) for order in orders)[:MOST_WEIGHED]
    near = [(apart, order) for apart, order in near if apart <= NEARLY]
    if not words or not near:
        return ""
    if near[0][0] == 0:
        return near[0][1]
    near = [(apart, order) for apart, order in near if apart <= near[0][0] + AS_NEAR]
    scores = weigh([heard, *(f"{order.capitalize()}." for _, order in near)])
    if not scores:
        return None
    better, _, order = max((score - scores[0], *each) for score, each in zip(scores[1:], near, strict=True))
    share = min(1.0, max(0.0, (near[0][0] - ALIKE) / (FAR - ALIKE)))
    return order if better >= share * FITS - (1 - share) * AGAINST else ""


def _sounding(text: str, known: Mapping[str, Control], grammar: Grammar, fitting: str | None) -> Control | None:
    """The control that a phrase sounds like; None for one with a number, or with a position, which is dictated.

    One that sounds like it from afar only, and names something that is examined ("Pupil dilatation"), is dictated too.
    """
    positions = {word for phrases in grammar.common.positions.values() for word in phrases}
    if re.search(r"[0-9]", text) or positions & set(text.split()):
        return None
    said = sounds(text)
    apart, phrase = min(((distance(said, sounds(phrase)), phrase) for phrase in known), default=(1.0, ""))
    if apart <= ALIKE:
        return known[phrase] if fitting is None else known.get(plain_words(fitting))
    return known.get(plain_words(fitting)) if fitting and not _names(text, known, grammar) else None


def _names(text: str, known: Iterable[str], grammar: Grammar) -> bool:
    """Whether a text holds the name of an item, other than in words that controls are made of."""
    words, own = text.split(), set(" ".join(known).split())
    parts = {" ".join(words[a:b]) for a in range(len(words)) for b in range(a + 1, len(words) + 1)}
    parts = {part for part in parts if not set(part.split()) <= own}
    return any(
        plain_words(name) in parts
        for item in grammar.items.values()
        for name in (item.name, *item.terms, *item.context_terms)
    )


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


def plain_words(text: str) -> str:
    """Small letters, digits and apostrophes only."""
    return " ".join(re.sub(r"[^a-z0-9']+", " ", text.lower().replace("’", "'")).split())
