"""Two values in a row, where an order of sides was declared ("right then left", a table's head)."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.model import Side
from dictate.reading.drafts import Cell
from dictate.reading.nodes import Node


def in_columns(sequence: Sequence[tuple[Node, bool]]) -> list[list[tuple[Node, bool]]]:
    """ "Plantar   mute   down": two bare values behind a name, each with the name, where columns were declared."""
    names = [pair for pair in sequence if pair[1]]
    told = [pair for pair in sequence if not pair[1]]
    if not names or len(told) != 2 or any(node.main not in ("value", "number") for node, _ in told):
        return []
    return [[*names, one] for one in told]


def give_order(cells: list[Cell], order: tuple[Side, Side]) -> None:
    """Sides declared once ("right then left") for two values in a row."""
    bare = [
        c for c in cells if c.side is None and c.values and c.site_node is None
    ]  # "absent at ankles, present knees"
    if len(bare) == 2 and len(cells) == 2:
        bare[0].side, bare[1].side = order
