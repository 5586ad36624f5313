"""Drafts given the side or item that only the whole sentence tells."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.model import Status
from dictate.reading.nodes import WHOLE_LIMBS, limb_of
from dictate.reading.statements.drafts import AS_OTHER, Draft

_OF_FACE = ("facial_sensation", "face")


def but_for_copies(drafts: list[Draft]) -> list[Draft]:
    """ "Left arm the same, except biceps 4": what is excepted is of that side, and was not as on the other."""
    copied = [draft for draft in drafts if draft.detail == [AS_OTHER]]
    gone: set[int] = set()
    for draft in drafts:
        for copy in copied if draft.detail != [AS_OTHER] else ():
            if copy.item == draft.item and draft.side in (None, copy.side):
                draft.side = copy.side
                gone.add(id(copy))
    sides = {copy.side for copy in copied}
    for draft in drafts if len(sides) == 1 else ():
        if draft.excepted and draft.detail != [AS_OTHER]:
            draft.side = next(iter(sides))  # "left the same except triceps 4", under a title of the right
    return [draft for draft in drafts if id(draft) not in gone]


def rated_not_rating(drafts: Sequence[Draft], items: Mapping[str, Item]) -> None:
    """ "Legs spastic, Ashworth 2, arms normal": no rating is normal, but what is rated."""
    for place, draft in enumerate(drafts):
        rating = items[draft.item].kind == "grade" and items[draft.item].sited and not items[draft.item].blanket
        if rating and draft.status is Status.NORMAL and draft.value is None:
            rated = next((d.item for d in drafts[:place] if items[d.item].sited and d.item != draft.item), draft.item)
            draft.item = rated


def recalled_later(drafts: Sequence[Draft]) -> None:
    """ "Remembers three words at once and two after five minutes": what is said after minutes was recalled."""
    for draft in drafts:
        if draft.item == "registration" and any(part.startswith("after ") for part in draft.detail):
            draft.item = "recall"


def plain_regions(drafts: list[Draft], items: Mapping[str, Item]) -> list[Draft]:
    """ "5 at the wrist and hand": of the region, whose name says it already; "wrist 3, fingers 2" stay apart."""
    kept: list[Draft] = []
    for draft in drafts:
        limb = draft.site in WHOLE_LIMBS and items[draft.item].limb == limb_of(draft.site)
        if limb or (draft.item, draft.site) == _OF_FACE:
            draft.site = ""  # "no drift of the arms", "facial sensation normal in V1 to V3": of what it is anyway
        if draft.site and items[draft.item].blanket and _says_region(draft, items):
            parts = [one for one in drafts if (one.item, one.side) == (draft.item, draft.side)]
            if all((one.value, one.status) == (draft.value, draft.status) for one in parts):
                draft.site = ""
        said = (draft.item, draft.side, draft.site, draft.value, draft.status)
        of_limb = items[draft.item].limb and items[draft.item].blanket
        pool = kept if of_limb else ()
        same = [one for one in pool if (one.item, one.side, one.site, one.value, one.status) == said]
        if same:
            same[0].spans.extend(draft.spans)
        else:
            kept.append(draft)
    return kept


def _says_region(draft: Draft, items: Mapping[str, Item]) -> bool:
    """Whether that part of the limb is the region, as the item of the whole limb tells it."""
    of_limb = (one for one in items.values() if one.blanket and one.limb == items[draft.item].limb)
    return any(one.site_items.get(draft.site) == draft.item for one in of_limb)


def limbs_apart(drafts: Sequence[Draft], items: Mapping[str, Item]) -> list[Draft]:
    """ "Pinprick reduced in the right arm and leg": of either limb; jerks so told are those of the whole side."""
    result: list[Draft] = []
    for draft in drafts:
        item = items[draft.item]
        if draft.site != "arm_and_leg" or item.scale == "tendon_reflex":
            result.append(draft)
            continue
        for limb in ("arm", "leg"):
            named = item.site_items.get(limb_of(limb), "")
            place = "" if named else limb
            own = replace(draft, item=named or draft.item, site=place, spans=[*draft.spans], detail=[*draft.detail])
            result.append(own)
    return result
