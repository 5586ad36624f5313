"""Two values in a row, where an order of sides was declared ("right then left", a table's head)."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from dictate.model import Side
from dictate.reading.in_force.context import Context
from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Cell

SHOWS = frozenset("shows showed reveals revealed demonstrates demonstrated is was found".split())
_BARS = ("|", "¦")  # between the columns of a table
_SIDE_WORDS = {"r": "right", "rt": "right", "right": "right", "l": "left", "lt": "left", "left": "left"}
_ABBREVIATED = 2  # letters


def in_columns(sequence: Sequence[tuple[Node, bool]]) -> list[list[tuple[Node, bool]]]:
    """ "Plantar   mute   down": two bare values behind a name, each with the name, where columns were declared."""
    names = [pair for pair in sequence if pair[1]]
    told = [pair for pair in sequence if not pair[1]]
    if not names or len(told) != 2 or any(node.main not in ("value", "number") for node, _ in told):
        return []
    return [[*names, one] for one in told]


def give_order(cells: list[Cell], order: tuple[Side, Side]) -> None:
    """Sides declared once ("right then left") for two values in a row."""
    bare = [
        c for c in cells if c.side is None and c.values and c.site_node is None
    ]  # "absent at ankles, present knees"
    if len(bare) == 2 and len(cells) == 2:
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
