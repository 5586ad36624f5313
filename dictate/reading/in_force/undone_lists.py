"""A list of what was left undone: "Not examined: cranial nerves, coordination."."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.marks import Mark, Role

_UNDONE = ("not_examined", "not_assessable")
_NAMES = ("item", "context", "alone", "heading")


def undone_list(marks: Sequence[Mark]) -> Sequence[Mark]:
    """The marks of a sentence with the words in front of such a list behind it, and its commas as "and".

    Unchanged where the sentence tells of anything else.
    """
    if len(marks) < len(("undone", ":", "name")) or not marks[0].has(*_UNDONE) or not marks[1].has("colon"):
        return marks
    listed = [mark for mark in marks[2:] if not mark.has("stop")]
    plain = all(mark.has(*_NAMES, "comma", "conj", "filler", "side", "site") for mark in listed)
    if not plain or any(mark.number is not None or mark.has("sign") for mark in listed):
        return marks
    names = [replace(mark, roles=(Role("conj"),), text="and") if mark.has("comma") else mark for mark in listed]
    return [*names, marks[0], *marks[2 + len(listed) :]]
