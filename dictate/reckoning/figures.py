"""reckon(): every figure that the findings allow, in fixed order."""

from __future__ import annotations

from collections.abc import Iterable

from dictate.model import Figure, Finding
from dictate.reckoning.postural import postural_figures
from dictate.reckoning.pressures import arm_difference, mean_pressures
from dictate.reckoning.scales import coma_sum, muscle_sum, stroke_sum


def reckon(findings: Iterable[Finding], *, age: float | None = None) -> tuple[Figure, ...]:
    """Computed figures. age: years; None: not given, so both heart-rate thresholds are stated."""
    said = tuple(findings)
    return (
        *mean_pressures(said),
        *arm_difference(said),
        *postural_figures(said, age=age),
        *coma_sum(said),
        *stroke_sum(said),
        *muscle_sum(said),
    )
