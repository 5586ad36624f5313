"""The forms a phrase of the grammar is found in: singular and plural, in capitals or not."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from functools import lru_cache

from dictate.grammar import Item
from dictate.reading.marks import Role
from dictate.reading.nodes import Node
from dictate.reading.tokens import tokenize, transcript_of_text

_VERBS = ("is", "are", "was", "were")
_SIGNS = {"positive": ("+ve", "+", "pos"), "negative": ("-ve", "neg")}
_PLAIN = re.compile(r"[a-z]+(?:[ -][a-z]+)*")


def variants(words: tuple[str, ...]) -> Iterable[tuple[str, ...]]:
    """The phrase, and its last word in the other number ("knee jerk" ↔ "knee jerks")."""
    yield words
    last = words[-1]
    if not last.isalpha() or len(last) < 3:
        return
    if last.endswith(("sis", "ss", "us", "is")):
        return
    if last.endswith("ies") and len(last) > 4:
        yield (*words[:-1], last[:-3] + "y")
    elif last.endswith("s"):
        yield (*words[:-1], last[:-1])
    elif last.endswith(("ch", "sh", "x")):
        yield (*words[:-1], last + "es")
    elif last.endswith("y") and last[-2] not in "aeiou":
        yield (*words[:-1], last[:-1] + "ies")
    else:
        yield (*words[:-1], last + "s")


def words_of(phrase: str) -> tuple[str, ...]:
    """The phrase as it is matched; plain lower-case words need no tokenizer."""
    if _PLAIN.fullmatch(phrase):
        return tuple(phrase.replace("-", " ").split())
    return tuple(token.lower for token in tokenize(transcript_of_text(phrase)))


def forms(words: tuple[str, ...], *, inflect: bool, shout: bool, short: bool) -> Iterable[tuple[str, ...]]:
    """The phrase in both numbers; capitals only ever gain an s ("RAM" → RAMs, never "VAS" → VA, "MAS" → mass)."""
    if shout:
        return (words,) if short or not inflect or words[0].endswith("s") else (words, (words[0] + "s",))
    return variants(words) if inflect else (words,)


def as_sentences(phrases: Iterable[str], plain: Collection[str]) -> list[str]:
    """ "Downgaze is normal" beside "downgaze normal": names that end in a word for how it was, one of `plain`."""
    halves = [phrase.rpartition(" ") for phrase in phrases]
    named = [
        (name, word) for name, _, word in halves if word in plain and name and name.split()[0] not in ("no", "not")
    ]
    return [f"{name} {verb} {word}" for name, word in named if name.split()[-1] not in _VERBS for verb in _VERBS]


def names_kept(item: Item, nodes: Sequence[Node], own: Sequence[Node], told: str) -> list[str]:
    """The scale named, as the grammar writes it; the part of the item that was looked at ("eye closure"), as said.

    own: the nodes that were said of this value. One that names the item itself ("discs pale") is of no name before it.
    told: the value and the details, which need not be said again.
    """
    said = [node.text for node in nodes if node.main == "item"]
    if item.keeps_name:
        return [next((term for term in item.terms if " ".join(words_of(term)) == said[0]), said[0])] if said else []
    here = [node.text for node in own if node.main == "item"]
    said = here or ([] if any(node.mark.has("alone") for node in own) else said)
    parts = _parts(item.parts)
    return [text for text in dict.fromkeys(said) if text in parts and text not in told]


@lru_cache(maxsize=128)
def _parts(phrases: tuple[str, ...]) -> frozenset[str]:
    return frozenset(" ".join(words) for phrase in phrases for words in variants(words_of(phrase)))


def with_signs(phrases: Iterable[str], role: Role) -> list[str]:
    """What an item calls positive or negative, in signs too: "head impulse +ve", "Weber -ve"."""
    said = list(phrases)
    signs = _SIGNS if role.item and role.kind in ("normal", "abnormal", "value") else {}
    return [*said, *(sign for word, written in signs.items() if word in said for sign in written if sign not in said)]
