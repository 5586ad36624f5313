"""What stands out: the findings that the top of the note repeats."""

from __future__ import annotations

import pytest
from by_hand import examination, finding, reflex

from dictate.grammar import Grammar
from dictate.model import Component, Finding, Grade, Quantity, Score, Side, Status, Text
from dictate.notes import write_note
from dictate.notes.phrases import stands_out
from dictate.notes.summary import summary


def strength(grade: str) -> Finding:
    """A grade of the left deltoid."""
    return finding(Component.MOTOR, "strength_deltoid", Status.MEASURED, value=Grade(scale="mrc", grade=grade))


@pytest.mark.parametrize(
    ("one", "wanted"),
    [
        (strength("5"), False),
        (strength("4+"), True),
        (reflex("reflex_biceps", "2+"), False),
        (reflex("reflex_biceps", "0"), True),
        (finding(Component.MOTOR, "pronator_drift", Status.PRESENT), True),
        (finding(Component.MOTOR, "pronator_drift", Status.ABSENT), False),
        (finding(Component.MOTOR, "pronator_drift", Status.NOT_EXAMINED), False),
        (finding(Component.MOTOR, "pronator_drift", Status.UNCHANGED), False),
        (finding(Component.COORDINATION_GAIT, "gait", Status.ABNORMAL, value=Text(words="wide based")), True),
        (finding(Component.GENERAL, "vital_signs", Status.ABNORMAL), True),
        (finding(Component.MENTAL_STATUS, "gcs_total", Status.MEASURED, value=Score(points=15)), False),
        (finding(Component.MENTAL_STATUS, "gcs_total", Status.MEASURED, value=Score(points=14)), True),
        (finding(Component.CRANIAL_NERVES, "pupil_size", Status.MEASURED, value=Quantity(number=4), unit="mm"), False),
        (finding(Component.CRANIAL_NERVES, "pupil_size", Status.MEASURED, value=Quantity(number=4, then=1), unit="mm"),
         True),
        (finding(Component.GENERAL, "nobody_knows_it", Status.PRESENT), False),
    ],
)  # fmt: skip
def test_what_stands_out(one: Finding, wanted: bool, grammar: Grammar) -> None:
    """The grammar's rule for the item; what was called abnormal always does."""
    assert stands_out(one, grammar) is wanted


def test_an_item_is_named_once(grammar: Grammar) -> None:
    """Its sides stand behind it."""
    both = [finding(Component.MOTOR, "pronator_drift", Status.PRESENT, side=side) for side in (Side.LEFT, Side.RIGHT)]
    shown = summary(examination(*both), grammar)
    assert [(one.component, [name for name, _ in one.items]) for one in shown] == [
        (Component.MOTOR, ["pronator drift"])
    ]
    assert "Motor: pronator drift left present, right present\n" in write_note(examination(*both), grammar)


def test_nothing_is_said_where_nothing_stands_out(grammar: Grammar) -> None:
    """No heading without a finding, and never "all normal"."""
    assert "NOTEWORTHY" not in write_note(examination(strength("5")), grammar)
