"""The findings of a note as sentences that can be read again."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.model import Examination
from dictate.notes import write_note

NERVES = re.compile(r"^(?:[IVX]+/?)+ (?=[A-Z])")
AS_SAID = re.compile(r'[,;] as said: "[^"]*"')
LEFT_OUT = ("Computed:", words.NOTHING, "Postural series:")


def sentences(exam: Examination, grammar: Grammar) -> str:
    """The seven components of the note.

    Left out, because they repeat or frame what was said and are no statements of their own: the head, the caution,
    queries, computed figures, "nothing dictated", the title of a postural series, the Roman numeral before a cranial
    nerve's item, and the quotation behind a blanket.
    """
    return "\n".join(f"{line}." for line in _lines(write_note(exam, grammar)))


def _lines(note: str) -> Iterator[str]:
    """One whole line an item; wrapped lines are joined."""
    headings = set(words.COMPONENTS.values())
    current: list[str] = []
    inside = False
    for line in [*note.splitlines(), ""]:
        deep = len(line) - len(line.lstrip())
        if current and deep >= len(current[0]) - len(current[0].lstrip()) + 4:
            current.append(line)
            continue
        if current and not current[0].strip().startswith(LEFT_OUT):
            yield AS_SAID.sub("", NERVES.sub("", " ".join(part.strip() for part in current)))
        current = []
        if not deep:
            inside = line in headings if line else inside and not line
            if line in headings:
                yield line.capitalize()
        elif inside:
            current = [line]
