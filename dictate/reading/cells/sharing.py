"""What neighbouring cells share: a value said once for two sides, a site, a bare "both" at the end."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.model import Side
from dictate.reading.cells.comparisons import says_equal
from dictate.reading.cells.contrasts import keep_but
from dictate.reading.cells.limb_parts import MIDLINE, share_side_behind
from dictate.reading.cells.measures import CONDITIONED, LIGHTS, MISSES
from dictate.reading.cells.new_cells import names_where, places_first
from dictate.reading.nodes import LIMBS, Node, limb_of
from dictate.reading.statements.drafts import Cell

_CLUMSY = frozenset({"ataxic", "clumsy", "tremulous", "jerky", "dysmetric"})


def share(cells: list[Cell], *, sited: bool) -> list[Cell]:
    """A side or site said without a value shares the value before it; a bare "both" at the end holds for all."""
    full = _without_lead(_excepted_joined([c for c in cells if c.nodes]))
    _share_ahead(full)
    result: list[Cell] = []
    for place, cell in enumerate(full):
        if result and (_denied_or_kept(cell, result[-1]) or _of_both(cell, result[-1])):
            continue
        cell.negated = cell.negated or (cell.denying and bool(cell.values))  # "present but not brisk"
        if cell.values or cell.negated or cell.affirmed or place == 0:
            if cell.excepted and result:
                cell.side = cell.side or result[-1].side  # "right leg four bar the ankle, which is three"
            result.append(cell)
            continue
        before = result[-1]
        if cell.broken:
            continue  # "full on the left right wall": what was found on the right was not heard
        if cell.excepted:
            _differ(cell, before)
            result.append(cell)
            continue
        if before.closed or (before.contrasted and before.values and not cell.hedged):
            # after a semicolon nothing is shared, nor after a "but"; "none on the left; on the right, mild, at rest"
            result.extend([cell] if before.closed and cell.modifiers else [])
            continue
        if sited and len(result) == 1 and names_where(cell, before):
            before.side, before.site_node, before.nodes = cell.side, cell.site_node, [*before.nodes, *cell.nodes]
        elif (cell.site_node is None or not sited) and cell.side is not None and all(c.side is None for c in result):
            for one in result:
                one.side, one.nodes = cell.side, [*one.nodes, *cell.nodes]
        elif cell.site_node is not None or (
            cell.side is not None
            and cell.side is not before.side
            and (before.values or before.negated or cell.hedged or _graded_there(cell, before))
        ):
            if cell.side is Side.BOTH and cell.site_node is None and all(c.side is not None for c in result):
                before.nodes.extend(cell.nodes)
                for one in result:
                    one.modifiers = [*one.modifiers, *cell.modifiers]  # "20/20 right, 20/60 left, both corrected"
                continue
            _take_over(cell, before)
            result.append(cell)
        else:
            before.nodes.extend(cell.nodes)
            before.detail.extend(cell.detail)
            before.modifiers.extend(cell.modifiers)
    _shared_by_list(result)
    _share_misses(result)
    _share_places(result, sited=sited)
    return result


def _without_lead(cells: list[Cell]) -> list[Cell]:
    """ "Tinel's at the fibular head, negative on the right, positive on the left": the place is of both sides."""
    if len(cells) < 3 or not cells[0].empty or cells[0].side is not None or cells[0].site_node is None:
        return cells
    lead, *rest = cells
    told = all(any(n.mark.has("absent", "present") for n in cell.values) for cell in rest[:2])
    placed = any(cell.site_node not in (None, lead.site_node) for cell in rest)
    if not told or placed or {cell.side for cell in rest[:2]} != {Side.LEFT, Side.RIGHT}:
        return cells
    for cell in rest:
        cell.site_node, cell.nodes = lead.site_node, [*lead.nodes, *cell.nodes]
    return rest


def _excepted_joined(cells: list[Cell]) -> list[Cell]:
    """ "Except the ankles, one plus on both sides": what follows behind the comma was found at what is excepted."""
    for one, two in itertools.pairwise(cells):
        told = one.values or one.negated or one.modifiers
        if one.excepted and not told and one.split and two.values and not two.excepted and two.site_node is None:
            two.excepted, two.side = True, two.side or one.side
            two.site_node, two.nodes, one.nodes = one.site_node, [*one.nodes, *two.nodes], []
    return [cell for cell in cells if cell.nodes]


def _denied_or_kept(cell: Cell, before: Cell) -> bool:
    """What the cell before says is denied of this one, or this one goes on on the same side; or adds a "but" to it."""
    if cell.negated and (_only_denied(cell, before) or _only_denies(cell, before)):
        cell.values, cell.negation = [n for n in before.values if not says_equal(n)], None
    if _same_side_goes_on(cell, before):
        cell.side = before.side
    return keep_but(cell, before)


def _of_both(cell: Cell, before: Cell) -> bool:
    """ "Ataxic on the right and on the left": nothing but the other side behind an "and", so that it is of both."""
    links = [n.mark.end for n in before.links[-1:] if n.text in ("and", "+", "&")]
    told = cell.values or cell.modifiers or cell.detail or cell.excepted or cell.negated or cell.affirmed
    plain = bool(before.values or before.negated) and not told and cell.site_node is None
    both = plain and links == [cell.nodes[0].mark.start] and {cell.side, before.side} == {Side.LEFT, Side.RIGHT}
    if both:
        before.side, before.nodes = Side.BOTH, [*before.nodes, *cell.nodes]
    return both


def _graded_there(cell: Cell, before: Cell) -> bool:
    """ "Coarse on the right, fine on the left", "winging on the right, slight on the left": how it was there."""
    told = cell.modifiers and (before.modifiers or any(n.main == "severity" for n in cell.modifiers))
    return bool(told) and before.side is not None


def _share_ahead(cells: Sequence[Cell]) -> None:
    """ "Right arm 4, left arm and left leg 5": a place that an "and" joins to the next has its value, not the last."""
    listed = False  # an "and" closes the list, commas stand before it
    for place in range(len(cells) - 2, -1, -1):
        one, two = cells[place : place + 2]
        told = one.values or one.negated or one.affirmed or one.modifiers or one.excepted or one.closed
        placed = one.site_node is not None and two.site_node is not None
        placed = placed and ((one.side_first and two.side_first) or places_first(cells[:place], two))
        listed = bool(placed and two.values and not told and (one.links or (listed and one.split)))
        if listed:
            one.values, one.units, one.modifiers = two.values, two.units, two.modifiers


def _share_misses(cells: Sequence[Cell]) -> None:
    """ "Two of five wrong on the right and one of five on the left": a count of errors, and so is the next one.

    All of them, or none, may as well be a count of right answers: it is left as it was said.
    """
    for one, two in itertools.pairwise(cells):
        missed, numbers = [n for n in one.values if n.text in MISSES], [n.mark.number for n in two.values]
        if missed and len(numbers) == 1 and numbers[0] is not None and numbers[0].a not in (0, numbers[0].b):
            two.values = [*two.values, *missed]


def _share_places(cells: Sequence[Cell], *, sited: bool) -> None:
    """A place said with one reading, for the next or the one before that has none; and signs not found there."""
    for place, (one, two) in enumerate(itertools.pairwise(cells)):
        two.spared = [n.text for n in two.values] in (["none"], ["nil"]) and any(map(_is_sign, one.values))
        apart = place and (_in_one_list(cells[place - 1], one) or _limb_by_limb(cells[place - 1], one, two))
        placed = one.site_node is not None and not apart
        placed = placed and (two.closed or not any(_measured_alike(two, one) for one in cells[place + 2 : place + 3]))
        if two.site_node is None and placed and two.values and two.side is not None and not two.broken:
            two.site_node, two.site = one.site_node, two.site or one.site  # "4 right arm and leg, 5 left"
        elif one.site_node is None and sited and not one.closed and _measured_alike(one, two):
            one.site_node = two.site_node  # "four on the right and six on the left ankle"
        if _same_half(one, two):
            two.side = one.side  # "4 in the right arm and 5 in the leg"


def _in_one_list(before: Cell, one: Cell) -> bool:
    """ "Increased in the left arm and left leg, spastic": what follows of the other side is not of the leg alone."""
    counted = any(n.mark.number is not None for n in (*before.values, *one.values))
    joined = bool(before.links) or before.values == one.values
    return joined and not counted and before.site_node is not None and before.side is one.side is not None


def _limb_by_limb(before: Cell, one: Cell, two: Cell) -> bool:
    """ "4 in the right arm, 4+ in the right leg and 5 on the left": the left is not of the leg alone."""
    limbs = {limb_of(cell.site_node.key("site")) for cell in (before, one) if cell.site_node is not None}
    apart = bool(before.values) and before.values != one.values and before.side is one.side
    return limbs == {*LIMBS} and apart and {one.side, two.side} == {Side.LEFT, Side.RIGHT}


def _same_half(one: Cell, two: Cell) -> bool:
    """Arm and leg: the side said in front of the one is that of the other, where only one such limb is meant."""
    limbs = [cell.site_node.text.split()[-1] if cell.site_node is not None else "" for cell in (one, two)]
    sides = [node for cell in (one, two) for node in cell.nodes if node.main == "side"]
    first = len(sides) == 1 and one.site_node is not None and sides[0].mark.end == one.site_node.mark.start
    return {*limbs} == {"arm", "leg"} and first and one.side in (Side.LEFT, Side.RIGHT) and two.side is None


def _same_side_goes_on(cell: Cell, before: Cell) -> bool:
    """ "On the left it is normal in V1 and V2 and reduced in V3": a side said first, with "on", up to a semicolon."""
    side = next((n for n in before.nodes if n.main == "side"), None)
    if side is None or before.side not in (Side.LEFT, Side.RIGHT) or cell.side is not None or cell.site_node is None:
        return False
    first = before.site_node is not None and side.mark.end <= before.site_node.mark.start
    return first and side.text.startswith("on ") and not before.closed and not cell.excepted


def _take_over(cell: Cell, before: Cell) -> None:
    """The value before holds here too; a count, or that there was none, does not where it is told how it was here.

    "Four beats on the left, sustained on the right"; "ptosis R none, L mild"; "normal on the left, a bit on the right".
    """
    graded = any(n.main == "severity" for n in cell.modifiers)
    only = any("only" in n.text.split() for n in cell.modifiers)  # "absent left, right only with reinforcement"
    nothing = before.negated or any(n.mark.role("absent", "") or n.mark.role("normal", "") for n in before.values)
    if (graded or only) and nothing:
        return
    own = bool(cell.modifiers) and all(n.mark.number is not None for n in before.values)
    cell.values, cell.negated, cell.units = [] if own else before.values, before.negated, before.units
    cell.contrary, cell.excepted = before.contrary, cell.excepted or before.excepted  # "except the left V2 and V3"
    named = cell.site_node is not None and cell.site_node.mark.has("alone")  # "mild, and the neck is rigid"
    cell.modifiers = cell.modifiers or ([] if named else before.modifiers)


def _shared_by_list(cells: Sequence[Cell]) -> None:
    """ "Quads and hamstrings wasted on the left": places joined by "and" share the word and the side behind them.

    "Reduced in C6, C7 and C8 on the right": so do those in front of them, of which the same was said.
    """
    listed = False
    for one, two in reversed(list(itertools.pairwise(cells))):
        joined = bool(one.links) or (listed and one.split and one.values == two.values and not one.closed)
        listed = False
        named = not (one.values or one.modifiers or two.modifiers) and any(n.main == "item" for n in cells[0].nodes)
        if one.site_node is None or two.site_node is None or not joined or not (two.values or named):
            continue
        told = one.modifiers and any(n.main == "item" for n in one.nodes)  # "coarse on the right hand and fine ..."
        if not (one.values or one.negated or one.excepted or told):
            one.values, one.units, one.modifiers = two.values, two.units, one.modifiers or two.modifiers
        side = next((n for n in two.nodes if n.main == "side" and n.mark.start > two.site_node.mark.start), None)
        alike = one.values == two.values and one.side is None and one.site_node.key("site") not in MIDLINE
        if alike and side is not None and two.side is not None:
            listed = True
            one.side, one.nodes = two.side, [*one.nodes, side]


def _only_denies(cell: Cell, before: Cell) -> bool:
    """ "Reduced on the left, not on the right", "reduced in the arm, not the leg": the word is denied of the other."""
    if cell.values or cell.negation is None or not cell.negation.text.endswith("not"):
        return False
    plain = [n for n in before.values if n.main in ("value", "item") and n.mark.number is None]
    sites = {one.site_node.key("site") for one in (cell, before) if one.site_node is not None}
    other = len(sites) > 1 or {cell.side, before.side} == {Side.LEFT, Side.RIGHT}
    return other and bool(plain) and plain == before.values


def _only_denied(cell: Cell, before: Cell) -> bool:
    """ "Increased on the left but not on the right": not so here; what is not absent may still be reduced."""
    denied = cell.negated and not (cell.values or cell.modifiers) and (cell.side or cell.site_node) is not None
    told = [n for n in before.values if n.mark.number is not None or n.mark.has("absent")]
    return denied and before.contrasted and bool(before.values) and not (told or before.negated)


def _is_sign(value: Node) -> bool:
    """A word of one item that says what was found ("past pointing"), and no word of all ("reduced")."""
    told = any(role.kind in ("value", "abnormal", "sign") for role in value.mark.roles)
    return value.text in _CLUMSY or (told and all(role.item for role in value.mark.roles))


def _differ(cell: Cell, before: Cell) -> None:
    """ "Normal except the left hand", "no tremor apart from a fine one": here what the cell before says is not so."""
    cell.contrary = True
    cell.site_node = cell.site_node or before.site_node
    if cell.denying and cell.site_node is not None:
        cell.side = cell.side or before.side  # "reduced in the left V1 but not V3"
        share_side_behind(cell, before)
    cell.values = [n for n in before.values if not says_equal(n)]
    cell.negated, cell.negation, cell.units = before.negated, before.negation, before.units


def _measured_alike(one: Cell, two: Cell) -> bool:
    """Two numbers of the two sides, of which only the second has its place.

    Not "two plus on the right throughout, three plus in the left arm", nor "5 on the right, on the left arm 3, leg 4".
    """
    if any(n.main == "throughout" for n in one.nodes) or one.side_first is not two.side_first:
        return False
    numbers = [sum(n.mark.number is not None for n in cell.values) for cell in (one, two)]
    return two.site_node is not None and {one.side, two.side} == {Side.LEFT, Side.RIGHT} and numbers == [1, 1]


def share_conditions(cells: list[Cell], kinds: set[str]) -> None:
    """ "With glasses 20/25 right, 20/40 left": words in front of the first value hold until others are said.

    "Right 5 mm, left 4 mm in the dark": the light of pupils holds for the values before it up to a semicolon too.
    """
    if not kinds & CONDITIONED:
        return
    light = [(at, n) for at, cell in enumerate(cells) for n in _conditions(cell) if n.text.endswith(LIGHTS)]
    for at, node in light:
        for earlier in reversed(cells[:at]):
            if earlier.closed or _conditions(earlier) or not earlier.values:
                break
            earlier.modifiers = [*earlier.modifiers, node]
    lead: list[Node] = []
    for cell in cells:
        own = _conditions(cell)
        if own:
            first = min((n.mark.start for n in cell.values), default=0)
            lead = [n for n in own if n.mark.start < first and not cell.led]
        elif cell.values:
            cell.modifiers = [*cell.modifiers, *lead]


def _conditions(cell: Cell) -> list[Node]:
    return [n for n in cell.modifiers if n.main == "qualifier"]
