"""A statement's nodes → cells: each value with the side, site and words that go with it; corrections applied."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.model import Side
from dictate.reading.cells.comparisons import both_compared, compares, take_comparison
from dictate.reading.cells.corrections import amend
from dictate.reading.cells.lights import share_side_of_lights
from dictate.reading.cells.limb_parts import carry_side, part_limbs, site_of_list
from dictate.reading.cells.limits import is_limit, take_limit
from dictate.reading.cells.measures import with_help_aside
from dictate.reading.cells.new_cells import later_on
from dictate.reading.cells.not_so import denies_another, elsewhere, keep_denied, not_so
from dictate.reading.cells.ratings import share_rated
from dictate.reading.cells.sharing import (
    share,
    share_conditions,
)
from dictate.reading.cells.taking import Taker
from dictate.reading.in_force.columns import give_order, in_columns
from dictate.reading.nodes import LIMBS, Node, limb_of
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.cuts import (
    behind_exception,
    concluded,
    counted_before_rest,
    foreign,
    leads_away,
    object_follows,
    of_the_rest,
    own_nodes,
)
from dictate.reading.statements.drafts import Cell
from dictate.reading.statements.tasks import done
from dictate.reading.statements.weights import Statement, Weigher

_SEPARATORS = frozenset({"comma", "semicolon", "conj", "contrast", "stop"})


class CellBuilder:
    """Cuts one statement into cells."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items
        self.weights = Weigher(lexicon)
        self.taker = Taker(lexicon)
        self.sites_of_wholes: dict[str, set[str]] = {}  # scale → the parts by which all that it grades is told
        for item in (one for one in self.items.values() if one.blanket and one.scale):
            self.sites_of_wholes.setdefault(item.scale, set()).update(item.site_items)

    def build(
        self, statement: Statement, candidates: Sequence[str], order: tuple[Side, Side] | None = None
    ) -> list[Cell]:
        """Cells of a statement in the order said. `order`: sides of two values in a row, when it was declared."""
        sequence = (
            [(n, False) for n in statement.before]
            + [(n, True) for n in statement.names]
            + [(n, False) for n in own_nodes(statement.after, lambda node: self.weights.accepts(candidates, node))]
        )
        parts: list[list[tuple[Node, bool]]] = [[]]
        links: list[str] = []
        for node, is_name in sequence:
            if node.main in ("correction", "strike", "swap"):
                if node.main == "swap" and parts[-1] == [] and links:
                    links[-1] = "swap"
                    continue
                links.append(node.main)
                parts.append([])
            else:
                parts[-1].append((node, is_name))
        paired = any(self.items[c].sided == "paired" for c in candidates)
        columns = in_columns(parts[0]) if order and paired and not links else []
        cells = [cell for column in columns for cell in self._cells(column, candidates)]
        for cell, side in zip(cells, order or (), strict=False) if len(cells) == len(columns) else ():
            cell.side = cell.side or side
        parts[0], grounds = concluded(parts[0])
        cells = cells or self._cells(parts[0], candidates)
        if grounds and len(cells) == 1:
            cells[0].nodes.extend(grounds)
            cells[0].detail.append(" ".join(node.text for node in grounds))
        for link, part in zip(links, parts[1:], strict=True):
            cells = amend(cells, self._cells(part, candidates), link)
        if order and paired:  # "Power R/L: ... Gait stiff, uses a stick": a gait has no columns
            give_order(cells, order)
        cells = behind_exception([c for c in cells if c.nodes], statement.names)
        for cell in cells:
            cell.site = cell.site or site_of_list(statement.names, cell, self.lexicon)
        share_side_of_lights(cells)
        share_conditions(cells, {self.items[c].kind for c in candidates})
        return cells

    def _cells(self, sequence: list[tuple[Node, bool]], candidates: Sequence[str]) -> list[Cell]:
        cells, skip = [Cell()], -1
        foreign_here = named = False  # past a word of unknown meaning in a new clause
        blanket = bool(candidates) and all(self.items[c].blanket for c in candidates)
        sign = any(self.items[c].kind == "presence" for c in candidates)  # there when it is named
        shown = sign or any(named.sign or done(named) for named, is_name in sequence if is_name)
        for place, (node, is_name) in enumerate(sequence):
            if place <= skip:
                continue
            following = [n for n, _ in sequence[place + 1 :]]
            cell = cells[-1]
            aside = _of_rest(cell, node, following, shown=shown, blanket=blanket)
            named = named or (place > 0 and sequence[place - 1][1])
            foreign_here = aside or foreign(foreign_here, node, following, cell, blanket=blanket, named=named)
            if foreign_here and not is_name:
                continue
            if is_name:
                self.taker.take_name(cell, node)
            elif (
                (node.main == "side" and both_compared(following, told=_of_no_one_side(cell, shown=shown)))
                or node.main == "comparison"
                or (node.main in ("value", "severity", "word") and compares(node, following, cell))
            ):
                skip = place + take_comparison(cell, node, following)
            elif (kept := elsewhere(cell, node, following, sign=sign)) is not None:
                cell.detail.append(f"{node.text} {kept.text}")
                cell.nodes.extend((node, kept))
                skip = place + 1 + following.index(kept)
            elif node.main in ("manoeuvre", "position") and cell.told and self.by_posture(candidates):
                cells.append(Cell())
            elif self.by_posture(candidates) and later_on([n for n, _ in sequence[:place]], node, following):
                cells.append(Cell())
                self.taker.take(cells, node, following, candidates)
            elif (denied := not_so(cell, node, following)) is not None:
                skip = place + 1
                keep_denied(cell, node, denied)
            elif node.main == "except" and _tells(cells, shown=shown):
                cells.append(Cell(excepted=True, denying=node.text.endswith("not")))  # "fields full except the left"
            elif cell.nodes and leads_away([n for n, _ in sequence[:place]], node, following):
                cells.append(Cell(broken=True))
                self.taker.take(cells, node, following, candidates)
            elif node.main in _SEPARATORS or (node.main == "colon" and any(n.mark.number for n in cell.values)):
                cell.part(node)
            elif is_limit(node, cell):
                take_limit(cell, node)
            elif object_follows(node, following):
                skip = place + 1 + next(i for i, n in enumerate(following) if n.main == "site")
            else:
                self.taker.take(cells, node, following, candidates)
        return [cell for cell in self._shared(cells, candidates) if not self._of_limbs(cell, candidates)]

    def _of_limbs(self, cell: Cell, candidates: Sequence[str]) -> bool:
        """ "Neck stiff, arms normal": what is normal in a limb is none of a sign that has no place."""
        items = [self.items[name] for name in candidates]
        free = all(item.kind == "presence" and not (item.sited or item.sites or item.site_items) for item in items)
        limb = cell.site_node is not None and limb_of(cell.site_node.key("site")) in LIMBS
        return free and limb and bool(cell.values) and all(node.mark.role("normal", "") for node in cell.values)

    def _shared(self, cells: list[Cell], candidates: Sequence[str]) -> list[Cell]:
        """The cells with the sides, sites and parts of limbs that they share."""
        sited = any(self.items[c].sited or self.items[c].sites or self.items[c].site_items for c in candidates)
        cells = share(cells, sited=sited)
        if any(self.items[c].blanket and self.items[c].kind == "grade" for c in candidates):
            carry_side(cells, self.taker.plurals)
        sign = any(self.items[c].kind == "presence" for c in candidates)
        share_rated(cells, sign=sign, plurals=self.taker.plurals)
        if cells and cells[0].site and len({cell.site for cell in cells if cell.site}) == 1:
            for cell in (one for one in cells if one.site_node is None):
                cell.site = cells[0].site  # "Ankle clonus: right sustained, left 4 beats"
        if any(self.items[c].kind == "score" for c in candidates):
            cells = with_help_aside(cells)
        limbs = {self.items[c].scale for c in candidates if self.items[c].limb and self.items[c].blanket}
        kin = {site for scale in limbs for site in self.sites_of_wholes.get(scale, ())}  # "the legs" of "arm power"
        part_limbs(cells, kin | {site for c in candidates for site in self.items[c].site_items})
        return cells

    def by_posture(self, candidates: Sequence[str]) -> bool:
        """Symptoms told by posture: a new posture starts a new reading."""
        return any(self.items[c].positions and self.items[c].kind == "presence" for c in candidates)


def _of_rest(cell: Cell, node: Node, following: list[Node], *, shown: bool, blanket: bool) -> bool:
    """Whether the word begins what is said of something else, or of the rest."""
    rest = node.main == "rest"
    if shown or (rest and counted_before_rest(cell, node, following)):
        aside = of_the_rest(node, following)
    else:
        aside = denies_another(node, following)
    return aside or (rest and node.text == "everything else" and not blanket)


def _of_no_one_side(cell: Cell, *, shown: bool) -> bool:
    """Whether what was found was found of both sides, or of no side that was said."""
    told = bool(cell.values) or (shown and any(n.main == "item" for n in cell.nodes))
    return told and cell.split and cell.side in (None, Side.BOTH)


def _tells(cells: Sequence[Cell], *, shown: bool) -> bool:
    """Whether something was found that an exception may be of; shown: naming the item says that it was there."""
    cell = cells[-1]
    named = shown and any(n.main == "item" for n in cell.nodes)
    return bool(cell.values) or cell.negated or named or (cell.site_node is not None and bool(cells[0].values))
