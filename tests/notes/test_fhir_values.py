"""Values of findings ↔ the value of a FHIR Observation."""

from __future__ import annotations

import pytest
from by_hand import finding

from dictate.model import Acuity, Choice, Component, Grade, Pressure, Quantity, Score, Status, Value
from dictate.notes.fhir_values import clean, concept, quantity, read_value, value_of


@pytest.mark.parametrize(
    ("value", "unit"),
    [
        (Pressure(systolic=142, diastolic=84), "mm[Hg]"),
        (Pressure(systolic=90), "mm[Hg]"),
        (Quantity(number=36.9), "Cel"),
        (Quantity(number=4), ""),
        (Quantity(number=4, then=2), "mm"),
        (Quantity(number=3, upto=4), "mm"),
        (Grade(scale="mrc", grade="4-"), ""),
        (Choice(choice="irregularly_irregular"), ""),
        (Score(points=2, of=3), ""),
        (Score(points=14), ""),
    ],
)
def test_fhir_fields_alone_hold_the_value(value: Value, unit: str) -> None:
    """What they say reads back as the same value, without any help of this program's own."""
    written = value_of(finding(Component.MOTOR, "x", Status.MEASURED, value=value, unit=unit))
    assert read_value(written) == (value.model_dump(mode="json"), unit)


def test_untestable_score_is_text() -> None:
    """10T is not 10."""
    assert value_of(finding(Component.MOTOR, "x", Status.MEASURED, value=Score(points=10, mark="T"))) == {
        "valueString": "10T"
    }


def test_bound_is_no_plain_number() -> None:
    """ "More than 15 s" carries its comparator; of a pressure it is text."""
    more = finding(Component.SENSORY, "x", Status.MEASURED, value=Quantity(number=15), unit="s", detail=("more than",))
    assert value_of(more)["valueQuantity"]["comparator"] == ">"
    value = Pressure(systolic=180, diastolic=90)
    assert value_of(more.model_copy(update={"value": value, "unit": "mm[Hg]", "detail": ("at least",)})) == {
        "valueString": "at least 180/90 mmHg"
    }


def test_acuity_is_text() -> None:
    """A fraction is no ratio of two quantities."""
    assert value_of(finding(Component.MOTOR, "x", Status.MEASURED, value=Acuity(text="20/30"))) == {
        "valueString": "20/30"
    }


def test_unit_not_said_has_no_code() -> None:
    """And none is guessed."""
    assert quantity(36.9, "") == {"value": 36.9}


def test_code_that_fhir_cannot_hold_is_text() -> None:
    """A code has no blanks at its ends."""
    assert concept("urn:x", " a ") == {"text": "a"}


def test_control_signs_are_left_out() -> None:
    """A FHIR string allows none, and no white space but blank, tab and line end."""
    assert clean(" a\x00b\x1f ") == "ab"
    assert clean("a\u2028b\u00a0c\u3000d\ufeffe") == "a b c d e"
