"""Symptoms, rhythm, arms and missing readings of a series."""

from __future__ import annotations

import pytest
from reckoning.series import figures, finding, pressure, rate, series

from dictate.model import Choice, Position, Side, Status, Text
from dictate.reckoning.circumstances import missing_readings, symptoms_said
from dictate.reckoning.readings import readings_of

MISSING = "postural readings missing"


def symptom(words: str, minutes: float | None, status: Status = Status.PRESENT, site: str = ""):
    """A symptom on standing."""
    value = Text(words=words) if words else None
    return finding("orthostatic_symptoms", value, status=status, position=Position.STANDING, minutes=minutes, site=site)


def test_symptoms_are_named_as_said():
    """With their minute; none is said to be none; those of a manoeuvre belong elsewhere."""
    said = (
        symptom("lightheaded", 0),
        symptom("dizzy", 3),
        symptom("", 5, Status.ABSENT),
        symptom("dizzy", 1, site="stairs"),
    )
    assert symptoms_said(said) == "lightheaded at once, dizzy at 3 min, none at 5 min"
    assert symptoms_said((symptom("", None),)) == "present"
    assert symptoms_said((symptom("dizzy", None, Status.NOT_EXAMINED),)) == ""


def test_a_rise_that_is_met_names_the_symptoms():
    """The heart-rate criterion needs symptoms: as said, or not said."""
    readings = series("supine 116/72, 66 > 3 min 114/76, 98 > 5 min 112/74, 101")
    (figure,) = figures("postural heart-rate criterion", readings, age=27)
    assert figure.text.endswith("; symptoms: not said")
    (figure,) = figures("postural heart-rate criterion", (*readings, symptom("shaky", 5)), age=27)
    assert figure.text.endswith("; symptoms: shaky at 5 min")


def test_an_irregular_rhythm_is_named():
    """Beside rates that were compared; alone it says nothing here."""
    rhythm = finding("heart_rhythm", Choice(choice="irregularly_irregular"), status=Status.ABNORMAL)
    readings = series("supine 150/85, 65 > 3 min 106/66, 73")
    (figure,) = figures("rhythm of the series", (*readings, rhythm))
    assert figure.text.startswith("Heart rhythm irregularly irregular: ")
    assert 4 in figure.inputs
    assert figures("rhythm of the series", (rhythm,)) == ()
    assert figures("rhythm of the series", readings) == ()


def test_pressures_of_different_arms_are_not_compared():
    """Lying left, standing right: named, no verdict."""
    lying = pressure("142/84", "supine", side=Side.LEFT)
    found = (lying, pressure("120/70", "standing", 1.0, side=Side.RIGHT))
    (figure,) = figures("arms of the series", found)
    assert figure.text == "Standing at 1 min, right arm: lying pressure of the left arm only, so not compared"
    assert figures("orthostatic hypotension criterion", found) == ()
    assert figures("arms of the series", (lying, pressure("120/70", "standing", 1.0, side=Side.LEFT))) == ()


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("supine 120/80, 70 > 3 min 118/80, 72", "standing at 5 min"),
        ("supine 120/80, 70 > 5 min 118/80, 72", "standing from 1 to 3 min"),
        ("supine 120/80, 70 > 3 min 118/80, 72 > 5 min 116/80, 72", ""),
        (
            "sitting 120/80, 70 > standing 118/80",
            "lying; standing from 1 to 3 min; standing at 5 min; standing, of the heart rate",
        ),
        ("supine 120/80, 70", "standing; standing at 5 min"),
    ],
)
def test_what_is_missing_for_dizziness(text, wanted):
    """Lying, one to three minutes, five minutes, the rate."""
    assert missing_readings(tuple(one for one in readings_of(series(text)) if one.pressure)) == wanted


def test_missing_readings_are_named_only_for_dizziness():
    """Without the scope nothing is asked for; without any pressure the scope's own question stands."""
    readings = series("supine 120/80, 70 > 3 min 118/80, 72")
    assert figures(MISSING, readings) == ()
    (figure,) = figures(MISSING, readings, scope="dizziness")
    assert figure.text.endswith("although dizziness is asked about: standing at 5 min")
    assert figures(MISSING, (rate(70),), scope="dizziness") == ()
