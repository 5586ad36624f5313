"""reckon(): every figure that the findings allow, in fixed order."""

from __future__ import annotations

from collections.abc import Iterable

from dictate.grammar import Grammar
from dictate.model import Conventions, Figure, Finding
from dictate.reckoning.asymmetry import asymmetry_figures
from dictate.reckoning.balance import stance_figure
from dictate.reckoning.body import body_figure
from dictate.reckoning.ears import fork_figure
from dictate.reckoning.gait import speed_figure, tandem_figure, up_and_go_figure, walk_since_figure
from dictate.reckoning.levels import motor_level_figure
from dictate.reckoning.muscles import muscle_sum
from dictate.reckoning.postural import postural_figures
from dictate.reckoning.pressures import arm_difference, mean_pressures
from dictate.reckoning.pupils import pupil_figure
from dictate.reckoning.scales import ataxia_sum, coma_pupils, coma_sum, four_sum, stroke_sum
from dictate.reckoning.sensation import vibration_figure
from dictate.reckoning.vessels import pulses_figure, retinal_figure
from dictate.reckoning.vision import acuity_figure


def reckon(
    findings: Iterable[Finding],
    *,
    grammar: Grammar | None = None,
    age: float | None = None,
    height: float | None = None,
    scope: str = "",
    conventions: Conventions | None = None,
) -> tuple[Figure, ...]:
    """Computed figures.

    grammar: None: no tables of muscles and reflexes. age: years; None: not given, so both heart-rate thresholds are
    stated. height: cm. scope: the complaint; with dizziness the readings that are missing are named.
    """
    said = tuple(one.model_copy(update={"value": None}) if one.is_bound else one for one in findings)
    chosen = conventions or Conventions()
    return (
        *mean_pressures(said),
        *arm_difference(said),
        *postural_figures(said, age=age, scope=scope, conventions=chosen),
        *retinal_figure(said),
        *pulses_figure(said),
        *body_figure(said, height=height),
        *coma_sum(said),
        *coma_pupils(said),
        *four_sum(said),
        *acuity_figure(said),
        *pupil_figure(said),
        *fork_figure(said),
        *muscle_sum(said),
        *(asymmetry_figures(said, grammar) if grammar is not None else ()),
        *motor_level_figure(said),
        *vibration_figure(said, age=age, conventions=chosen),
        *stance_figure(said, age=age, conventions=chosen),
        *speed_figure(said),
        *walk_since_figure(said),
        *up_and_go_figure(said),
        *tandem_figure(said),
        *ataxia_sum(said),
        *stroke_sum(said),
    )
