"""Conventions: choices where published sources differ, each with its source; all have a default."""

from __future__ import annotations

from typing import Literal

from dictate.model.base import Frozen
from dictate.model.values import Pressure

# Source: Fanciulli 2018 (looked up: abstract): 140 systolic and/or 90 diastolic; a review (Radoi) above 160 systolic.
HIGH_SYSTOLIC, HIGH_DIASTOLIC, HIGHER_SYSTOLIC = 140, 90, 160


class Conventions(Frozen):
    """What the user may settle for figures on which sources differ or are unsure."""

    vibration_norms: bool = False  # off: the digits of the published table are not certain enough
    one_leg_norms: bool = False  # off: means of one protocol, whose decimals are recalled
    supine_hypertension: Literal["140/90 or more", "above 160"] = "140/90 or more"

    def is_high(self, pressure: Pressure) -> bool:
        """Whether a lying pressure counts as high."""
        if self.supine_hypertension == "above 160":
            return pressure.systolic > HIGHER_SYSTOLIC
        return pressure.systolic >= HIGH_SYSTOLIC or (pressure.diastolic or 0) >= HIGH_DIASTOLIC

    @property
    def hypertension_source(self) -> str:
        """Who says so."""
        if self.supine_hypertension == "above 160":
            return "a review of orthostatic hypotension (above 160)"
        return "Fanciulli 2018 (140/90)"
