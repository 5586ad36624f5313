"""Where a statement starts and ends: nodes of a sentence → item names with the words that belong to each."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.reading.denials import Denials
from dictate.reading.fronts import is_adjective, of_two_sides, severed, side_of_value
from dictate.reading.led_values import led_cuts
from dictate.reading.lexicon import Lexicon, is_preposition, leads_on
from dictate.reading.lists import Lists, told_apart
from dictate.reading.nodes import Node
from dictate.reading.tasks import done
from dictate.reading.weights import Statement, Weigher

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
        self.denials = Denials(self.weights)

    def divide(self, nodes: list[Node], active: tuple[str, ...]) -> list[Statement]:
        """Statements of one sentence in order; `active` are the items spoken of before it."""
        groups = self._groups(nodes)
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
        self._mark_exceptions(statements)
        self.denials.tell_modalities(statements)
        self.denials.spread(statements, nodes)
        self.denials.close_lists(statements)
        self._spread_inclusion(statements)
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
        """ "Marked neck stiffness, Brudzinski positive": how much is said of the first, another value of the second."""
        behind = [n for n in nodes[place + 1 : place + 3] if n.main != "filler"]
        told = [n.main for n in (nodes[place - 1], *behind[:1])] == ["comma", "value"]
        first = next(at for at in range(place - 1, -1, -1) if nodes[at] is group[0]) if told else 0
        severe = first > 0 and nodes[first - 1].main == "severity"
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
        if directly.mark.has("same"):
            return True
        clause = [n.main for n in between if n.main != "filler"] == ["comma", "conj"] and lead[-1].main == "value"
        if not between or (any(n.main == "conj" for n in between) and not clause):
            return False
        return self._has_value_behind(nodes, place)

    def _has_value_behind(self, nodes: list[Node], place: int) -> bool:
        after = next((n for n in nodes[place + 1 :] if n.main not in ("filler", "side", "severity")), None)
        return after is not None and self.weights.is_value(after)

    def _carries_value(self, node: Node) -> bool:
        """The phrase is a value of its own ("alert", "euthymic", "three backwards")."""
        counts = {name for name in node.candidates if self.items[name].kind == "quantity" and self.items[name].group}
        return any(
            (r.kind == "alone" and r.item in node.candidates) or (r.kind == "value" and r.item in counts)
            for r in node.mark.roles
        )

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
        last = rest if rest >= 0 and gap[rest].main == "rest" else len(gap)  # "the other | cranial nerves"
        return [
            cut
            for cut in range(last, max(-1, len(gap) - _REACH), -1)
            if not (cut > 0 and is_preposition(gap[cut - 1].mark) and cut < len(gap))
            and not (cut < len(gap) and gap[cut].main in ("unit", "time_span", "stop"))
            and not (1 < cut < len(gap) and (gap[cut - 2].text, gap[cut - 1].main) == ("with", "side"))
            and not (0 < cut < len(gap) and (gap[cut - 1].main, gap[cut].main) == ("side", "site"))  # "the right arm"
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

    def _mark_exceptions(self, statements: Sequence[Statement]) -> None:
        excepted = False
        for statement in statements:
            excepted = excepted or any(n.main == "except" for n in statement.before)
            statement.excepted = excepted
            excepted = excepted or any(n.main == "except" for n in statement.after)


def _plainly_normal(node: Node) -> Node:
    """ "intact to all modalities", said of one item, as the word normal of another."""
    if node.main != "value" or not node.mark.has("normal", "value") or node.mark.has("abnormal"):
        return node
    return Node(node.mark.only("normal"), "value")
