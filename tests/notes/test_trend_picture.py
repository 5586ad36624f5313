"""Numbers over three visits and more."""

from __future__ import annotations

import xml.etree.ElementTree as ET

from by_hand import examination, finding

from dictate.grammar import Grammar
from dictate.model import Component, Examination, Pressure, Status
from dictate.notes.phrases import STAY
from dictate.notes.trend_picture import trend_pictures
from dictate.notes.trends import trends

SVG = "{http://www.w3.org/2000/svg}"


def visit(systolic: int | None) -> Examination:
    """One pressure, or nothing."""
    if systolic is None:
        return examination()
    value = Pressure(systolic=systolic, diastolic=80)
    return examination(finding(Component.GENERAL, "blood_pressure", Status.MEASURED, value=value, unit="mm[Hg]"))


def test_every_number_is_shown_in_order(grammar: Grammar) -> None:
    """Systolic filled with a full line, diastolic hollow with a dashed one; a table beside."""
    picture = trend_pictures(trends([visit(150), visit(140), visit(130)], grammar))[0]
    root = ET.fromstring(picture.svg)
    assert [one.text for one in root.iter(f"{SVG}text")][:3] == ["150", "140", "130"]
    assert [one.get("fill") for one in root.iter(f"{SVG}circle")] == ["currentColor"] * 3 + ["none"] * 3
    rows = tuple((visit, said.replace(STAY, " ")) for visit, said in picture.rows)
    assert rows == (("visit 1", "150/80 mmHg"), ("visit 2", "140/80 mmHg"), ("visit 3", "130/80 mmHg"))


def test_no_line_leaps_over_a_visit_without_a_number(grammar: Grammar) -> None:
    """It says "no number" there."""
    picture = trend_pictures(trends([visit(150), visit(140), visit(None), visit(130)], grammar))[0]
    lines = [one for one in ET.fromstring(picture.svg).iter(f"{SVG}line") if one.get("stroke-opacity") == "1"]
    assert len(lines) == 2
    assert ">no number<" in picture.svg


def test_two_numbers_are_no_trend(grammar: Grammar) -> None:
    """They stand in the comparison."""
    assert trend_pictures(trends([visit(150), visit(None), visit(130)], grammar)) == ()
