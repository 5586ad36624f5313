"""Drafts that say the same twice become one."""

from __future__ import annotations

from dictate.grammar import Item
from dictate.model import Status
from dictate.reading.drafts import Draft


def merge_readings(drafts: list[Draft], items: dict[str, Item]) -> list[Draft]:
    """Readings of one statement that say the same twice, or one of which only adds the side to the other."""
    result: list[Draft] = []
    for draft in drafts:
        for earlier in result:
            if items[draft.item].positions:
                continue  # the same pulse lying and standing is two readings
            if earlier.item != draft.item or earlier.status is not draft.status or earlier.site != draft.site:
                continue
            same_side = earlier.side is draft.side or (draft.side is None and draft.status is Status.NORMAL)
            if same_side and (str(earlier.value) == str(draft.value) or draft.value is None):
                earlier.spans.extend(draft.spans)
                break
            added = (
                earlier.side is None and not earlier.site and draft.side is not None and draft.status is Status.PRESENT
            )
            if added and items[draft.item].kind == "presence":
                earlier.side, earlier.value, earlier.unit = draft.side, draft.value or earlier.value, draft.unit
                earlier.spans.extend(draft.spans)
                break
        else:
            result.append(draft)
    return result


def merge_denials(drafts: list[Draft], items: dict[str, Item]) -> list[Draft]:
    """ "no hemianopia or scotoma": denials of one item in one sentence are one finding."""
    kept: list[Draft] = []
    for draft in drafts:
        plain = (
            draft.status in (Status.NORMAL, Status.ABSENT) and draft.value is None and not items[draft.item].positions
        )
        same = next(
            (
                k
                for k in kept
                if plain and (k.item, k.side, k.site, k.status) == (draft.item, draft.side, draft.site, draft.status)
            ),
            None,
        )
        if same is not None and same.value is None:
            same.spans.extend(draft.spans)
        else:
            kept.append(draft)
    return kept
