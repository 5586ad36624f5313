"""Component headings, sides and sites declared for what follows, and blankets over no one knows what."""

from __future__ import annotations

from dictate.model import Component, Side
from dictate.reading.in_force.columns import SHOWS, declared_columns, pairs_of_words, sides_behind
from dictate.reading.in_force.context import Context
from dictate.reading.in_force.limb_heads import limb_alone, limb_then_side, side_of_two
from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import Lexicon

_THERE = ("there is", "there are", "there was", "there were", "there")
_WHERE = ("in", "over", "on", "at", "of", "for")


_SUBJECTS = ("she", "he", "they", "there", "the patient", "i ", "we ")


def _goes_on(node: Node) -> bool:
    """ "In the arms she has normal bulk": the sentence itself begins."""
    return node.main == "filler" and f"{node.text} ".startswith(_SUBJECTS)


def _examined_in(nodes: list[Node]) -> int:
    """Where the finding begins in "motor examination of the arms shows ..."; -1 where nothing of the kind is said."""
    place = next((i for i, n in enumerate(nodes) if n.text in _WHERE), 0)
    if not place or not all(n.main in ("heading", "filler") or n.mark.has("heading") for n in nodes[:place]):
        return -1
    shown = next((i for i, n in enumerate(nodes) if n.main == "filler" and n.text.split()[-1] in SHOWS), 0)
    return shown if place < shown <= place + 4 else -1


def _is_test(node: Node) -> bool:
    """A name of what was examined, and none of what was found."""
    return node.main == "item" and not node.sign and node.mark.has("item")


def _before(nodes: list[Node], end: int, *, items: bool) -> tuple[Node | None, Node | None, list[Node]]:
    """The body part right before a place, its side in front of it, and the nodes before both.

    items: the body part may be one that also names an item ("the arms" and their strength).
    """
    site = nodes[end - 1] if end else None
    parts = ("site", "side", "item") if items else ("site", "side")
    if site is None or site.mark.role("site") is None or site.main not in parts:
        return None, None, []
    limb = site.main == "side"  # "RUE": side and limb in one word
    side = site if limb else nodes[end - 2] if end > 1 and nodes[end - 2].main == "side" else None
    return site, side, nodes[: end - (1 if side in (None, site) else 2)]


def _repeated_title(nodes: list[Node]) -> list[Node]:
    """ "Tremor: rest tremor of the right hand", "Cover test, there is no skew": the name in front is a title."""
    if len(nodes) < 3 or nodes[0].main != "item" or nodes[1].main not in ("colon", "comma"):
        return []
    named = [
        i for i, n in enumerate(nodes[2:], 2) if n.main == "item" and n.mark.number is None and not n.mark.has("rest")
    ]
    named = [
        i for i in named if not nodes[0].sign or nodes[i].mark.has("item", "sign", "alone")
    ]  # "cogwheel" tells how
    again = next((i for i in named if nodes[i].candidates == nodes[0].candidates), 0)
    if not again or (nodes[1].main == "comma" and (nodes[0].sign or nodes[again - 1].main != "negation")):
        return []
    told = next((i for i, n in enumerate(nodes[:again]) if n.main in ("value", "number")), again)
    if any(n.is_break for n in nodes[told:again]):
        return []  # "Skin: several moles, no rash": something was found before it is named again
    nodes[0].main, nodes[0].candidates = "filler", ()
    return nodes[:1]


