"""A side inside the name of a place: "lateral border of the left foot", "small muscles of both hands"."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

_SIDES = frozenset({"left", "right", "both", "l", "r", "lt", "rt"})
_NAMING = ("site", "item", "context")
_ORGANS = frozenset({"eye", "ear"})
_LONGEST = 5  # words in front of the side


def inner_sides(tokens: Sequence[Token], meanings: Callable[[str], set[Role]]) -> Iterable[Mark]:
    """The words in front of the side as the place that they name together with the words behind it."""
    words = [token.lower for token in tokens]
    for place in range(2, len(tokens) - 1):
        if words[place] not in _SIDES or words[place - 1] not in ("of", "the"):
            continue
        for start in range(max(0, place - _LONGEST), place - 1):
            if any(token.ends_sentence for token in tokens[start : place + 1]) or "of" not in words[start + 1 : place]:
                continue
            said = " ".join(words[start:place])
            whole = (f"{said}{the} {words[place + 1]}" for the in ("", " the"))
            roles = {role for phrase in whole for role in meanings(phrase) if role.kind in _NAMING}
            if roles:
                end = words.index("of", start) if words[place + 1] in _ORGANS else place  # "of the left eye" is a side
                yield Mark(start, end, tuple(sorted(roles, key=lambda role: (role.kind, role.item, role.key))))
                break
