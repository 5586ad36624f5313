"""Drafts given the side or item that only the whole sentence tells."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.model import Status
from dictate.reading.drafts import AS_OTHER, Draft


def but_for_copies(drafts: list[Draft]) -> list[Draft]:
    """ "Left arm the same, except biceps 4": what is excepted is of that side, and was not as on the other."""
    copied = [draft for draft in drafts if draft.detail == [AS_OTHER]]
    gone: set[int] = set()
    for draft in drafts:
        for copy in copied if draft.detail != [AS_OTHER] else ():
            if copy.item == draft.item and draft.side in (None, copy.side):
                draft.side = copy.side
                gone.add(id(copy))
    return [draft for draft in drafts if id(draft) not in gone]


def rated_not_rating(drafts: Sequence[Draft], items: Mapping[str, Item]) -> None:
    """ "Legs spastic, Ashworth 2, arms normal": no rating is normal, but what is rated."""
    for place, draft in enumerate(drafts):
        rating = items[draft.item].kind == "grade" and items[draft.item].sited and not items[draft.item].blanket
        if rating and draft.status is Status.NORMAL and draft.value is None:
            rated = next((d.item for d in drafts[:place] if items[d.item].sited and d.item != draft.item), draft.item)
            draft.item = rated
