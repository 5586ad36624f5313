"""Where the posture changes in a sentence, and which of its readings was taken in which."""

from __future__ import annotations

import itertools
from bisect import bisect_left
from collections.abc import Sequence
from typing import TYPE_CHECKING

from dictate.model import Position
from dictate.reading.in_force.context import Posture
from dictate.reading.in_force.vital_signs import is_pressure, is_rate
from dictate.reading.nodes import between

if TYPE_CHECKING:
    from dictate.reading.nodes import Node

_BRACKET = 12  # nodes that stand in a bracket, at most


def events(nodes: Sequence[Node], last: Posture | None = None) -> list[tuple[int, Posture]]:
    """Where in a sentence the posture changes, as (token, posture); `last` is the posture last spoken of.

    "At one minute" after a standing reading is one minute of standing, whatever sentence it starts.
    """
    found: list[tuple[int, Posture]] = []
    current = Posture(position=last.position, unsaid=last.unsaid) if last is not None else Posture()
    read = last is not None  # whether a reading was given in the position in force
    place = 0
    while place < len(nodes):
        node = nodes[place]
        begins = node.mark.start
        changed: Posture | None = None
        if node.main == "position":
            changed = Posture(position=Position(node.key("position")), nodes=(node,))
            place, read = minutes_near(nodes, place, changed), False
        elif node.main == "minutes" and node.mark.number is not None:
            after = _position_after(nodes, place)
            if after is not None:
                changed = Posture(position=Position(nodes[after].key("position")), nodes=(node, nodes[after]))
                _set_minutes(changed, node.mark.number.a)
                place = after
            else:
                second = not current.detail and _is_second(nodes, place, current)
                open_now = current.position is Position.SUPINE and (second or (read and _reading_at(nodes, place + 1)))
                changed = _timed(nodes, place, current, open_now=open_now)
        elif _is_at_once(nodes, place):
            changed = _at_once(node, current, read=read)
        elif node.main == "manoeuvre":
            changed = Posture(manoeuvre=node.key("manoeuvre"), nodes=(node,))
        if changed is not None:
            current = changed
            found.append((begins, current))
        read = read or is_pressure(node)
        place += 1
    return found


def _is_second(nodes: Sequence[Node], place: int, posture: Posture) -> bool:
    """ "Lying 140/80, 110/70 at one minute": the reading in front of the minutes is not the first in its position."""
    begin = next((at for at, node in enumerate(nodes) if any(node is one for one in posture.nodes)), place)
    read = [kind for node in nodes[begin:place] if (kind := _kind_of(node))]
    led = [n for n in nodes[:begin] if n.main != "filler"][-1:]
    closed = begin + 1 < place and nodes[begin + 1].is_break  # "140/80 lying, ..."
    before = next((n for n in reversed(nodes[:place]) if n.main != "filler"), None)
    kind = _kind_of(before) if before is not None else ""
    return bool(kind) and (read.count(kind) + (closed and bool(led) and _kind_of(led[0]) == kind)) > 1


def _kind_of(node: Node) -> str:
    """Of what a number is a reading, by its size and form; empty where it is of neither."""
    return "pressure" if is_pressure(node) else "rate" if is_rate(node) else ""


def _timed(nodes: Sequence[Node], place: int, current: Posture, *, open_now: bool) -> Posture | None:
    """The posture in force with the minutes said here; None when none is in force.

    open_now: "lying 140/82; at one minute 122/80" may be a minute of lying, or of standing up that was not said.
    """
    node = nodes[place]
    number = node.mark.number
    if number is None:
        return None
    if current.position in (Position.STANDING, Position.TILTED):
        return Posture(position=current.position, minutes=number.a, nodes=(*current.nodes[:1], node))
    if current.unsaid or open_now:
        link = "after" if place and nodes[place - 1].text == "after" else "at"
        return Posture(detail=f"{link} {number.first} min", nodes=(node,), unsaid=True)
    if current.position is not None or current.manoeuvre:
        detail = f"after {number.first} min {_lying(current)}".strip()
        return Posture(current.position, None, current.manoeuvre, detail, (*current.nodes, node))
    return None


