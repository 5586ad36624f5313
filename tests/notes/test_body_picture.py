"""Strength and reflexes by side on a schematic figure."""

from __future__ import annotations

import itertools
import xml.etree.ElementTree as ET

from by_hand import examination, finding, reflex

from dictate.grammar import Grammar
from dictate.model import Component, Finding, Grade, Side, Status
from dictate.notes.body_picture import BODY, MIDDLE, PLACES, TOP, reflex_picture, strength_picture

SVG = "{http://www.w3.org/2000/svg}"


def strength(grade: str, side: Side | None, item: str = "strength_deltoid") -> Finding:
    """A grade."""
    return finding(Component.MOTOR, item, Status.MEASURED, value=Grade(scale="mrc", grade=grade), side=side)


def test_patients_right_is_on_the_left(grammar: Grammar) -> None:
    """As one faces the patient, and said so."""
    picture = strength_picture(examination(strength("4", Side.RIGHT)), grammar)
    assert picture
    root = ET.fromstring(picture.svg)
    mark = next(root.iter(f"{SVG}circle"))
    assert float(mark.get("cx", "0")) < MIDDLE
    assert mark.get("fill") == "currentColor"
    texts = {one.text: one.get("text-anchor") for one in root.iter(f"{SVG}text")}
    assert texts["deltoid 4"] == texts["patient's right"] == "start"


def test_both_sides_are_drawn_on_both(grammar: Grammar) -> None:
    """What was said of both."""
    picture = reflex_picture(examination(reflex("reflex_biceps", "2+", side=Side.BOTH)), grammar)
    assert picture
    assert len(list(ET.fromstring(picture.svg).iter(f"{SVG}circle"))) == 2
    assert picture.columns == ("item", "right", "left")  # no column that nothing stands in
    assert picture.rows == (("biceps reflex", "2+", "2+"),)


def test_side_not_said_is_on_no_side(grammar: Grammar) -> None:
    """It stands below the figure and in the last column."""
    exam = examination(reflex("reflex_biceps", "2+"), reflex("reflex_triceps", "2+", side=Side.LEFT))
    picture = reflex_picture(exam, grammar)
    assert picture
    assert picture.rows[0] == ("biceps reflex", "", "", "2+")
    assert len(list(ET.fromstring(picture.svg).iter(f"{SVG}circle"))) == 1


def test_blanket_is_not_spread_over_the_figure(grammar: Grammar) -> None:
    """Alone it makes no picture; beside others it is quoted."""
    whole = finding(Component.MOTOR, "strength_all", Status.MEASURED, value=Grade(scale="mrc", grade="5"),
                    side=Side.RIGHT, quote="right side five throughout")  # fmt: skip
    assert strength_picture(examination(whole), grammar) is None
    picture = strength_picture(examination(whole, strength("4", Side.LEFT)), grammar)
    assert picture
    assert picture.rows[0] == ("strength", "", "", 'right 5, as said: "right side five throughout"')


def test_every_muscle_and_reflex_has_its_place(grammar: Grammar) -> None:
    """On the figure, and inside of it."""
    named = [
        item for item in grammar.items if item.startswith(("strength_", "reflex_")) and not grammar.items[item].blanket
    ]
    missing = [item for item in named if not any(part in item for part in PLACES)]
    assert not missing
    assert all(0 < height < 1 and 0 < off < 60 for height, off in PLACES.values())


def test_rows_never_stand_upon_each_other(grammar: Grammar) -> None:
    """Not with every muscle of one side."""
    items = [item for item in grammar.items if item.startswith("strength_") and not grammar.items[item].blanket]
    picture = strength_picture(examination(*(strength("4", Side.LEFT, item) for item in items)), grammar)
    assert picture
    heights = sorted(
        float(one.get("y", "0")) for one in ET.fromstring(picture.svg).iter(f"{SVG}text") if " 4" in (one.text or "")
    )
    assert len(heights) == len(items)
    assert all(later - before > 9 for before, later in itertools.pairwise(heights))
    assert heights[0] > TOP - 10
    assert len(items) * 16 > BODY


def test_a_side_spoken_of_as_a_whole_is_not_called_not_said(grammar: Grammar) -> None:
    """ "Left side 5 throughout" was said of the left deltoid too, though not of it by itself; of the right nothing."""
    whole = finding(Component.MOTOR, "strength_all", Status.MEASURED, value=Grade(scale="mrc", grade="5"),
                    side=Side.LEFT, quote="left side five throughout")  # fmt: skip
    picture = strength_picture(examination(strength("3", Side.RIGHT), strength("4", Side.LEFT, "strength_biceps"),
                                           whole), grammar)  # fmt: skip
    assert picture
    assert [row[1:3] for row in picture.rows[:2]] == [("3", "not said by itself"), ("not said", "4")]
