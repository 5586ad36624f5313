"""One node of a statement into its cell, or into a new one: a side, a place, a value, a word for how much."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.model import Side
from dictate.reading.cells.comparisons import says_equal
from dictate.reading.cells.corrections import OPPOSITE
from dictate.reading.cells.limb_parts import PARTS, shared_side
from dictate.reading.cells.new_cells import (
    another_kind,
    closes_list,
    none_of_another_kind,
    none_of_next,
    tells_abnormal,
    value_first,
)
from dictate.reading.cells.not_so import denies, end_denial, found_there, none_there
from dictate.reading.cells.owners import Owners
from dictate.reading.cells.reaching import WHOLE_LIMBS
from dictate.reading.cells.reasons import give_reason
from dictate.reading.nodes import Node, is_thought, limb_of
from dictate.reading.phrases.kinds import LEVELS, says_unable
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.cuts import (
    decides_name,
    is_unknown_next,
    limbs_together,
    place_follows,
    side_next,
    site_next,
    starts_anew,
    told_behind_side,
    value_next,
    value_side_order,
)
from dictate.reading.statements.drafts import Cell


class Taker:
    """Puts nodes into cells."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items
        self.owners = Owners(lexicon)
        self.plurals = frozenset(lexicon.grammar.common.plurals)

    def take_name(self, cell: Cell, node: Node) -> None:
        """Take a name, with what it says itself."""
        if not cell.nodes:
            cell.split = cell.closed = False  # a comma in front of the name parts nothing of it
        cell.nodes.append(node)
        if node.sign or node.mark.number is not None or any(node.value_roles(c) for c in node.candidates):
            cell.values.append(node)
        if node.mark.has("side") and cell.side is None:
            cell.side = Side(node.key("side"))
        if cell.side is None and (held := self._held_side(node)) in OPPOSITE:
            cell.side = held  # "a right sided Babinski sign, absent on the left"
        if any(r.kind == "site" and r.item in node.candidates for r in node.mark.roles):
            cell.site_node = node
        elif any(self.items[c].sited and self.items[c].kind == "presence" for c in node.candidates):
            cell.site = self.lexicon.site_in(node.text, node.candidates)

    def take(self, cells: list[Cell], node: Node, following: list[Node], candidates: Sequence[str]) -> None:
        """Take any other word, or begin the next cell with it."""
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
        elif self._is_of_reading(node, following, candidates):
            cell.nodes.append(node)  # "vision reduced to 6/60"
        elif node.main in ("value", "number", "dermatome"):
            self._take_value(cells, node, candidates, following)
        elif node.main == "negation" and any(n.main == "item" for n in cell.nodes) and not denies(node, following):
            return
        elif node.text == "without" and any(self.items[c].task for c in candidates):
            cell.nodes.append(node)  # "gets out of the chair without her arms": how the task was done
        elif node.main == "negation":
            kind = cell.split and bool(cell.modifiers) and any(n.main == "item" for n in cell.nodes)
            if cell.values or kind or (cell.side is not None and (cell.split or side_next(following))):
                cells.append(cell := Cell())  # "grasp there on the left, not on the right"
            cell.negated, cell.negation = True, node
            cell.hedged = cell.hedged or is_thought(node)
            cell.nodes.append(node)
        elif node.main in ("severity", "qualifier", "direction"):
            if node.main == "qualifier" and self._leads_number(cell, node, following, candidates):
                cells.append(
                    Cell(side=cell.side, led=True)
                )  # "right 20/40 ph 20/25": the second reading is the pinhole's
            self._take_modifier(cells, node, following, candidates)
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
            self._take_time(cells, node, following, candidates)
        elif node.main == "reason":
            give_reason(cell, node, following)

    def _take_time(self, cells: list[Cell], node: Node, following: list[Node], candidates: Sequence[str]) -> None:
        if any(self.items[c].positions for c in candidates):
            return  # minutes of a posture are read with the posture
        if cells[-1].values and cells[-1].split and value_next(following):
            cells.append(Cell())  # "registered three of three, and after five minutes one"
        cells[-1].detail.append(f"after {node.text}" if node.main == "minutes" else node.text)
        cells[-1].nodes.append(node)

    def _is_of_reading(self, node: Node, following: list[Node], candidates: Sequence[str]) -> bool:
        """A word for how an acuity was, in front of "to" and the acuity itself."""
        acuity = any(self.items[name].kind == "acuity" for name in candidates)
        if not acuity or node.main != "value" or len(following) < 2 or following[0].text != "to":
            return False
        return node.mark.number is None and following[1].main in ("number", "value")

    def _leads_number(self, cell: Cell, node: Node, following: list[Node], candidates: Sequence[str]) -> bool:
        """A condition between two acuities of an eye, with nothing behind it but the second."""
        last = next((n for n in reversed(cell.nodes) if n.main != "side"), None)
        read = bool(cell.values) and cell.values[-1].mark.number is not None and last is cell.values[-1]
        kinds = {self.items[name].kind for name in candidates if node.value_roles(name)}
        acuity = "acuity" in kinds or ("score" in kinds and cell.split)  # "recall one of three, with cues two"
        return read and acuity and bool(following) and following[0].main == "number"

    def _take_modifier(self, cells: list[Cell], node: Node, following: list[Node], candidates: Sequence[str]) -> None:
        cell = cells[-1]
        if (cell.negated and cell.contrasted) or found_there(cell, node, following):
            cells.append(cell := Cell(affirmed=True))  # "no tremor at rest, only on posture"
        if none_there(cell, node, following, sign=any(self.items[c].kind == "presence" for c in candidates)):
            cells.append(cell := Cell())
        told = cell.values and cell.side is not None and any(n.main in ("value", "number") for n in following[:2])
        graded = node.main == "severity" and cell.side is not None and side_next(following)
        told_so = bool(cell.values or any(n.main == "qualifier" for n in cell.modifiers))
        anew = node.main == "qualifier" and told_so and cell.side is not None and side_next(following)
        if another_kind(cell, node, following):
            cells.append(cell := Cell(affirmed=not cell.values))  # "vertical saccades slow, horizontal normal"
        if node.main == "severity" and cell.split and not cell.values and (cell.negated or cell.affirmed):
            cells.append(cell := Cell(affirmed=True))
        elif cell.split and (told or graded or anew) and not following[0].is_break:
            cells.append(cell := Cell())  # "moderate right, mild left"
        elif cell.split and cell.site_node is not None and place_follows(following, sides=True):
            none = cell.negated or any(n.mark.role("absent", "") for n in cell.values)
            cells.append(cell := Cell(affirmed=none))  # "none in the arms, frequent in both thighs"
        cell.modifiers.append(node)
        cell.nodes.append(node)

    def _take_side(self, cells: list[Cell], node: Node, following: list[Node]) -> None:
        cell = cells[-1]
        if node.key("side") == "both" and following and following[0].main == "side":
            return  # "both right": both of what was named
        side = Side(node.key("side"))
        unknown = is_unknown_next(following)
        placed = node.mark.has("site") or site_next(following)
        segment = any(n.main == "dermatome" for n in following[:1])
        again = cell.side is side and cell.site_node is not None and (placed or segment)  # "right arm right leg"
        full = cell.values and cell.site_node is not None and placed and value_next(following)
        further = cell.values and not node.mark.has("site")  # and not "Tinel positive, left fibular head"
        further = further and (cell.side is not None or any(n.main in ("value", "number") for n in following[:3]))
        if again or full or (cell.split and placed and (cell.site_node is not None or further)):
            cells.append(cell := Cell())
        elif cell.side is not None and cell.side != side:
            told = cell.values or told_behind_side(cell)
            both = (
                {cell.side, side} == {Side.LEFT, Side.RIGHT}
                and not cell.closed
                and not (segment and cell.site_node is not None)
            )
            if not told and not value_next(following) and cell.split and both:
                cell.side = Side.BOTH
                cell.nodes.append(node)
                return
            cells.append(cell := Cell(broken=unknown))
        elif (
            cell.values
            and cell.split
            and value_next(following)
            and (cell.side or cell.closed or not value_side_order(cells))
        ):
            cells.append(cell := Cell(broken=unknown))
        cell.broken = cell.broken or (cell.excepted and unknown)  # "apart from a left sixth"
        cell.side_first = not cell.values
        cell.side = side
        cell.nodes.append(node)
        if node.mark.role("site"):
            cell.site_node = node
        cell.split = False

    def _take_site(self, cells: list[Cell], node: Node, following: list[Node]) -> None:
        cell = cells[-1]
        parts = [n.main for n in following[:2]] == ["comma", "number"]  # "5 on the left, and at the ankles, 7 and 8"
        opens = cell.site_node is None and (cell.closed or (cell.split and (parts or value_next(following))))
        parted = node.key("site") in PARTS and any(n.key("site") in PARTS for n in cell.nodes)
        if cell.values and (opens or (parted and value_next(following[:1]))):
            cells.append(cell := Cell())  # "R 2/8, L 3/8; knees 6/8", "proximal 4 distal 3": the next reading
        if cell.site_node is not None and not cell.split:
            cell.site_node = node if _says_more(cell.site_node, node) else cell.site_node
            cell.nodes.append(node)  # "to mid calf in both legs": the first site says it
            return
        if cell.site_node is not None:
            told = bool(cell.values) and value_next(following[:1])  # "arm 3 and leg 4"
            third = (
                cell.nodes[0].main == "side" and cell.nodes[0].mark.end < cell.site_node.mark.start
            )  # "face, arm and leg"
            if limbs_together(cell, node) and not told and not third:
                cell.site = "arm_and_leg"
                cell.nodes.append(node)
                return
            one_side = cell.side in (Side.LEFT, Side.RIGHT)
            plural = one_side and not self.plurals.isdisjoint(node.text.split())  # "right deltoid and calves"
            listed = cell.split and [n.main for n in following[:2]] == ["conj", "site"]  # "right face, arm and leg"
            shared = None if plural else shared_side(cell, node, listed=listed)
            cells.append(cell := Cell() if shared is None else Cell(side=Side(shared.key("side")), nodes=[shared]))
        cell.site_node = node
        cell.nodes.append(node)

    def _is_of_both(self, node: Node, cell: Cell, candidates: Sequence[str]) -> bool:
        """ "Equal" of what is paired says both sides; of pressures in two positions it does not."""
        if not says_equal(node) or cell.side is not None or all(self.items[c].blanket for c in candidates):
            return False
        owned = [c for c in candidates if node.value_roles(c)]
        taken = all(self.items[c].positions for c in candidates)  # "lying and standing pressures equal"
        return (not owned and not taken) or any(self.items[c].sided == "paired" for c in owned)

    def _held_side(self, node: Node) -> Side | None:
        """The one side that a named value in the name says by itself."""
        roles = (role for role in node.mark.roles if role.kind == "value" and role.item in node.candidates)
        said = (self.items[role.item].values[role.key].side for role in roles)
        return next((Side(side) for side in said if side), None)

    def _take_value(self, cells: list[Cell], node: Node, candidates: Sequence[str], following: list[Node]) -> None:
        cell = cells[-1]
        clause = itertools.takewhile(lambda n: n.main not in ("contrast", "semicolon"), following)
        if node.mark.has("ability") and any(
            n.main in ("value", "number") and not says_unable(n.text) and not n.mark.has("ability") for n in clause
        ):
            cell.nodes.append(node)  # "able to walk on her heels with difficulty"
            return
        if self._is_of_both(node, cell, candidates):
            cell.side, cell.split = Side.BOTH, False
        if node.mark.has("equal") and not any(node.value_roles(c) for c in candidates):
            cell.values.append(node)
            cell.nodes.append(node)
            return
        if cell.negated and cell.contrasted and cell.values and not node.mark.has("normal", "absent"):
            cells.append(cell := Cell())  # "no focal weakness but give way on the right"
        end_denial(cell, node, following)
        if closes_list(cells, node, following):
            cells.append(cell := Cell())  # "dull in the thumb and index, sharp elsewhere"
        if cell.closed and cell.negated and cell.values and tells_abnormal(node, candidates):
            cells.append(cell := Cell())  # "no focal weakness; give-way on the right"
        if node.text.endswith(" of") and cell.split and any(n.mark.number is not None for n in cell.values):
            cells.append(cell := Cell())  # "right 5 mm, left 3 mm, so an anisocoria of 2 mm"
        placed = any(r.kind == "site" and r.item in candidates for r in node.mark.roles)
        elsewhere = placed and cell.split and cell.site_node is not None and bool(cell.values or cell.modifiers)
        other = none_of_another_kind(cell, node, following) or none_of_next(cell, node, following)
        if elsewhere or other or starts_anew(cell, node, following) or value_first(cells, following):
            cells.append(cell := Cell())  # "cogwheeling at both wrists; axial rigidity"
        owner = self.owners.owner(candidates, node)
        if cell.side is Side.BOTH and cell.split and node.mark.role("alone", owner) and cell.values:
            cells.append(cell := Cell())  # "pupils: both react, anisocoria in the dark"
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
        if cell.site_node is None and placed:
            cell.site_node = node  # "tone: right arm cogwheel rigidity, left arm normal"
        cell.values.append(node)
        cell.nodes.append(node)
        cell.split = False


def _says_more(place: Node, node: Node) -> bool:
    """ "In the legs below the knees", "over the chest at T4": where it ends, or the segment, and not the region."""
    if node.main == "dermatome":
        return place.main != "dermatome"
    limb = limb_of(place.key("site")) in WHOLE_LIMBS and not place.mark.has("side")
    return limb and node.mark.has("reached")
