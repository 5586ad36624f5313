"""Spoken corrections: cells said anew take the place of the cells they correct, whose words stay in view."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from dictate.model import Side
from dictate.reading.cells.measures import MISSES
from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Cell, Draft

_OPENING = ("no", "nope", "actually")
_TOLD = frozenset({"value", "number"})
_SAYING = _TOLD | {"side", "site", "severity", "qualifier", "hedge", "direction"}
OPPOSITE = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT}


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
        if target.side is Side.BOTH and cell.values and cell.side in OPPOSITE:
            target.side = OPPOSITE[cell.side]  # "five both sides, correction, left four plus": the right stays five
            target.corrected.append("both sides")
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
        _deny_in_part(cell, target)
        _keep_unit(cell, target)
        cell.nodes = [*target.nodes, *cell.nodes]
        changed[_place(changed, target)] = cell
        if cell.side is Side.BOTH and cell.values and target.side in OPPOSITE:
            changed = _without_other_side(changed, cell, target)
    return changed


def _without_other_side(cells: list[Cell], cell: Cell, target: Cell) -> list[Cell]:
    """ "Right one plus, left two, scratch that, both two plus": said anew for either side."""
    kept: list[Cell] = []
    for one in cells:
        if target.side in OPPOSITE and one.side is OPPOSITE[target.side] and one.site == target.site:
            cell.corrected.append(_words(one))
            cell.nodes = [*one.nodes, *cell.nodes]
        else:
            kept.append(one)
    return kept


def _keep_unit(cell: Cell, target: Cell) -> None:
    """ "Two missteps, make it three": of what is counted."""
    numbers = [[n for n in one.values if n.mark.number is not None] for one in (cell, target)]
    if [len(own) for own in numbers] == [1, 1] and not cell.units and (unit := target.units.get(id(numbers[1][0]))):
        cell.units = {id(numbers[0][0]): unit}
    elif [len(own) for own in numbers] == [1, 1] and len(cell.values) == 1:
        cell.values = [*cell.values, *(n for n in target.values if n.text in MISSES)]


def _deny_in_part(cell: Cell, target: Cell) -> None:
    """ "Deviates to the left, with atrophy, no, without atrophy": of what was said, only the atrophy is taken back."""
    denied = {node.text for node in cell.values} if cell.negated else set()
    rest = [node for node in target.values if node.text not in denied]
    if denied and rest and len(rest) < len(target.values) and cell.negation is not None:
        cell.detail.extend(f"{cell.negation.text} {text}" for text in sorted(denied))
        cell.values, cell.negated, cell.negation = rest, target.negated, target.negation
        cell.modifiers = [*target.modifiers, *cell.modifiers]


def corrects_earlier(before: Sequence[Node]) -> bool:
    """Whether what stands in front of a name begins with a correction of what was said earlier."""
    lead = next((n.main for n in before if n.main not in ("filler", "comma")), "")
    return lead in ("correction", "strike")


def of_last(nodes: Sequence[Node]) -> str:
    """The correction of the last statement in words without a name; empty: none, or it is of a number just said there.

    "Lying 140 over 80. Standing 118, no, 128 over 78": the lying pressure stays.
    """
    _answered(nodes)
    at = next((i for i, n in enumerate(nodes) if n.main in ("correction", "strike", "swap")), None)
    if at is None or any(n.main == "number" and n.mark.number is not None for n in nodes[:at]):
        return ""
    return nodes[at].main


def _answered(nodes: Sequence[Node]) -> None:
    """ "Biceps four on the right. No, three.", "No, on the left it is reduced.": a "no" that opens says it anew.

    What follows names nothing and tells a value, a number or nothing but another side.
    """
    first = nodes[0] if nodes else None
    if first is None or first.text not in _OPENING or len(nodes) < len(("no", ",", "three")) or nodes[1].text != ",":
        return
    told = [n.main for n in nodes[2:] if n.main not in ("filler", "conj", "stop", "comma")]
    if any(n.mark.has("comparison") for n in nodes):
        return  # "No, it's weaker on the left.": the patient says so
    if told and _SAYING.issuperset(told) and (_TOLD.intersection(told) or told == ["side"]):
        first.main = "correction"
        nodes[1].main = "comma"


def narrowed(drafts: Sequence[Draft], items: Collection[str], cells: Sequence[Cell]) -> bool:
    """Whether a value of one side corrects the last finding of both sides, which then stands for the other one."""
    sides = {cell.side for cell in cells if cell.values}
    last = next((draft for draft in reversed(drafts) if draft.item in items), None)
    side = sides.pop() if len(sides) == 1 else None
    if last is None or last.side is not Side.BOTH or side not in OPPOSITE:
        return False
    last.side = OPPOSITE[side]
    last.corrected.append("both sides")
    return True


def keep_place(drafts: Sequence[Draft], gone: Sequence[Draft]) -> None:
    """A value said anew ("142/88 lying. Correction, 132/88.") keeps the position and side of the one it corrects."""
    if len(drafts) != 1 or len(gone) != 1 or drafts[0].item != gone[0].item:
        return
    (new,), (old,) = drafts, gone
    new.position, new.minutes = new.position or old.position, new.minutes or old.minutes
    new.side = new.side or old.side
    new.spans.extend(old.spans)


def moved(gone: Sequence[Draft], cells: Sequence[Cell]) -> list[Draft]:
    """ "Right knee three plus, no, left knee": what was found stays, and only where is said anew."""
    if len(gone) != 1 or len(cells) != 1 or cells[0].side is None or not cells[0].empty:
        return []
    words = [(node.mark.start, node.mark.end) for node in cells[0].nodes]
    return [replace(gone[0], side=cells[0].side, spans=[*gone[0].spans, *words], corrected=["the other side"])]


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
