"""Limits and grades of the packaged grammar against their sources.

Sources: Wang S et al. (MIMIC-Extract, variable ranges file; looked up) · Johnson AEW et al. (vital-sign query; looked
up): the narrower of the two is "not impossible", no norm · Teasdale 2014 (looked up) · MRC 1976 (looked up,
secondary) · Hallett 1993 (from memory; looked up, secondary) · Bohannon and Smith 1987 (looked up, secondary) ·
Freeman and Levine 1933 (looked up, secondary).
Every value is put through the checks of a whole examination.
"""

from __future__ import annotations

import pytest

from dictate.checks import run_checks
from dictate.grammar import Grammar, is_noteworthy
from dictate.model import (
    Evidence,
    Examination,
    Finding,
    Grade,
    Pressure,
    Quantity,
    Score,
    Side,
    Status,
    Transcript,
    Value,
)
from dictate.reckoning import reckon


def measured(grammar: Grammar, item: str, value: Value, unit: str = "") -> Finding:
    """A finding of the right side with that value."""
    return Finding(
        component=grammar.component_of(item),
        item=item,
        side=Side.RIGHT,
        status=Status.MEASURED,
        value=value,
        unit=unit,
        evidence=(Evidence(first=0, last=0, quote=item),),
    )


def implausible(grammar: Grammar, item: str, value: Value, unit: str = "") -> bool:
    """Whether the value raises value-implausible."""
    finding = measured(grammar, item, value, unit)
    exam = Examination(program="0", grammar_sha256=grammar.sha256, transcript=Transcript(), findings=(finding,))
    return "value-implausible" in {query.code for query in run_checks(exam, grammar)}


@pytest.mark.parametrize(
    ("systolic", "diastolic", "out"),
    [
        (375, 80, False),
        (376, 80, True),
        (84, 142, True),
        (120, 120, True),
        (121, 120, False),
        (320, 299, False),
        (320, 300, True),
        (180, 62, False),
    ],
)
def test_pressure_limits(grammar, systolic, diastolic, out):
    """Up to 375 systolic, diastolic below 300 and below the systolic. Source: Wang 2020; Johnson 2018 (looked up)."""
    assert implausible(grammar, "blood_pressure", Pressure(systolic=systolic, diastolic=diastolic), "mm[Hg]") is out


@pytest.mark.parametrize(
    ("item", "number", "unit", "out"),
    [
        ("heart_rate", 351, "/min", True),
        ("heart_rate", 300, "/min", True),
        ("heart_rate", 299, "/min", False),
        ("respiratory_rate", 160, "/min", True),
        ("respiratory_rate", 70, "/min", True),
        ("respiratory_rate", 69, "/min", False),
        ("oxygen_saturation", 0, "%", True),
        ("straight_leg_raise", 120, "deg", False),
        ("straight_leg_raise", 121, "deg", True),
        ("timed_up_and_go", 1.2, "s", True),
        ("heart_rate", 180, "/min", False),
        ("respiratory_rate", 16, "/min", False),
        ("respiratory_rate", 301, "/min", True),
        ("temperature", 26.0, "Cel", False),
        ("temperature", 25.9, "Cel", True),
        ("temperature", 45.0, "Cel", False),
        ("temperature", 45.1, "Cel", True),
        ("temperature", 98.6, "[degF]", False),
        ("temperature", 114, "[degF]", True),
        ("oxygen_saturation", 100, "%", False),
        ("oxygen_saturation", 101, "%", True),
        ("weight", 250, "kg", False),
        ("weight", 251, "kg", True),
        ("weight", 551, "[lb_av]", False),
        ("weight", 552, "[lb_av]", True),
        ("height", 240, "cm", False),
        ("height", 241, "cm", True),
        ("pupil_size", 4, "mm", False),
        ("pupil_size", 12, "mm", True),
        ("pupil_size", 0.5, "mm", True),
    ],
)
def test_quantity_limits(grammar, item, number, unit, out):
    """Vital signs: Wang 2020, Johnson 2018 (looked up); pupils: own rule, about 1 to 10 mm; 1 lb = 0.45359237 kg."""
    assert implausible(grammar, item, Quantity(number=number), unit) is out


