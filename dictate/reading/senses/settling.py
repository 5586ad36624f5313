"""Last touches to nodes: units told to their numbers, negations that deny nothing, a no that takes back."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from dataclasses import replace

from dictate.grammar import Item
from dictate.model import Side
from dictate.reading.cells.admitted import admit
from dictate.reading.cells.contrasts import but_holds, but_is_not, but_some
from dictate.reading.cells.grading import settle_grades, versus
from dictate.reading.cells.not_so import (
    answer_no,
    answered_behind,
    answers_by_place,
    does_there,
    gone_or_there,
    only_this,
)
from dictate.reading.cells.reaching import reach
from dictate.reading.layout.coma import name_sums
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node
from dictate.reading.phrases.nerves import strength_of_nerve
from dictate.reading.senses.alike import settle_alike
from dictate.reading.senses.both_named import both_of_two
from dictate.reading.senses.denied_values import deny_values, not_this_number
from dictate.reading.senses.held_against import hold_against
from dictate.reading.senses.left_unsaid import tell_unsaid
from dictate.reading.senses.muscle_heads import tell_muscles
from dictate.reading.senses.negations import (
    denied_behind,
    denies_unknown,
    deny_signs,
    fails_itself,
    not_fully,
    verbs_unsaid,
)
from dictate.reading.senses.neighbours import settle_neighbours
from dictate.reading.senses.other_sides import other_sides
from dictate.reading.senses.second_thoughts import (
    can_there,
    hedged_reasons,
    right_of_wrong,
    said_better,
    second_thoughts,
    thought_absent,
)
from dictate.reading.senses.shared_words import share_names
from dictate.reading.senses.short_of import fall_short
from dictate.reading.senses.untested import tell_untested
from dictate.reading.statements.led_values import untitle
from dictate.reading.statements.tasks import SUBJECTS
from dictate.reading.statements.weights import Statement

_QUIET = frozenset({"filler", "word", "talk", "time_span", "conj"})  # no words of the examination


def settle(nodes: list[Node], items: Mapping[str, Item], told: Side | None = None) -> None:
    """Settle, in place, what only the whole sentence shows. told: the one side told of before it."""
    patients_seen(nodes)
    tell_muscles(nodes, items)
    deny_values(nodes, items)
    share_names(nodes)
    fall_short(nodes)
    not_this_number(nodes)
    tell_unsaid(nodes, items)
    other_sides(nodes, told)
    strength_of_nerve(nodes, items)
    untitle(nodes, items)
    side_said_twice(nodes)
    place_titles(nodes)
    settle_grades(nodes, items)
    both_of_two(nodes)
    hold_against(nodes, items)
    versus(nodes)
    settle_alike(nodes)
    settle_neighbours(nodes, items)
    count_losses(nodes, items)
    name_sums(nodes)
    give_units(nodes)
    tell_untested(nodes, items)
    answer_no(nodes)
    answers_by_place(nodes, items)
    answered_behind(nodes, items)
    only_this(nodes)
    but_some(nodes)
    admit(nodes, items)
    but_is_not(nodes)
    but_holds(nodes)
    does_there(nodes)
    gone_or_there(nodes)
    denied_behind(nodes, items)
    denies_unknown(nodes, items)
    fails_itself(nodes)
    thought_absent(nodes, items)
    verbs_unsaid(nodes)
    deny_signs(nodes, items)
    said_better(nodes)
    not_in_position(nodes)
    hedged_reasons(nodes)
    can_there(nodes)
    right_of_wrong(nodes)
    second_thoughts(nodes)
    quiet_negations(nodes)
    not_fully(nodes)
    reach(nodes)


def patients_seen(nodes: list[Node]) -> None:
    """ "Seen in bed, pulse 72": the patient was, and no finding."""
    if nodes and nodes[0].text == "seen" and nodes[0].main == "value":
        nodes[0].main = "filler"


def place_titles(nodes: list[Node]) -> None:
    """ "R arm - withdraws": a dash behind a place is a colon. "Tone, gait: normal": a colon for the whole list."""
    dash = next((i for i, n in enumerate(nodes[:4]) if n.text == "-" and n.main == "comma"), 0)
    if dash and all(n.main in ("side", "site") for n in nodes[:dash]):
        nodes[dash].main = "colon"
    colon = next((i for i, n in enumerate(nodes) if n.main == "colon"), 0)
    items = [n for n in nodes[:colon] if n.main == "item"]
    listed = all(n.main in ("item", "comma", "conj") for n in nodes[:colon])
    if len(items) > 1 and listed and not any(n.main == "item" for n in nodes[colon:]):
        nodes[colon].main = "filler"
        for link in (n for n in nodes[:colon] if n.main == "comma"):
            link.main, link.mark = "conj", replace(link.mark, text="and")


def side_said_twice(nodes: list[Node]) -> None:
    """ "Right arm and (the) right leg 5/5": the two limbs of one side, as in "right arm and leg"."""
    for place in range(len(nodes) - 5, -1, -1):
        said = [at for at, node in enumerate(nodes[place : place + 6], start=place) if node.text != "the"][:5]
        if len(said) < len(("side", "arm", "and", "side", "leg")):
            continue
        one, arm, link, two, leg = (nodes[at] for at in said)
        limbs = all(n.main == "item" and n.mark.has("site") for n in (arm, leg))
        if limbs and one.main == two.main == "side" and one.key("side") == two.key("side") and link.text == "and":
            leg.mark = replace(leg.mark, start=link.mark.end)
            del nodes[said[2] + 1 : said[4]]


def count_losses(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Missed two on recall": what was lost is no score; how much was lost is said in words."""
    scored = any(items[name].kind == "score" for node in nodes for name in node.candidates)
    for place in range(len(nodes) - 2, -1, -1):
        one, two = nodes[place : place + 2]
        if scored and one.text == "minus" and two.main == "number":
            two.main = "word"  # "minus 2 for recall"
        if scored and one.mark.has("loss") and two.main == "number":
            text = f"{one.text} {two.text}"
            nodes[place : place + 2] = [
                Node(Mark(one.mark.start, two.mark.end, (Role("abnormal"),), text=text), "value")
            ]
            _losses_listed(nodes, place + 1)


