"""The noun that a list of parts shares: "weakness of dorsiflexion and eversion", "knee and ankle power"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.marks import Mark
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.tokens import Token

_HEADS = ("power", "strength")
_ARTICLES = ("the", "left", "right")


def open_lists(marks: Sequence[Mark], tokens: Sequence[Token], lexicon: Lexicon) -> list[Mark]:
    """The marks, with a noun that is of every name of a list told of each.

    A sign that names its part is set apart from it where an "and" and another name follow.
    """
    marks = _with_head(marks, lexicon)
    result: list[Mark] = []
    for place, mark in enumerate(marks):
        parts = _parts(mark, tokens, lexicon) if _goes_on(marks, place) else []
        result.extend(parts or [mark])
    return result


def _with_head(marks: Sequence[Mark], lexicon: Lexicon) -> Sequence[Mark]:
    """ "Knee and ankle power", "knee power": the strength there, and not the jerk."""
    result = list(marks)
    for place in range(len(marks) - 2, -1, -1):
        one, after = result[place], result[place + 1 : place + 3]
        listed = len(after) > 1 and after[0].has("conj") and " " in after[1].text
        head = after[1].text.rpartition(" ")[2] if listed else after[0].text
        if head in _HEADS and one.role("site", "") is not None and one.has("context"):
            roles = tuple(role for role in lexicon.meanings(f"{one.text} {head}") if role.kind == "item")
            result[place] = replace(one, roles=roles or tuple(r for r in one.roles if r.kind != "context"))
    return result


def _goes_on(marks: Sequence[Mark], place: int) -> bool:
    """A sign with an "of" in it, and behind it a link and a name that can be graded as its own is."""
    mark = marks[place]
    if not mark.has("sign") or " of " not in mark.text:
        return False
    after = [one for one in marks[place + 1 : place + 4] if one.text not in _ARTICLES]
    if len(after) < 2:
        return False
    link, name = after[:2]
    return link.has("conj", "comma") and name.has("item", "context") and not name.has("sign")


def _parts(mark: Mark, tokens: Sequence[Token], lexicon: Lexicon) -> list[Mark]:
    """ "Weakness of" and "dorsiflexion"; empty where either says nothing by itself."""
    words = [token.lower for token in tokens[mark.start : mark.end]]
    cut = words.index("of") + 1 if "of" in words else 0
    while cut < len(words) and words[cut] in _ARTICLES:
        cut += 1
    sides = [(" ".join(words[:cut]), mark.start, mark.start + cut), (" ".join(words[cut:]), mark.start + cut, mark.end)]
    found = [Mark(start, end, tuple(lexicon.meanings(text)), None, text) for text, start, end in sides if text]
    owners = {role.item for role in mark.roles if role.kind == "sign"}
    named = len(found) == 2 and any(role.item in owners and role.kind in ("item", "context") for role in found[1].roles)
    told = named and any(role.item in owners and role.kind in ("value", "abnormal", "sign") for role in found[0].roles)
    return found if told else []
