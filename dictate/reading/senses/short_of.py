"""Words that fall short of what follows them: "nearly full", "anything but normal", "not quite five"."""

from __future__ import annotations

from dataclasses import replace

from dictate.reading.marks import Role
from dictate.reading.nodes import Node

_SHORT = (
    "nearly",
    "almost",
    "near",
    "close to",
    "anything but",
    "far from",
    "below",
    "less than",
    "half of",
    "third of",
    "thirds of",
    "quarter of",
    "barely",
    "only just",
)
_UNDER = ("not quite", "just under", "a bit less than", "a little less than", "slightly less than", "nearly", "almost")
_LONGEST = 3  # nodes of such a phrase


def fall_short(nodes: list[Node]) -> None:
    """Make, in place, what is only nearly normal or nearly gone abnormal as said; a number so told was not found."""
    for place in range(len(nodes) - 1, 0, -1):
        node = nodes[place]
        if node.main not in ("value", "number"):
            continue
        start, words = _phrase(nodes, place, _UNDER if node.main == "number" else _SHORT)
        if not words:
            continue
        if node.main == "number":
            for part in nodes[start : place + 1]:
                part.main = "word"  # "not quite five"
        elif node.mark.role("normal", "") is not None or node.mark.role("absent", "") is not None:
            said = f"{words} {node.text}"
            mark = replace(node.mark, start=nodes[start].mark.start, roles=(Role("abnormal"),), text=said, inner=())
            nodes[start : place + 1] = [Node(mark, "value")]


def _phrase(nodes: list[Node], place: int, phrases: tuple[str, ...]) -> tuple[int, str]:
    """Where the phrase right in front of that place begins, and its words; none: empty."""
    for start in range(max(0, place - _LONGEST), place):
        between = nodes[start:place]
        words = " ".join(node.text for node in between if node.text)
        if words in phrases and not any(node.main in ("item", "number", "side", "site") for node in between):
            return start, words
    return place, ""