def _losses_listed(nodes: list[Node], start: int) -> None:
    """ "Lost 3 on orientation, 2 on recall and 3 on attention": what was lost, listed behind it, is no score either."""
    for place in range(start, len(nodes) - 2):
        link, number, word = nodes[place : place + 3]
        if link.main in ("semicolon", "stop", "contrast"):
            return
        of_word = word.text in ("on", "in", "for", "at") or word.main in ("word", "item")  # "2 visuospatial"
        if link.is_break and number.main == "number" and of_word:
            nodes[place + 1] = Node(replace(number.mark, roles=(), number=None), "word")
            for node in nodes[place + 2 : place + 4]:
                if node.main == "item" and (node is word or word.main != "item"):
                    node.main, node.candidates = "word", ()  # "1 on recall, naming normal": nothing is told of recall


def give_units(nodes: list[Node]) -> None:
    """Tell every number the unit said after it."""
    names: tuple[str, ...] = ()
    for one, two in itertools.pairwise(nodes):
        names = one.candidates or names
        unit = two.main == "side" and any(r.kind == "unit" and r.item in names for r in two.mark.roles)
        if one.mark.number is not None and unit:
            two.main = "unit"  # "vital capacity 4 L": no left
        if one.mark.number is not None and two.main == "unit":
            one.unit = two.mark


