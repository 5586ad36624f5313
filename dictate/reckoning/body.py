"""Body mass index from weight and height."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.grammar.units import convert
from dictate.model import Figure, Finding, Quantity, Status
from dictate.reckoning.rules import rule

BMI = rule(
    "body mass index",
    formula="weight in kg / (height in m)²",
    source="World Health Organization, Technical Report 894 (from memory)",
    limits="no class of weight is named; not written when an index was dictated",
    missing="weight without unit or said twice differently, or no height: no figure",
)


def body_mass_index(weight_kg: float, height_cm: float) -> float:
    """kg/m2. Source: World Health Organization, Technical Report 894."""
    return weight_kg / (height_cm / 100) ** 2


def body_figure(findings: tuple[Finding, ...], *, height: float | None) -> Iterator[Figure]:
    """The index, from a dictated weight and a height in cm, dictated or given."""
    weights = {}
    for at, finding in enumerate(findings):
        if finding.item == "body_mass_index":
            return
        value = finding.value
        if (
            finding.item == "weight"
            and finding.status is Status.MEASURED
            and isinstance(value, Quantity)
            and finding.unit
        ):
            weights[convert(value.number, finding.unit, "kg") if value.upto is None else None] = at
    if height is None or len(weights) != 1:
        return
    weight, at = next(iter(weights.items()))
    if weight is not None:
        places = (at, *(place for place, finding in enumerate(findings) if finding.item == "height"))
        index = round(body_mass_index(weight, height), 1)
        yield BMI.figure(words.BODY_MASS_INDEX.format(index=index), places, value=index, unit="kg/m2")
