"""Node: one mark of a sentence and the part it plays there."""

from __future__ import annotations

from bisect import bisect, bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from dictate.grammar import Item
from dictate.reading.marks import Mark, Role

VALUE_KINDS = (
    "normal",
    "abnormal",
    "present",
    "absent",
    "not_examined",
    "not_assessable",
    "unchanged",
    "value",
    "grade",
    "equal",
    "same",
)
ITEM_VALUE_KINDS = ("value", "normal", "abnormal", "qualifier")
BREAKS = frozenset({"comma", "semicolon", "conj", "contrast", "stop", "colon"})
_PLAIN_ORDER = (
    "next_patient",
    "right_then_left",
    "left_then_right",
    "other_side",
    "heading_part",
    "strike",
    "swap",
    "correction",
    "except",
    "minutes",
    "number",
    "time_span",
    "talk",
    "colon",
    "comma",
    "semicolon",
    "stop",
    "conj",
    "contrast",
    "direction",
    "manoeuvre",
    "at_once",
    "position",
    "side",
    "negation",
    "rest",
    "throughout",
    "comparison",
    "value_any",
    "dermatome",
    "site",
    "reason",
    "unit",
    "hedge",
    "severity",
    "heading",
    "section",
    "filler",
    "word",
)


@dataclass(slots=True)
class Node:
    """One mark and the part it plays."""

    mark: Mark
    main: str
    candidates: tuple[str, ...] = ()  # item ids, when main is "item"
    sign: bool = False  # the phrase names the abnormality, or carries its own value
    unit: Mark | None = None  # the unit said after a number

    @property
    def text(self) -> str:
        """The words of the mark."""
        return self.mark.text

    @property
    def is_break(self) -> bool:
        """Whether it separates rather than says."""
        return self.main in BREAKS

    def key(self, kind: str) -> str:
        """The key of its role of that kind, or empty."""
        role = self.mark.role(kind)
        return role.key if role else ""

    def value_roles(self, item: str) -> list[Role]:
        """What it says of that item as a value."""
        return [r for r in self.mark.roles if r.item == item and r.kind in ITEM_VALUE_KINDS]


_TRANSITIVE = frozenset(
    {"test", "examine", "check", "assess", "do", "at", "perform", "measure", "for", "see", "judge", "evaluate", "with"}
)


def wants_object(node: Node) -> bool:
    """ "Could not see", "did not test": what was not seen or tested is named behind it."""
    return node.mark.has("not_examined", "not_assessable") and node.text.split()[-1] in _TRANSITIVE


_THOUGHTS = ("i do not think", "i do not believe", "i doubt")


def is_thought(node: Node) -> bool:
    """ "I don't think there is", "I doubt": what was not found, and not for certain."""
    return node.text.startswith(_THOUGHTS)


def plain_part(mark: Mark) -> str:
    """The part a mark plays when nothing about its neighbours is known."""
    kinds = {role.kind for role in mark.roles if not role.item or role.kind == "grade"}
    for kind in _PLAIN_ORDER:
        if kind == "value_any":
            if not kinds.isdisjoint(VALUE_KINDS):
                return "value"
        elif kind in kinds:
            return kind
    if any(r.kind in ("value", "normal", "abnormal") for r in mark.roles):
        return "value"
    if mark.has("unit"):
        return "unit"
    if mark.has("qualifier"):
        return "qualifier"
    return "site" if mark.has("site") else "word"


def says_where(nodes: Sequence[Node]) -> bool:
    """ "Sensation in the limbs": the heading's word says where, of what was named before it."""
    telling = (node for node in reversed(nodes) if node.text not in ("the", "all", "his", "her"))
    last, before = next(telling, None), next(telling, None)
    if last is None or before is None or last.text not in ("in", "of", "over") or before.is_break:
        return False
    return any(node.main == "item" for node in (last, before, *telling))


def between(nodes: Sequence[Node], first: int, last: int) -> Sequence[Node]:
    """The nodes of a sentence that start after one token and before another."""
    start, end = (bisect(nodes, first, key=_start), bisect_left(nodes, last, key=_start))
    return nodes[start:end]


def _start(node: Node) -> int:
    return node.mark.start


LIMBS = ("upper_limb", "lower_limb")
WHOLE_LIMBS = ("arm", "leg", *LIMBS)  # and no part of one
_LIMBS = {"arm": "upper_limb", "hand": "upper_limb", "leg": "lower_limb", "foot": "lower_limb"}


def limb_of(site: str) -> str:
    """The limb a site is of, where an item is told by limbs; other sites stay as they are."""
    return _LIMBS.get(site, site)


def other_limb(name: str, site: str, items: Mapping[str, Item]) -> str:
    """ "Power in both arms was normal and in both legs 3": the item of the other limb; empty where none is meant."""
    limb = limb_of(site)
    parted = limb.removesuffix("_proximal").removesuffix("_distal")  # "in the legs 4 proximally"
    if parted not in LIMBS or not items[name].blanket or items[name].limb in ("", limb):
        return ""
    wholes = (item for item in items.values() if item.blanket and item.scale == items[name].scale)
    return next(
        (item.site_items[limb] for item in wholes if name in item.site_items.values() and limb in item.site_items), ""
    )
