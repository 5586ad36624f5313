"""Spoken corrections: cells said anew take the place of the cells they correct, whose words stay in view."""

from __future__ import annotations

from dictate.reading.drafts import Cell


def amend(cells: list[Cell], new: list[Cell], link: str) -> list[Cell]:
    """Cells after a spoken correction; what was said before stays as `corrected`."""
    new = [c for c in new if not c.empty or c.side is not None or c.site_node is not None]
    if link == "strike" and not new:
        return []  # the whole statement withdrawn; else the last reading is said anew, as in a correction
    if not cells:
        return new
    if link == "swap" and not any(c.values for c in new):
        if len(cells) >= 2:
            one, two = cells[-2], cells[-1]
            one.values, two.values = two.values, one.values
            one.corrected.append("the other way round")
            two.corrected.append("the other way round")
        return cells
    if not new:
        return cells
    changed = list(cells)
    for cell in new:
        target = _target([c for c in changed if not any(c is n for n in new)], cell)
        if target is None:
            changed.append(cell)
            continue
        words = _words(target)
        cell.corrected = [*target.corrected, words] if words else list(target.corrected)
        cell.side = cell.side or (target.side if cell.values or cell.negated else None)
        cell.site_node = cell.site_node or target.site_node
        if cell.empty:
            cell.values, cell.negated, cell.modifiers, cell.units = (
                target.values,
                target.negated,
                target.modifiers,
                target.units,
            )
        cell.nodes = [*target.nodes, *cell.nodes]
        changed[_place(changed, target)] = cell
    return changed


def _target(cells: list[Cell], new: Cell) -> Cell | None:
    """The cell a correction speaks of: the one of the same side, else the last; None: all are corrected already."""
    if new.side is not None and new.values:
        for cell in reversed(cells):
            if cell.side == new.side:
                return cell
    return cells[-1] if cells else None


def _place(cells: list[Cell], cell: Cell) -> int:
    return next(i for i, c in enumerate(cells) if c is cell)


def _words(cell: Cell) -> str:
    return " ".join(n.text for n in sorted(cell.nodes, key=lambda n: n.mark.start))
