"""Noteworthy values."""

from __future__ import annotations

import pytest
from by_hand import finding

from dictate.grammar import Grammar, has_rule, is_noteworthy, load_grammar
from dictate.model import Finding, Grade, Pressure, Quantity, Score, Status, Text


@pytest.fixture(scope="module")
def grammar() -> Grammar:
    """The packaged grammar."""
    return load_grammar()


def said(grammar: Grammar, item: str, status: Status, value: object = None, unit: str = "") -> Finding:
    """One finding of the item's own component."""
    return finding(grammar.component_of(item), item, status, value=value, unit=unit)


@pytest.mark.parametrize(
    ("item", "status", "value", "stands_out"),
    [
        ("strength_deltoid", Status.MEASURED, Grade(scale="mrc", grade="4-"), True),
        ("strength_deltoid", Status.MEASURED, Grade(scale="mrc", grade="5"), False),
        ("gag", Status.PRESENT, None, False),
        ("gag", Status.ABSENT, None, True),
        ("gait", Status.ABNORMAL, Text(words="wide based"), True),
        ("gait", Status.NORMAL, None, False),
        ("gait", Status.NOT_EXAMINED, None, False),
        ("reflex_patellar", Status.MEASURED, Grade(scale="tendon_reflex", grade="2+"), False),
        ("reflex_patellar", Status.MEASURED, Grade(scale="tendon_reflex", grade="0"), True),
        ("gcs_verbal", Status.MEASURED, Score(points=4), True),
        ("gcs_verbal", Status.MEASURED, Score(points=5), False),
        ("timed_up_and_go", Status.MEASURED, Quantity(number=11.9), False),
        ("timed_up_and_go", Status.MEASURED, Quantity(number=12), True),
        ("blood_pressure", Status.MEASURED, Pressure(systolic=120, diastolic=80), False),
    ],
)
def test_what_stands_out_is_the_grammars_rule(grammar, item, status, value, stands_out):
    """Statuses, values, limits, and grades that are not among their scale's normal ones."""
    assert is_noteworthy(said(grammar, item, status, value), grammar) is stands_out


@pytest.mark.parametrize(
    ("item", "status", "value", "ruled"),
    [
        ("blood_pressure", Status.MEASURED, Pressure(systolic=120, diastolic=80), False),
        ("timed_walk", Status.MEASURED, Quantity(number=8, note="10 m in"), False),
        ("weight", Status.MEASURED, Quantity(number=70), False),
        ("strength_deltoid", Status.MEASURED, Grade(scale="mrc", grade="5"), True),
        ("gcs_verbal", Status.MEASURED, Score(points=5), True),
        ("timed_up_and_go", Status.MEASURED, Text(words="slow"), False),
        ("gag", Status.PRESENT, None, True),
        ("handedness", Status.NORMAL, None, False),
    ],
)
def test_a_measured_value_without_a_rule_is_listed_as_it_is(grammar, item, status, value, ruled):
    """A pressure, a weight or a time of walking has none."""
    assert has_rule(said(grammar, item, status, value), grammar) is ruled


def test_an_unknown_item_has_no_rule(grammar):
    """An older examination may hold one."""
    unknown = said(grammar, "gait", Status.ABNORMAL).model_copy(update={"item": "gone"})
    assert not is_noteworthy(unknown, grammar)
    assert not has_rule(unknown, grammar)


def test_numbers_are_compared_in_the_usual_unit(grammar):
    """Half a minute is 30 s."""
    half = said(grammar, "timed_up_and_go", Status.MEASURED, Quantity(number=0.5), "min")
    assert is_noteworthy(half, grammar)


def test_every_rule_names_its_source(grammar):
    """No clinical rule without one."""
    assert all(item.noteworthy.source for item in grammar.items.values() if item.noteworthy)
