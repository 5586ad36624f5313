"""Item names said together, of which one thing is told: "light touch and pinprick", "biceps triceps"."""

from __future__ import annotations

from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import Lexicon, leads_on
from dictate.reading.statements.lists import THERE, Lists, told_apart
from dictate.reading.statements.tasks import done
from dictate.reading.statements.weights import Weigher


class Groups:
    """Finds the names of a sentence that stand together."""

    def __init__(self, lexicon: Lexicon, lists: Lists, weights: Weigher) -> None:
        self.items = lexicon.items
        self.lists = lists
        self.weights = weights

    def of(self, nodes: list[Node]) -> list[list[Node]]:
        """Item names said together: "light touch and pinprick", "biceps triceps"."""
        groups: list[list[Node]] = []
        between: list[Node] = []
        for place, node in enumerate(nodes):
            if node.main != "item":
                between.append(node)
                continue
            if (
                groups
                and not told_apart(nodes, place)
                and not self._measured_apart(groups[-1], nodes, place)
                and not self._severe_apart(groups[-1], nodes, place)
                and (self._together(groups[-1], node, between) or self.lists.holds(nodes, groups[-1], node, between))
                and not self._closed(nodes, groups[-1][0], place, between)
            ):
                groups[-1].append(node)
            else:
                groups.append([node])
            between = []
        return groups

    def _together(self, group: list[Node], node: Node, between: list[Node]) -> bool:
        last = group[-1]
        if any(n.main not in ("comma", "conj", "filler") or n.text == ")" or leads_on(n.mark) for n in between):
            return False
        if any(n.text.startswith("there ") or n.text in THERE for n in between):
            return False  # "does not adduct and there is nystagmus of the other eye": a sentence of its own
        if any(self._carries_value(n) or n.mark.number is not None for n in (last, node)):
            return False
        one, two = self.items[last.candidates[0]], self.items[node.candidates[0]]
        if one.blanket and two.blanket and not between:
            return True  # "sensation coordination and gait could not be examined"
        if one.kind == "score" and one.group and one.group == two.group:
            return False  # each part of a scale has its own points
        if self._says_itself(last) != self._says_itself(node):
            return False  # "ptosis, gait normal": the first needs no value, the second has its own
        if done(last) and not done(node) and not any(n.main == "conj" for n in between):
            return False  # "walks on her toes, heels not tried"
        linked = any(n.main in ("comma", "conj") for n in between) or (not between and node.mark.hyphened)
        if one.blanket != two.blanket:
            joined = [n.text for n in between] == ["and"]  # "sensory and gait not examined"
            return joined or (linked and any(n.main == "conj" for n in between) and not one.blanket)
        if not linked:
            return one.kind == two.kind == "grade" and one.scale == two.scale and last.sign == node.sign
        return True

    def _measured_apart(self, group: list[Node], nodes: list[Node], place: int) -> bool:
        """ "Tall, weighs ten stone": what is measured in other units shares no number behind a comma."""
        one, two = self.items[group[-1].candidates[0]], self.items[nodes[place].candidates[0]]
        told = any(n.mark.number is not None for n in nodes[place + 1 : place + 2])
        return told and one.kind == two.kind == "quantity" and one.units != two.units

    def _severe_apart(self, group: list[Node], nodes: list[Node], place: int) -> bool:
        """ "Marked neck stiffness, Brudzinski positive", "left ptosis, nystagmus absent": told of the second alone."""
        behind = [n for n in nodes[place + 1 : place + 3] if n.main != "filler"]
        told = [n.main for n in (nodes[place - 1], *behind[:1])] == ["comma", "value"]
        first = next(at for at in range(place - 1, -1, -1) if nodes[at] is group[0]) if told else 0
        front = nodes[first - 1].main if first else ""
        sign = self.items[group[0].candidates[0]].name[0].islower()  # and no test, called by a name
        severe = front == "severity" or (sign and front == "side" and behind[0].mark.has("absent"))
        return severe and all(map(self._says_itself, (*group, nodes[place])))

    def _says_itself(self, node: Node) -> bool:
        """Naming it is a finding: a sign, or an item that is present when named."""
        item = self.items[node.candidates[0]]
        return node.sign or (item.kind == "presence" and item.alone)

    def _closed(self, nodes: list[Node], first: Node, place: int, between: list[Node]) -> bool:
        """The list has its value before it, and a comma starts a name with a value of its own.

        "absent at the knees and ankles, biceps 1+"; "same for deltoid, biceps 5".
        """
        lead = nodes[: next(i for i, n in enumerate(nodes) if n is first)]
        directly = next((n for n in reversed(lead) if n.main not in ("filler", "side", "site")), None)
        if directly is None or not (directly.main in ("value", "negation") or (directly.mark.number is not None)):
            return self.lists.closes_modalities(lead, between) and self._has_value_behind(nodes, place)
        graded = directly.mark.number is not None and nodes[place].mark.has("rest")  # "4 at A and the rest is 5"
        if directly.mark.has("same") or (graded and self._has_value_behind(nodes, place)):
            return True
        links = [n.text for n in between if n.main != "filler"]
        sign = self.items[first.candidates[0]]
        denied = directly.main == "negation" and sign.negated == "absent" and "and" in links
        # "no sensory level and saddle sensation intact"; "no grasp, and the palmomental was present"
        denied = denied or (directly.main == "negation" and sign.kind == "presence" and links == [",", "and"])
        clause = [n.main for n in between if n.main != "filler"] == ["comma", "conj"] and lead[-1].main == "value"
        if not between or (not clause and not denied and any(n.main == "conj" for n in between)):
            return False
        return self._has_value_behind(nodes, place)

    def _has_value_behind(self, nodes: list[Node], place: int) -> bool:
        passed = ("filler", "side", "severity", *(("site",) if nodes[place].mark.has("rest") else ()))
        after = next((n for n in nodes[place + 1 :] if n.main not in passed), None)
        return after is not None and self.weights.is_value(after)

    def _carries_value(self, node: Node) -> bool:
        """The phrase is a value of its own ("alert", "euthymic", "three backwards", "repeats well")."""
        counts = {name for name in node.candidates if self.items[name].kind == "quantity" and self.items[name].group}
        return any(
            (r.kind == "alone" and r.item in node.candidates)
            or (r.kind == "value" and r.item in counts)
            or (r.kind == "value" and r.item in node.candidates and self.items[r.item].kind == "normality")
            or (r.kind == "abnormal" and r.item in node.candidates)  # "wasted"
            for r in node.mark.roles
        )