def quiet_negations(nodes: list[Node]) -> None:
    """ "there was no time": a negation with nothing of the examination after it denies nothing."""
    last_or = max((place for place, node in enumerate(nodes) if node.text in ("or", "nor")), default=-1)
    for place, node in enumerate(nodes):
        if node.main != "negation":
            continue
        if node.text == "without" and _closes_grade(nodes, place):
            node.main = "word"  # "4 plus right with clonus, 3 plus left without"
            continue
        if takes_back(nodes, place):
            node.main = "correction"
            continue
        if denies_a_verb(nodes, place):
            node.main = "word"
            continue
        rest = list(itertools.takewhile(lambda n: n.main in _QUIET, itertools.islice(nodes, place + 1, None)))
        if place + 1 + len(rest) < len(nodes) and not nodes[place + 1 + len(rest)].is_break:
            continue  # it denies what follows
        after = nodes[place + 1 + len(rest) : place + 3 + len(rest)]
        goes_on = len(after) == 2 and after[0].main == "comma" and after[1].sign  # "no deformity, scoliosis"
        listed = goes_on or last_or > place
        if rest and not listed:
            node.main = "word"


def _closes_grade(nodes: list[Node], place: int) -> bool:
    """At the end of a clause that has its grade: of what was named before that, nobody says again."""
    ends = all(node.is_break for node in nodes[place + 1 : place + 2])
    clause = itertools.takewhile(lambda node: not node.is_break, reversed(nodes[:place]))
    return ends and any(node.main == "number" for node in clause)


def titles(one: Statement | None, two: Statement, items: Mapping[str, Item]) -> list[Node]:
    """Words of a statement that only say of what the names of the next one are.

    "Stroke scale: gaze zero, ..." names a scale whose parts follow, "power in the right deltoid" what was graded.
    """
    if one is None or not one.names:
        return []
    groups = {items[c].group for c in two.candidates} - {""}
    scales = {items[c].scale for c in two.candidates if items[c].kind == "grade" and not items[c].blanket}
    if all(items[c].blanket and items[c].scale in scales for c in one.candidates):
        return one.nodes if all(n.main in ("item", "side", "filler") for n in one.nodes) else []
    return [n for n in one.names if n.candidates[0].endswith("_total") and items[n.candidates[0]].group in groups]


def denies_a_verb(nodes: list[Node], place: int) -> bool:
    """ "does not recognise his left hand": what the patient does not do denies no sign named later.

    Nor does a "did not" that stands at an end deny the test before it ("Romberg he didn't").
    """
    said = [n for n in nodes[max(0, place - 2) : place] if n.text in ("does", "did", "do")]
    after = nodes[place + 1 : place + 2]
    if not nodes[place].text.endswith("not") or not (said or nodes[place].text in ("did not", "does not")):
        return False
    if not after or after[0].is_break:
        return any(n.text in SUBJECTS for n in nodes[max(0, place - 2) : place])
    return after[0].main == "word" and len(after[0].text) > 2 and not after[0].text.endswith("ly")


def not_in_position(nodes: list[Node]) -> None:
    """ "Not standing yet": no position of what is told behind it."""
    for one, two in itertools.pairwise(nodes):
        if two.main == "position" and one.main == "negation" and one.text.endswith("not"):
            one.main = two.main = "word"


def takes_back(nodes: list[Node], place: int) -> bool:
    """ "in the right leg, no, the left leg"; "on the left no the right": a no that takes a side back."""
    if nodes[place].text != "no":
        return False
    if place == 0:  # "Drift on the left. No, on the right."
        said = [n.main for n in nodes[1:] if n.main not in ("filler", "stop")]
        return said == ["comma", "side"] or said == ["comma", "side", "site"]
    rest = [n for n in nodes[place + 1 : place + 4] if n.text not in ("the", "in", "on")]
    if nodes[place - 1].mark.number is not None and rest and rest[0].mark.number is not None:
        return True  # "three plus no four plus"
    if nodes[place - 1].main == "comma" and rest and rest[0].main == "comma":
        return True
    return (
        nodes[place + 1 : place + 2] != [] and nodes[place + 1].text == "the" and bool(rest) and rest[0].main == "side"
    )