def _at_once(node: Node, current: Posture, *, read: bool) -> Posture | None:
    """ "Straight away" of the posture in force; behind a lying reading nobody said that the patient stood up."""
    if current.position in (Position.STANDING, Position.TILTED):
        return Posture(position=current.position, minutes=0.0, nodes=(*current.nodes[:1], node))
    if current.unsaid or (read and current.position is Position.SUPINE):
        return Posture(detail=node.text, nodes=(node,), unsaid=True)
    return None


def _reading_at(nodes: Sequence[Node], place: int) -> bool:
    """A pressure directly from that place on: what was said before it is of it."""
    rest = [n for n in nodes[place : place + 4] if n.main not in ("filler", "colon")]
    return bool(rest) and (is_pressure(rest[0]) or (rest[0].main == "item" and any(map(is_pressure, rest[1:2]))))


def _is_at_once(nodes: Sequence[Node], place: int) -> bool:
    """ "122/80 straight away", "at once 122/80", and no position behind it."""
    if nodes[place].main != "at_once" or _position_after(nodes, place) is not None:
        return False
    return _reading_at(nodes, place + 1) or any(map(is_pressure, nodes[max(0, place - 1) : place]))


def _lying(posture: Posture) -> str:
    return {Position.SUPINE: "lying", Position.SITTING: "sitting"}.get(posture.position or Position.STANDING, "")


def _set_minutes(posture: Posture, minutes: float) -> None:
    if posture.position in (Position.STANDING, Position.TILTED):
        posture.minutes = minutes
    else:
        posture.detail = f"after {int(minutes) if minutes == int(minutes) else minutes} min {_lying(posture)}"


def minutes_near(nodes: Sequence[Node], place: int, posture: Posture) -> int:
    """Minutes or "immediately" said with the position; returns the last place taken."""
    for before in (place - 1, place - 2):
        if before >= 0 and nodes[before].main == "at_once" and posture.position is Position.STANDING:
            posture.minutes = 0.0
            posture.nodes = (nodes[before], *posture.nodes)
    after = place + 1
    while after < len(nodes) and (nodes[after].main == "filler" or nodes[after].text == "("):
        after += 1
    at_once = after + (after < len(nodes) and nodes[after].main in ("colon", "comma"))  # "Standing: immediately 120/78"
    if at_once < len(nodes) and nodes[at_once].main == "at_once" and posture.position is Position.STANDING:
        after = at_once
        posture.minutes, posture.nodes = 0.0, (*posture.nodes, nodes[after])
        return after
    if after < len(nodes) and nodes[after].main == "minutes" and nodes[after].mark.number is not None:
        _set_minutes(posture, nodes[after].mark.number.a)  # type: ignore[union-attr]
        posture.nodes = (*posture.nodes, nodes[after])
        return after
    return place


def _position_after(nodes: Sequence[Node], place: int) -> int | None:
    """A position directly after minutes ("at three minutes standing")."""
    after = place + 1
    while after < len(nodes) and nodes[after].main == "filler":
        after += 1
    return after if after < len(nodes) and nodes[after].main == "position" else None


def posture_at(
    token: int,
    sentence: Sequence[Node],
    anchors: Sequence[int],
    carried: Posture | None,
    found: Sequence[tuple[int, Posture]] | None = None,
) -> Posture | None:
    """The posture of the reading at `token`; `anchors` are the tokens of all readings of the sentence.

    found: the sentence's events, where they are known already.
    """
    start, end = _clause(token, sentence)
    inside = [e for e in (events(sentence) if found is None else found) if start <= e[0] < end]
    inside = [e for e in inside if not _of_earlier_reading(e[0], token, sentence)]
    readings = sorted(a for a in anchors if start <= a < end)
    if not inside:
        return carried if start == sentence[0].mark.start else None  # a clause takes over no posture
    before = [p for at, p in inside if at <= token]
    if readings and inside[0][0] < readings[0]:
        own = _minutes_after(token, sentence, inside, readings)
        if own is not None and before and (before[-1].minutes is None or _is_closed(before[-1], sentence)):
            return own
        return before[-1] if before else carried
    if carried is not None and start == sentence[0].mark.start and not any(at > token for at, _ in inside):
        return before[-1]
    after = next(((at, p) for at, p in inside if at > token), None)
    if len(inside) == 1 and readings and after is not None and max(readings) < after[0] and _ends(after[1], sentence):
        return after[1]  # "142/84, pulse 70, sitting": the one posture of the clause, at its end
    if after is not None and not (before and _opens(after[1], sentence)) and _reaches(token, after[0], sentence):
        return after[1]
    if after is not None and not before and _set_off(token, after, sentence):
        return after[1]
    return before[-1] if before else None


