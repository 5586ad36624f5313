"""Wholes and parts said in one list, of which one thing is said: "tone, power and coordination normal"."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.fronts import leads_into
from dictate.reading.statements.weights import Statement

THERE = frozenset({"some", "only some", "just some", "occasional", "the odd", "the occasional"})
_RUN = ("item", "comma", "conj", "filler")


class Lists:
    """Tells a list of equals from a title over its parts ("reflexes, biceps and triceps")."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items

    def pass_fronts_on(self, statements: list[Statement]) -> None:
        """ "The right arm and leg feel different to touch": the places that a sentence begins with are told of."""
        self._pass_wholes_on(statements)
        if len(statements) < 2 or statements[0].names:
            return
        front, first = statements[0].after, statements[1]
        if leads_into(front, first.before) and all(
            self.items[c].sited or self.items[c].site_items for c in first.candidates
        ):
            first.before[:0] = front
            del statements[0]

    def closes_modalities(self, lead: Sequence[Node], between: Sequence[Node]) -> bool:
        """ "Sensation decreased in the arms to pain and temperature, touch preserved": a comma ends what was told."""
        whole = next((i for i, n in enumerate(lead) if n.main == "item" and self._is_whole(n)), None)
        told = whole is not None and any(n.main == "value" for n in lead)
        return told and lead[-1].text in ("to", "for") and [n.main for n in between if n.main != "filler"] == ["comma"]

    def _pass_wholes_on(self, statements: list[Statement]) -> None:
        """ "Left leg sensation | reduced to touch": the places in front of the whole are of what was tested."""
        for one, two in itertools.pairwise(list(statements)):
            whole = len(one.names) == 1 and not one.names[0].sign and self._is_whole(one.names[0])
            placed = any(n.main in ("side", "site") for n in one.before) and all(n.main == "filler" for n in one.after)
            if whole and placed and len(two.before) > 1 and two.before[-1].text == "to":
                two.before[:0] = [*one.before, Node(one.names[0].mark, "filler"), *one.after]
                statements.remove(one)

    def holds(self, nodes: Sequence[Node], group: Sequence[Node], node: Node, between: Sequence[Node]) -> bool:
        """Whether a whole and what it does not cover stand in one list, closed by an "and" or by a plain "normal"."""
        last = group[-1]
        if self._is_whole(last) == self._is_whole(node) or any(self._says_itself(n) for n in (*group, node)):
            return False
        over, under = (last, node) if self._is_whole(last) else (node, last)
        links = [n.main for n in between if n.main != "filler"]
        if self._covers(over.candidates[0], under.candidates[0]) or links not in (["comma"], ["conj"]):
            return False
        first = next(place for place, one in enumerate(nodes) if one is group[0])
        run = list(itertools.takewhile(lambda n: n.main in _RUN, nodes[first:]))
        after = nodes[first + len(run) : first + len(run) + 1]
        closed = any(n.main == "conj" for n in run)
        plain = any(n.main == "value" and n.mark.role("normal", "") for n in after)  # "bulk, tone, power normal"
        return (closed or plain) and run[-1].main in ("item", "filler")

    def _is_whole(self, node: Node) -> bool:
        return self.items[node.candidates[0]].blanket

    def _says_itself(self, node: Node) -> bool:
        item = self.items[node.candidates[0]]
        return node.sign or node.mark.number is not None or (item.kind == "presence" and item.alone)

    def _covers(self, over: str, under: str) -> bool:
        whole = self.lexicon.component[over] is self.lexicon.component[under]
        return under in self.items[over].covers if self.items[over].covers else whole


def told_apart(nodes: Sequence[Node], place: int) -> bool:
    """ "No clonus, Hoffmann's on the right": behind one denied name and a comma, a name with a place of its own.

    place: of the second name. Without an "or" nobody can tell whether the "no" reaches it.
    """
    if place < 3 or nodes[place - 1].main != "comma" or nodes[place - 2].main != "item":
        return False
    denied = [n.main for n in nodes[: place - 2] if n.main not in ("filler", "severity", "qualifier")][-1:]
    behind = list(itertools.takewhile(lambda n: not n.is_break and n.main != "item", nodes[place + 1 :]))
    after = list(itertools.takewhile(lambda n: n.main != "negation", nodes[place + 1 + len(behind) :]))
    listed = any(n.main == "conj" or n.main == "item" for n in after)
    said = [n.main for n in behind if n.main != "filler"]
    return (
        denied == ["negation"] and not listed and bool(said) and set(said) <= {"side", "site", "direction", "qualifier"}
    )


def perhaps_denied(nodes: Sequence[Node]) -> list[tuple[int, int]]:
    """Tokens of the denial and its name in front of each name that they may deny too."""
    found = []
    for place, node in enumerate(nodes):
        if told_apart(nodes, place):
            denial = next(n for n in reversed(nodes[:place]) if n.main == "negation")
            found.append((denial.mark.start, node.mark.start))
    return found
