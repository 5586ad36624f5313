"""A position, a time or half a pressure said anew behind a correction ("lying, sorry, sitting"): taken back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.marks import Number
from dictate.reading.nodes import Node

_POSTURE = frozenset({"position", "minutes", "at_once", "manoeuvre"})
_QUIET = frozenset({"comma", "filler"})
_NEAR = 20  # mmHg between a half and what it is corrected to
_LEAST = 30  # mmHg; a lesser number counts points
Span = tuple[int, int]  # first token, token after the last


def take_back(nodes: Sequence[Node]) -> list[Span]:
    """Postures and half pressures that a correction takes back: now words that carry nothing, and where they stand."""
    return [*take_back_postures(nodes), *take_back_halves(nodes)]


def take_back_postures(nodes: Sequence[Node]) -> list[Span]:
    """Makes what was taken back, and the correction, words that carry nothing; returns where they stand.

    The first is taken back where no reading stands between ("142 over 88 lying, sorry, sitting"), or where the
    sentence ends with the second ("sitting 120 over 70, no, lying"). Else the correction is of the reading too.
    """
    spans: list[Span] = []
    for place, node in enumerate(nodes):
        if node.main != "correction":
            continue
        anew = _next(nodes, place + 1, _QUIET)
        last = next((i for i in range(place - 1, -1, -1) if nodes[i].main in _POSTURE), None)
        if anew is None or last is None or nodes[anew].main not in _POSTURE:
            continue
        between = nodes[last + 1 : place]
        adjoining = all(n.main in _QUIET for n in between)
        end = _next(nodes, anew, _QUIET | _POSTURE)
        if not adjoining and not (end is None or nodes[end].main == "stop"):
            continue
        first = last
        if nodes[anew].main != "minutes":  # another position takes its minutes with it
            while first > 0 and nodes[first].main != "position" and nodes[first - 1].main in _QUIET | _POSTURE:
                first -= 1
        elif nodes[last].main == "position":
            continue  # "standing, sorry, at three minutes": of the same position
        gone = [*nodes[first : last + 1], *nodes[place:anew], *(between if adjoining else ())]
        for one in gone:
            one.main = "filler"
        spans.append((nodes[first].mark.start, nodes[last].mark.end))
        spans.append((node.mark.start, node.mark.end))
    return spans


def take_back_halves(nodes: Sequence[Node]) -> list[Span]:
    """ "Standing 118, no, 128 over 78": the half pressure is taken back, and no pressure said before it.

    Makes it, and the correction, words that carry nothing; returns where they stand.
    """
    spans: list[Span] = []
    for place, node in enumerate(nodes):
        half = next((i for i in range(place - 1, -1, -1) if nodes[i].main not in _QUIET), None)
        anew = _next(nodes, place + 1, _QUIET)
        if node.main != "correction" or half is None or anew is None:
            continue
        one, two = nodes[half].mark.number, nodes[anew].mark.number
        if one is not None and two is not None and (mended := _half_replaced(one, two, nodes[anew + 1 :])):
            nodes[half].mark = replace(nodes[half].mark, end=nodes[anew].mark.end, number=mended)
            for gone in nodes[half + 1 : anew + 1]:
                gone.main = "filler"
            continue
        if nodes[half].main != "number" or one is None or one.op or two is None:
            continue
        if nodes[anew].main == "item" and two.op == "/":  # a pressure that needs no name
            nodes[half].main = node.main = "filler"
            spans.append((nodes[half].mark.start, node.mark.end))
    return spans


def _half_replaced(pressure: Number, number: Number, behind: Sequence[Node]) -> Number | None:
    """ "118 over 76, sorry, 74", "..., sorry, 116": near one half of a pressure alone, and nothing named behind it."""
    plain = number.op == "" and not number.a_sign and not any(n.main in ("unit", "item") for n in behind[:1])
    if pressure.op != "/" or pressure.b is None or pressure.b < _LEAST or not plain:
        return None
    upper, lower = (abs(number.a - half) <= _NEAR for half in (pressure.a, pressure.b))
    if upper == lower:
        return None
    mended = replace(pressure, a=number.a) if upper else replace(pressure, b=number.a)
    return mended if mended.b is not None and mended.b < mended.a else None


def _next(nodes: Sequence[Node], start: int, skipped: frozenset[str]) -> int | None:
    return next((i for i in range(start, len(nodes)) if nodes[i].main not in skipped), None)
