"""How well a statement reads: it has a value it can have, its adjectives stand before it, its sides are its own."""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from dictate.reading.marks import Role
from dictate.reading.nodes import Node, wants_object
from dictate.reading.phrases.kinds import INABILITY, LEVELS, read_number
from dictate.reading.phrases.lexicon import Lexicon, is_preposition
from dictate.reading.statements.fronts import (
    PARTINGS,
    denied,
    denied_here,
    entitles,
    is_value,
    joins,
    leads_next,
    leads_to_value,
    of_limb,
    of_name,
    opens_clause,
    place_alone,
    told_in_front,
    wants_task,
)

HARD_BREAKS = frozenset({"comma", "semicolon", "contrast", "stop", "colon", "except", "reason", "strike", "swap"})
_NAMED_SIGN = re.compile(r"\b(?:signs?|babinskis?|hoffmanns?|rombergs?|lhermittes?|kernigs?|brudzinskis?|tinels?)$")
_POSTPOSED = ("on ", "in ", "bilaterally", "both sides", "both eyes", "both ears", "either side", "each side")


@dataclass(slots=True)
class Statement:
    """One item name, or several named together, and the nodes before and after that belong to them."""

    names: list[Node] = field(default_factory=list)  # empty: words that go on about what was said before
    before: list[Node] = field(default_factory=list)
    after: list[Node] = field(default_factory=list)
    excepted: bool = False

    @property
    def nodes(self) -> list[Node]:
        """All nodes in the order said."""
        return sorted([*self.before, *self.names, *self.after], key=lambda node: node.mark.start)

    @property
    def candidates(self) -> tuple[str, ...]:
        """All item ids its names may mean."""
        return tuple(dict.fromkeys(c for name in self.names for c in name.candidates))


