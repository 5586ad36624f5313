"""Limbs inside names ("leg tone"), and parts of the limb last spoken of ("right arm proximally four, distally two")."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Sequence
from dataclasses import replace

from dictate.reading.drafts import Cell
from dictate.reading.lexicon import Lexicon
from dictate.reading.marks import Mark
from dictate.reading.nodes import LIMBS, Node, limb_of

PARTS = ("proximal", "distal")


def limbs_freed(sentence: Sequence[Mark], lexicon: Lexicon) -> list[Mark]:
    """ "Left leg tone increased, power 4": the limb by itself where it opens a name that may be said of any place."""
    result = list(sentence[:1])
    for side, mark in itertools.pairwise(sentence):
        if not (side.has("side") and mark.has("item") and _opens_with_limb(mark, lexicon)):
            result.append(mark)
            continue
        result += [mark.part(0, 1, lexicon.meanings), mark.part(1, mark.end - mark.start, lexicon.meanings)]
    return result


def _opens_with_limb(mark: Mark, lexicon: Lexicon) -> bool:
    limb, _, name = mark.text.partition(" ")
    known = bool(name) and len(mark.text.split()) == mark.end - mark.start
    return known and _is_limb(limb, lexicon) and _is_of_places(mark, lexicon)


def _is_limb(word: str, lexicon: Lexicon) -> bool:
    return any(role.kind == "site" and not role.item and limb_of(role.key) in LIMBS for role in lexicon.meanings(word))


def _is_of_places(mark: Mark, lexicon: Lexicon) -> bool:
    """Said of a place in the body, or of all muscles or jerks there."""
    items = [lexicon.items[role.item] for role in mark.roles if role.kind == "item"]
    return all(item.sited or item.blanket for item in items)


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
        alike = one.values == two.values or graded == [False, True]
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
