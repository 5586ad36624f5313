"""Pupils measured in one light and another: the side is said once for both."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.model import Side
from dictate.reading.cells.measures import LIGHTS
from dictate.reading.statements.drafts import Cell


def share_side_of_lights(cells: Sequence[Cell]) -> None:
    """ "Left pupil 2 in the light and 3 in the dark, right 3 in the light and 6 in the dark": in place."""
    for one, two in itertools.pairwise(cells):
        alone = two.side is None and one.side in (Side.LEFT, Side.RIGHT) and not one.closed
        lights = [_light(cell) for cell in (one, two)]
        if alone and all(lights) and lights[0] != lights[1]:
            two.side = one.side


def _light(cell: Cell) -> str:
    """In which light the number of the cell was measured, or empty."""
    said = [node.text.split()[-1] for node in cell.modifiers if node.text.endswith(LIGHTS)]
    counted = any(node.mark.number is not None for node in cell.values)
    return ("light" if said[-1] == "light" else "dark") if counted and said else ""
