"""Numbers that cannot be right, and numbers without unit."""

from __future__ import annotations

import pytest

from dictate.checks import run_checks
from dictate.grammar import Item, load_grammar
from dictate.grammar.schema import Limits
from dictate.model import Acuity, Component, Quantity, Text
from dictate.pipeline import Typed, examine


@pytest.mark.parametrize(
    ("item", "value", "more"),
    [
        ("blood_pressure", "76/132", {}),
        ("blood_pressure", "120/120", {}),
        ("blood_pressure", "376/80", {}),
        ("blood_pressure", "375/300", {}),
        ("blood_pressure", "300/10", {}),
        ("blood_pressure", "120/19", {}),
        ("heart_rate", "300", {}),
        ("temperature", "47.1", {}),
        ("temperature", "45.1", {"unit": "Cel"}),
        ("temperature", "25.9", {"unit": "Cel"}),
        ("temperature", "140", {"unit": "[degF]"}),
        ("recall", "5/3", {}),
        ("gcs_eye", "5", {}),
        ("gcs_eye", "0", {}),
        ("gcs_total", "16", {}),
        ("gcs_total", "2", {}),
        ("reflex_patellar", "7+", {}),
        ("reflex_patellar", "5+", {}),
        ("strength_deltoid", "6", {}),
        ("strength_deltoid", "5+", {}),
        ("visual_acuity", "20/0", {}),
        ("visual_acuity", "0/20", {}),
        ("sensory_level", "T13", {}),
        ("sensory_level", "C9", {}),
        ("pupil_size", "-2", {}),
    ],
)
def test_an_impossible_value_must_be_asked(said, ask, item, value, more):
    """Outside its limits, above its maximum, or a grade the scale lacks."""
    (query,) = ask("value-implausible", said(item, "measured", value, side="right", **more))
    assert query.severity == "must"


@pytest.mark.parametrize(
    ("item", "value", "more"),
    [
        ("blood_pressure", "375/80", {}),
        ("blood_pressure", "375/299", {}),
        ("blood_pressure", "120/20", {}),
        ("blood_pressure", "70/palpable", {}),
        ("blood_pressure", "180/62", {}),
        ("heart_rate", "299", {}),
        ("temperature", "26", {"unit": "Cel"}),
        ("temperature", "45", {"unit": "Cel"}),
        ("temperature", "98.6", {"unit": "[degF]"}),
        ("temperature", "98.6", {}),
        ("recall", "3/3", {}),
        ("gcs_verbal", "T", {}),
        ("gcs_total", "10T", {}),
        ("gcs_total", "3", {}),
        ("reflex_patellar", "4+", {}),
        ("reflex_patellar", "trace", {}),
        ("strength_deltoid", "4-", {}),
        ("visual_acuity", "20/10", {}),
        ("sensory_level", "T4", {}),
        ("sensory_level", "S5", {}),
    ],
)
def test_a_possible_value_is_left_alone(said, ask, item, value, more):
    """At the limit is inside it."""
    assert ask("value-implausible", said(item, "measured", value, side="right", **more)) == ()


@pytest.mark.parametrize(
    ("value", "count"), [("2/6 systolic", 0), ("2/4", 0), ("6/6", 0), ("7/6 systolic", 1), ("7", 1)]
)
def test_the_grade_of_a_murmur_cannot_exceed_its_maximum(said, ask, value, count):
    """A murmur of seven of six is asked about, one of two of four is kept."""
    assert len(ask("value-implausible", said("murmur", "present", value))) == count


def test_the_second_number_of_a_change_is_judged_too(said, ask):
    """A rate going to 400 is impossible although it began at 80."""
    assert len(ask("value-implausible", said("heart_rate", "measured", Quantity(number=80, then=400)))) == 1


def test_acuity_in_words_is_left_alone(said, ask):
    """Counting fingers is no fraction."""
    assert (
        ask("value-implausible", said("visual_acuity", "measured", Acuity(text="counting fingers"), side="left")) == ()
    )


