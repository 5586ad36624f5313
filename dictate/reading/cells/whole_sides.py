"""The other side as a whole, behind muscles or jerks of one side: "right deltoid 4, biceps 4, left normal"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.model import Grade, Side
from dictate.reading.cells.corrections import OPPOSITE
from dictate.reading.nodes import LIMBS, Node, limb_of
from dictate.reading.phrases.bare import WHOLE_SIDES
from dictate.reading.phrases.kinds import read_number
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.drafts import Draft

_ALL = ("all", "everything")
_ALIKE = 2  # findings of one side in a row make a list
_BREAKS = ("comma", "semicolon", "conj", "contrast")
_PASSED = ("filler", "comma", "conj", "contrast", "throughout", "stop")


def wholes_of_scales(items: Mapping[str, Item]) -> dict[str, str]:
    """Scale → the item that is all that it grades: all strength, all jerks."""
    graded = {name: item for name, item in items.items() if item.blanket and item.kind == "grade"}
    parts = {part for item in graded.values() for part in item.covers}
    return {item.scale: name for name, item in graded.items() if name not in parts}


class WholeSides:
    """Tells a side as a whole from one more value of the item last named."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.items = lexicon.items
        self.scales = lexicon.grammar.scales
        self.wholes = wholes_of_scales(self.items)

    def part(self, nodes: list[Node], declared: Side | None) -> tuple[list[Node], list[Node]]:
        """The sentence, and what stands at its end about the other side of its list.

        declared: the side that was said to hold for the sentence ("On the right, deltoid 4").
        """
        sides = [at for at, node in enumerate(nodes) if node.main == "side"]
        if declared is not None and len(sides) == 1:
            first, side = 0, declared
        elif self._of_one_side(nodes, sides[:-1]) and all(map(self._opens, nodes[: sides[0]])):
            first, side = sides[0], Side(nodes[sides[0]].key("side"))
        elif self._of_one_side(nodes, sides[:-1]) and nodes[sides[-1]].text in WHOLE_SIDES:
            first, side = 0, Side(nodes[sides[0]].key("side"))  # "hip 4, knee 4 on the left, the right side normal"
        else:
            return nodes, []
        begin = sides[-1]
        while begin and nodes[begin - 1].main == "filler":
            begin -= 1
        named = {node.candidates for node in nodes[first:begin] if node.main == "item" and not self._opens(node)}
        each = [{self._scale(name) for name in names} - {""} for names in named]
        scales = set.intersection(*each) if each else set()  # "biceps": a muscle and a jerk; "knee": a jerk
        if any(node.mark.text.startswith("all") for node in nodes[begin:]):
            scales = set.union(*each) if each else set()  # "left all 5": all that were named, where these are one thing
        limb = any(node.main == "site" for node in nodes[begin:])
        listed = (
            len(named) >= (1 if limb else _ALIKE)
            and len(scales) == 1
            and (nodes[begin - 1].main in _BREAKS or nodes[-1].main == "throughout")
        )
        opposite = OPPOSITE.get(side) is Side(nodes[sides[-1]].key("side"))
        if not (listed and opposite and self._is_plain(nodes[begin:], scales.pop())):
            return nodes, []
        return nodes[:begin], nodes[begin:]

    def _opens(self, node: Node) -> bool:
        """ "Power on the right is 4 at the deltoid": the title of a list, or a word that says nothing."""
        whole = bool(node.candidates) and all(self.items[name].blanket for name in node.candidates)
        return node.main in ("filler", "colon") or (
            whole and not any(self.items[name].limb for name in node.candidates)
        )

    def _of_one_side(self, nodes: Sequence[Node], places: Sequence[int]) -> bool:
        """Whether all sides but the last are one side; said again and again only where the whole other side is told."""
        again = len(places) == 1 or nodes[-1].main == "throughout"
        return again and len({nodes[at].key("side") for at in places}) == 1

    def items_of(self, nodes: Sequence[Node], named: Sequence[str], drafts: Sequence[Draft]) -> tuple[str, ...]:
        """The item that stands for the whole side; empty: these words are of the item named last, or of none.

        named: what was named last; drafts: what was found so far.
        """
        last = drafts[-1].item if drafts else ""
        named = [last] if last in named and self._scale(last) else named  # "leg 4 plus": no jerk, as found
        scales = {self._scale(name) for name in named} - {""}
        whole = tuple(self.wholes[scale] for scale in scales if scale in self.wholes)
        told = any(node.text in WHOLE_SIDES or node.text.split()[0] in _ALL for node in nodes)  # "left all normal"
        if told or not scales or not self._is_plain(nodes, next(iter(scales))):
            return whole if told else ()
        if limbs := {self.items[name].site_items.get(node.key("site")) for node in nodes for name in whole} - {None}:
            return tuple(name for name in limbs if name)
        side = next((Side(node.key("side")) for node in nodes if node.main == "side"), None)
        everywhere = any(node.main == "throughout" for node in nodes)
        listed = side in OPPOSITE and self._listed(drafts, OPPOSITE[side], scales, worded=everywhere)
        return whole if listed else ()

    def _scale(self, name: str) -> str:
        return self.items[name].scale if self.items[name].kind == "grade" else ""

    def _listed(self, drafts: Sequence[Draft], side: Side, scales: set[str], *, worded: bool) -> bool:
        """Whether the last findings are grades of several items of that side; worded: or words in their place."""
        last = [draft for draft in drafts[-_ALIKE:] if worded or isinstance(draft.value, Grade)]
        alike = all(draft.side is side and self.items[draft.item].scale in scales for draft in last)
        own = {draft.item for draft in last if not self.items[draft.item].blanket}
        both = any(d.item in own and d.side is OPPOSITE[side] for d in drafts[-2 * _ALIKE :])  # each side told already
        return alike and len(own) == len(last) == _ALIKE and not both

    def _is_plain(self, nodes: Sequence[Node], scale: str) -> bool:
        """One side, and that it is normal, or the grade that says so; any word or grade, where it is throughout."""
        said = [node for node in nodes if node.main not in _PASSED]
        if len(said) > 1 and said[1].main == "site" and limb_of(said[1].key("site")) in LIMBS:
            said.pop(1)
        if [node.main == "side" for node in said] != [True, False]:
            return False
        mark = said[1].mark
        everywhere = any(node.main == "throughout" for node in nodes)
        if mark.number is None and everywhere and said[1].main == "value":
            return True
        if mark.number is None:
            return mark.role("normal", "") is not None or mark.text == "full"
        known = self.scales[scale]
        item = next(item for item in self.items.values() if item.kind == "grade" and item.scale == scale)
        meaning = read_number(item, mark.number, "", known)
        grade = meaning.value if meaning is not None else None
        return isinstance(grade, Grade) and (everywhere or grade.grade in known.normal)
