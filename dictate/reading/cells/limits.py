"""How far what was found reaches: "intact for high frequency words only"."""

from __future__ import annotations

from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Cell

_ONLY = "only"


def is_limit(node: Node, cell: Cell) -> bool:
    """ "Follows one step commands only": the word behind says that nothing beyond was found, or asked."""
    last = cell.nodes[-1] if cell.nodes else None
    if node.text != _ONLY or last is None or last.main not in ("item", "value", "qualifier", "direction"):
        return False
    counted = any(value.mark.number is not None for value in cell.values)
    return not counted and last.mark.end == node.mark.start and " " in last.text


def take_limit(cell: Cell, node: Node) -> None:
    """Keep the words that the limit is of, with it."""
    cell.detail.append(f"{cell.nodes[-1].text} {_ONLY}")
    cell.nodes.append(node)
