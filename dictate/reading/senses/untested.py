"""What was not tested: words that deny the examining, and not what would have been found."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Role
from dictate.reading.nodes import Node, wants_object

_EXAMINING = frozenset("test examine check assess measure perform evaluate".split())
_EXAMINED = frozenset("tested examined checked assessed measured performed evaluated attempted done".split())
_ABLE = frozenset({"could", "can"})
_WERE = frozenset({"was", "were", "is", "are", "be", "been", "has", "have", "could be", "can be"})
_I_DID = frozenset("did could would have i we".split())
_TODAY = frozenset({"today", "this time", "this visit", "on this occasion", "this morning", "this afternoon"})
_NOT_NOW = _TODAY | _EXAMINED  # "no Romberg done"
_TESTING = frozenset("testing fundoscopy ophthalmoscopy otoscopy examination exam assessment".split())
_EACH = frozenset(f"{which}{group}" for which in ("each muscle", "every muscle") for group in ("", " group")) | {
    "individual muscles",
    "individual groups",
    "individual muscle groups",
}
_BETWEEN = frozenset({"filler", "word", "item", "conj", "comma", "side", "site"})


def tell_untested(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Take, in place, what denies the examining for "not examined" and "not assessable"."""
    together(nodes)
    said_again(nodes)
    not_formally(nodes)
    another_not_tested(nodes)
    if not any(node.main == "negation" for node in nodes):
        return
    not_tested(nodes)
    left_undone(nodes, items)
    not_watched(nodes, items)
    none_tested(nodes)


def together(nodes: list[Node]) -> None:
    """ "Sensation, coordination, gait - not assessable": all that is listed in front of it, and no titles."""
    undone = next((i for i, n in enumerate(nodes) if n.mark.has("not_examined", "not_assessable")), 0)
    listed = nodes[:undone]
    while listed and (listed[-1].main == "comma" or listed[-1].text == "-"):
        listed.pop()
    names = [n for n in listed if n.main == "item" and not n.sign]
    plain = all(n in names or n.main in ("comma", "conj") or n.text == "the" for n in listed)
    if len(names) < len(("one", "two")) or not plain or listed[-1] is not names[-1]:
        return
    for link in (n for n in listed if n.main == "comma"):
        link.main, link.mark = "conj", replace(link.mark, text="and")
    for dash in nodes[len(listed) : undone]:
        dash.main = "filler"


def said_again(nodes: Sequence[Node]) -> None:
    """ "Myotonia: not examined (grip myotonia)": what was not, in other words, and no finding."""
    for place, bracket in enumerate(nodes):
        if bracket.text != "(" or not place or place + 1 >= len(nodes):
            continue
        undone, again = nodes[place - 1], nodes[place + 1]
        name = next((n for n in reversed(nodes[:place]) if n.main == "item"), None)
        left = undone.main == "value" and undone.mark.has("not_examined", "not_assessable")
        if left and name is not None and again.main == "item" and {*again.candidates} <= {*name.candidates}:
            again.main, again.candidates = "filler", ()


def not_formally(nodes: list[Node]) -> None:
    """ "Grossly intact (not formally tested)": how it was tested, behind what was found; it was not left out."""
    for place, node in enumerate(nodes):
        formal = node.main == "value" and node.mark.has("not_examined") and "formally" in node.text.split()
        if not formal or place < 2 or nodes[place - 1].main != "comma" or nodes[place - 2].main != "value":
            continue
        after = nodes[place + 1 : place + 3]
        if not after or after[0].text == ")" or after[0].main == "stop" or (after[0].is_break and len(after) == 1):
            name = next((n for n in reversed(nodes[:place]) if n.main == "item"), None)
            own = tuple(Role("qualifier", c) for c in name.candidates) if name is not None else ()
            node.main, node.mark = ("qualifier", replace(node.mark, roles=own)) if own else (node.main, node.mark)