@pytest.mark.parametrize(
    ("item", "points", "out"),
    [
        *((f"gcs_{part}", points, not low <= points <= high)
          for part, low, high in (("eye", 1, 4), ("verbal", 1, 5), ("motor", 1, 6), ("total", 3, 15))
          for points in (low - 1, low, high, high + 1)),
        ("four_score", 0, False),
        ("four_score", 16, False),
        ("four_score", 17, True),
        ("nihss_total", 42, False),
        ("nihss_total", 43, True),
        ("nihss_facial", 3, False),
        ("nihss_facial", 4, True),
        ("nihss_ataxia", 2, False),
        ("nihss_ataxia", 3, True),
        ("sara_total", 40, False),
        ("sara_total", 41, True),
        ("pain_score", 10, False),
        ("pain_score", 11, True),
    ],
)  # fmt: skip
def test_score_limits(grammar, item, points, out):
    """Teasdale 2014 (coma scale), Wijdicks 2005 (FOUR), Brott 1989 (NIHSS), Schmitz-Hübsch 2006 (SARA): looked up."""
    assert implausible(grammar, item, Score(points=float(points))) is out


@pytest.mark.parametrize(
    ("scale", "exist", "missing"),
    [
        ("mrc", "0 1 2 3 4 5 4- 4+ 5- 3+ 3- 2+ 2-", "6 5+ -1"),
        ("tendon_reflex", "0 trace 1+ 2+ 3+ 4+", "6+ 7+ 5+ -1"),
        ("ashworth", "0 1 1+ 2 3 4", "2+ 5"),
        ("levine", "1 2 3 4 5 6", "0 7"),
    ],
)
def test_grades_of_the_scales(grammar, scale, exist, missing):
    """MRC 1976; Hallett 1993 and the plus notation; Bohannon and Smith 1987; Freeman and Levine 1933."""
    grades = grammar.scales[scale].grades
    assert set(exist.split()) <= set(grades)
    assert not set(missing.split()) & set(grades)


@pytest.mark.parametrize(
    ("item", "scale", "grade", "out"),
    [
        ("strength_deltoid", "mrc", "4-", False),
        ("strength_deltoid", "mrc", "6", True),
        ("strength_deltoid", "mrc", "5+", True),
        ("reflex_patellar", "tendon_reflex", "4+", False),
        ("reflex_patellar", "tendon_reflex", "6+", True),
        ("reflex_patellar", "tendon_reflex", "5+", True),
        ("ashworth", "ashworth", "1+", False),
        ("ashworth", "ashworth", "2+", True),
    ],
)
def test_a_grade_the_scale_lacks_is_asked(grammar, item, scale, grade, out):
    """Grades outside the scale are reported, never taken over silently. Source: the scales' limits (arithmetic)."""
    assert implausible(grammar, item, Grade(scale=scale, grade=grade)) is out


def test_mrc_grades_rise(grammar):
    """0 < 1 < 2- < 2 < 2+ ... < 5- < 5, the order for comparing visits. Source: MRC 1976; signs: common practice."""
    order = ["0", "1", "2-", "2", "2+", "3-", "3", "3+", "4-", "4", "4+", "5-", "5"]
    assert [grade for grade in grammar.scales["mrc"].grades if grade in order] == order


def test_ashworth_grades_rise(grammar):
    """0 < 1 < 1+ < 2 < 3 < 4. Source: Bohannon and Smith 1987 (looked up, secondary)."""
    assert list(grammar.scales["ashworth"].grades) == ["0", "1", "1+", "2", "3", "4"]


def test_every_limit_and_scale_names_its_source(grammar):
    """No clinical number without a source."""
    assert all(item.limits.source for item in grammar.items.values() if item.limits)
    assert all(scale.source for scale in grammar.scales.values())


@pytest.mark.parametrize(
    ("item", "numbers", "unit"),
    [
        ("respiratory_rate", (8, 12, 20, 25), "/min"),
        ("oxygen_saturation", (91, 96), "%"),
        ("heart_rate", (40, 51, 90, 131), "/min"),
        ("temperature", (35.0, 36.1, 38.0, 39.1), "Cel"),
        ("straight_leg_raise", (29, 30, 70, 71), "deg"),
    ],
)
def test_usual_bands_give_no_verdict(grammar, item, numbers, unit):
    """A number inside or outside a usual band is written as it is, not asked about, and nothing is computed from it.

    Bands: RCP 2017, chart 1 (looked up); straight-leg raise 30 to 70 degrees: teaching (looked up, secondary), Devillé
    2000. No verdict: own rule.
    """
    for number in numbers:
        value = Quantity(number=float(number))
        finding = measured(grammar, item, value, unit)
        assert not implausible(grammar, item, value, unit)
        assert not is_noteworthy(finding, grammar)
        assert reckon((finding,), grammar=grammar) == ()
