"""value-implausible, unit-missing: numbers outside sourced limits, and numbers whose unit is open."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import queries as say
from dictate.checks.murmurs import thrill_and_grade
from dictate.checks.registry import Doubt, check
from dictate.checks.wording import item_of, said, topic
from dictate.grammar import Grammar, Item
from dictate.grammar.units import convert
from dictate.model import (
    Acuity,
    Component,
    Examination,
    Finding,
    Grade,
    Pressure,
    Quantity,
    Score,
    Text,
    number_text,
)

# Source: Wang 2020 (MIMIC-Extract, variable ranges): 0 to 375; Johnson 2018 (vital-sign query): systolic above 0,
# diastolic above 0 and below 300. The narrower of the two: not impossible, no norm.
SYSTOLIC_HIGHEST = 375
DIASTOLIC_BELOW = 300
DIASTOLIC_ASKED_BELOW = 20  # own rule: so low a number is more often half of one ("110" heard as "10")
SPANS = ("digit_span_forward", "digit_span_backward")
FASTEST_WALK = 5  # m/s; own rule: faster is running, or misheard
# Source: ISNCSCI (Rupp 2021) names C2 to S4-5; C1 is left in, a spinal segment though it has no dermatome.
SEGMENTS = {"c": 8, "t": 12, "l": 5, "s": 5}


@check("value-implausible", severity="must")
def value_implausible(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A number that cannot be right: outside sourced limits, above its maximum, or a grade the scale lacks.

    Why: most often it was misheard or misspoken, and a wrong number looks as sure as a right one.
    Example: "right knee jerk seven plus" asks for the grade, "seventy six over one thirty two" for the pressure.
    """
    for finding in exam.findings:
        item = item_of(grammar, finding.item)
        if item is None:
            continue
        reason = fault_of(finding, item, grammar)
        if reason:
            yield Doubt(finding, f"{topic(finding, grammar)} {said(finding)}: {reason}", _instead(finding))
    yield from _longer_backward(exam, grammar)
    yield from thrill_and_grade(exam, grammar)


