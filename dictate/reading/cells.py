"""A statement's nodes → cells: each value with the side, site and words that go with it; corrections applied."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from dictate.model import Side
from dictate.reading.drafts import Cell
from dictate.reading.kinds import read_number
from dictate.reading.lexicon import Lexicon
from dictate.reading.nodes import Node, limb_of

if TYPE_CHECKING:
    from dictate.reading.statements import Statement

_TRANSITIVE = frozenset({"test", "examine", "check", "assess", "do", "at", "perform", "measure", "for", "see", "judge", "evaluate", "with"})
_SEPARATORS = frozenset({"comma", "semicolon", "conj", "contrast", "stop"})


class CellBuilder:
    """Cuts one statement into cells."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items
        self.scales = lexicon.grammar.scales

    def build(self, statement: Statement, candidates: Sequence[str], order: tuple[Side, Side] | None = None) -> list[Cell]:
        """Cells of a statement in the order said. `order`: sides of two values in a row, when it was declared."""
        sequence = [(n, False) for n in statement.before] + [(n, True) for n in statement.names] + [(n, False) for n in statement.after]
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
        cells = self._cells(parts[0], candidates, ())
        for link, part in zip(links, parts[1:], strict=True):
            cells = self.amend(cells, self._cells(part, candidates, cells), link)
        if order:
            _give_order(cells, order)
        return [c for c in cells if c.nodes]

    def amend(self, cells: list[Cell], new: list[Cell], link: str) -> list[Cell]:
        """Cells after a spoken correction; what was said before stays as `corrected`."""
        new = [c for c in new if not c.empty or c.side is not None or c.site_node is not None]
        if link == "strike":
            return new
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
            target = self._target([c for c in changed if not any(c is n for n in new)], cell)
            if target is None:
                changed.append(cell)
                continue
            words = _words(target)
            cell.corrected = [*target.corrected, words] if words else list(target.corrected)
            cell.side = cell.side or (target.side if cell.values or cell.negated else None)
            cell.site_node = cell.site_node or target.site_node
            if cell.empty:
                cell.values, cell.negated, cell.modifiers, cell.units = target.values, target.negated, target.modifiers, target.units
            cell.nodes = [*target.nodes, *cell.nodes]
            changed[_place(changed, target)] = cell
        return changed

    def _target(self, cells: list[Cell], new: Cell) -> Cell | None:
        """The cell a correction speaks of: the one of the same side, else the last; None: all are corrected already."""
        if new.side is not None and new.values:
            for cell in reversed(cells):
                if cell.side == new.side:
                    return cell
        return cells[-1] if cells else None

    def _cells(self, sequence: list[tuple[Node, bool]], candidates: Sequence[str], earlier: Sequence[Cell]) -> list[Cell]:
        cells = [Cell()]
        skip = -1
        blanket = bool(candidates) and all(self.items[c].blanket for c in candidates)
        foreign = False  # past a word of unknown meaning in a new clause: what follows is of something else
        for place, (node, is_name) in enumerate(sequence):
            if place <= skip:
                continue
            following = [n for n, _ in sequence[place + 1 :]]
            cell = cells[-1]
            foreign = self._foreign(foreign, node, following, cell, blanket=blanket)
            if foreign and not is_name:
                continue
            if is_name:
                cell.nodes.append(node)
                if node.sign or node.mark.number is not None or any(node.value_roles(c) for c in node.candidates):
                    cell.values.append(node)
                if node.mark.has("side") and cell.side is None:
                    cell.side = Side(node.key("side"))
                if any(r.kind == "site" and r.item in node.candidates for r in node.mark.roles):
                    cell.site_node = node
                elif any(self.items[c].sited and self.items[c].kind == "presence" for c in node.candidates):
                    cell.site = self.lexicon.site_in(node.text)
            elif node.main == "comparison" or (node.main in ("value", "severity", "word") and self._compares(node, following, cell)):
                skip = place + self._comparison(cell, node, following)
            elif node.main in _SEPARATORS:
                cell.split = True
                cell.closed = cell.closed or node.main == "semicolon"
                if node.text == "and":
                    cell.links.append(node)
            elif self._object_follows(node, following):
                skip = place + 1 + next(i for i, n in enumerate(following) if n.main == "site")
            else:
                self._take(cells, node, following, candidates)
        return self._inherit(cells)

    def _foreign(self, foreign: bool, node: Node, following: list[Node], cell: Cell, *, blanket: bool) -> bool:
        if blanket and node.main in ("word", "talk") and len(node.text) > 2:
            return True  # a word of unknown meaning: what follows may be of it, never of the whole component
        if foreign:
            return blanket or not (node.main in ("comma", "semicolon") and bool(following) and following[0].main == "side")
        return node.main in ("word", "talk") and len(node.text) > 2 and cell.split and bool(cell.values or cell.negated)

    # --- comparisons --------------------------------------------------------------------------------------------

    def _compares(self, node: Node, following: list[Node], cell: Cell) -> bool:
        return bool(following) and following[0].text == "than"

    def _comparison(self, cell: Cell, node: Node, following: list[Node]) -> int:
        """ "worse on the left", "greater than right": kept as detail; returns how many further nodes it took."""
        taken = 0
        words = [node.text]
        cell.nodes.append(node)
        for after in following[:4]:
            if after.main in ("filler", "side", "site", "direction") or after.text == "than":
                words.append(after.text)
                cell.nodes.append(after)
                taken += 1
                if after.main in ("side", "site", "direction"):
                    break
            else:
                break
        if taken == 0 and not cell.values:
            cell.values.append(node)
        cell.detail.append(" ".join(words))
        return taken

    # --- one node -----------------------------------------------------------------------------------------------

    def _take(self, cells: list[Cell], node: Node, following: list[Node], candidates: Sequence[str]) -> None:
        cell = cells[-1]
        if node.main == "other_side":
            said = next((c.side for c in reversed(cells) if c.side in (Side.LEFT, Side.RIGHT)), None)
            if said is not None and cell.side is None:
                cell.side = Side.LEFT if said is Side.RIGHT else Side.RIGHT
                cell.nodes.append(node)
        elif node.main == "side":
            self._take_side(cells, node, following)
        elif node.main == "site" or (node.main == "dermatome" and "sensory_level" not in candidates):
            self._take_site(cells, node)
        elif node.main in ("value", "number", "dermatome"):
            self._take_value(cells, node, candidates, following)
        elif node.main == "negation" and any(n.main == "item" for n in cell.nodes) and not self._denies(node, following):
            return
        elif node.main == "negation":
            if cell.values:
                cells.append(cell := Cell())
            cell.negated, cell.negation = True, node
            cell.nodes.append(node)
        elif node.main in ("severity", "qualifier", "direction"):
            if cell.values and cell.split and any(n.main in ("value", "number") for n in following[:2]) and not following[0].is_break:
                cells.append(cell := Cell())
            cell.modifiers.append(node)
            cell.nodes.append(node)
        elif node.main == "hedge":
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
            self._take_reason(cell, node, following)

    def _denies(self, node: Node, following: list[Node]) -> bool:
        """A negation after a name denies something that follows it: a word for how it was, a side; or stands alone."""
        for after in following:
            if after.is_break:
                break
            if after.main in ("value", "number", "qualifier", "severity", "side", "site"):
                return True
        return node.text in ("no", "not") and (not following or following[0].is_break)

    def _take_side(self, cells: list[Cell], node: Node, following: list[Node]) -> None:
        cell = cells[-1]
        side = Side(node.key("side"))
        limb = node.mark.role("site")
        if cell.split and (cell.values or cell.site_node is not None) and self._site_next(following):
            cells.append(cell := Cell())
        elif cell.side is not None and cell.side != side:
            joined = not (cell.split and cell.values) and not self._value_next(following) and not cell.values
            if joined and {cell.side, side} == {Side.LEFT, Side.RIGHT} and cell.split:
                cell.side = Side.BOTH
                cell.nodes.append(node)
                return
            cells.append(cell := Cell())
        elif cell.side is None and cell.values and cell.split and self._value_next(following) and not self._value_side_order(cells):
            cells.append(cell := Cell())
        elif cell.side is not None and cell.values and cell.split and self._value_next(following):
            cells.append(cell := Cell())
        cell.side_first = not cell.values
        cell.side = side
        cell.nodes.append(node)
        if limb is not None:
            cell.site_node = node
        cell.split = False

    def _site_next(self, following: list[Node]) -> bool:
        """A body site follows directly ("R arm and R face")."""
        after = next((n for n in following if n.main != "filler"), None)
        return after is not None and after.main == "site"

    def _value_next(self, following: list[Node]) -> bool:
        """A value comes before the next break."""
        for node in following:
            if node.main in ("value", "number", "negation"):
                return True
            if node.is_break or node.main == "side":
                return False
        return False

    def _value_side_order(self, cells: list[Cell]) -> bool:
        return any(c.values and c.side is not None and not c.side_first for c in cells[:-1])

    def _take_site(self, cells: list[Cell], node: Node) -> None:
        cell = cells[-1]
        if cell.site_node is not None and not cell.split:
            cell.nodes.append(node)  # "to mid calf in both legs": the first site says it
            return
        if cell.site_node is not None:
            if self._limbs_together(cell, node):
                cell.site = "arm_and_leg"
                cell.nodes.append(node)
                return
            cells.append(cell := Cell())
        cell.site_node = node
        cell.nodes.append(node)

    def _limbs_together(self, cell: Cell, node: Node) -> bool:
        """ "right arm and leg": one statement about a whole side."""
        if cell.site_node is None or not cell.links or cell.links[-1].mark.start < cell.site_node.mark.start:
            return False
        return {limb_of(cell.site_node.key("site")), limb_of(node.key("site"))} == {"upper_limb", "lower_limb"} and cell.side is not None

    def _starts_anew(self, cell: Cell, node: Node, following: list[Node]) -> bool:
        """ "rest tremor of the right hand, and none on the left": a further reading of what naming alone said."""
        if not cell.values and cell.modifiers and cell.side is not None and any(n.main == "side" for n in following[:3]):
            return True  # "sustained clonus right ankle, three beats left"
        if not cell.split or (cell.side is None and cell.site_node is None):
            return False
        for after in following:
            if after.main in ("side", "site"):
                return True
            if after.is_break or after.main in ("value", "number"):
                return False
        return False

    def _object_follows(self, node: Node, following: list[Node]) -> bool:
        """ "could not test the right shoulder": what was not tested is named after it, and is no item."""
        if not node.mark.has("not_examined", "not_assessable") or node.text.split()[-1] not in _TRANSITIVE:
            return False
        after = next((n for n in following if n.main not in ("filler", "side")), None)
        return after is not None and after.main == "site"

    def _decides_name(self, said: list[Node], node: Node, cell: Cell) -> bool:
        """ "facial droop absent": the word decides the sign just named."""
        if cell.side is not None and cell.split:
            return False
        return all(n.main == "item" and n.mark.number is None for n in said) and node.mark.number is None and node.mark.has(
            "absent", "present", "not_examined", "not_assessable", "unchanged"
        )

    def _take_value(self, cells: list[Cell], node: Node, candidates: Sequence[str], following: list[Node]) -> None:
        cell = cells[-1]
        if node.mark.has("equal") and cell.side is None and not all(self.items[c].blanket for c in candidates):
            owned = [c for c in candidates if node.value_roles(c)]
            if not owned or any(self.items[c].sided == "paired" for c in owned):
                cell.side, cell.split = Side.BOTH, False
        if node.mark.has("equal") and not any(node.value_roles(c) for c in candidates):
            cell.values.append(node)
            cell.nodes.append(node)
            return
        if node.mark.role("side") and cell.side is None:
            cell.side = Side(node.key("side"))
        if self._starts_anew(cell, node, following):
            cells.append(cell := Cell())
        owner = self.owner(candidates, node)
        said = [v for v in cell.values if not v.mark.has("equal") and self.owner(candidates, v) == owner]
        if said and not self._decides_name(said, node, cell) and not self._goes_on(said[-1], node, cell, owner):
            before = cell
            cells.append(cell := Cell())
            cell.site_node = None
            if before.side_first and self.owner(candidates, before.values[-1]) != owner:
                cell.side = before.side
        cell.values.append(node)
        cell.nodes.append(node)
        cell.split = False

    def owner(self, candidates: Sequence[str], node: Node) -> str:
        """The item of the candidates that the value says something of."""
        if not candidates:
            return ""
        if node.mark.number is not None:
            fits = []
            for place, name in enumerate(candidates):
                meaning = read_number(self.items[name], node.mark.number, "", self.scales.get(self.items[name].scale))
                fits.append((meaning.fits if meaning else 0, -place, name))
            best = max(fits)
            return best[2] if best[0] else candidates[0]
        for name in candidates:
            if any(r.item == name and r.kind in ("value", "normal", "abnormal", "sign") for r in node.mark.roles):
                return name
        for name in candidates:
            if any(r.kind == "grade" and r.item == self.items[name].scale for r in node.mark.roles):
                return name
        for kind in ("normality", "presence", "choice", "grade"):
            for name in candidates:
                if self.items[name].kind == kind:
                    return name
        return candidates[0]

    def _goes_on(self, last: Node, node: Node, cell: Cell, owner: str) -> bool:
        """The value adds to the one before it ("slow and irregular") instead of starting another reading."""
        if self.items[owner].kind == "grade" and node.mark.has("grade"):
            return False
        if last.mark.number is not None and node.mark.number is None:
            return cell.side is None or not cell.split
        if last.mark.number is not None and node.mark.number is not None and {"m", "s"} <= set(self.items[owner].units):
            return len(cell.values) == 1  # ten metres in twelve seconds
        if last.mark.number is not None or node.mark.number is not None:
            return last.mark.number is None and not last.mark.has("grade") and self.items[owner].kind not in ("grade", "acuity")
        return self._sense(owner, last) == self._sense(owner, node)

    def _sense(self, owner: str, node: Node) -> str:
        """normal, abnormal, or another status the word gives the item."""
        for role in node.mark.roles:
            if role.item == owner and role.kind == "value":
                return self.items[owner].values[role.key].status
            if role.item == owner and role.kind in ("normal", "abnormal"):
                return role.kind
        for kind in ("not_examined", "not_assessable", "normal", "absent", "present", "abnormal", "unchanged"):
            if node.mark.role(kind, ""):
                return kind
        return "abnormal"

    def _take_reason(self, cell: Cell, node: Node, following: list[Node]) -> None:
        words = [node.text]
        cell.nodes.append(node)
        for place, after in enumerate(following):
            if after.main in ("comma", "semicolon", "stop", "contrast", "correction") or after.text in ("so", "therefore", "hence"):
                break
            if after.main == "side" and not after.text.startswith("on ") and self._value_next(following[place + 1 :]):
                break
            words.append(after.text)
            if after.main != "side":
                after.main = "reason_word"
                cell.nodes.append(after)
        cell.detail.append(" ".join(words))

    # --- what a cell takes from its neighbours ------------------------------------------------------------------

    def _inherit(self, cells: list[Cell]) -> list[Cell]:
        """A side or site said without a value shares the value before it; a bare "both" at the end holds for all."""
        full = [c for c in cells if c.nodes]
        result: list[Cell] = []
        for place, cell in enumerate(full):
            if cell.values or cell.negated or place == 0:
                result.append(cell)
                continue
            before = result[-1]
            if before.closed:
                continue  # after a semicolon nothing is shared
            if cell.site_node is None and cell.side is not None and all(c.side is None for c in result):
                for one in result:
                    one.side, one.nodes = cell.side, [*one.nodes, *cell.nodes]
            elif cell.site_node is not None or (cell.side is not None and cell.side is not before.side and (before.values or before.negated)):
                if cell.side is Side.BOTH and cell.site_node is None and all(c.side is not None for c in result):
                    before.nodes.extend(cell.nodes)
                    continue
                cell.values, cell.negated, cell.units = before.values, before.negated, before.units
                cell.modifiers = cell.modifiers or before.modifiers
                result.append(cell)
            else:
                before.nodes.extend(cell.nodes)
                before.detail.extend(cell.detail)
                before.modifiers.extend(cell.modifiers)
        for one, two in zip(result, result[1:], strict=False):
            if two.site_node is None and one.site_node is not None and two.values and two.side is not None:
                two.site_node = one.site_node
        return result


def _give_order(cells: list[Cell], order: tuple[Side, Side]) -> None:
    """Sides declared once ("right then left") for two values in a row."""
    bare = [c for c in cells if c.side is None and c.values]
    if len(bare) == 2 and len(cells) == 2:
        bare[0].side, bare[1].side = order


def _place(cells: list[Cell], cell: Cell) -> int:
    return next(i for i, c in enumerate(cells) if c is cell)


def _words(cell: Cell) -> str:
    return " ".join(n.text for n in sorted(cell.nodes, key=lambda n: n.mark.start))
