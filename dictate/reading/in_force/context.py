"""Component, side, position and minutes in force when a statement is made, and what ends them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from dictate.model import Position, Side
from dictate.reading.titles.walk import LimbTitle

if TYPE_CHECKING:
    from dictate.reading.nodes import Node


@dataclass(slots=True)
class Posture:
    """Position, minutes of standing and manoeuvre of a reading."""

    position: Position | None = None
    minutes: float | None = None
    manoeuvre: str = ""
    detail: str = ""
    nodes: tuple[Node, ...] = ()
    unsaid: bool = False  # a time was said of a position that was not: nobody knows whether the patient stood up


@dataclass(slots=True)
class Context:
    """What the speaker has said that still holds.

    component: until another heading or an item of another component.
    side: a side said as a heading ("on the left:") holds to the next side, heading or line; a side said before a
    name ("right deltoid five, biceps five") holds for items of the same scale to the end of the sentence.
    posture: to the next position, and past a full stop only for the pulse that directly follows a pressure.
    """

    component: str = ""
    active: tuple[str, ...] = ()  # the items last spoken of
    left: bool = False  # these are of another limb than the title in force
    placed: bool = False  # what was last said was said of a body part
    told_side: Side | None = None  # the one side of the last sentence that told of sides
    heading_side: Side | None = None
    heading_of_grades: bool = False  # "On the left, deltoid four.": past its sentence only for grades, to another side
    heading_once: bool = False  # "left eye:" holds for its sentence only
    list_side: Side | None = None  # "Power, right:" on a line of its own, for the graded muscles on the lines below
    list_scale: str = ""  # what the first of these lines graded: a line of another scale ends the list
    limb: LimbTitle | None = None  # "Right arm." in front of sentences about it
    heading_site: str = ""  # "Hands: ..." to the end of the sentence
    place_side: Side | None = None  # "right arm: ..." to the end of the sentence
    heading_span: tuple[int, int] = (0, 0)  # the tokens that said it
    adjective_side: Side | None = None
    adjective_scale: str = ""
    side_of_limbs: bool = False  # that side is of a limb, or of a whole half ("right sided weakness"): of its limbs too
    order: tuple[Side, Side] | None = None
    posture: Posture | None = None
    posture_open: bool = False  # a position was said and no reading followed yet
    posture_unknown: bool = False  # what this sentence tells may be of the position before it or behind it
    after_pressure: bool = False
    after_pulse: bool = False  # of a pressure, whose posture what was felt then shares
