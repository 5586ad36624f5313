"""Sides and sites a sentence declares for all its statements, given to the findings that name none."""

from __future__ import annotations

from dictate.grammar import Item
from dictate.model import Side
from dictate.reading.context import Context
from dictate.reading.drafts import Draft
from dictate.reading.nodes import limb_of
from dictate.reading.weights import Statement, Weigher


class SideCarrier:
    """Takes sides from statements into the context, and from the context into findings."""

    def __init__(self, items: dict[str, Item], weights: Weigher) -> None:
        self.items = items
        self.weights = weights

    def adjective(self, statement: Statement, context: Context) -> None:
        """A bare side before a name holds for later names of the same scale in this sentence."""
        scale = self.items[statement.candidates[0]].scale
        before = statement.before
        sides = [(i, n) for i, n in enumerate(before) if n.main == "side"]
        said = [n for n in statement.nodes if n.main == "side"]
        if len(said) == 1 and self._only_opens(statement):
            context.adjective_side, context.adjective_scale = Side(said[0].key("side")), scale
        elif sides and (before[0] is sides[-1][1] or not self.weights.is_postposed(before, sides[-1][0])):
            context.adjective_side, context.adjective_scale = Side(sides[-1][1].key("side")), scale
        elif said:
            context.adjective_side = None

    def _only_opens(self, statement: Statement) -> bool:
        """ "Power on the right was": a component with its side, and nothing found yet."""
        blanket = all(self.items[name].blanket for name in statement.candidates)
        return blanket and not any(self.weights.is_value(n) or n.main == "negation" for n in statement.nodes)

    def carry(self, draft: Draft, statement: Statement, context: Context) -> None:
        """Give the draft what its sentence, or a heading, said for it."""
        site = context.heading_site
        target = self.items[draft.item].site_items.get(limb_of(site)) if site else None
        item = self.items[target or draft.item]
        if target is not None:
            draft.item = target  # "Upper limbs: power normal"
            draft.spans.append(context.heading_span)
        elif site and not draft.site and (item.sited or (item.blanket and item.kind == "grade")):
            draft.site = site
            draft.spans.append(context.heading_span)
        if draft.side is None and item.sided != "never" and context.place_side is not None:
            draft.side = context.place_side
            draft.spans.append(context.heading_span)
        if draft.side is not None or item.sided != "paired":
            return
        if context.heading_side is not None:
            draft.side = context.heading_side
        elif item.scale and item.scale == context.adjective_scale and not item.blanket:
            own = any(n.main == "side" for n in statement.nodes)
            draft.side = None if own else context.adjective_side
