"""Senses named without the word that makes them one: "pain and temperature", for pain and temperature sensation."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

_HEAD = "sensation"
_LINKS = frozenset({"and", "or", "nor", "&", "/", ",", "+"})


def unsaid_heads(tokens: Sequence[Token], meanings: Callable[[str], set[Role]]) -> Iterator[Mark]:
    """A word that is no such name by itself, linked to a short name, where both with the head word are names.

    meanings: everything that a phrase can be. The word becomes a short name, which holds under its own heading only.
    """
    for place in range(1, len(tokens) - 1):
        if tokens[place].lower not in _LINKS or any(token.ends_sentence for token in tokens[place - 1 : place + 1]):
            continue
        for one, other in ((place - 1, place + 1), (place + 1, place - 1)):
            word, name = tokens[one].lower, tokens[other].lower
            named = {role.item for role in meanings(name) if role.kind == "context"}
            if not named:
                continue
            items = {role.item for role in meanings(f"{word} {_HEAD}") if role.kind == "item"}
            items -= {role.item for role in meanings(word)}
            if items and any(role.kind == "item" and role.item in named for role in meanings(f"{name} {_HEAD}")):
                yield Mark(one, one + 1, tuple(Role("context", item) for item in sorted(items)))
