"""Timed walks: a distance with its time, and further trials over the same distance."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.model import Quantity, Status, Text
from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import LENGTHS, Meaning
from dictate.reading.statements.drafts import Cell, Draft

_IN = " in "
_TIMES = ("second", "seconds", "sec", "secs", "s")


def one_walk(last: Node, node: Node, cell: Cell, following: Sequence[Node]) -> bool:
    """Whether two numbers are the distance and the time of one trial ("ten metres in twelve seconds")."""
    unit = cell.units.get(id(last))
    lengths = (unit is not None and unit.text in LENGTHS, bool(following) and following[0].text in LENGTHS)
    return len(cell.values) == 1 and lengths[0] != lengths[1]


def walk_of(numbers: Sequence[Node], cell: Cell) -> Meaning | None:
    """The trial of a cell with a distance and a time; None when it holds no such pair."""
    if len(numbers) != 2:
        return None
    first, second = numbers
    for one, other in ((first, second), (second, first)):
        length = cell.units.get(id(one))
        far, time = one.mark.number, other.mark.number
        if (rate := cell.units.get(id(other))) is not None and rate.text not in _TIMES:
            continue  # "0.6 metres per second over four metres": a speed, and no time
        if rate is None and any(one.mark.end <= link.mark.start <= other.mark.start for link in cell.links):
            continue  # "walks 5 m with a frame and one"
        if length is not None and length.text in LENGTHS and far is not None and time is not None:
            return Meaning(Text(words=f"{far.first} {LENGTHS[length.text]}{_IN}{time.first} s"), Status.MEASURED)
    return None


def same_distance(drafts: Sequence[Draft]) -> None:
    """ "25 feet in 5.2 seconds, second trial 5.6": a time without distance is of the distance last said."""
    distance = ""
    for draft in drafts:
        if draft.item != "timed_walk":
            continue
        if isinstance(draft.value, Text) and _IN in draft.value.words:
            distance = draft.value.words.partition(_IN)[0]
        elif isinstance(draft.value, Quantity) and draft.unit == "s" and distance and draft.value.upto is None:
            draft.value, draft.unit = Text(words=f"{distance}{_IN}{draft.value} s"), ""
