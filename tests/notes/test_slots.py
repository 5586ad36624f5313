"""What a statement speaks of, and which wider statement speaks for it."""

from __future__ import annotations

import pytest
from by_hand import examination, finding

from dictate.grammar import Grammar
from dictate.model import Component, Finding, Position, Side, Status
from dictate.notes.slots import Slot, cover, covers_place, place_order, slot_name, slot_of, what_differs

DRIFT = finding(Component.MOTOR, "pronator_drift", Status.PRESENT, side=Side.LEFT)


def wide(item: str, status: Status, component: Component = Component.MOTOR, **more: object) -> Finding:
    """A statement of the other visit."""
    return finding(component, item, status, **more)


@pytest.mark.parametrize(
    ("other", "found"),
    [
        (wide("pronator_drift", Status.ABSENT), True),
        (wide("pronator_drift", Status.PRESENT), False),
        (wide("pronator_drift", Status.ABSENT, side=Side.RIGHT), False),
        (wide("motor_all", Status.NOT_EXAMINED), True),
        (wide("motor_all", Status.NORMAL), True),
        (wide("motor_all", Status.ABNORMAL), False),
        (wide("reflexes_all", Status.NOT_EXAMINED, Component.REFLEXES), False),
    ],
)
def test_cover(other: Finding, found: bool, grammar: Grammar) -> None:
    """A denial without side speaks for each side; a sign without side for none; a component of silence and normal."""
    assert (cover(slot_of(DRIFT, Side.LEFT, grammar), DRIFT, examination(other), grammar) is not None) is found


def test_nearest_statement_speaks(grammar: Grammar) -> None:
    """The item's own before its component's."""
    exam = examination(wide("motor_all", Status.NOT_EXAMINED), wide("pronator_drift", Status.ABSENT))
    assert cover(slot_of(DRIFT, Side.LEFT, grammar), DRIFT, exam, grammar) == 1


def test_position_said_is_the_same_position(grammar: Grammar) -> None:
    """A statement standing does not speak for one lying."""
    standing = finding(Component.GENERAL, "orthostatic_symptoms", Status.ABSENT, position=Position.STANDING)
    assert not covers_place(standing, Slot("orthostatic_symptoms", position=Position.SUPINE), grammar)


def test_positions_stand_as_in_a_series() -> None:
    """Lying before standing."""
    assert place_order(Slot("x", position=Position.SUPINE)) < place_order(Slot("x", position=Position.STANDING))


def test_what_differs_is_named() -> None:
    """Each aspect once."""
    assert list(what_differs([Slot("x", Side.LEFT, "toe")], [Slot("x", Side.RIGHT, "ankle")])) == ["side", "site"]


def test_right_stands_before_left() -> None:
    """As in the note."""
    assert place_order(Slot("x", Side.RIGHT)) < place_order(Slot("x", Side.LEFT))


@pytest.mark.parametrize(
    ("item", "detail", "scale", "condition"),
    [
        ("named_score", ("expanded disability status scale",), "EDSS", ""),
        ("named_score", ("edss",), "EDSS", ""),
        ("named_score", ("stroop",), "stroop", ""),  # a name of its own
        ("cognitive_total", ("mini mental",), "MMSE", ""),
        ("cognitive_total", ("total",), "", ""),  # names no scale
        ("visual_acuity", ("with glasses", "near"), "", "corrected, near"),
        ("pupil_size", ("in dim light",), "", "in the dark"),
        ("reflex_achilles", ("without reinforcement",), "", ""),  # as every reflex without a word of it
    ],
)
def test_scale_and_condition(item: str, detail: tuple[str, ...], scale: str, condition: str, grammar: Grammar) -> None:
    """By the grammar's names, however they were said."""
    slot = slot_of(finding(grammar.component_of(item), item, Status.MEASURED, detail=detail), None, grammar)
    assert (slot.scale, slot.condition) == (scale, condition)


def test_name_of_what_was_felt_in_a_position(grammar: Grammar) -> None:
    """Short where the position stands beside it, as in the note."""
    one = finding(Component.GENERAL, "orthostatic_symptoms", Status.PRESENT, position=Position.STANDING, minutes=3.0)
    assert slot_name(slot_of(one, None, grammar), [one], grammar) == "symptoms standing at 3 min"


def test_a_whole_that_was_normal_says_nothing_of_what_was_not_examined(grammar: Grammar) -> None:
    """ "Cranial nerves intact" examines no smell that was not tested the time before."""
    smell = finding(Component.CRANIAL_NERVES, "smell", Status.NOT_EXAMINED)
    whole = examination(wide("cranial_nerves_all", Status.NORMAL, Component.CRANIAL_NERVES))
    assert cover(slot_of(smell, None, grammar), smell, whole, grammar) is None
    lost = smell.model_copy(update={"status": Status.ABNORMAL})
    assert cover(slot_of(lost, None, grammar), lost, whole, grammar) == 0
