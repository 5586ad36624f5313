"""Values of findings ↔ the value of a FHIR Observation; what FHIR cannot say is left to the reader's own extension."""

from __future__ import annotations

import re
from typing import Any

from dictate.model import BOUNDS, Choice, Finding, Grade, Pressure, Quantity, Score, Value
from dictate.notes.codes import ABSENT_REASON, COMPARATORS, DIASTOLIC, LOINC, OWN, SYSTOLIC, UCUM
from dictate.notes.drawing import NO_SIGNS
from dictate.notes.phrases import amount

Json = dict[str, Any]
CODE = re.compile(r"[^\s]+(\s[^\s]+)*")
SCORE_UNIT = "{score}"
OTHER_BLANKS = "\ufeff"  # white space to some readers only


def concept(system: str, code: str, text: str = "", *more: tuple[str, str]) -> Json:
    """A CodeableConcept; a code that FHIR cannot hold leaves only the text."""
    coded = [{"system": one, "code": said} for one, said in ((system, code), *more) if CODE.fullmatch(said)]
    return {**({"coding": coded} if coded else {}), "text": clean(text) or clean(code) or "-"}


def clean(text: str) -> str:
    """A FHIR string: no control signs, no white space but the plain kinds, no blank ends."""
    plain = (" " if sign in OTHER_BLANKS or (sign.isspace() and sign not in "\t\n\r") else sign for sign in text)
    return "".join(sign for sign in plain if (sign >= " " or sign in "\t\n\r") and sign not in NO_SIGNS).strip()


def quantity(number: float, unit: str) -> Json:
    """A number with its unit; without system and code where no unit was said."""
    content: Json = {"value": int(number) if number == int(number) else number}
    if unit and CODE.fullmatch(unit):
        content |= {"unit": unit, "system": UCUM, "code": unit}
    return content


def value_of(finding: Finding) -> Json:
    """Fields of an Observation that hold the value; empty for one that is none."""
    value, unit = finding.value, finding.unit
    if finding.is_bound and value is not None:
        return _of_bound(finding, value)
    if isinstance(value, Pressure):
        return {"component": _pressure(value, unit)}
    if isinstance(value, Quantity):
        return _of_quantity(value, unit)
    if isinstance(value, Grade):
        return {"valueCodeableConcept": concept(f"{OWN}scale:{value.scale}", value.grade)}
    if isinstance(value, Choice):
        return {"valueCodeableConcept": concept(f"{OWN}choice", value.choice, str(value))}
    if isinstance(value, Score) and value.points is not None and not value.mark:
        points = quantity(value.points, SCORE_UNIT)
        if value.of is None:
            return {"valueQuantity": points}
        return {"valueRatio": {"numerator": points, "denominator": quantity(value.of, SCORE_UNIT)}}
    text = "" if value is None else clean(amount(value, unit))
    return {"valueString": text} if text else {}


def _of_bound(finding: Finding, value: Value) -> Json:
    """ "More than 15 s" is no 15 s: a number with its comparator; of a grade or a range in words."""
    limit = next(part for part in finding.detail if part in BOUNDS)
    if isinstance(value, Quantity) and value.then is None and value.upto is None:
        return {"valueQuantity": quantity(value.number, finding.unit) | {"comparator": COMPARATORS[limit]}}
    return {"valueString": clean(f"{limit} {amount(value, finding.unit)}")}


def read_value(observation: Json) -> tuple[Json | None, str]:
    """The value as the model has it, and its unit: what the Observation's own fields say."""
    parts = {_code(one["code"]): one for one in observation.get("component", ())}
    if SYSTOLIC in parts:
        return _read_pressure(parts)
    if "first" in parts and "then" in parts:
        first, then = parts["first"]["valueQuantity"], parts["then"]["valueQuantity"]
        return _number(first["value"], then=then["value"]), first.get("code", "")
    if "valueRange" in observation:
        low, high = observation["valueRange"]["low"], observation["valueRange"]["high"]
        return _number(low["value"], upto=high["value"]), low.get("code", "")
    if "valueRatio" in observation:
        top, foot = (observation["valueRatio"][name]["value"] for name in ("numerator", "denominator"))
        return {"kind": "score", "points": float(top), "of": float(foot), "mark": ""}, ""
    if "valueQuantity" in observation:
        said = observation["valueQuantity"]
        if said.get("code") == SCORE_UNIT:
            return {"kind": "score", "points": float(said["value"]), "of": None, "mark": ""}, ""
        return _number(said["value"]), said.get("code", "")
    if "valueString" in observation:
        return {"kind": "text", "words": observation["valueString"]}, ""
    return _read_concept(observation.get("valueCodeableConcept", {})), ""


def _pressure(value: Pressure, unit: str) -> list[Json]:
    systolic = {"code": _loinc(SYSTOLIC, "systolic"), "valueQuantity": quantity(value.systolic, unit)}
    diastolic: Json = {"code": _loinc(DIASTOLIC, "diastolic")}
    if value.diastolic is None:
        diastolic["dataAbsentReason"] = concept(ABSENT_REASON, "unknown", "palpable")
    else:
        diastolic["valueQuantity"] = quantity(value.diastolic, unit)
    return [systolic, diastolic]


def _read_pressure(parts: Json) -> tuple[Json, str]:
    systolic, diastolic = parts[SYSTOLIC]["valueQuantity"], parts.get(DIASTOLIC, {}).get("valueQuantity")
    said = {"kind": "pressure", "systolic": systolic["value"], "diastolic": diastolic and diastolic["value"]}
    return said, systolic.get("code", "")


def _of_quantity(value: Quantity, unit: str) -> Json:
    if value.then is not None:
        pairs = (("first", value.number), ("then", value.then))
        return {"component": [{"code": concept(f"{OWN}part", name), "valueQuantity": quantity(number, unit)}
                              for name, number in pairs]}  # fmt: skip
    if value.upto is not None:
        return {"valueRange": {"low": quantity(value.number, unit), "high": quantity(value.upto, unit)}}
    return {"valueQuantity": quantity(value.number, unit)}


def _number(number: float, *, then: float | None = None, upto: float | None = None) -> Json:
    ends = {"then": None if then is None else float(then), "upto": None if upto is None else float(upto)}
    return {"kind": "quantity", "number": float(number), **ends, "note": ""}


def _read_concept(said: Json) -> Json | None:
    for coding in said.get("coding", ()):
        system, code = coding.get("system", ""), coding.get("code", "")
        if system.startswith(f"{OWN}scale:"):
            return {"kind": "grade", "scale": system.removeprefix(f"{OWN}scale:"), "grade": code}
        if system == f"{OWN}choice":
            return {"kind": "choice", "choice": code}
    return None


def _loinc(code: str, text: str) -> Json:
    return concept(LOINC, code, text)


def _code(said: Json) -> str:
    return str(said.get("coding", [{}])[0].get("code", ""))