def another_not_tested(nodes: list[Node]) -> None:
    """ "Strength 5/5 throughout, I did not test each muscle": of words behind it, and not of what was found."""
    for place, node in enumerate(nodes):
        before = next((n for n in reversed(nodes[:place]) if n.main != "filler"), None)
        if node.main != "value" or not wants_object(node) or before is None or before.main != "comma":
            continue
        told = [n for n in nodes[:place] if n.main in ("value", "number", "item")]
        found = bool(told) and told[-1].main != "item" and not told[-1].mark.has("not_examined", "not_assessable")
        clause = list(itertools.takewhile(lambda n: not n.is_break, nodes[place + 1 :]))
        clause = [replace(n, main="word") if n.text in _EACH else n for n in clause]
        named = any(n.main in ("item", "side", "site", "value", "reason") for n in clause)
        if found and not named and any(n.main == "word" and not n.text.endswith("ly") for n in clause):
            for part in nodes[place : place + 1 + len(clause)]:
                part.main = "word"


def not_tested(nodes: list[Node]) -> None:
    """ "did not formally test coordination": what is denied is the examining, not what would have been found."""
    for place, node in enumerate(nodes):
        if node.main != "negation" or not node.text.endswith("not"):
            continue
        after = list(itertools.takewhile(lambda n: n.main in ("filler", "word"), nodes[place + 1 : place + 4]))
        verb = next((n for n in after if n.text in _EXAMINING), None)
        by_me = any(n.text.split()[-1] in _I_DID for n in nodes[max(0, place - 3) : place])
        if verb is not None and by_me and all(n.text.endswith("ly") for n in after[: after.index(verb)]):
            _undone(node, "not_examined")
            verb.main = "filler"


def left_undone(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "No Romberg today", "no fundoscopy": a test was not done; of a sign the same words say that it was not there."""
    said = [node for node in nodes if node.text != "formal"]
    for place, (one, two) in enumerate(itertools.pairwise(said)):
        if one.text != "no" or one.main != "negation" or two.main != "item" or two.sign:
            continue
        sign = any(items[name].kind == "presence" for name in two.candidates)
        behind = said[place + 2 : place + 5]
        if len(behind) > 1 and behind[0].text in _EXAMINED and behind[1].text in _TODAY:
            behind = behind[1:]
        today = bool(behind) and behind[0].text in _NOT_NOW and (len(behind) == 1 or behind[1].is_break)
        if not sign and (today or two.text.split()[-1] in _TESTING):
            _undone(one, "not_examined")


def not_watched(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "I did not see her walk": what somebody does was not looked at; a sign that was not seen is not there."""
    for place, node in enumerate(nodes):
        if node.main != "negation" or node.text.split()[-1] != "see":
            continue
        named = next((n for n in nodes[place + 1 :] if n.main != "filler"), None)
        done = named is not None and named.main == "item" and not named.sign
        if done and named is not None and all(_is_done(items[name]) for name in named.candidates):
            _undone(node, "not_examined")


def none_tested(nodes: list[Node]) -> None:
    """ "Neither touch nor pin could be tested", "no reflexes were examined": none of what is named in between was."""
    for place, node in enumerate(nodes):
        if node.main != "negation" or node.text not in ("neither", "no", "none of"):
            continue
        clause = list(itertools.takewhile(lambda n: n.main in _BETWEEN, nodes[place + 1 :]))
        verb = next((i for i, n in enumerate(clause) if n.text in _EXAMINED and n.main == "filler"), 0)
        named = any(n.main == "item" for n in clause[:verb])
        if named and verb and clause[verb - 1].text in _WERE and verb + 1 == len(clause):
            able = any(word in _ABLE for n in clause[max(0, verb - 2) : verb] for word in n.text.split())
            _undone(node, "not_assessable" if able else "not_examined")


def _undone(node: Node, role: str) -> None:
    node.main, node.mark = "value", replace(node.mark, roles=(Role(role),))


def _is_done(item: Item) -> bool:
    return item.task or (item.kind == "normality" and item.negated == "unclear")
