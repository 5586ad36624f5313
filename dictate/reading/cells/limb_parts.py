"""Parts of the limb last spoken of ("right arm proximally four, distally two")."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from dictate.reading.nodes import Node, limb_of
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.drafts import Cell

PARTS = ("proximal", "distal")


def part_limbs(cells: list[Cell], known: Collection[str]) -> None:
    """ "Right arm proximally four, distally two": a part of the limb last spoken of. known: what limbs have."""
    limbs = {_whole(limb_of(n.key("site"))) for c in cells for n in c.nodes if n.mark.role("site")} - set(PARTS)
    limb, side, of_name = limbs.pop() if len(limbs) == 1 else "", None, ""
    _name_behind(cells)
    for cell in cells:
        sites = [n.key("site") for n in cell.nodes if n.mark.role("site") is not None] or [cell.site]
        of_name = next((word for n in cell.nodes if n.sign and (word := n.text.split()[0]) in PARTS), of_name)
        part = next((site for site in sites if site in PARTS), of_name)  # "proximal weakness 4 in the legs"
        named = next((_whole(limb_of(site)) for site in sites if site not in PARTS and site), "")
        if part and not cell.detail and f"{named or limb}_{part}" in known:
            cell.site, cell.site_node = f"{named or limb}_{part}", None
            cell.side = cell.side or (None if named else side)
        limb, side = named or limb, cell.side if named else cell.side or side


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
