"""A statement's nodes → cells: each value with the side, site and words that go with it; corrections applied."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.model import Side
from dictate.reading.comparisons import both_compared, compares, says_equal, take_comparison
from dictate.reading.corrections import OPPOSITE, amend
from dictate.reading.cuts import (
    behind_exception,
    concluded,
    decides_name,
    foreign,
    is_unknown_next,
    leads_away,
    limbs_together,
    object_follows,
    of_the_rest,
    own_nodes,
    side_next,
    site_next,
    starts_anew,
    take_reason,
    told_behind_side,
    value_next,
    value_side_order,
)
from dictate.reading.drafts import Cell
from dictate.reading.kinds import INABILITY, LEVELS
from dictate.reading.lexicon import Lexicon
from dictate.reading.nodes import Node
from dictate.reading.not_so import denies, denies_another, elsewhere, end_denial, keep_denied, not_so
from dictate.reading.owners import Owners
from dictate.reading.sharing import (
    PARTS,
    give_order,
    in_columns,
    part_limbs,
    share,
    share_conditions,
    shared_side,
    site_of_list,
)
from dictate.reading.weights import Statement, Weigher

_SEPARATORS = frozenset({"comma", "semicolon", "conj", "contrast", "stop"})


class CellBuilder:
    """Cuts one statement into cells."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items
        self.owners = Owners(lexicon)
        self.weights = Weigher(lexicon)

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
        parts[0], grounds = concluded(parts[0])
        cells = cells or self._cells(parts[0], candidates)
        if grounds and len(cells) == 1:
            cells[0].nodes.extend(grounds)
            cells[0].detail.append(" ".join(node.text for node in grounds))
        for link, part in zip(links, parts[1:], strict=True):
            cells = amend(cells, self._cells(part, candidates), link)
        if order:
            give_order(cells, order)
        cells = behind_exception([c for c in cells if c.nodes], statement.names)
        for cell in cells:
            cell.site = cell.site or site_of_list(statement.names, cell, self.lexicon)
        share_conditions(cells, {self.items[c].kind for c in candidates})
        return cells

    def _cells(self, sequence: list[tuple[Node, bool]], candidates: Sequence[str]) -> list[Cell]:
        cells = [Cell()]
        skip, foreign_here = -1, False  # past a word of unknown meaning in a new clause
        blanket = bool(candidates) and all(self.items[c].blanket for c in candidates)
        shown = any(self.items[c].kind == "presence" for c in candidates)  # there when it is named
        shown = shown or any(named.sign for named, is_name in sequence if is_name)
        for place, (node, is_name) in enumerate(sequence):
            if place <= skip:
                continue
            following = [n for n, _ in sequence[place + 1 :]]
            cell = cells[-1]
            aside = of_the_rest(node, following) if shown else denies_another(node, following)
            foreign_here = aside or foreign(foreign_here, node, following, cell, blanket=blanket)
            if foreign_here and not is_name:
                continue
            if is_name:
                self._take_name(cell, node)
            elif (
                (node.main == "side" and both_compared(following))
                or node.main == "comparison"
                or (node.main in ("value", "severity", "word") and compares(node, following, cell))
            ):
                skip = place + take_comparison(cell, node, following)
            elif (kept := elsewhere(cell, node, following)) is not None:
                cell.detail.append(f"{node.text} {kept.text}")
                cell.nodes.extend((node, kept))
                skip = place + 1 + following.index(kept)
            elif (
                node.main in ("manoeuvre", "position") and (cell.values or cell.negated) and self.by_posture(candidates)
            ):
                cells.append(Cell())
            elif (denied := not_so(cell, node, following)) is not None:
                skip = place + 1
                keep_denied(cell, node, denied)
            elif node.main == "except" and (
                cell.values
                or cell.negated
                or (shown and any(n.main == "item" for n in cell.nodes))
                or (cell.site_node and cells[0].values)
            ):
                cells.append(Cell(excepted=True, denying=node.text.endswith("not")))  # "fields full except the left"
            elif cell.nodes and leads_away([n for n, _ in sequence[:place]], node, following):
                cells.append(Cell(broken=True))
                self._take(cells, node, following, candidates)
            elif node.main in _SEPARATORS:
                cell.part(node)
            elif object_follows(node, following):
                skip = place + 1 + next(i for i, n in enumerate(following) if n.main == "site")
            else:
                self._take(cells, node, following, candidates)
        return self._shared(cells, candidates)

    def _shared(self, cells: list[Cell], candidates: Sequence[str]) -> list[Cell]:
        """The cells with the sides, sites and parts of limbs that they share."""
        sited = any(self.items[c].sited or self.items[c].sites or self.items[c].site_items for c in candidates)
        cells = share(cells, sited=sited)
        if cells and cells[0].site and len({cell.site for cell in cells if cell.site}) == 1:
            for cell in (one for one in cells if one.site_node is None):
                cell.site = cells[0].site  # "Ankle clonus: right sustained, left 4 beats"
        part_limbs(cells, {site for c in candidates for site in self.items[c].site_items})
        return cells

    def _take_name(self, cell: Cell, node: Node) -> None:
        if not cell.nodes:
            cell.split = cell.closed = False  # a comma in front of the name parts nothing of it
        cell.nodes.append(node)
        if node.sign or node.mark.number is not None or any(node.value_roles(c) for c in node.candidates):
            cell.values.append(node)
        if node.mark.has("side") and cell.side is None:
            cell.side = Side(node.key("side"))
        if any(r.kind == "site" and r.item in node.candidates for r in node.mark.roles):
            cell.site_node = node
        elif any(self.items[c].sited and self.items[c].kind == "presence" for c in node.candidates):
            cell.site = self.lexicon.site_in(node.text, node.candidates)

    def by_posture(self, candidates: Sequence[str]) -> bool:
        """Symptoms told by posture: a new posture starts a new reading."""
        return any(self.items[c].positions and self.items[c].kind == "presence" for c in candidates)

    def _take(self, cells: list[Cell], node: Node, following: list[Node], candidates: Sequence[str]) -> None:
        cell = cells[-1]
        if node.main == "other_side":
            said = next((c.side for c in reversed(cells) if c.side in (Side.LEFT, Side.RIGHT)), None)
            if said is not None and cell.side is None:
                cell.side = OPPOSITE[said]
                cell.nodes.append(node)
        elif node.main == "side":
            self._take_side(cells, node, following)
        elif node.main == "site" or (node.main == "dermatome" and not LEVELS & set(candidates)):
            self._take_site(cells, node, following)
        elif node.main in ("value", "number", "dermatome"):
            self._take_value(cells, node, candidates, following)
        elif node.main == "negation" and any(n.main == "item" for n in cell.nodes) and not denies(node, following):
            return
        elif node.text == "without" and any(self.items[c].task for c in candidates):
            cell.nodes.append(node)  # "gets out of the chair without her arms": how the task was done
        elif node.main == "negation":
            if cell.values or (cell.side is not None and (cell.split or side_next(following))):
                cells.append(cell := Cell())  # "grasp there on the left, not on the right"
            cell.negated, cell.negation = True, node
            cell.nodes.append(node)
        elif node.main in ("severity", "qualifier", "direction"):
            told = cell.values and any(n.main in ("value", "number") for n in following[:2])
            graded = node.main == "severity" and cell.modifiers and cell.side is not None and side_next(following)
            anew = node.main == "qualifier" and cell.values and cell.side is not None and side_next(following)
            if node.main == "severity" and cell.split and not cell.values and (cell.negated or cell.affirmed):
                cells.append(cell := Cell(affirmed=True))
            elif cell.split and (told or graded or anew) and not following[0].is_break:
                cells.append(cell := Cell())  # "moderate right, mild left"
            cell.modifiers.append(node)
            cell.nodes.append(node)
        elif node.main in ("throughout", "compared"):
            cell.nodes.append(node)  # the words of a blanket say how far it reaches, a side what it is held against
        elif node.main == "hedge":
            if cell.split and cell.side is not None and side_next(following):
                cells.append(cell := Cell())  # "drift on the right, possibly also left"
            cell.hedged = True
            cell.nodes.append(node)
        elif node.main == "unit":
            if cell.values:
                cell.units[id(cell.values[-1])] = node
                cell.nodes.append(node)
        elif node.main in ("minutes", "time_span"):
            if any(self.items[c].positions for c in candidates):
                return  # minutes of a posture are read with the posture
            cell.detail.append(f"after {node.text}" if node.main == "minutes" else node.text)
            cell.nodes.append(node)
        elif node.main == "reason":
            take_reason(cell, node, following)

    def _take_side(self, cells: list[Cell], node: Node, following: list[Node]) -> None:
        cell = cells[-1]
        if node.key("side") == "both" and following and following[0].main == "side":
            return  # "both right": both of what was named
        side = Side(node.key("side"))
        unknown = is_unknown_next(following)
        if cell.split and (cell.values or cell.site_node is not None) and site_next(following):
            cells.append(cell := Cell())
        elif cell.side is not None and cell.side != side:
            told = cell.values or told_behind_side(cell)
            if not told and not value_next(following) and cell.split and {cell.side, side} == {Side.LEFT, Side.RIGHT}:
                cell.side = Side.BOTH
                cell.nodes.append(node)
                return
            cells.append(cell := Cell(broken=unknown))
        elif cell.values and cell.split and value_next(following) and (cell.side or not value_side_order(cells)):
            cells.append(cell := Cell())
        cell.broken = cell.broken or (cell.excepted and unknown)  # "apart from a left sixth"
        cell.side_first = not cell.values
        cell.side = side
        cell.nodes.append(node)
        if node.mark.role("site"):
            cell.site_node = node
        cell.split = False

    def _take_site(self, cells: list[Cell], node: Node, following: list[Node]) -> None:
        cell = cells[-1]
        opens = cell.site_node is None and (cell.closed or (cell.split and value_next(following)))
        parted = node.key("site") in PARTS and any(n.key("site") in PARTS for n in cell.nodes)
        if cell.values and (opens or (parted and value_next(following[:1]))):
            cells.append(cell := Cell())  # "R 2/8, L 3/8; knees 6/8", "proximal 4 distal 3": the next reading
        if cell.site_node is not None and not cell.split:
            cell.nodes.append(node)  # "to mid calf in both legs": the first site says it
            return
        if cell.site_node is not None:
            if limbs_together(cell, node):
                cell.site = "arm_and_leg"
                cell.nodes.append(node)
                return
            shared = shared_side(cell)
            cells.append(cell := Cell() if shared is None else Cell(side=Side(shared.key("side")), nodes=[shared]))
        cell.site_node = node
        cell.nodes.append(node)

    def _take_value(self, cells: list[Cell], node: Node, candidates: Sequence[str], following: list[Node]) -> None:
        cell = cells[-1]
        clause = itertools.takewhile(lambda n: n.main not in ("contrast", "semicolon"), following)
        if node.mark.has("ability") and any(
            n.main in ("value", "number") and n.text not in INABILITY and not n.mark.has("ability") for n in clause
        ):
            cell.nodes.append(node)  # "able to walk on her heels with difficulty"
            return
        if says_equal(node) and cell.side is None and not all(self.items[c].blanket for c in candidates):
            owned = [c for c in candidates if node.value_roles(c)]
            if not owned or any(self.items[c].sided == "paired" for c in owned):
                cell.side, cell.split = Side.BOTH, False
        if node.mark.has("equal") and not any(node.value_roles(c) for c in candidates):
            cell.values.append(node)
            cell.nodes.append(node)
            return
        end_denial(cell, node, following)
        if starts_anew(cell, node, following):
            cells.append(cell := Cell())
        owner = self.owners.owner(candidates, node)
        said = [v for v in cell.values if not v.mark.has("equal") and self.owners.owner(candidates, v) == owner]
        if (
            said
            and not decides_name(said, node, cell)
            and not self.owners.goes_on(said[-1], node, cell, owner, following)
        ):
            before = cell
            cells.append(cell := Cell())
            cell.site_node = None
            if before.side_first and self.owners.owner(candidates, before.values[-1]) != owner:
                cell.side = before.side
        if node.mark.role("side") and cell.side is None:
            cell.side = Side(node.key("side"))
        cell.values.append(node)
        cell.nodes.append(node)
        cell.split = False