class HeadingReader:
    """Reads what is declared at the head of a sentence; both readers return the nodes that said it."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon

    def headings(self, nodes: list[Node], context: Context) -> list[Node]:
        """Take the component over from the headings of a sentence."""
        covered: list[Node] = []
        for place, node in enumerate(nodes):
            part = node.mark.role("heading_part")
            if part is not None:
                context.component = part.key
                if not place and nodes[1:] and nodes[1].main == "colon" and any(n.main == "item" for n in nodes):
                    covered.append(node)
            role = node.mark.role("heading")
            if not place and self._titles(node, nodes[1:]):
                covered.append(node)
            if role is None:
                continue
            own = node.main == "item" and any(self.lexicon.component[c].value == role.key for c in node.candidates)
            if node.main == "heading" or own:
                if context.component != role.key:
                    context.heading_side = None
                context.component = role.key
                covered.append(node)
        return covered

    def _titles(self, node: Node, after: list[Node]) -> bool:
        """ "NIHSS:" in front of its parts, or alone on its line; "Power:" in front of muscles."""
        items = [self.lexicon.items[c] for c in node.candidates]
        whole = node.main in ("item", "heading") and all(one.blanket for one in items)
        if whole and after and after[0].main == "colon":
            return any(later.main == "item" for later in after)
        scale = all(one.kind == "score" and one.group for one in items)
        if node.main != "item" or not scale:
            return False
        parts = {self.lexicon.items[c].group for one in after[:1] for c in one.candidates}
        if after and parts == {one.group for one in items}:
            return True  # "coma scale E4 V5 M6"
        return not after or (after[0].main == "colon" and not (len(after) > 1 and after[1].main == "number"))

    def orders(self, nodes: list[Node], context: Context) -> list[Node]:
        """Sides declared for what follows: "on the left:" and "right then left"."""
        covered = [
            *declared_columns(nodes, context, self._is_title),
            *_repeated_title(nodes),
            *self._signs_title(nodes, context),
        ]
        for node in nodes:
            if node.main == "right_then_left":
                context.order = (Side.RIGHT, Side.LEFT)
                covered.append(node)
            elif node.main == "left_then_right":
                context.order = (Side.LEFT, Side.RIGHT)
                covered.append(node)
        sides_behind(nodes)
        pairs_of_words(nodes, self.lexicon.items, context.order)
        if context.heading_once:
            context.heading_side, context.heading_once = None, False
        context.heading_site, context.place_side = "", None
        if (limb := context.limb) is not None:
            context.heading_site, context.place_side = limb.part or limb.site, limb.side
            context.heading_span = limb.span
        self._place(nodes, context)
        lead = [n for n in nodes if n.main != "filler"][:3]
        if (
            len(lead) >= 2
            and not context.heading_site
            and lead[0].mark.has("site")
            and lead[1].main == "colon"
            and lead[0].main in ("site", "item", "word")
        ):
            covered.extend(lead[:1] if len(nodes) > nodes.index(lead[1]) + 1 else ())
            if not self._of_general_examination(lead[0]):
                context.heading_site = lead[0].key("site")
                context.heading_span = (lead[0].mark.start, lead[0].mark.end)
        titled = [n for n in nodes if n.main != "comma"][:3]
        if [n.main for n in titled[1:]] == ["side", "colon"] and self._is_title(titled[0]):
            context.heading_side, context.heading_of_grades = Side(titled[1].key("side")), False
            context.place_side, context.heading_span = context.heading_side, (titled[1].mark.start, titled[1].mark.end)
            covered += titled
            titled[1].main = "filler"
        if self._declares_side(nodes, lead):
            covered.append(lead[0])
            self._declare_side(lead, context)
        elif (side := self._side_of_list(nodes)) is not None:
            covered.append(side)
            context.heading_side, context.heading_of_grades, context.heading_once = Side(side.key("side")), True, True
        return covered

    def _declares_side(self, nodes: list[Node], lead: list[Node]) -> bool:
        """ "On the left:", "On the left, deltoid 4", "Right eye, acuity 6/9"."""
        if len(lead) < 2 or lead[0].main != "side" or lead[0].mark.role("site", "") is not None:
            return False
        there = lead[0] is nodes[0] and nodes[1].text in _THERE
        if lead[0] is nodes[0] and lead[0].text.startswith("on ") and side_of_two(nodes):
            return True  # "On the left finger nose is fine and heel shin is fine"
        if lead[1].main not in ("colon", "comma") and not self._is_graded(lead[1]) and not there:
            return False
        placed = lead[0].text.startswith("on ") or nodes[0].text in ("in", "on")
        if lead[0].text.startswith("on ") and nodes[1].text in _THERE:
            return True  # "On the left there's increased tone and brisk reflexes"
        organ = self._is_organ(lead[0]) and [n.main for n in lead[2:]] == ["item"]
        return lead[1].main == "colon" or placed or organ

    def _side_of_list(self, nodes: list[Node]) -> Node | None:
        """ "Wrist drop on the right: wrist extension 1", "weak in the left hand: FDI 3": the one side before a list."""
        colon = next((at for at, node in enumerate(nodes) if node.main == "colon"), 0)
        sides = [node for node in nodes[:colon] if node.main == "side"]
        told = any(node.main in ("number", "negation", "comma") for node in nodes[:colon])
        told = told or any(node.main == "item" and not node.sign for node in nodes[:colon])
        listed = [node.main for node in nodes[colon + 1 : colon + 3]] in (["item", "number"], ["item", "filler"])
        if told or len(sides) != 1 or sides[0].mark.role("site", "") is not None or not listed:
            return None
        return sides[0] if self._is_graded(nodes[colon + 1]) and sides[0].key("side") != "both" else None

    def _declare_side(self, lead: list[Node], context: Context) -> None:
        context.heading_side = Side(lead[0].key("side"))
        context.heading_of_grades = lead[1].main != "colon"
        context.place_side = context.heading_side  # "On the left: power 4": of whatever its sentence tells
        context.heading_span = (lead[0].mark.start, lead[0].mark.end)
        context.heading_once = self._is_organ(lead[0])
        lead[0].main = "filler"
        lead[1].main = "filler" if lead[1].main in ("colon", "comma") else lead[1].main

    def _signs_title(self, nodes: list[Node], context: Context) -> list[Node]:
        """ "Cerebellar signs: finger nose normal": a title of what follows. Alone in a sentence it says nothing yet."""
        said = [n for n in nodes if n.main not in ("filler", "stop")]
        if not said or said[0].main != "item" or not said[0].text.endswith(("signs", "findings")):
            return []
        title, after = said[0], said[1:]
        listed = len(after) > 1 and after[0].main == "comma" and (after[1].main == "negation" or _is_test(after[1]))
        if listed:
            after[0].main = "colon"  # "Cerebellar signs, finger nose test normal"
        colon = bool(after) and after[0].main == "colon"
        if not (colon and (len(after) == 1 or any(n.main == "item" for n in after))) and after:
            return []
        context.component = self.lexicon.component[title.candidates[0]].value
        title.main, title.candidates = ("filler" if colon else "word"), ()
        return [title] if colon else []

    def _is_title(self, node: Node) -> bool:
        return node.main == "heading" or (node.main == "item" and self._is_group(node))

    def _is_organ(self, node: Node) -> bool:
        """ "Left eye: full range. Jaw strong.": past its sentence it holds for the eye only."""
        return any(node.text.lower() in said for said in self.lexicon.grammar.common.organs.values())

    def _is_graded(self, node: Node) -> bool:
        """ "In the right leg hip flexion is 4-, the rest are 5": a muscle or jerk with which a list begins."""
        items = [self.lexicon.items[c] for c in node.candidates]
        return node.main == "item" and any(one.scale and not one.blanket for one in items)

    def _is_group(self, node: Node) -> bool:
        """A title of several items: "power", "reflexes"."""
        return all(self.lexicon.items[c].blanket for c in node.candidates)

    def _place(self, nodes: list[Node], context: Context) -> None:
        """ "In the upper limbs, ...", "power, right arm: ...": where all of the sentence was found."""
        told = _examined_in(nodes)
        site: Node | None
        side: Node | None
        rest: list[Node]
        if (title := limb_then_side(nodes)) is not None:
            (site, side, end), rest = title, []
        else:
            opened = bool(nodes) and nodes[0].text in _WHERE
            opened = opened or limb_alone(nodes)
            ends = (
                i
                for i, n in enumerate(nodes)
                if n.main == "colon"
                or (
                    opened
                    and (
                        (n.main == "comma" and not (i and nodes[i - 1].main == "position"))
                        or _goes_on(n)
                        or (i > 1 and self._is_graded(n))
                    )
                )
                or i == told
            )
            end = next(ends, 0)
            site, side, rest = _before(nodes, end, items=end == told or (opened and _goes_on(nodes[end])))
        if site is None:
            return
        if not any(n.main == "item" for n in nodes[end:]) or any(
            n.main in ("value", "number", "site", "side", "negation") for n in rest
        ):
            return
        if side is None and nodes[end].main == "colon":
            return  # a bare site with a colon is read below
        context.heading_site = site.key("site")
        said = [node.mark for node in (site, side) if node is not None]
        context.heading_span = (min(mark.start for mark in said), max(mark.end for mark in said))
        context.place_side = Side(side.key("side")) if side is not None else None
        for node in {id(n): n for n in (site, side) if n is not None}.values():
            node.main, node.candidates = "filler", ()

    def _of_general_examination(self, node: Node) -> bool:
        """ "Neck:" opens a part of the general examination; "Legs:" is where what follows was found."""
        named = [r.item for r in node.mark.roles if r.kind in ("item", "context")]
        return any(self.lexicon.component[name] is Component.GENERAL for name in named)

    def unbounded_rest(self, nodes: list[Node]) -> bool:
        """ "the rest of the examination is normal": no one knows what was examined."""
        rest = next((n for n in nodes if n.main == "rest"), None)
        items = {c for n in nodes for c in n.candidates}
        neurological = any("neurolog" in n.text for n in nodes)
        if rest is None or not (not items or (neurological and items == {"general_all"})):
            return False
        words = {n.text for n in nodes}
        whole = any(
            w in {"exam", "examination", "neurologic", "neurological", "everything", "physical"}
            for text in words
            for w in text.split()
        )
        if not (whole or rest.text == "everything else"):
            return False
        return any(n.mark.has("normal", "absent", "unchanged") for n in nodes)
