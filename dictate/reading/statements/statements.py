"""Where a statement starts and ends: nodes of a sentence → item names with the words that belong to each."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import Lexicon, is_preposition
from dictate.reading.statements.denials import Denials
from dictate.reading.statements.exceptions import Exceptions
from dictate.reading.statements.fronts import (
    belong_together,
    is_adjective,
    leads_place,
    led_by_but,
    of_two_sides,
    other_side_behind,
    parts_sides,
    severed,
    side_of_value,
)
from dictate.reading.statements.groups import Groups
from dictate.reading.statements.led_values import led_cuts
from dictate.reading.statements.lists import Lists
from dictate.reading.statements.weights import Statement, Weigher

_LEADING = ("side", "site", "filler", "qualifier", "severity")  # what may stand between a break and a name
_REACH = 25  # how many nodes before it may belong to a name


class Divider:
    """Deals the nodes between item names out to the names, so that the whole sentence reads best.

    Every possible cut of every gap is weighed (a dynamic programme over the gaps of a sentence); the weights
    below say what makes a statement read well: it has a value it can have, its adjectives stand before it, a
    side after a value belongs to that value.
    """

    def __init__(self, lexicon: Lexicon) -> None:
        self.items = lexicon.items
        self.lists = Lists(lexicon)
        self.weights = Weigher(lexicon)
        self.groups = Groups(lexicon, self.lists, self.weights)
        self.denials = Denials(self.weights)
        self.exceptions = Exceptions(self.weights)

    def divide(self, nodes: list[Node], active: tuple[str, ...]) -> list[Statement]:
        """Statements of one sentence in order; `active` are the items spoken of before it."""
        groups = self.groups.of(nodes)
        if not groups:
            return [Statement(after=list(nodes))] if nodes else []
        gaps = self._gaps(nodes, groups)
        cuts = self._best_cuts(groups, gaps, active)
        cuts[0] += side_of_value(gaps, cuts[0])
        statements = [Statement(after=gaps[0][: cuts[0]])] if cuts[0] else []
        for place, group in enumerate(groups):
            after = gaps[place + 1]
            end = cuts[place + 1] if place + 1 < len(groups) else len(after)
            statements.append(Statement(names=group, before=gaps[place][cuts[place] :], after=after[:end]))
        self._pass_corrections_on(statements)
        self._pass_places_on(statements)
        self.lists.pass_fronts_on(statements)
        self._pass_clauses_on(statements)
        self._pass_grades_back(statements)
        self._pass_severity_on(statements)
        self.exceptions.mark(statements)
        self.denials.tell_modalities(statements)
        self.denials.spread(statements, nodes)
        self.denials.spread_back(statements)
        self.denials.close_lists(statements)
        self._spread_inclusion(statements)
        return statements

    def _gaps(self, nodes: list[Node], groups: list[list[Node]]) -> list[list[Node]]:
        """Nodes before, between and after the groups."""
        gaps: list[list[Node]] = []
        at = {id(node): place for place, node in enumerate(nodes)}
        place = 0
        for group in groups:
            gaps.append(nodes[place : at[id(group[0])]])
            place = at[id(group[-1])] + 1
        gaps.append(nodes[place:])
        return gaps

    # --- the best cuts ------------------------------------------------------------------------------------------

    def _best_cuts(self, groups: list[list[Node]], gaps: list[list[Node]], active: tuple[str, ...]) -> list[int]:
        """For every gap before a name: how many of its nodes belong to what came before."""
        led = led_cuts(groups, gaps, self.items, self.weights.accepts)
        best: dict[int, tuple[float, list[int]]] = {
            cut: (self.weights.weigh_orphan(gaps[0][:cut], active) - severed(gaps[0], cut), [cut])
            for cut in self._allowed(gaps[0])
            if cut < len(gaps[0]) or not is_adjective(gaps[0])
        }
        for place, group in enumerate(groups):
            last = place + 1 == len(groups)
            after_gap = gaps[place + 1]
            ends = [len(after_gap)] if last else self._allowed(after_gap)
            ends = [led[place + 1]] if place + 1 in led else ends
            ends = [1] if not last and leads_place(group, after_gap, self.items) else ends
            following: dict[int, tuple[float, list[int]]] = {}
            for end in ends:
                options = [
                    (
                        score
                        + self.weights.weigh(
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
        """Places where a gap may be cut: near the next name, not behind a preposition nor in "right arm"."""
        rest = next((i for i in range(len(gap) - 1, -1, -1) if gap[i].main != "filler"), -1)
        last = rest if rest >= 0 and gap[rest].main == "rest" else led_by_but(gap)  # "the other | cranial nerves"
        return [
            cut
            for cut in range(last, max(-1, len(gap) - _REACH), -1)
            if not (cut > 0 and _leads_place(gap[:cut]) and cut < len(gap))
            and not (cut < len(gap) and gap[cut].main in ("unit", "time_span", "stop"))
            and not (0 < cut < len(gap) and belong_together(gap[cut - 1], gap[cut]))
            and not parts_sides(gap, cut)
            and not (1 < cut < len(gap) and (gap[cut - 2].text, gap[cut - 1].main) == ("with", "side"))
            and not (cut == len(gap) and of_two_sides(gap))  # "two plus on the left | right plantar up"
        ]

    def _pass_corrections_on(self, statements: list[Statement]) -> None:
        """ "left deltoid four, correction, left deltoid four minus": the correction starts the next statement."""
        for one, two in itertools.pairwise(statements):
            place = next((i for i, n in enumerate(one.after) if n.main == "correction"), None)
            if place is None or any(
                n.main in ("value", "number", "side", "site", "negation") for n in one.after[place:]
            ):
                continue
            two.before[:0] = one.after[place:]
            del one.after[place:]

    def _pass_places_on(self, statements: list[Statement]) -> None:
        """ "no clubbing or pedal oedema": a place between a link and the next name is that name's."""
        for one, two in itertools.pairwise(statements):
            tail = list(itertools.takewhile(lambda n: n.main in ("site", "side"), reversed(one.after)))
            link = one.after[-len(tail) - 1 : -len(tail)] if tail else []
            listed = [n.main for n in one.after[: -len(tail)]] == ["conj"]  # "cyanosis and ankle oedema"
            if link and (listed or link[0].text in ("or", "nor")) and not two.before:
                two.before[:0] = one.after[-len(tail) :]
                del one.after[-len(tail) :]

    def _pass_clauses_on(self, statements: list[Statement]) -> None:
        """ "No tremor on the right; on the left a coarse tremor": a new clause is of the name behind it."""
        for one, two in itertools.pairwise(statements):
            clause = list(itertools.takewhile(lambda n: n.main in _LEADING, reversed(one.after)))
            link = one.after[-len(clause) - 1 : -len(clause)] if clause else []
            placed = any(n.main in ("side", "site") for n in clause) and (self._told(two) or two.before)
            if any(n.main in ("side", "site") or n.is_break for n in two.before):
                continue
            if placed and link and link[0].main in ("semicolon", "contrast"):
                two.before[:0] = one.after[-len(clause) :]
                del one.after[-len(clause) :]

    def _told(self, statement: Statement) -> bool:
        return self.weights.satisfied_alone(statement) or any(map(self.weights.is_value, statement.after))

    def _pass_grades_back(self, statements: list[Statement]) -> None:
        """ "Knee 3+ right with 4 beats of clonus and 2+ left": a number that only the name before can have."""
        for one, two in itertools.pairwise(statements):
            if other_side_behind(one.before, one.names, one.after, two.after):
                start = next(i for i, n in enumerate(two.after) if n.is_break)
                one.after.extend(two.after[start:])
                del two.after[start:]
            place = next((i for i, n in enumerate(two.after) if n.main == "number"), 0)
            number = two.after[place] if place else None
            if number is None or not one.after or one.after[-1].text != "with" or not two.after[place - 1].is_break:
                continue
            if self.weights.accepts(one.candidates, number) and not self.weights.accepts(two.candidates, number):
                one.after.extend(two.after[place - 1 :])
                del two.after[place - 1 :]

    def _pass_severity_on(self, statements: list[Statement]) -> None:
        """ "Mild, asymmetric rigidity": how much, in front of a comma or behind a heading, is of what follows."""
        if len(statements) > 1 and [n.main for n in statements[0].nodes] == ["severity", "comma"]:
            opening = statements.pop(0)
            statements[0].before[:0] = opening.after[:1]
        for one, two in itertools.pairwise(statements):  # "Motor: mild left drift": none of the heading
            told = " ".join(n.main for n in one.after if n.main != "filler")
            if told in ("colon severity", "colon severity side") and all(n.mark.has("heading") for n in one.names):
                two.before[:0], one.after[1:] = one.after[1:], []

    def _spread_inclusion(self, statements: list[Statement]) -> None:
        """ "intact to all modalities, including stereognosis and graphaesthesia": what is included is so too."""
        included: list[Node] = []
        for one, two in itertools.pairwise(statements):
            link = [*one.after, *two.before]
            if any(n.text == "including" for n in link):
                said = [n for n in (*one.before, *one.after) if self.weights.is_value(n) or n.main == "negation"]
                sides = [n for n in (*one.before, *one.after) if n.main == "side" and n.key("side") == "both"][:1]
                included = [*sides, *(_plainly_normal(n) for n in said)] if said else []
            elif any(n.main not in ("comma", "conj", "filler") for n in link):
                included = []
            own = any(self.weights.is_value(n) or n.main == "negation" for n in (*two.before, *two.after))
            fits = all(n.main != "negation" for n in included) or self.weights.deniable(two)
            if included and fits and not own and not self.weights.satisfied_alone(two):
                sided = any(n.main == "side" for n in two.nodes)
                two.before[:0] = [n for n in included if n.main != "side" or not sided]


def _leads_place(gap: Sequence[Node]) -> bool:
    """ "In", "in the": what follows is the place that they lead to."""
    article = len(gap) > 1 and gap[-1].text == "the"
    return is_preposition(gap[-2 if article else -1].mark)


def _plainly_normal(node: Node) -> Node:
    """ "intact to all modalities", said of one item, as the word normal of another."""
    if node.main != "value" or not node.mark.has("normal", "value") or node.mark.has("abnormal"):
        return node
    return Node(node.mark.only("normal"), "value")
