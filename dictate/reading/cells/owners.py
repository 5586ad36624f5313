"""Which of several items a value speaks of, and in which sense."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.model import Side
from dictate.reading.cells.walks import one_walk
from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import INABILITY, read_number, says_unable
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.cuts import place_follows, side_next, value_next
from dictate.reading.statements.drafts import Cell

_KINDS = ("normality", "presence", "choice", "grade")


class Owners:
    """Deals values out to items."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.items = lexicon.items
        self.component = lexicon.component
        self.scales = lexicon.grammar.scales

    def general(self, candidates: Sequence[str]) -> str:
        """The item that naming alone speaks of: a sign before a choice."""
        for kind in ("presence", "normality", "choice"):
            for name in candidates:
                if self.items[name].kind == kind:
                    return name
        return candidates[0]

    def owner(self, candidates: Sequence[str], node: Node) -> str:
        """The item of the candidates that the value says something of."""
        if not candidates:
            return ""
        if node.mark.number is not None:
            fits = []
            for place, name in enumerate(candidates):
                meaning = read_number(self.items[name], node.mark.number, "", self.scales.get(self.items[name].scale))
                fits.append((meaning.fits if meaning else 0, -place, name))
            best = max(fits)
            return best[2] if best[0] else candidates[0]
        for name in candidates:
            if any(r.item == name and r.kind in ("value", "normal", "abnormal", "sign") for r in node.mark.roles):
                return name
        for name in candidates:
            if any(r.kind == "grade" and r.item == self.items[name].scale for r in node.mark.roles):
                return name
        there = any(node.mark.role(kind, "") for kind in ("present", "absent"))  # "abdos absent": no abdomen is
        how = any(node.mark.role(kind, "") for kind in ("normal", "abnormal"))
        for kind in ("presence", "normality", "choice", "grade") if there and not how else _KINDS:
            for name in candidates:
                if self.items[name].kind == kind:
                    return name
        return candidates[0]

    def measured_in(self, candidates: Sequence[str], unit: Node | None) -> Sequence[str]:
        """Those of the items that are measured in the unit said, where another is graded and has none."""
        if unit is None or not any(self.items[name].kind == "grade" for name in candidates[1:]):
            return candidates
        keys = {role.key for role in unit.mark.roles if role.kind == "unit" and role.key}
        fitting = [name for name in candidates if keys & {self.items[name].unit, *self.items[name].units}]
        return fitting or candidates

    def meant(self, name: Node, values: Sequence[Node]) -> tuple[str, ...]:
        """ "Pupil size not examined", "heart rate not assessable": of its items the one called so."""
        told = [n for n in values if n is not name]
        refused = bool(told) and all(n.mark.has("not_examined", "not_assessable") for n in told)
        first = tuple(c for c in name.candidates[:1] if self.items[c].kind == "quantity")  # "pulse not assessable"
        here = [c for c in name.candidates if self.component[c] is self.component[name.candidates[0]]]
        called = tuple(c for c in here if self.items[c].name.lower() == name.text)  # "Sensory. Temperature not tested."
        return (called or first or name.candidates) if refused else name.candidates

    def of_another(self, values: Sequence[Node], candidates: Sequence[str], groups: Sequence[Sequence[str]]) -> bool:
        """ "Tremor and past pointing on the right, mild dysmetria on the left": the left is no tremor's.

        groups: the candidates of all names of the statement; these candidates are one of them.
        """
        others = {name for group in groups for name in group} - set(candidates)
        told = [n for n in values if n.main != "item"]
        return bool(told) and all(
            n.mark.number is None
            and any(n.value_roles(name) for name in others)
            and not any(n.value_roles(name) for name in candidates)
            and all(role.item for role in n.mark.roles)
            for n in told
        )

    def sense(self, owner: str, node: Node) -> str:
        """normal, abnormal, or another status the word gives the item."""
        for role in node.mark.roles:
            if role.item == owner and role.kind == "value":
                return self.items[owner].values[role.key].status
            if role.item == owner and role.kind in ("normal", "abnormal"):
                return role.kind
        for kind in ("not_examined", "not_assessable", "normal", "absent", "present", "abnormal", "unchanged"):
            if node.mark.role(kind, ""):
                return kind
        return "abnormal"

    def of_one_side(self, name: str, side: Side | None, named: Sequence[Node]) -> str:
        """ "Reflexes normal on the right": a whole that knows no sides, as the whole of its name that does."""
        if side not in (Side.LEFT, Side.RIGHT) or not self.items[name].blanket or self.items[name].sided != "never":
            return name
        others = (c for node in named for c in node.candidates if self.items[c].blanket)
        return next((c for c in others if self.items[c].sided != "never"), name)

    def goes_on(self, last: Node, node: Node, cell: Cell, owner: str, following: list[Node]) -> bool:
        """The value adds to the one before it ("slow and irregular") instead of starting another reading."""
        if self.items[owner].kind == "grade" and node.mark.has("grade"):
            return False
        if self.items[owner].kind == "grade" and node.mark.number is not None and last.mark.number is None:
            of_next = side_next(following) and not (cell.side is not None and value_next(following[1:]))
            return not last.mark.has("grade") and not of_next  # "left deltoid weak, 4/5"
        if node.main == "dermatome" and (last.mark.has("present") or last.main == "dermatome"):
            # "a level is present at C5"; "T10 to pinprick, T12 to light touch" are two
            return not (cell.split and any(n.mark.start > last.mark.start for n in cell.modifiers))
        shown = last.mark.role("present", "") is not None and node.mark.role("value", owner) is not None
        if self.items[owner].kind == "choice" and shown and self.sense(owner, node) == "abnormal":
            return True  # "Romberg +ve, falls backwards"
        unable = last.text in INABILITY or (last.main == "item" and says_unable(last.text))
        if unable and node.mark.number is None and not cell.split:
            return True  # "cannot rise from a low chair with her arms folded"
        if last.mark.number is not None and node.mark.number is None:
            return cell.side is None or not cell.split
        if last.mark.number is not None and node.mark.number is not None and {"m", "s"} <= set(self.items[owner].units):
            return one_walk(last, node, cell, following)
        counted = any(n.mark.number is not None for n in cell.values)
        if node.mark.number is not None and counted and cell.split and cell.side is not None:
            return False  # "2/5 wrong on the right, 1/5 on the left"
        if last.mark.number is not None or node.mark.number is not None:
            return (
                last.mark.number is None
                and not last.mark.has("grade")
                and self.items[owner].kind not in ("grade", "acuity")
            )
        if self.items[owner].kind == "acuity":
            return False  # "N6 right N8 left": one line of print after another
        named = node.mark.role("value", owner)
        normal = node.mark.role("normal", owner) or (named and self.items[owner].values[named.key].status == "normal")
        if cell.side is None and normal and not place_follows(following, sides=True):
            return True  # "slow, but with a normal base"
        return self.sense(owner, last) == self.sense(owner, node)