def _longer_backward(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A digit span longer backward than forward, to be looked at; common practice, no source."""
    forward, backward = ([one for one in exam.findings if one.item == item] for item in SPANS)
    if len(forward) != 1 or len(backward) != 1:
        return  # one was not said; or said twice, which values-conflict asks
    digits = [_digits(one) for one in (*forward, *backward)]
    if digits[0] is None or digits[1] is None or digits[1] <= digits[0]:
        return
    reason = say.LONGER_BACKWARD.format(forward=number_text(digits[0]))
    message = f"{topic(backward[0], grammar)} {said(backward[0])}: {reason}"
    yield Doubt(backward[0], message, severity="look", others=(forward[0],))


def _digits(finding: Finding) -> float | None:
    """The length of a span said as a number, or as one of the listed lengths; None: a bound, a range or words."""
    value = finding.value
    if isinstance(value, Text):
        return float(value.words) if value.words.isdigit() else None
    return value.number if isinstance(value, Quantity) and value.upto is None and not value.note else None


def fault_of(finding: Finding, item: Item, grammar: Grammar) -> str:
    """Why the value cannot be right; empty when it can."""
    value = finding.value
    if isinstance(value, Pressure):
        return _pressure_fault(value, item)
    if isinstance(value, Quantity):
        return _quantity_fault(value, finding.unit, item)
    if isinstance(value, Score):
        return _score_fault(value, item)
    if isinstance(value, Grade):
        return _grade_fault(value.grade, value.scale or item.scale, grammar)
    if isinstance(value, Acuity):
        return _acuity_fault(value)
    if isinstance(value, Text):
        return _text_fault(value.words, finding, item, grammar)
    return ""


def _pressure_fault(value: Pressure, item: Item) -> str:
    highest = SYSTOLIC_HIGHEST if item.limits is None or item.limits.high is None else item.limits.high
    if not 0 < value.systolic <= highest:
        return say.SYSTOLIC_OUTSIDE.format(highest=number_text(highest))
    if value.diastolic is None:
        return ""
    if value.diastolic >= value.systolic:
        return say.DIASTOLIC_NOT_BELOW
    if not 0 < value.diastolic < DIASTOLIC_BELOW:
        return say.DIASTOLIC_OUTSIDE.format(highest=DIASTOLIC_BELOW - 1)
    if value.diastolic < DIASTOLIC_ASKED_BELOW:
        return say.DIASTOLIC_LOW.format(lowest=DIASTOLIC_ASKED_BELOW)
    return ""


def _quantity_fault(value: Quantity, unit: str, item: Item) -> str:
    numbers = [number for number in (value.number, value.then, value.upto) if number is not None]
    if any(number < 0 for number in numbers) and (item.limits is None or (item.limits.low or 0) >= 0):
        return say.BELOW_ZERO_MEASURED
    if unit == "m/s" and value.number > FASTEST_WALK:
        return say.TOO_FAST_MEASURED
    if value.then is not None and value.then > value.number and item.unit == "mm":
        return say.LARGER_IN_LIGHT
    units = (unit,) if unit else (item.unit, *(item.units if item.unit_required else ()))
    if any(_fits(numbers, one, item) for one in units):
        return ""
    return say.OUTSIDE_MEASURED.format(limits=_limits_text(item))


def _fits(numbers: list[float], unit: str, item: Item) -> bool:
    """Whether the numbers lie within the limits, taken in that unit; an unknown unit is not judged."""
    if item.limits is None:
        return True
    low, high = item.limits.low, item.limits.high
    taken = [convert(number, unit or item.unit, item.unit) for number in numbers]
    return all(one is None or ((low is None or one >= low) and (high is None or one <= high)) for one in taken)


def _limits_text(item: Item) -> str:
    if item.limits is None:
        return say.ITS_LIMITS
    low, high = item.limits.low, item.limits.high
    unit = f" {item.unit}" if item.unit else ""
    if low is None:
        return say.UPPER_LIMIT.format(high=number_text(high or 0), unit=unit)
    if high is None:
        return say.LOWER_LIMIT.format(low=number_text(low), unit=unit)
    return say.RANGE.format(low=number_text(low), high=number_text(high), unit=unit)


def _score_fault(value: Score, item: Item) -> str:
    if value.points is None:
        return ""
    highest = value.of if value.of is not None else item.of
    if highest is not None and value.points > highest:
        return say.MORE_THAN_COUNTED.format(highest=number_text(highest))
    if value.points < 0 and not item.keeps_name:  # a scale of sedation goes below zero
        return say.BELOW_ZERO_COUNTED
    if not value.mark and not _fits([value.points], "", item):
        return say.OUTSIDE_COUNTED.format(limits=_limits_text(item))
    return ""


def _grade_fault(grade: str, scale_name: str, grammar: Grammar) -> str:
    scale = grammar.scales.get(scale_name)
    if scale is None or grade in scale.grades:
        return ""
    return say.NO_SUCH_GRADE.format(scale=scale.name)


def _acuity_fault(value: Acuity) -> str:
    fraction = re.match(r"(\d+(?:\.\d+)?)/(\d+(?:\.\d+)?)", value.text)
    if fraction and 0 in (float(fraction.group(1)), float(fraction.group(2))):
        return say.LINE_OF_ZERO
    return ""


def _speed(distance: float, unit: str, seconds: float) -> float:
    """Metres a second."""
    metres = distance if unit == "m" else convert(distance, "[ft_i]", "m") or 0
    return metres / seconds if seconds else float("inf")


def _text_fault(words: str, finding: Finding, item: Item, grammar: Grammar) -> str:
    """Numbers inside a descriptor: `7/6 systolic`, `5+` of a scale that ends at 4+, a segment T13."""
    walk = re.fullmatch(r"(\d+(?:\.\d+)?) (m|ft) in (\d+(?:\.\d+)?) s", words)
    if walk and _speed(float(walk[1]), walk[2], float(walk[3])) > FASTEST_WALK:
        return say.TOO_FAST_WALKED
    if walk and not _fits([float(walk[3])], "s", item):
        return say.OUTSIDE_MEASURED.format(limits=_limits_text(item))
    share = (re.search if item.scale else re.match)(r"\b(\d+)/(\d+)\b", words)
    if share and int(share.group(1)) > int(share.group(2)):
        return say.MORE_THAN_GRADED.format(highest=share.group(2))
    grade = re.match(r"\d[+-]?(?=$|[ ,;])", words)
    if grade and item.scale and not finding.unit:
        return _grade_fault(grade.group(), item.scale, grammar)
    segment = re.match(r"([ctls])(\d+)\b", words.lower())
    if segment and finding.component in (Component.SENSORY, Component.MOTOR):
        letter, number = segment.group(1), int(segment.group(2))
        return "" if 1 <= number <= SEGMENTS[letter] else say.NO_SUCH_SEGMENT
    return ""


def _instead(finding: Finding) -> tuple[str, ...]:
    """Values that may have been meant: only a pressure said the wrong way round suggests one."""
    value = finding.value
    if isinstance(value, Pressure) and value.diastolic is not None and value.diastolic > value.systolic:
        return (f"{value.diastolic}/{value.systolic}",)
    return ()


@check("unit-missing", severity="look")
def unit_missing(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A number whose unit is open, or is one that the item never has (to be settled).

    Why: 71 may be kilograms or pounds. Where only the usual unit gives a possible number, nothing is asked.
    Example: "weight seventy one" asks: kg or lb? "Height 160 percent" asks what was measured.
    """
    real = _real_units(grammar)
    for finding in exam.findings:
        item = item_of(grammar, finding.item)
        value = finding.value
        if item is not None and isinstance(value, Quantity) and not finding.unit and value.note.lower() in real:
            message = say.OTHER_UNIT.format(topic=topic(finding, grammar), value=value.number, unit=value.note)
            yield Doubt(finding, message, tuple(filter(None, (item.unit, *item.units))), severity="must")
            continue
        if item is None or not item.unit_required or finding.unit or not isinstance(value, Quantity):
            continue
        units = tuple(dict.fromkeys(filter(None, (item.unit, *item.units))))
        possible = tuple(unit for unit in units if _fits([value.number], unit, item))
        if possible and possible != (item.unit,):
            yield Doubt(finding, say.WHICH_UNIT.format(topic=topic(finding, grammar), value=value), possible)


def _real_units(grammar: Grammar) -> frozenset[str]:
    """All ways to say a unit, less what is only counted ("steps")."""
    units = (unit for item in grammar.items.values() for unit in item.units.items())
    return frozenset(said.lower() for code, ways in units if code and not code.startswith("{") for said in ways)
