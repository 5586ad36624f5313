"""Second thoughts: "I thought there was a murmur but no", "four, well, four minus", "and I think that was pain"."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Role
from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import INABILITY

_QUIET = frozenset({"filler", "word", "severity", "talk"})
_BETTER = ("well", "or rather", "rather", "or maybe")


def second_thoughts(nodes: list[Node]) -> None:
    """ "I thought there was a murmur but on listening again no": what is said behind the "but" takes it back.

    Not where a side, a place or another name stands behind it: that is told of something else.
    """
    thought = next((i for i, n in enumerate(nodes) if n.text.split()[-1:] in (["thought"], ["wondered"])), len(nodes))
    for place in range(thought + 1, len(nodes)):
        if nodes[place].main != "contrast":
            continue
        clause = list(itertools.takewhile(lambda n: not n.is_break, nodes[place + 1 :]))
        comma = place + 1 + len(clause)
        if clause and _QUIET.issuperset(n.main for n in clause) and nodes[comma : comma + 1]:
            nodes[comma].main = "filler" if nodes[comma].main == "comma" else nodes[comma].main
            clause = list(itertools.takewhile(lambda n: not n.is_break, nodes[place + 1 :]))  # "but on listening, no"
        behind = list(itertools.takewhile(lambda n: not n.is_break, nodes[place + 3 :]))
        alone, told = [n.text for n in clause] == ["no"], {n.main for n in behind}
        if alone and "item" not in told and told & {"value", "number", "negation", "side"}:
            for node in nodes[place + 1 : place + 3]:
                node.main = "filler"  # "but no, it was normal"; "but no, on the right"
            nodes[place].main = "correction" if "side" in told else nodes[place].main
            clause = behind
        if len(clause) > 2 and clause[0].text == "no" and clause[1].main == "filler":
            clause[0].main = "filler"  # "I thought it was nasal but no, it's more of a spastic dysarthria"
        found = [n for n in clause if n.main in ("negation", "value", "number")]
        named = any(n.main in ("item", "side", "site") for n in clause)
        before = any(n.main == "item" for n in nodes[thought:place])
        sides = [[n.key("side") for n in part if n.main == "side"] for part in (nodes[thought:place], clause)]
        if before and not found and sorted(map(len, sides)) == [1, 1] and sides[0] != sides[1]:
            nodes[place].main = "correction"  # "I thought the drift was on the left but it was on the right"
        if found and before and not named and (found[-1].main != "negation" or clause[-1] is found[-1]):
            nodes[place].main = "correction"
            for node in clause:
                node.main = "filler" if node.main in ("severity", "word") else node.main
        return


def thought_absent(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Truncal ataxia, no, I wouldn't call it that", "dysarthria, no.": a sign was named, and was not there.

    What I would not say of anything else ("gait ataxic, I would not say that") leaves open how it was.
    """
    for place, node in enumerate(nodes):
        name = next((n for n in reversed(nodes[:place]) if n.main == "item"), None)
        signs = name is not None and (name.sign or all(items[c].kind == "presence" for c in name.candidates))
        if node.main == "value" and node.mark.has("absent") and "i" in node.text.split() and not signs:
            node.main = "word"
        ends = place + 1 == len(nodes) or nodes[place + 1].is_break
        plain = ends and place > 1 and nodes[place - 1].main == "comma" and nodes[place - 2] is name
        if node.main == "negation" and node.text == "no" and plain and name is not None and name.sign:
            node.main, node.mark = "value", replace(node.mark, roles=(Role("absent"),))


def said_better(nodes: list[Node]) -> None:
    """ "Dorsiflexion four, well, four minus really": the second number takes the place of the first."""
    for place in range(1, len(nodes) - 2):
        said = [n for n in nodes[place + 1 : place + 5] if n.text not in (",", "more", "like", "maybe", "say")]
        one, well = nodes[place - 1], nodes[place]
        if well.main != "comma" or one.mark.number is None or len(said) < 2 or said[0].text not in _BETTER:
            continue
        if said[1].mark.number is not None and said[1].mark.number.op == one.mark.number.op:
            well.main = "correction"


def hedged_reasons(nodes: list[Node]) -> None:
    """ "Four plus, and I think that was pain": what is thought is why, and the finding in front of it is sure."""
    for place, node in enumerate(nodes):
        clause = list(itertools.takewhile(lambda n: not n.is_break, nodes[place + 1 :]))
        opens = place > 0 and nodes[place - 1].is_break
        if node.main == "hedge" and opens and _is_no_finding(clause):
            node.main = "word"


def _is_no_finding(clause: Sequence[Node]) -> bool:
    words = [n for n in clause if n.main != "filler"]
    return bool(words) and clause[0].main == "filler" and all(n.main in ("word", "talk") for n in words)


def can_there(nodes: list[Node]) -> None:
    """ "Can't name a key in the left hand, can in the right": done there, where no word of the task says so."""
    unable = False
    for one, two, three in zip(nodes, nodes[1:], nodes[2:], strict=False):
        unable = one.main not in ("item", "stop") and (unable or (one.main == "value" and one.text in INABILITY))
        place = three if two.text in ("in", "on", "with", "at", "the") else two
        if unable and one.text in ("can", "could") and one.main == "filler" and place.main in ("side", "filler"):
            one.main, one.mark = "value", one.mark.only("normal")


def right_of_wrong(nodes: list[Node]) -> None:
    """ "Wrong at the toes, right at the ankles": no side, but the answer that was right."""
    wrong = False
    for one, two, three in zip(nodes, nodes[1:], nodes[2:], strict=False):
        wrong = wrong or (one.main == "value" and "wrong" in one.text)
        told = three.text in ("at", "in") or three.text.startswith("on the ")
        if wrong and one.is_break and two.text == "right" and two.main == "side" and told:
            two.main, two.mark = "value", two.mark.only("normal")