class Weigher:
    """Weighs one way of dividing a sentence; the higher the better."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.items = lexicon.items
        self.scales = lexicon.grammar.scales

    def is_value(self, node: Node) -> bool:
        """Whether the node says what was found."""
        return is_value(node)

    def satisfied_alone(self, statement: Statement) -> bool:
        """Naming it is enough: a sign, a presence item, a name that carries its value."""
        return all(
            n.sign
            or n.mark.number is not None
            or (self.items[n.candidates[0]].kind == "presence" and self.items[n.candidates[0]].alone)
            for n in statement.names
        )

    def deniable(self, statement: Statement) -> bool:
        """Whether a "no" in front of a list reaches it: a sign, or a test that a "no" calls normal ("or Romberg")."""
        return self.satisfied_alone(statement) or all(
            self.items[n.candidates[0]].negated == "normal" or _NAMED_SIGN.search(n.text) for n in statement.names
        )

    def says_normal(self, statement: Statement) -> bool:
        """ "Chest clear": its names say normal by themselves, so that no list of things denied holds them."""
        return all(n.sign and any(self._is_normal(r) for r in n.mark.roles) for n in statement.names)

    def _is_normal(self, role: Role) -> bool:
        if role.kind == "value":
            return bool(role.item) and self.items[role.item].values[role.key].status == "normal"
        return role.kind == "normal" and bool(role.item)

    def accepts(self, candidates: Sequence[str], node: Node) -> bool:
        """Whether the value can be of one of these items at all."""
        return any(self._accepts_one(name, node) for name in candidates)

    def _accepts_one(self, name: str, node: Node) -> bool:
        item = self.items[name]
        if node.unit is not None and not any(
            r.item == name or (r.key and r.key == item.unit) for r in node.unit.roles if r.kind == "unit"
        ):
            return False  # "four beats" is no grade, "80 beats a minute" no temperature
        if node.mark.number is not None:
            meaning = read_number(item, node.mark.number, "", self.scales.get(item.scale))
            return meaning is not None and meaning.fits > 0
        if node.value_roles(name) or any(not r.item and r.kind != "filler" for r in node.mark.roles):
            return True
        if node.main == "dermatome":
            return name in LEVELS or item.sited
        return any(r.kind == "grade" and r.item == item.scale for r in node.mark.roles)

    def weigh_orphan(self, nodes: list[Node], active: tuple[str, ...]) -> float:
        """Weight of words at the start of a sentence left to what was said before."""
        score = 0.0
        last = next((n for n in reversed(nodes) if n.main != "filler"), None)
        if last is not None and last.main == "value" and (last.text in INABILITY or wants_object(last)):
            score -= 2.0  # "she cannot get out of a low chair", "I could not see the left disc": it is named behind
        elif last is not None and last.main == "value" and last is nodes[-1] and last.mark.has("abnormal"):
            score -= 1.5  # "reduced pinprick over the right cheek": the adjective of the name
        score -= 4.0 if [n.main for n in nodes[-2:]] == ["colon", "side"] else 0.0  # "legs: left | leg drifts"
        for node in nodes:
            if self.is_value(node):
                score -= 1.2 if self.accepts(active, node) else 3.0
            elif node.main in ("negation", "side", "severity", "qualifier", "site"):
                score -= 0.6
            elif node.main in ("hedge", "direction"):
                score -= 0.3
        return score

    def weigh(self, statement: Statement, *, first: bool, tight: bool) -> float:
        """How well a statement reads; `tight`: the next name follows its last node directly."""
        before, after = statement.before, statement.after
        score = self._weigh_before(statement, first=first)
        values_after = [n for n in after if self.is_value(n)]
        values_before = [n for n in before if self.is_value(n)]
        negated = any(n.main == "negation" for n in before)
        whole = all(self.items[c].blanket for c in statement.candidates)
        score -= 2.0 if tight and whole and leads_next(after) else 0.0  # "Motor: spastic tone in both legs"
        score -= 6.0 * sum(not self.accepts(statement.candidates, n) for n in (*values_after, *values_before))
        told = [n for n in (*values_after, *values_before) if n.main != "dermatome" or self._is_level(statement)]
        if not (told or negated or self.satisfied_alone(statement)):
            title = whole or (first and entitles(statement.names, after))
            score -= 1.0 if title or any(n.main == "except" for n in before) else 5.0
        if after and self.satisfied_alone(statement) and after[0].mark.has("absent", "present", "not_examined"):
            score += 1.0  # "lhermitte negative"
        score -= 1.0 if not values_before and {n.main for n in values_after} == {"comparison"} else 0.0
        if values_before and any(n.main != "comparison" for n in values_after) and not negated:
            score -= 2.0 if not any(n.main == "side" for n in after) else 1.0
        return score + self._weigh_after(statement, tight=tight)

    def _is_level(self, statement: Statement) -> bool:
        """A segment says how it was of a level alone; of touch it says where."""
        return not all(self.items[name].sited for name in statement.candidates)

    def _weigh_before(self, statement: Statement, *, first: bool) -> float:
        before = statement.before
        score = told_in_front(statement.names, before, statement.after)
        sides = 0
        speaks = False
        listed = len(statement.names) > 1 or self.satisfied_alone(statement)
        for place, node in enumerate(before):
            later = before[place + 1 :]
            opened = speaks  # something was said before this node
            speaks = speaks or (not node.is_break and node.main not in ("filler", "except"))
            if opened and listed and not any(self.is_value(n) for n in statement.after) and denied(before, place):
                continue  # "no evidence of cognitive or language dysfunction"
            if node.main == "comma" and place_alone(before, place) and statement.names[0].mark.number is not None:
                continue  # "left arm, 120/80"
            if node.main == "except" and any(self.is_value(n) for n in before[:place]) and not first:
                score -= 4.0  # "all reflexes absent | except the biceps"
            if node.main in HARD_BREAKS:
                score -= 9.0 if opened and node.main != "except" else 0.0
            elif node.main == "conj" and opened and not joins(before, place):
                score -= 4.0
            elif node.main == "number":
                score -= 1.5
            elif node.main == "value":
                score -= 0.4
                if node.mark.has("equal") and not first and all(n.text == "and" for n in before[:place]):
                    # "2 plus and symmetric | plantar stem": misheard
                    score -= 6.0 if statement.after and statement.after[0].main == "word" else 1.0
            elif node.main == "negation":
                if any(n.main == "value" and not self._own(statement, n) for n in later) and not of_name(later):
                    score -= 3.0
                else:
                    score += 1.0
            elif node.main == "side":
                sides += 1
                score -= (
                    0.0 if of_limb(before, place, statement.names) else self._misplaced_side(before, place, first=first)
                )
            elif node.main == "throughout" or (node.main == "direction" and not self._own(statement, node)):
                score -= 1.0
            elif node.main == "qualifier" and not self._own(statement, node):
                score -= 2.0
        score -= 2.0 * max(0, sides - 1)
        own = list(itertools.takewhile(lambda n: n.main not in PARTINGS, statement.after))
        sides_after = sum(n.main == "side" for n in own)
        told = sum(self.is_value(n) for n in statement.after) + sum(n.mark.number is not None for n in statement.names)
        if sides and sides_after and (told or not self.satisfied_alone(statement)) and sides_after >= told:
            score -= 2.0  # every value after the name has its own side
        return score

    def _misplaced_side(self, before: list[Node], place: int, *, first: bool) -> float:
        """How little a side in front of a name looks like its adjective."""
        opens = first and all(n.main == "filler" for n in before[:place])  # "in the left hand a tremor"
        score = 2.0 if any(n.main == "negation" for n in before[place + 1 :]) and not opens else 0.0
        score += 2.0 if self.is_postposed(before, place) and not opens else 0.0
        return score + (1.0 if place and before[place - 1].main == "number" else 0.0)

    def _weigh_after(self, statement: Statement, *, tight: bool) -> float:
        after = statement.after
        score = 0.0
        if after and after[0].main == "comma" and any(self.is_value(n) for n in after[1:2]):
            score -= 1.3  # "2+ biceps, 2+ triceps": a number after the comma is rather of the next name
        side_said = any(n.main == "side" for n in statement.before)
        value_open = opened = False  # a value without a side yet; a side that waits for its value
        pairs = 0
        for place, node in enumerate(after):
            score -= 0.3 if node.main == "comma" else 0.0
            side_said = side_said and node.main != "contrast"  # "right biceps 5, though I could not test the left"
            if node.main == "except" and any(
                self.is_value(n) or n.main in ("severity", "side", "site", "qualifier") for n in after[place + 1 :]
            ):
                score -= 3.0  # an exception is a statement of its own
            if node.main == "negation":
                denied = any(self.is_value(n) or n.main == "side" for n in after[place + 1 : place + 3])
                score -= 0.5 if denied else 6.0
            elif self.is_value(node):
                if value_open and place and not leads_to_value(after[place - 1]):
                    score -= 1.0
                value_open = not side_said and not opened
                opened = False
            elif node.main == "side" and any(n.main == "comparison" for n in after[:place]):
                continue  # "weaker than the right": what it is compared with
            elif node.main == "side":
                if (
                    side_said
                    and not any(self.is_value(n) or n.main == "negation" for n in after[place + 1 :])
                    and not self.is_postposed(after, place)
                    and not denied_here(after, place)
                ):
                    score -= 3.0
                elif (
                    value_open and after[place - 1].main == "comma" and any(map(self.is_value, after[place + 1 :][:1]))
                ):
                    value_open, opened = False, True  # "left arm 4, right normal, left leg 3"
                elif value_open:
                    pairs += 1
                    value_open = False
                else:
                    side_said = True
            elif node.main == "qualifier" and not self._own(statement, node):
                score -= 1.0
        both_before = len(after) > 1 and after[-2].main == "side" and after[-2].key("side") == "both"
        if value_open and pairs and not both_before:
            score -= 1.5  # all values before the last had their side
        return score + self._weigh_end(after, pairs=pairs, tight=tight)

    def _weigh_end(self, after: list[Node], *, pairs: int, tight: bool) -> float:
        """What the last node before the next name says."""
        if after and not tight and after[-1].main == "severity" and not any(n.is_break for n in after[-2:-1]):
            return -0.5  # "obese with significant | ankle oedema"
        lead = list(itertools.takewhile(lambda n: n.main in ("qualifier", "direction", "severity"), reversed(after)))
        if lead and after[-len(lead) - 1 : -len(lead)] and after[-len(lead) - 1].main == "contrast":
            return -4.0  # "none at rest but | left beating nystagmus"
        if wants_task(after, tight=tight):
            return -4.0
        last = after[-1] if tight and after else None
        if last is None:
            return 0.0
        if last.main == "site" and after[-2:-1] and after[-2].main == "severity":
            return -2.0  # "obese with significant ankle oedema"
        if [n.main for n in after[-3:]] == ["comma", "side", "site"]:
            return -3.0  # "right leg five, left leg | hip flexion four": where the next one was found
        if last.main == "severity":
            return -0.7 if any(n.is_break for n in after[-2:-1]) else -2.0
        if last.main == "side":
            own = -2.5 if opens_clause(after) else 2.0 if pairs >= 2 else -0.5
            return 0.0 if self.is_postposed(after, len(after) - 1) else own
        return -6.0 if last.main == "negation" else 0.0

    def _own(self, statement: Statement, node: Node) -> bool:
        """The value is particular to one of the statement's items."""
        return any(node.value_roles(c) for c in statement.candidates)

    def is_postposed(self, nodes: list[Node], place: int) -> bool:
        """ "on the right", "at the left", "bilaterally": a side that belongs to what stands before it."""
        if nodes[place].text.startswith(_POSTPOSED):
            return True
        back = place - 1
        while back >= 0 and nodes[back].text in ("the", "a", "his", "her", "their"):
            back -= 1
        return back >= 0 and is_preposition(nodes[back].mark) and nodes[back].text not in ("of", "with")
