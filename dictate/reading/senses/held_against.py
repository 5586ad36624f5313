"""What a finding is held against: the other side, the examiner, a hundred percent; that is no finding of its own."""

from __future__ import annotations

import itertools
from collections.abc import Mapping

from dictate.grammar import Item
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node
from dictate.reading.statements.cuts import is_unknown

_ON_THE_WAY = frozenset({"the", "with", "to", "that", "on", "of", "in"})
_COMPARING = frozenset({"like", "than", "compared", "relative", "versus", "vs", "cf", "c f", "v"})
_DIFFERING = frozenset({"different", "differs", "differ"})
_AROUND = ("orbits around", "orbiting around", "circles around", "rotates around")
_SHORT_OF = frozenset({"less", "shorter", "longer", "more", "fewer", "less than", "more than", "shorter than"})
_PERCENT = frozenset({"percent", "per cent", "%"})
_WHOLE = 100
_MEANWHILE = ("when", "while", "whenever")
_DOERS = ("i", "he", "she", "they", "we")


def hold_against(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """Tell, in place, what was found from what it is held against."""
    compared_places(nodes)
    what_was_done(nodes)
    one_around_the_other(nodes)
    short_of(nodes)
    in_percent(nodes, items)


def compared_places(nodes: list[Node]) -> None:
    """ "Two plus like the right", "brisk compared with the arms": what it is held against is not where it was found."""
    for place, node in enumerate(nodes):
        if node.main not in ("side", "site"):
            continue
        if node.main == "site" and place and nodes[place - 1].main == "compared":
            node.main = "compared"  # "compared with the right leg"
            continue
        behind = [n for n in nodes[max(0, place - 4) : place] if n.text not in _ON_THE_WAY]
        # "relative afferent pupillary defect on the left", "v two on the right"
        named = bool(behind) and behind[-1].main in ("item", "site")
        told = bool(behind) and not named and behind[-1].text.split()[0] in _COMPARING
        told = told or _is_share_of(nodes, place)
        before = {n.text for n in nodes[max(0, place - 6) : place]}
        from_it = bool(behind) and behind[-1].text in ("from", "from the") and not before.isdisjoint(_DIFFERING)
        if told or from_it:
            node.main = "compared"


def what_was_done(nodes: list[Node]) -> None:
    """ "Drifts down when I hold both up": the sides of what was done meanwhile are not where it was found."""
    for place, node in enumerate(nodes[:-1]):
        if node.text not in _MEANWHILE or nodes[place + 1].text not in _DOERS:
            continue
        clause = list(itertools.takewhile(lambda n: not n.is_break, nodes[place + 1 :]))
        if any(is_unknown(n) for n in clause) and not any(n.main in ("item", "value", "number") for n in clause):
            for one in clause:
                one.main = "compared" if one.main == "side" else one.main


def _is_share_of(nodes: list[Node], place: int) -> bool:
    """ "Sixty percent of the right": the side that is the whole hundred."""
    words = [n.text for n in nodes[max(0, place - 3) : place] if n.text != "the"]
    return len(words) > 1 and words[-1] == "of" and words[-2] in _PERCENT


def one_around_the_other(nodes: list[Node]) -> None:
    """ "The right arm orbits around the left": it is the other arm that stays still."""
    for place, node in enumerate(nodes):
        if node.text not in _AROUND:
            continue
        after = list(itertools.takewhile(lambda n: not n.is_break, nodes[place + 1 :]))
        before = list(itertools.takewhile(lambda n: not n.is_break, reversed(nodes[:place])))
        moving = [n for n in before if n.main == "side"]
        if moving and any(n.main == "side" for n in after):
            moving[0].main = "compared"


def short_of(nodes: list[Node]) -> None:
    """ "Six seconds less than the examiner's", "ten seconds shorter": a difference, and no reading of its own."""
    for place, node in enumerate(nodes):
        if node.main != "number" or place + 2 >= len(nodes):
            continue
        word = nodes[place + 2]
        if nodes[place + 1].main == "unit" and word.text in _SHORT_OF and not _counts_on(nodes, place + 3):
            text = f"{node.text} {nodes[place + 1].text} {word.text}"
            mark = Mark(node.mark.start, word.mark.end, (Role("abnormal"),), text=text)
            nodes[place : place + 3] = [Node(mark, "value")]


def _counts_on(nodes: list[Node], place: int) -> bool:
    """ "Ten seconds, less than twelve": a number behind it is a bound."""
    return any(n.main == "number" for n in nodes[place : place + 2])


def in_percent(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Pinprick fifty percent on the left": how much was felt, a hundred being all of it."""
    names: tuple[str, ...] = ()
    for place in range(len(nodes) - 1):
        names = nodes[place].candidates or names
        number, word = nodes[place : place + 2]
        counted = number.main == "number" and number.mark.number is not None and word.text in _PERCENT
        if not counted or not _is_felt(names or _named_behind(nodes, place), items):
            continue
        whole = number.mark.number is not None and number.mark.number.a == _WHOLE
        role = Role("normal" if whole else "abnormal")
        text = f"{number.text} percent"
        number.main, number.mark = "value", Mark(number.mark.start, word.mark.end, (role,), text=text)
        word.main, word.mark = "filler", Mark(word.mark.start, word.mark.end, (), text="")


def _named_behind(nodes: list[Node], place: int) -> tuple[str, ...]:
    return next((n.candidates for n in nodes[place:] if n.main == "item"), ())


def _is_felt(names: tuple[str, ...], items: Mapping[str, Item]) -> bool:
    """Whether the items are told by places and as normal or not, and have no numbers of their own."""
    return bool(names) and all(
        items[name].kind == "normality" and items[name].sited and items[name].sided != "never" for name in names
    )