def _set_off(token: int, event: tuple[int, Posture], sentence: Sequence[Node]) -> bool:
    """ "132/84, seated, and the pulse 74": between commas, right behind the reading."""
    said = [n.main for n in between(sentence, token, event[0]) if n.main not in ("filler", "number", "side", "site")]
    after = _behind(event[1], sentence)
    closed = bool(after) and after[0].main == "comma"
    return said == ["comma"] and closed and not _reading_at(after, 1)


def _minutes_after(
    token: int, sentence: Sequence[Node], inside: list[tuple[int, Posture]], readings: list[int]
) -> Posture | None:
    """ "120/70 at one minute and 118/70 at three minutes": minutes said after the reading they belong to."""
    next_reading = next((r for r in readings if r > token), sentence[-1].mark.end)
    follows = next(((at, p) for at, p in inside if token < at < next_reading), None)
    if follows is None or follows[1].nodes[-1].main not in ("minutes", "at_once") or len(follows[1].nodes) > 2:
        return None
    parted = any(n.main == "comma" for n in between(sentence, token, follows[0]))
    return follows[1] if _is_closed(follows[1], sentence) and not parted else None


def _of_earlier_reading(event: int, token: int, sentence: Sequence[Node]) -> bool:
    """ "132/78 (right arm, sitting), pulse 66": what stands in brackets behind a reading is of that reading alone."""
    at = bisect_left(sentence, event, key=lambda node: node.mark.start)
    opened = next((place for place in range(at - 1, max(0, at - _BRACKET), -1) if sentence[place].text in "()"), 0)
    if not opened or sentence[opened].text == ")" or sentence[opened - 1].main != "number":
        return False
    behind = sentence[at + 1 : at + _BRACKET]
    closed = next((n.mark.start for n in behind if n.text == ")"), token)
    return closed < token


def _opens(posture: Posture, sentence: Sequence[Node]) -> bool:
    """A pressure follows at once: where postures are said before their readings, it is that pressure's."""
    return _reading_at(_behind(posture, sentence), 0)


def _ends(posture: Posture, sentence: Sequence[Node]) -> bool:
    """Nothing is said after the posture in its clause but where the reading was taken ("seated, in the right arm")."""
    after = itertools.takewhile(lambda n: n.main != "semicolon", _behind(posture, sentence))
    return all(n.main in ("stop", "comma", "filler", "side", "site") for n in after)


def _is_closed(posture: Posture, sentence: Sequence[Node]) -> bool:
    """Nothing more is said of the posture: a link, a comma or the end follows its words."""
    after = _behind(posture, sentence)
    return not after or after[0].is_break


def _behind(posture: Posture, sentence: Sequence[Node]) -> Sequence[Node]:
    """The nodes of the sentence behind the words of the posture."""
    end = max((n.mark.end for n in posture.nodes), default=0)
    return sentence[bisect_left(sentence, end, key=lambda node: node.mark.start) :]


def _reaches(token: int, event: int, sentence: Sequence[Node]) -> bool:
    """Whether a posture said later is of this reading: no comma between, or "both" and "all" before it."""
    said = between(sentence, token, event)
    if any(n.text == "(" for n in said) and not any(n.text == ")" or is_pressure(n) for n in said[1:]):
        return True  # "132/78 (right arm, sitting)"
    if any(n.text in ("both", "all", "each") for n in said[-2:]):
        return True
    if any(is_pressure(n) for n in said[1:]):
        return False  # "... with a pulse of 80 and 110/66 after three minutes": the posture of the pressure between
    return not any(n.text in ("and then", "then") or n.main == "comma" for n in said)


def _clause(token: int, sentence: Sequence[Node]) -> tuple[int, int]:
    """Token range of the part between semicolons that holds the token."""
    start, end = sentence[0].mark.start, sentence[-1].mark.end
    for node in sentence:
        if node.main in ("semicolon", "stop"):
            if node.mark.start < token:
                start = node.mark.end
            elif node.mark.start > token:
                return start, node.mark.start
    return start, end
