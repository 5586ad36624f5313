"""A finding as its rival would have it, and which of the two the trade expects."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.checks.ranges import fault_of
from dictate.checks.wording import item_of
from dictate.grammar import Grammar
from dictate.model import (
    Acuity,
    Choice,
    Examination,
    Finding,
    Grade,
    Pressure,
    Quantity,
    Rival,
    Score,
    Side,
    Status,
    Text,
    Value,
)

# What is usual of readings that follow each other. Source: common practice, no source; the limits that set apart what
# cannot be are those of value-implausible.
PULSE_PRESSURE = (15, 100)  # mm[Hg]
STEP = 40  # mm[Hg] or /min between one reading and the next
NEAR = 2  # readings before and after that are looked at; one of them may be the wrong one
USUAL, UNUSUAL, IMPOSSIBLE = 0, 1, 2


def with_rival(finding: Finding, rival: Rival) -> Finding | None:
    """The finding as it would be with the other word; None where that cannot be told."""
    if rival.kind == "side":
        return finding.model_copy(update={"side": Side(rival.other)}) if rival.other in ("left", "right") else None
    if rival.kind == "negation" and rival.other in ("", "no", "mild", "with"):
        swapped = {Status.ABSENT: Status.PRESENT, Status.PRESENT: Status.ABSENT, Status.NORMAL: Status.ABNORMAL}
        status = swapped.get(finding.status)
        return None if status is None else finding.model_copy(update={"status": status})
    value = None if finding.value is None else _other_value(finding.value, rival)
    if value is None or value == finding.value:
        return None
    return finding.model_copy(update={"value": value})


def lean(finding: Finding, rival: Rival, exam: Examination, grammar: Grammar) -> int:
    """How much more the trade expects the rival than what was heard: -2 to 2; 0 where it cannot tell."""
    other = with_rival(finding, rival)
    if other is None or rival.kind not in ("number", "sign"):
        return 0
    return strangeness(finding, finding, exam, grammar) - strangeness(other, finding, exam, grammar)


def strangeness(reading: Finding, place: Finding, exam: Examination, grammar: Grammar) -> int:
    """USUAL, UNUSUAL or IMPOSSIBLE; `place`: the finding of the examination that the reading stands for."""
    item = item_of(grammar, reading.item)
    if item is not None and fault_of(reading, item, grammar):
        return IMPOSSIBLE
    value = reading.value
    wide = isinstance(value, Pressure) and value.diastolic is not None and value.systolic - value.diastolic
    if wide and not PULSE_PRESSURE[0] <= wide <= PULSE_PRESSURE[1]:
        return UNUSUAL
    number = _main_number(value)
    near = [abs(number - other) for other in _neighbours(place, exam)] if number is not None else []
    return UNUSUAL if near and min(near) > STEP else USUAL


def _neighbours(place: Finding, exam: Examination) -> Iterator[float]:
    """The readings before and after of the same item, where it is a pressure or a rate."""
    series = [finding for finding in exam.findings if finding.item == place.item and finding.side == place.side]
    at = next((number for number, finding in enumerate(series) if finding is place), None)
    if at is None or place.unit not in ("mm[Hg]", "/min"):
        return
    for other in series[max(0, at - NEAR) : at] + series[at + 1 : at + 1 + NEAR]:
        number = _main_number(other.value)
        if number is not None:
            yield number


def _main_number(value: Value | None) -> float | None:
    if isinstance(value, Pressure):
        return value.systolic
    return value.number if isinstance(value, Quantity) else None


def _other_value(value: Value, rival: Rival) -> Value | None:
    """The value with the rival's number, sign or word in the place of what was heard."""
    if rival.kind == "sign":
        return _other_grade(value, rival)
    if isinstance(value, Choice | Text):
        words = value.choice if isinstance(value, Choice) else value.words
        other = re.sub(rf"\b{re.escape(rival.heard.lower())}\b", rival.other, words)
        return Choice(choice=other) if isinstance(value, Choice) else Text(words=other)
    if not re.fullmatch(r"\d+(\.\d+)?", rival.heard) or not re.fullmatch(r"\d+(\.\d+)?", rival.other):
        return None
    old, new = float(rival.heard), float(rival.other)
    if isinstance(value, Pressure):
        if old == value.systolic:
            return Pressure(systolic=int(new), diastolic=value.diastolic)
        return Pressure(systolic=value.systolic, diastolic=int(new)) if old == value.diastolic else None
    if isinstance(value, Quantity | Score):
        names = ("number", "then", "upto") if isinstance(value, Quantity) else ("points", "of")
        name = next((name for name in names if getattr(value, name) == old), None)
        return None if name is None else value.model_copy(update={name: new})
    if isinstance(value, Grade):
        return Grade(scale=value.scale, grade=re.sub(r"^\d+", rival.other, value.grade))
    if isinstance(value, Acuity):
        return Acuity(text=re.sub(rf"\b{re.escape(rival.heard)}\b", rival.other, value.text))
    return None


def _other_grade(value: Value, rival: Rival) -> Value | None:
    signs = {"plus": "+", "minus": "-", "+": "+", "-": "-", "": ""}
    if not isinstance(value, Grade) or rival.other not in signs:
        return None
    return Grade(scale=value.scale, grade=value.grade.rstrip("+-") + signs[rival.other])
