"""Wordings of a grammar file written in one, with choices in brackets: every phrase they stand for.

"(did|could) not (see|hear) (any|)" is eight phrases.
"""

from __future__ import annotations

import itertools
import re

_CHOICE = re.compile(r"\(([^()]*\|[^()]*)\)")


def wordings(phrase: str) -> list[str]:
    """All phrases a wording stands for, in order; an empty choice leaves the word out. A plain phrase is itself."""
    pieces = _CHOICE.split(phrase)
    choices = [piece.split("|") if at % 2 else [piece] for at, piece in enumerate(pieces)]
    return list(dict.fromkeys(" ".join("".join(chosen).split()) for chosen in itertools.product(*choices)))


def spelled_out(phrases: object) -> object:
    """A list of wordings → the phrases they stand for; anything else is left to the model to refuse."""
    if not isinstance(phrases, list | tuple):
        return phrases
    said = [wordings(one) if isinstance(one, str) and "|" in one else [one] for one in phrases]
    return tuple(itertools.chain.from_iterable(said))
