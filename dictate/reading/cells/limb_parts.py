"""Parts of the limb last spoken of ("right arm proximally four, distally two"), and the side two places share."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Sequence
from dataclasses import replace

from dictate.model import Side
from dictate.reading.nodes import LIMBS, Node, limb_of
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.drafts import Cell

PARTS = ("proximal", "distal")
MIDLINE = frozenset({"tongue", "neck", "trunk", "head", "jaw", "chin", "lip", "lips"})
_FINGERS = frozenset({"thumb", "index_finger", "middle_finger", "ring_finger", "little_finger"})
_OF = ("of", "the")


def part_limbs(cells: list[Cell], known: Collection[str]) -> None:
    """ "Right arm proximally four, distally two": a part of the limb last spoken of. known: what limbs have."""
    limbs = {_whole(limb_of(n.key("site"))) for c in cells for n in c.nodes if n.mark.role("site")} - set(PARTS)
    limb, side, of_name = limbs.pop() if len(limbs) == 1 else "", None, ""
    _name_behind(cells)
    _part_of_both(cells)
    for cell in list(cells):
        sites = [n.key("site") for n in cell.nodes if n.mark.role("site") is not None] or [cell.site]
        of_name = next((word for n in cell.nodes if n.sign and (word := n.text.split()[0]) in PARTS), of_name)
        part = next((site for site in sites if site in PARTS), of_name)  # "proximal weakness 4 in the legs"
        named = next((_whole(limb_of(site)) for site in sites if site not in PARTS and site), "")
        if part and {limb_of(site) for site in sites} >= {*LIMBS} and {f"{one}_{part}" for one in LIMBS} <= {*known}:
            named = LIMBS[0]  # "proximal weakness of both arms and legs": of each
            other = replace(cell, site=f"{LIMBS[1]}_{part}", site_node=None, nodes=[*cell.nodes])
            cells.insert(next(at for at, one in enumerate(cells) if one is cell) + 1, other)
        if part and not cell.detail and f"{named or limb}_{part}" in known:
            cell.site, cell.site_node = f"{named or limb}_{part}", None
            cell.side = cell.side or (None if named else side)
        limb, side = named or limb, cell.side if named else cell.side or side


def _part_of_both(cells: Sequence[Cell]) -> None:
    """ "Distal weakness in the right arm and leg, 3/5": an "and" joins the limbs, so that the part is of both."""
    for one, two in itertools.pairwise(cells):
        sites = [[n for n in cell.nodes if n.mark.role("site") is not None] for cell in (one, two)]
        parts = [node for node in sites[0] if node.key("site") in PARTS]
        limbs = {limb_of(node.key("site")) for own in sites for node in own} - {*PARTS}
        graded = [any(n.mark.number is not None for n in cell.values) for cell in (one, two)]
        alike = {*map(id, one.values)} == {*map(id, two.values)} or graded == [False, True]
        if one.links and len(parts) == len(sites[1]) == 1 and limbs == {*LIMBS} and alike:
            two.nodes = [*parts, *two.nodes]
            two.side = two.side or one.side
            one.values = one.values if graded[0] else [*one.values, *(n for n in two.values if n not in one.values)]


def _name_behind(cells: Sequence[Cell]) -> None:
    """ "4 proximally and 3 distally in the right leg, 5 proximally ...": the limb behind two parts is of both."""
    place = 0
    while place + 1 < len(cells):
        one, two = cells[place : place + 2]
        keys = [[n.key("site") for n in cell.nodes if n.mark.role("site") is not None] for cell in (one, two)]
        parted = {key for own in keys for key in own[:1]} == set(PARTS)
        if parted and len(keys[0]) == 1 and len(keys[1]) == 2 and not any(n.main == "side" for n in one.nodes):
            named = [n for n in two.nodes if n.main == "side" or n.key("site") == keys[1][1]]
            one.side, one.nodes = two.side, [*one.nodes, *named]
        place += 2 if parted else 1


def _whole(site: str) -> str:
    return site.removesuffix("_proximal").removesuffix("_distal")


def site_of_list(names: Sequence[Node], cell: Cell, lexicon: Lexicon) -> str:
    """ "Normal tone, power and reflexes in the upper limbs": a place inside the last name is of all of them."""
    _, link, place = names[-1].text.partition(" in ") if len(names) > 1 else ("", "", "")
    return lexicon.site_in(place) if link and cell.site_node is None else ""


def carry_side(cells: Sequence[Cell], plurals: Collection[str]) -> None:
    """ "Reflexes three plus on the left in the arm, ankle is two": of the parts of a whole, up to the next side."""
    side = None
    wholes: set[Side | None] = set()
    for one, two in itertools.pairwise(cells):
        wholes |= {one.side} if one.site_node is None else set()
        if {Side.LEFT, Side.RIGHT} <= wholes:
            return  # "3+ on the left, 2+ on the right, ankle absent": of which, nobody said
        said = next((n for n in reversed(one.nodes) if n.main == "side"), None)
        if said is not None:
            side = one.side if said.text.startswith("on the ") else None
        if one.closed or two.excepted or one.side is not side or side is None or two.side is not None:
            continue
        if two.values and two.site_node is not None and two.site_node.text.split()[-1] not in plurals:
            two.side = side


def shared_side(cell: Cell, second: Node, *, listed: bool = False) -> Node | None:
    """The side of "right face and arm", which the second site shares: said before the first, and only "and" between.

    Not where the second has no sides ("right quadriceps and tongue"). listed: a comma, and an "and" closes the list.
    """
    if second.key("site") in MIDLINE:
        return None
    site, link = cell.site_node, cell.links[-1] if cell.links else None
    if site is None:
        return None
    inner = next((n for n in cell.nodes if n.main == "side" and n.mark.start == site.mark.end), None)
    if inner is not None and link is not None and cell.nodes[-1] is not inner and site.text.split()[-1] in _OF:
        return inner  # "the dorsum of the left foot and lateral shin"
    before = [n for n in cell.nodes if n.mark.end <= site.mark.start]
    joined = link is not None and (link.mark.start, link.mark.end) == (site.mark.end, second.mark.start)
    if led := _led_by_side(before, joined=joined):
        return led
    fingers = cell.split and site.key("site") in _FINGERS and second.key("site") in _FINGERS  # "right thumb, index and"
    fingers = fingers or (listed and all(n.mark.start < site.mark.start for n in cell.values))
    if not fingers and (link is None or link.mark.start < site.mark.start or link.mark.start - site.mark.end > 0):
        return None
    if fingers:
        return next((n for n in before if n.main == "side"), None)
    tight = bool(before) and (before[-1].mark.end == site.mark.start or cell.nodes == [before[-1], site])
    return before[-1] if tight and before[-1].main == "side" else None


def _led_by_side(before: Sequence[Node], *, joined: bool) -> Node | None:
    """ "Right-sided loss to pinprick, face, arm and leg", and where two are joined by an "and", "L 4/5 arm + leg"."""
    sides = [n for n in before if n.main == "side"]
    named = next((n for n in reversed(before) if n.main == "item"), None)
    if joined and len(sides) == 1 and not any(n.main in ("site", "comma", "semicolon") for n in before):
        return sides[0]
    if not sides or named is None or not sides[0].text.endswith("sided"):
        return None
    return sides[0] if sides[0].mark.start <= named.mark.start else None


def share_side_behind(cell: Cell, before: Cell) -> None:
    """ "Felt at the knee but not at the ankle on the left": of that side, too, where no side was said."""
    side = next((n for n in reversed(cell.nodes) if n.main == "side"), None)
    behind = side is not None and cell.site_node is not None and side.mark.start > cell.site_node.mark.start
    one = before.site_node is not None and not before.site_node.text.endswith("s")  # "normal at the knees but not ..."
    if behind and one and before.side is None and cell.side in (Side.LEFT, Side.RIGHT):
        before.side = cell.side
