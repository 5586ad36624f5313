"""Vibration on the graduated fork against age norms: off unless the user asks for it."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Conventions, Figure, Finding, Score, Status, number_text
from dictate.reckoning.rules import rule

# Source: Martina 1998, table (digits recalled, not certain): lowest usual reading by age, arm and leg.
NORMS = ((40, 6.5, 4.5), (60, 6.0, 4.0), (85, 5.5, 3.5), (float("inf"), 5.0, 3.0))
FORK_OF = 8
ARM_SITES = ("finger", "thumb", "wrist", "hand", "elbow", "upper_limb", "index", "knuckle")
LEG_SITES = ("toe", "foot", "feet", "ankle", "malleolus", "shin", "knee", "lower_limb", "hallux")

VIBRATION = rule(
    "vibration against age",
    formula="reading of 8 >= lowest usual reading of that age and limb",
    source="Martina 1998 (digits of the table from memory)",
    limits="off unless switched on in the settings, because the digits are not certain; seconds are never read "
    "as eighths",
    missing="age, site or the eighths not said: no figure",
)


def lowest_usual(age: float, *, leg: bool) -> float:
    """Lowest usual reading of eight at that age. Source: Martina 1998 (not certain)."""
    row = next(row for row in NORMS if age <= row[0])
    return row[2 if leg else 1]


def vibration_figure(findings: tuple[Finding, ...], *, age: float | None, conventions: Conventions) -> Iterator[Figure]:
    """Each reading within or below the norm of its age; only when switched on and the age is known."""
    if not conventions.vibration_norms or age is None:
        return
    for at, finding in enumerate(findings):
        value = finding.value
        if finding.item != "vibration" or finding.status is not Status.MEASURED or not isinstance(value, Score):
            continue
        leg = any(site in finding.site for site in LEG_SITES)
        arm = any(site in finding.site for site in ARM_SITES)
        if value.points is None or value.mark or value.of not in (None, FORK_OF) or leg is (arm and not leg):
            continue
        lowest = lowest_usual(age, leg=leg)
        judged = words.WITHIN if value.points >= lowest else words.BELOW
        side = words.SIDES[finding.side] if finding.side else ""
        where = " ".join(filter(None, (side, finding.site.replace("_", " "))))
        numbers = {"points": number_text(value.points), "age": number_text(age), "lowest": number_text(lowest)}
        text = words.VIBRATION.format(where=where, judged=judged, **numbers)
        yield VIBRATION.figure(text, (at,), value=value.points, unit="{score}")