@pytest.mark.parametrize(
    ("limits", "text"),
    [
        ({"low": 5.0}, "the lowest of 5 /min"),
        ({"high": 9.0}, "the limit of 9 /min"),
        ({"low": 5.0, "high": 9.0}, "5 to 9 /min"),
    ],
)
def test_the_limit_is_named(said, exam, grammar, limits, text):
    """The question says what the number is held against."""
    bound = Item(name="heart rate", kind="quantity", unit="/min", limits=Limits(source="own", **limits))
    part = grammar.components[Component.GENERAL]
    part = part.model_copy(update={"items": {**part.items, "heart_rate": bound}})
    changed = grammar.model_copy(update={"components": {**grammar.components, Component.GENERAL: part}})
    number = "4" if "low" in limits else "10"
    (query,) = run_checks(exam(said("heart_rate", "measured", number)), changed)
    assert f"outside {text};" in query.message


@pytest.mark.parametrize(("item", "value"), [("recall", "-1"), ("heart_rate", "-70"), ("blood_pressure", "120/0")])
def test_nothing_is_below_zero(said, ask, item, value):
    """Counts, rates and pressures begin at zero."""
    assert len(ask("value-implausible", said(item, "measured", value))) == 1


def test_a_unit_that_cannot_be_converted_is_not_judged(said, ask):
    """Limits in Celsius say nothing of another, unknown unit."""
    assert ask("value-implausible", said("temperature", "measured", "310", unit="K")) == ()


def test_a_pressure_said_the_wrong_way_round_suggests_its_reverse(said, ask):
    """76/132 may have been 132/76; it is suggested, not written."""
    (query,) = ask("value-implausible", said("blood_pressure", "measured", "76/132"))
    assert query.suggestions == ("132/76",)


def test_a_number_that_fits_two_units_is_asked(said, ask):
    """71 may be kilograms or pounds."""
    (query,) = ask("unit-missing", said("weight", "measured", "71"))
    assert (query.severity, query.suggestions) == ("look", ("kg", "[lb_av]"))


def test_a_number_that_fits_only_another_unit_is_asked(said, ask):
    """98.6 is no temperature in Celsius: the unit is asked, never converted silently."""
    (query,) = ask("unit-missing", said("temperature", "measured", "98.6"))
    assert query.suggestions == ("[degF]",)


@pytest.mark.parametrize(
    ("item", "value", "unit"), [("temperature", "36.8", ""), ("weight", "71", "kg"), ("heart_rate", "70", "")]
)
def test_no_unit_is_open(said, ask, item, value, unit):
    """Only the usual unit fits, it was said, or there is only one."""
    assert ask("unit-missing", said(item, "measured", value, unit=unit)) == ()


@pytest.mark.parametrize("kind", [lambda digits: Quantity(number=float(digits)), lambda digits: Text(words=digits)])
@pytest.mark.parametrize(("forward", "backward", "asked"), [("4", "6", 1), ("6", "6", 0), ("7", "5", 0)])
def test_a_span_longer_backward_than_forward_is_looked_at(said, ask, kind, forward, backward, asked):
    """Read as a number or as a listed length. Source: common practice, no source."""
    spans = (
        said("digit_span_backward", "measured", kind(backward)),
        said("digit_span_forward", "measured", kind(forward)),
    )
    queries = ask("value-implausible", *spans)
    assert [query.severity for query in queries] == ["look"] * asked
    assert all(query.item == "digit_span_backward" and forward in query.message for query in queries)
    assert ask("value-implausible", spans[0]) == ()
    assert ask("value-implausible", *spans, said("digit_span_forward", "measured", kind("8"))) == ()


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("General. Height 160 percent.", ["height"]),
        ("Temperature 37 kilos.", ["temperature"]),
        ("General. Height 160 cm.", []),
        ("Gait. Tandem gait six steps.", []),
        ("Reflexes. Clonus four beats at the left ankle.", []),
    ],
)
def test_a_unit_that_the_item_never_has_must_be_settled(text: str, asked: list[str]) -> None:
    """The number or the unit was heard or said wrong."""
    exam = examine([Typed("x", text)], engine=None, grammar=load_grammar())
    found = [query for query in exam.open_musts if query.code == "unit-missing"]
    assert [exam.findings[at].item for query in found for at in query.findings] == asked
