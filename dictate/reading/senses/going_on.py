"""Whether words without an item's name go on about the items last spoken of."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.model import Side, Status
from dictate.reading.cells.limb_parts import MIDLINE
from dictate.reading.nodes import LIMBS, WHOLE_LIMBS, Node, limb_of
from dictate.reading.phrases.bare import WHOLE_SIDES
from dictate.reading.phrases.kinds import INABILITY
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.cuts import is_unknown, speaks_of_another
from dictate.reading.statements.drafts import Cell, Draft
from dictate.reading.statements.weights import Weigher

_NUMERIC = frozenset({"score", "quantity", "pressure", "acuity"})


def of_other_side(last: Draft, nodes: list[Node]) -> Draft | None:
    """ "And on the right." after "finger taps normal on the left.": the same of the other side."""
    said = [n for n in nodes if n.main not in ("conj", "comma", "stop")]
    if [n.main for n in said] != ["side"] or nodes[0].text not in ("and", "also"):
        return None
    side = Side(said[0].key("side"))
    if {last.side, side} != {Side.LEFT, Side.RIGHT}:
        return None
    spans = [*last.spans, (said[0].mark.start, said[0].mark.end)]
    return replace(last, side=side, spans=spans, detail=list(last.detail), corrected=[])


def give_side_behind(drafts: Sequence[Draft], nodes: list[Node], items: Mapping[str, Item]) -> list[Node]:
    """ "Ankles 2+. Bilaterally.", "Biceps 2+. On the left 3+ on the right.": a side parted by a stop from its finding.

    Returns the words that are left. One side alone ("On the left.") may as well open what follows, and is not given.
    """
    said = [n for n in nodes if n.main not in ("filler", "stop")]
    if not drafts or not said or said[0].main != "side" or said[0].mark.has("site"):
        return nodes
    lacking = [draft for draft in drafts if draft.side is None and items[draft.item].sided == "paired"]
    sides = [n.key("side") for n in said if n.main == "side"]
    between = [n for n in said[1:-1] if n.main in ("number", "value")]
    if sides == ["both"] and [n.main for n in said[1:2]] in ([], ["conj"]):
        left = nodes if len(said) > 1 else []
    elif sorted(sides) == ["left", "right"] and said[-1].main == "side" and len(between) == len(said) - 2 == 1:
        lacking, left = lacking[-1:], nodes[nodes.index(said[0]) + 1 :]
    else:
        return nodes
    if not lacking:
        return nodes
    for draft in lacking:
        draft.side = Side(sides[0])
        draft.spans.append((said[0].mark.start, said[0].mark.end))
    return left


def spared(cells: list[Cell], drafts: Sequence[Draft]) -> list[Cell]:
    """ "Wasting of the right hand. None on the left.": what was found before was not found here."""
    found = bool(drafts) and all(draft.status is Status.ABNORMAL for draft in drafts)
    for cell in cells:
        not_so = cell.negated and not cell.values and cell.side is not None  # "the left arm isn't"
        cell.spared = cell.spared or (found and (not_so or [n.text for n in cell.values] in (["none"], ["nil"])))
    return [cell for cell in cells if not (found and _denies_another(cell))]


def _denies_another(cell: Cell) -> bool:
    """ "Speech slurred. Not hoarse.": what else it was not does not make it normal."""
    placed = cell.side is not None or cell.site_node is not None
    return cell.negated and not placed and any(n.mark.has("abnormal") for n in cell.values)


class GoingOn:
    """Judges the words that stand in front of the first name of a sentence, or without any."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.items = lexicon.items
        self.weights = Weigher(lexicon)

    def speaks_of(self, names: Sequence[str], nodes: list[Node], first: int) -> bool:
        """The words can be of the items `names`; `first` is the place of the first value, number or negation."""
        if any(n.main in ("word", "talk") and len(n.text) > 1 for n in nodes[:first]):
            return False
        if any(n.main == "minutes" for n in nodes) and nodes[first].mark.has("not_examined"):
            return False  # "the five minute reading we skipped"
        if any(n.main == "qualifier" and _names_another(n, names) for n in nodes[:first]):
            return False  # "writing large" goes on about no voice
        looks = any(n.main == "direction" for n in nodes[:first])
        if looks and all(self.items[name].sided == "never" for name in names):
            return False  # "right gaze full" goes on about no repetition
        if not all(self.weights.accepts(names, n) for n in nodes if n.main == "number"):
            return False  # "six millimetres on the left, three on the right" goes on about no vibration
        clause = itertools.takewhile(lambda n: not n.is_break, nodes[first + 1 :])
        if speaks_of_another(nodes[first + 1 :]) or (nodes[first].text in INABILITY and any(map(is_unknown, clause))):
            return False  # "he can't feel the cold fork in the little finger" goes on about no wasting
        if nodes[first].main == "negation" and any(n.main == "word" and len(n.text) > 2 for n in nodes):
            return False
        values = [n for n in nodes if self.weights.is_value(n)]
        if all(n.mark.has("ability") and n.text not in INABILITY for n in values) and not _placed(nodes):
            return False  # "she could" of another task
        if any(self.weights.accepts(names, n) for n in values):
            return True
        return any(n.main == "negation" for n in nodes) and any(n.main == "side" for n in nodes)

    def leaves_undone(self, nodes: list[Node]) -> bool:
        """ "Not tested today.": words that say of a title that what it names was not examined."""
        said = [n for n in nodes if n.main == "negation" or self.weights.is_value(n)]
        undone = [n.mark.has("not_examined", "not_assessable") for n in said]
        return bool(undone) and all(undone)

    def may_be_of(self, names: Sequence[str], nodes: list[Node], places: Collection[str]) -> bool:
        """A value of the kind the items have: a number for a score, a grade or a plain "normal" for a component.

        places: where they were found.
        """
        items = [self.items[name] for name in names]
        if any(n.text in WHOLE_SIDES for n in nodes) and all(item.sided != "paired" for item in items):
            return False  # "right side unremarkable" goes on about no gait
        numeric = all(item.kind in _NUMERIC for item in items)
        muscles = any(item.kind == "grade" for item in items)  # "grip 5", which may be measured, too
        muscles = muscles and not any(item.blanket or item.sited or item.sites for item in items)
        if muscles and any(n.main == "site" and n.key("site") not in WHOLE_LIMBS for n in nodes):
            return False  # "right hip not tested" goes on about no ankle
        if any(item.keeps_name for item in items) or (numeric and all(n.mark.number is None for n in nodes)):
            return False  # a number of another scale, one that has no name here; a stray "full" is no score
        limbs = {role.key for n in nodes if (role := n.mark.role("site")) is not None and limb_of(role.key) in LIMBS}
        placed = bool(limbs) or any(n.main == "site" for n in nodes)
        sites = [item for item in items if item.sites and (not limbs or limbs & {*item.sites})]
        if placed and not sites and not any(item.sited or item.limb or item.scale or item.site_items for item in items):
            return False  # "right arm: spastic" goes on about no tongue
        said = [n for n in nodes if n.main == "negation" or self.weights.is_value(n)]
        jerks = all(
            "tendon_reflex" in (item.scale, item.listed_with) or name == "reflexes_all"
            for name, item in zip(names, items, strict=True)
        )
        if jerks and any(n.main == "site" and n.key("site") in MIDLINE for n in nodes):
            return False  # "neck full" goes on about no reflexes
        presence = all(item.kind == "presence" for item in items)
        if presence and all(_is_of_how(n, names) for n in said):
            return False  # "the right hand is clumsy" goes on about no drift
        elsewhere = {limb_of(role.key) for n in nodes if (role := n.mark.role("site", "")) is not None}
        well = presence and all(n.mark.role("normal", "") for n in said)
        if well and elsewhere and places and elsewhere.isdisjoint(map(limb_of, places)):
            return False  # "right leg normal" goes on about no Tinel sign at the elbow
        plain = all(n.mark.number is not None or n.mark.role("normal", "") for n in said)
        return plain or not all(item.blanket for item in items)  # "no light perception" denies no whole component


def _is_of_how(node: Node, names: Sequence[str]) -> bool:
    """A word for how something is ("clumsy", "slow"), and not whether it is there."""
    kinds = {role.kind for role in node.mark.roles if not role.item or role.item in names}
    return "abnormal" in kinds and kinds.isdisjoint({"present", "absent", "normal", "value", "equal"})


def _names_another(node: Node, names: Sequence[str]) -> bool:
    """Whether it can be the name of an item, and of none of these."""
    named = {role.item for role in node.mark.roles if role.kind in ("item", "context", "sign")}
    return bool(named) and named.isdisjoint(names)


def _placed(nodes: Sequence[Node]) -> bool:
    return any(n.main in ("side", "site", "negation") for n in nodes)
