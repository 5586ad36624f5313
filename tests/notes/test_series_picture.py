"""The postural series over time."""

from __future__ import annotations

import xml.etree.ElementTree as ET

from by_hand import DEMOS, examination, finding

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.model import Component, Finding, Position, Pressure, Quantity, Status
from dictate.notes.series_picture import series_picture
from dictate.pipeline import examine


def pressure(systolic: int, diastolic: int | None, position: Position, minutes: float | None = None) -> Finding:
    """A reading."""
    return finding(Component.GENERAL, "blood_pressure", Status.MEASURED, unit="mm[Hg]", position=position,
                   minutes=minutes, value=Pressure(systolic=systolic, diastolic=diastolic))  # fmt: skip


def test_demonstration_shows_every_number_dictated(grammar: Grammar) -> None:
    """In the drawing, in the words and in the table."""
    exam = examine([DEMOS / "postural-series.txt"], engine=None, grammar=grammar)
    picture = series_picture(exam, grammar)
    assert picture
    shown = [one.text for one in ET.fromstring(picture.svg).iter("{http://www.w3.org/2000/svg}text")]
    for number in "148 86 62 142 84 66 116 72 74 108 78 114 68 79 126 73".split():
        assert number in shown
    assert [row[0] for row in picture.rows] == [
        "supine", "sitting", "standing at once", "standing at 1 min", "standing at 3 min", "standing at 5 min",
    ]  # fmt: skip
    assert picture.rows[2] == ("standing at once", "116/72 mmHg", "74/min", "lightheaded")
    assert shown.count("S") == 3


def test_one_position_is_no_series(grammar: Grammar) -> None:
    """Nor is a reading without position."""
    assert series_picture(examination(pressure(140, 80, Position.SITTING)), grammar) is None


def test_palpable_pressure_has_no_lower_end(grammar: Grammar) -> None:
    """No diastolic number is made up."""
    picture = series_picture(
        examination(pressure(140, 80, Position.SUPINE), pressure(90, None, Position.STANDING, 1)), grammar
    )
    assert picture
    assert picture.rows[1][1] == "90/palpable mmHg"


def test_conflicting_readings_are_both_shown(grammar: Grammar) -> None:
    """None is chosen."""
    exam = examination(
        pressure(140, 80, Position.SUPINE),
        pressure(100, 60, Position.STANDING, 1),
        pressure(110, 60, Position.STANDING, 1),
    )
    picture = series_picture(exam, grammar)
    assert picture
    assert picture.rows[1][1] == "100/60 mmHg and also 110/60 mmHg"


def test_bound_is_drawn_and_told_as_one(grammar: Grammar) -> None:
    """A sign at the number, an arrow to where the value lies, no ring and no bar; the words say it too."""
    limited = pressure(100, 60, Position.STANDING, 1).model_copy(update={"detail": ("less than",)})
    rate = finding(Component.GENERAL, "heart_rate", Status.MEASURED, unit="/min", position=Position.STANDING,
                   minutes=1, value=Quantity(number=130), detail=("at least",))  # fmt: skip
    picture = series_picture(examination(pressure(140, 80, Position.SUPINE), limited, rate), grammar)
    assert picture
    drawn = ET.fromstring(picture.svg)
    shown = [one.text for one in drawn.iter("{http://www.w3.org/2000/svg}text")]
    assert {"<100", "<60", "≥130", words.SERIES_BOUNDS} <= set(shown)
    assert "130" not in shown
    assert picture.rows[1][1:3] == ("less than 100/60 mmHg", "at least 130/min")
    assert "less than 100/60 mmHg, at least 130/min" in picture.description
    assert not list(drawn.iter("{http://www.w3.org/2000/svg}circle"))
    bars = [one for one in drawn.iter("{http://www.w3.org/2000/svg}line") if one.get("stroke-width") == "4"]
    assert len(bars) == 1
    dashed = [one for one in drawn.iter("{http://www.w3.org/2000/svg}line") if one.get("stroke-dasharray") == "2 2"]
    downward = [float(one.get("y2", 0)) > float(one.get("y1", 0)) for one in dashed]
    assert downward == [True, True, False]


def test_series_of_numbers_speaks_of_no_bounds(grammar: Grammar) -> None:
    """The key explains only what is drawn."""
    picture = series_picture(
        examination(pressure(140, 80, Position.SUPINE), pressure(90, 50, Position.STANDING)), grammar
    )
    assert picture
    assert words.SERIES_BOUNDS not in picture.svg
