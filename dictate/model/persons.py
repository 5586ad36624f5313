"""Person: age and height of the examined, as given or dictated."""

from __future__ import annotations

from typing import Literal

from dictate.model.base import Frozen
from dictate.model.findings import Evidence

Origin = Literal["option", "spoken", ""]


class Person(Frozen):
    """What computed figures need to know of the examined; never guessed."""

    age_years: float | None = None  # None: not said, or said twice with different numbers
    age_from: Origin = ""
    height_cm: float | None = None
    height_from: Origin = ""
    evidence: tuple[Evidence, ...] = ()  # the words in which an age was dictated, all of them
    dictated_ages: tuple[float, ...] = ()  # different ones, in the order said
