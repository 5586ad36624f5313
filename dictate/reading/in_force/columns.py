"""Two values in a row, where an order of sides was declared ("right then left", a table's head)."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.model import Side
from dictate.reading.in_force.context import Context
from dictate.reading.marks import Role
from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Cell

SHOWS = frozenset("shows showed reveals revealed demonstrates demonstrated is was found".split())
_BARS = ("|", "¦")  # between the columns of a table
_SIDE_WORDS = {"r": "right", "rt": "right", "right": "right", "l": "left", "lt": "left", "left": "left"}
_ABBREVIATED = 2  # letters
_PAIR = 2
_BRACKETS = ("(", ")")


def in_columns(sequence: Sequence[tuple[Node, bool]]) -> list[list[tuple[Node, bool]]]:
    """ "Plantar   mute   down", "LT  ↓ L5  N": two values behind a name, with the place behind each, under columns."""
    names = [pair for pair in sequence if pair[1]]
    told: list[list[tuple[Node, bool]]] = []
    for pair in (pair for pair in sequence if not pair[1]):
        if pair[0].main in ("value", "number"):
            told.append([pair])
        elif pair[0].main in ("site", "dermatome", "severity", "unit") and told:
            told[-1].append(pair)
        elif pair[0].main in ("site", "dermatome"):
            names.append(pair)  # "Vib ankle  4  2", "Deltoid C5  5  4": of both
        elif pair[0].main == "filler" or (pair[0].text in _BRACKETS and not told):
            continue  # "pin  ↓ to knee  ↓ to ankle", "vib (toe)  7  6"
        else:
            return []
    return [[*names, *one] for one in told] if names and len(told) == 2 else []


def give_order(cells: list[Cell], order: tuple[Side, Side]) -> None:
    """Sides declared once ("right then left") for two values in a row."""
    bare = [
        c for c in cells if c.side is None and c.values and c.site_node is None
    ]  # "absent at ankles, present knees"
    denied = any(c.negated for c in bare[1:])  # "finger nose slow, no dysmetria": no second column
    if len(bare) == 2 and len(cells) == 2 and not denied:
        bare[0].side, bare[1].side = order


def declared_columns(nodes: list[Node], context: Context, is_title: Callable[[Node], bool]) -> list[Node]:
    """ "Power R/L" over a list, "(L/R):" in front of one: which of two numbers is of which side."""
    for place in range(len(nodes) - 2):
        if nodes[place + 1].text not in ("/", "-"):
            continue
        one, slash, two = nodes[place : place + 3]
        if not one.main == two.main == "side" or one.key("side") == two.key("side"):
            continue
        rest = [n for n in nodes[place + 3 :] if n.text != ")"]
        pair = bool(rest) and (number := rest[0].mark.number) is not None and number.op == "/"  # "deltoid R/L 5/4"
        if any(n.main in ("value", "number", "negation") for n in nodes[:place]) or (
            rest and rest[0].main != "colon" and not pair
        ):
            continue
        if not (pair and one.key("side") == "right"):  # a pair is right/left as it is
            context.order = (Side(one.key("side")), Side(two.key("side")))
        for node in (one, slash, two):
            node.main = "filler"
        return nodes[: place + 3]
    return _column_line(nodes, context, is_title)


def _column_line(nodes: list[Node], context: Context, is_title: Callable[[Node], bool]) -> list[Node]:
    """ "R   L" alone on its line, or behind a title ("Reflexes:  R  L"): the columns of the table below it."""
    told = [n for n in nodes if n.text not in _BARS]
    while told and (told[-1].main == "colon" or told[-1].text == ")"):
        told.pop()
    sides, titles = told[-2:], told[:-2]
    if [_SIDE_WORDS.get(n.text) for n in sides] not in (["right", "left"], ["left", "right"]):
        return []
    lettered = all(len(n.text) <= _ABBREVIATED for n in sides)  # "MRC  R  L"
    closed = not titles or titles[-1].main == "colon" or nodes[-1].main == "colon" or "|" in {n.text for n in nodes}
    titled = any(n.mark.has("heading") or is_title(n) for n in titles)
    plain = ("heading", "item", "colon", "filler", "site", "comma", *(("word",) if lettered or titled else ()))
    if any(n.main not in plain or n.text in SHOWS for n in titles) or not (closed or lettered or titled):
        return []
    context.order = (Side(sides[0].key("side")), Side(sides[1].key("side")))
    for node in sides:
        node.main = "filler"
    return nodes


def sides_behind(nodes: list[Node]) -> None:
    """ "VA 6/6 6/9 (R L)", "grip 4 5 (L/R)": the sides of two readings, in brackets behind them."""
    for place in reversed([i for i, node in enumerate(nodes) if node.text == "(" and i > 1]):
        inside = list(itertools.takewhile(lambda node: node.text != ")", nodes[place + 1 : place + 5]))
        sides = [node for node in inside if node.main == "side"]
        rest = [node.text for node in inside if node.main != "side"]
        told = nodes[place - 2 : place]
        apart = {"left", "right"} == {node.key("side") for node in sides} and len(sides) == _PAIR
        if apart and rest in ([], ["/"], [","]) and all(node.main == "number" for node in told):
            told[1:1] = [sides[0], Node(nodes[place].mark, "comma")]
            nodes[place - 2 : place + 1 + len(inside)] = [*told, sides[1]]


def pairs_of_words(nodes: list[Node], items: Mapping[str, Item], order: tuple[Side, Side] | None) -> None:
    """ "Plantars up/down", "ankles N/↓", "corneals brisk/brisk": a word for each side, right first as with numbers."""
    for place in reversed([i for i, node in enumerate(nodes) if node.main == "conj" and node.text == "/" and i]):
        three = nodes[place - 1 : place + 2]
        ends = all(n.is_break or n.text == "|" for n in nodes[place + 2 : place + 3])
        if not ends or [n.main for n in three] != ["value", "conj", "value"]:
            continue
        behind = (n for n in reversed(nodes[: place - 1]) if n.main in ("item", "side", "stop"))
        named = {name: items[name] for n in itertools.islice(behind, 1) for name in n.candidates}
        placed = place > 1 and nodes[place - 2].main == "site"  # "Reflexes: knees brisk/brisk"
        if not named or not _of_each_side(three, named, placed=placed):
            continue
        first, link, second = three
        if first.text == second.text:  # the word twice is said once
            both = replace(link.mark, end=second.mark.end, roles=(Role("side", key=Side.BOTH.value),))
            nodes[place : place + 2] = [Node(both, "side")]
            continue
        one, two = (
            Node(replace(link.mark, roles=(Role("side", key=side.value),)), "side")
            for side in order or (Side.RIGHT, Side.LEFT)
        )
        nodes[place : place + 2] = [one, Node(link.mark.only("comma"), "comma"), second, two]


def _of_each_side(pair: Sequence[Node], named: Mapping[str, Item], *, placed: bool) -> bool:
    """The same word twice, one that says normal or present beside one that does not, or two of a closed list."""
    if not all(placed if item.blanket else item.sided == "paired" for item in named.values()):
        return False
    one, two = pair[0], pair[2]
    if one.text == two.text or all(item.kind == "choice" for item in named.values()):
        return True
    return _says_normal(one, named) != _says_normal(two, named) or {_is_there(one), _is_there(two)} == {True, False}


def _is_there(node: Node) -> bool | None:
    return True if node.mark.role("present", "") else False if node.mark.role("absent", "") else None


def _says_normal(node: Node, named: Mapping[str, Item]) -> bool:
    for role in node.mark.roles:
        if role.item in named and role.kind == "value" and role.key in named[role.item].values:
            return named[role.item].values[role.key].status == "normal"
    return any(role.kind == "normal" and role.item in ("", *named) for role in node.mark.roles)
