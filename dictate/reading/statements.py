"""Where a statement starts and ends: nodes of a sentence → item names with the words that belong to each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from dictate.reading.kinds import read_number
from dictate.reading.lexicon import Lexicon, is_preposition
from dictate.reading.nodes import Node

HARD_BREAKS = frozenset({"comma", "semicolon", "contrast", "stop", "colon", "except", "reason", "strike", "swap"})
_POSTPOSED = ("on ", "in ", "bilat", "both sides", "both eyes", "either side", "each side")


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


class Divider:
    """Deals the nodes between item names out to the names, so that the whole sentence reads best.

    Every possible cut of every gap is weighed (a dynamic programme over the gaps of a sentence); the weights
    below say what makes a statement read well: it has a value it can have, its adjectives stand before it, a
    side after a value belongs to that value.
    """

    def __init__(self, lexicon: Lexicon) -> None:
        self.items = lexicon.items
        self.scales = lexicon.grammar.scales

    def divide(self, nodes: list[Node], active: tuple[str, ...]) -> list[Statement]:
        """Statements of one sentence in order; `active` are the items spoken of before it."""
        groups = self._groups(nodes)
        if not groups:
            return [Statement(after=list(nodes))] if nodes else []
        gaps = self._gaps(nodes, groups)
        cuts = self._best_cuts(groups, gaps, active)
        statements = [Statement(after=gaps[0][: cuts[0]])] if cuts[0] else []
        for place, group in enumerate(groups):
            after = gaps[place + 1]
            end = cuts[place + 1] if place + 1 < len(groups) else len(after)
            statements.append(Statement(names=group, before=gaps[place][cuts[place] :], after=after[:end]))
        self._mark_exceptions(statements)
        self._spread_negation(statements)
        return statements

    # --- names said together ------------------------------------------------------------------------------------

    def _groups(self, nodes: list[Node]) -> list[list[Node]]:
        """Item names said together: "light touch and pinprick", "biceps triceps"."""
        groups: list[list[Node]] = []
        between: list[Node] = []
        for place, node in enumerate(nodes):
            if node.main != "item":
                between.append(node)
                continue
            if groups and self._together(groups[-1], node, between) and not self._closed(nodes, groups[-1][0], place, between):
                groups[-1].append(node)
            else:
                groups.append([node])
            between = []
        return groups

    def _together(self, group: list[Node], node: Node, between: list[Node]) -> bool:
        last = group[-1]
        if any(n.main not in ("comma", "conj", "filler") or is_preposition(n.mark) or n.text == "with" for n in between):
            return False
        if any(self._carries_value(n) or n.mark.number is not None for n in (last, node)):
            return False
        one, two = self.items[last.candidates[0]], self.items[node.candidates[0]]
        if one.kind == "score" and one.group and one.group == two.group:
            return False  # each part of a scale has its own points
        linked = any(n.main in ("comma", "conj") for n in between)
        if one.blanket != two.blanket:
            return linked and any(n.main == "conj" for n in between) and not one.blanket
        if not linked:
            return one.kind == two.kind == "grade" and one.scale == two.scale and last.sign == node.sign
        return last.sign == node.sign or "presence" in (one.kind, two.kind)

    def _closed(self, nodes: list[Node], first: Node, place: int, between: list[Node]) -> bool:
        """The list has its value before it, and a comma starts a name with a value of its own.

        "absent at the knees and ankles, biceps 1+"; "same for deltoid, biceps 5".
        """
        lead = nodes[: next(i for i, n in enumerate(nodes) if n is first)]
        directly = next((n for n in reversed(lead) if n.main not in ("filler", "side", "site")), None)
        if directly is None or not (directly.main in ("value", "negation") or (directly.mark.number is not None)):
            return False
        if directly.mark.has("same"):
            return True
        if any(n.main == "conj" for n in between) or not between:
            return False
        after = next((n for n in nodes[place + 1 :] if n.main not in ("filler", "side")), None)
        return after is not None and self.is_value(after)

    def _carries_value(self, node: Node) -> bool:
        """The phrase is a value of its own ("alert", "euthymic")."""
        return any(r.kind == "alone" and r.item in node.candidates for r in node.mark.roles)

    def _gaps(self, nodes: list[Node], groups: list[list[Node]]) -> list[list[Node]]:
        """Nodes before, between and after the groups."""
        gaps: list[list[Node]] = []
        place = 0
        for group in groups:
            start = next(i for i, n in enumerate(nodes) if n is group[0])
            gaps.append(nodes[place:start])
            place = next(i for i, n in enumerate(nodes) if n is group[-1]) + 1
        gaps.append(nodes[place:])
        return gaps

    # --- the best cuts ------------------------------------------------------------------------------------------

    def _best_cuts(self, groups: list[list[Node]], gaps: list[list[Node]], active: tuple[str, ...]) -> list[int]:
        """For every gap before a name: how many of its nodes belong to what came before."""
        best: dict[int, tuple[float, list[int]]] = {
            cut: (self._orphan(gaps[0][:cut], active), [cut]) for cut in self._allowed(gaps[0])
        }
        for place, group in enumerate(groups):
            last = place + 1 == len(groups)
            after_gap = gaps[place + 1]
            ends = [len(after_gap)] if last else self._allowed(after_gap)
            following: dict[int, tuple[float, list[int]]] = {}
            for end in ends:
                options = [
                    (
                        score
                        + self._weigh(
                            Statement(group, gaps[place][cut:], after_gap[:end]),
                            first=place == 0,
                            tight=not last and end == len(after_gap),
                        ),
                        [*cuts, end],
                    )
                    for cut, (score, cuts) in best.items()
                ]
                following[end] = max(options, key=lambda option: option[0])
            best = following
        return max(best.values(), key=lambda option: option[0])[1]

    def _allowed(self, gap: list[Node]) -> list[int]:
        """Places where a gap may be cut: never right after a preposition, never before a unit."""
        return [
            cut
            for cut in range(len(gap), -1, -1)
            if not (0 < cut and is_preposition(gap[cut - 1].mark) and cut < len(gap))
            and not (cut < len(gap) and gap[cut].main in ("unit", "time_span", "stop"))
        ]

    def is_value(self, node: Node) -> bool:
        """Whether the node says what was found."""
        return node.main in ("value", "number", "dermatome")

    def satisfied_alone(self, statement: Statement) -> bool:
        """Naming it is enough: a sign, a presence item, a name that carries its value."""
        return all(
            n.sign or n.mark.number is not None or (self.items[n.candidates[0]].kind == "presence" and self.items[n.candidates[0]].alone)
            for n in statement.names
        )

    def accepts(self, candidates: Sequence[str], node: Node) -> bool:
        """Whether the value can be of one of these items at all."""
        return any(self._accepts_one(name, node) for name in candidates)

    def _accepts_one(self, name: str, node: Node) -> bool:
        item = self.items[name]
        if node.mark.number is not None:
            meaning = read_number(item, node.mark.number, "", self.scales.get(item.scale))
            return meaning is not None and meaning.fits > 0
        if node.value_roles(name) or any(not r.item and r.kind != "filler" for r in node.mark.roles):
            return True
        if node.main == "dermatome":
            return name == "sensory_level" or item.sited
        return any(r.kind == "grade" and r.item == item.scale for r in node.mark.roles)

    def _orphan(self, nodes: list[Node], active: tuple[str, ...]) -> float:
        """Weight of words at the start of a sentence left to what was said before."""
        score = 0.0
        for node in nodes:
            if self.is_value(node):
                score -= 1.2 if self.accepts(active, node) else 3.0
            elif node.main in ("negation", "side", "severity", "qualifier", "site"):
                score -= 0.6
            elif node.main == "hedge":
                score -= 0.3
        return score

    def _weigh(self, statement: Statement, *, first: bool, tight: bool) -> float:
        """How well a statement reads; `tight`: the next name follows its last node directly."""
        before, after = statement.before, statement.after
        score = self._weigh_before(statement, first=first)
        values_after = [n for n in after if self.is_value(n)]
        values_before = [n for n in before if self.is_value(n)]
        negated = any(n.main == "negation" for n in before)
        refused = sum(not self.accepts(statement.candidates, n) for n in (*values_after, *values_before))
        score -= 6.0 * refused
        if not (values_after or values_before or negated or self.satisfied_alone(statement)):
            blanket = all(self.items[c].blanket for c in statement.candidates)
            score -= 1.0 if blanket else 5.0
        if values_before and values_after and not negated:
            score -= 2.0 if not self._next_reading(after) else 1.0
        return score + self._weigh_after(statement, tight=tight)

    def _next_reading(self, after: list[Node]) -> bool:
        """The values after the name come with a side of their own."""
        return any(n.main == "side" for n in after)

    def _weigh_before(self, statement: Statement, *, first: bool) -> float:
        before = statement.before
        score = 0.0
        sides = 0
        for place, node in enumerate(before):
            later = before[place + 1 :]
            opened = any(not n.is_break and n.main not in ("filler", "except") for n in before[:place])
            if node.main in HARD_BREAKS:
                score -= 6.0 if opened and node.main != "except" else 0.0
            elif node.main == "conj" and opened and not self.joins(before, place):
                score -= 4.0
            elif node.main == "number":
                score -= 1.5
            elif node.main == "value":
                score -= 0.4
            elif node.main == "negation":
                if any(n.main == "value" and not self._own(statement, n) for n in later):
                    score -= 3.0
                else:
                    score += 1.0
            elif node.main == "side":
                sides += 1
                score -= 2.0 if any(n.main == "negation" for n in later) else 0.0
                score -= 2.0 if self.is_postposed(before, place) and not (first and place == 0) else 0.0
                score -= 1.0 if place and before[place - 1].main == "number" else 0.0
            elif node.main in ("throughout", "direction"):
                score -= 1.0
            elif node.main == "qualifier" and not self._own(statement, node):
                score -= 2.0
        score -= 2.0 * max(0, sides - 1)
        sides_after = sum(n.main == "side" for n in statement.after)
        if sides and sides_after and sides_after >= sum(self.is_value(n) for n in statement.after):
            score -= 2.0  # every value after the name has its own side
        return score

    def _weigh_after(self, statement: Statement, *, tight: bool) -> float:
        after = statement.after
        score = 0.0
        side_said = any(n.main == "side" for n in statement.before)
        value_open = False  # a value without a side yet
        pairs = 0
        for place, node in enumerate(after):
            if node.main == "comma":
                score -= 0.3
            if node.main == "negation" and not any(self.is_value(n) or n.main == "side" for n in after[place + 1 : place + 3]):
                score -= 6.0
            elif node.main == "negation":
                score -= 0.5
            elif self.is_value(node):
                if value_open and place and not after[place - 1].is_break and after[place - 1].main not in ("value", "side", "qualifier", "filler", "severity"):
                    score -= 1.0
                value_open = not side_said
            elif node.main == "side":
                if side_said and not any(self.is_value(n) for n in after[place + 1 :]) and not self.is_postposed(after, place):
                    score -= 3.0
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
        if not tight or not after:
            return 0.0
        last = after[-1]
        if last.main == "severity" and not any(n.is_break for n in after[-2:-1]):
            return -2.0
        if last.main == "side":
            if self.is_postposed(after, len(after) - 1):
                return 0.0
            return 2.0 if pairs >= 2 else -0.5
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
        return back >= 0 and is_preposition(nodes[back].mark)

    def joins(self, nodes: list[Node], place: int) -> bool:
        """ "slow and irregular", "right and left": the link joins what it stands between."""
        if place == 0 or place + 1 >= len(nodes):
            return False
        one = nodes[place - 1]
        two = next((n for n in nodes[place + 1 :] if n.main not in ("filler", "severity")), None)
        if two is None:
            return False
        return one.main == two.main == "side" or (one.main == two.main == "value" and one.mark.number is None)

    def _spread_negation(self, statements: list[Statement]) -> None:
        """ "no oedema, clubbing or cyanosis": the negation holds for the whole list, up to a value of its own."""
        for place, statement in enumerate(statements):
            negation = next((n for n in statement.before if n.main == "negation"), None)
            if negation is None or any(self.is_value(n) for n in statement.after):
                negation = self._open_negation(statement.after)
            if negation is None:
                continue
            chain: list[Statement] = []
            linked = False
            end = statement
            for following in statements[place + 1 :]:
                link = [*end.after, *following.before]
                if end is statement and negation in statement.after:
                    link = link[next(i for i, n in enumerate(link) if n is negation) + 1 :]
                    link = [n for n in link if not self.is_value(n)]
                    if not any(n.main == "conj" for n in link):
                        break
                if any(n.main not in ("comma", "conj", "filler", "qualifier") for n in link) or not self.satisfied_alone(following):
                    break
                if any(self.is_value(n) for n in following.after[:1]) or any(n.main == "conj" and n.text == "with" for n in link):
                    break
                chain.append(following)
                linked = linked or any(n.main in ("conj", "comma") for n in link) or len(following.names) > 1
                end = following
            if linked:
                for following in chain:
                    following.before.insert(0, negation)

    def _open_negation(self, after: list[Node]) -> Node | None:
        """ "tongue midline, no wasting or weakness": a negation whose list goes on past this statement."""
        for place in range(len(after) - 1, -1, -1):
            if after[place].main == "negation":
                return after[place] if any(n.main == "conj" for n in after[place:]) else None
            if after[place].is_break and after[place].main != "conj":
                return None
        return None

    def _mark_exceptions(self, statements: Sequence[Statement]) -> None:
        excepted = False
        for statement in statements:
            excepted = excepted or any(n.main == "except" for n in statement.before)
            statement.excepted = excepted
            excepted = excepted or any(n.main == "except" for n in statement.after)
