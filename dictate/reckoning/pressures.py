"""Mean and pulse pressure, difference between the arms."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Figure, Finding, Pressure, Side
from dictate.reckoning.readings import Reading, conflicting, readings_of
from dictate.reckoning.rules import rule

# Systolic difference between the arms called notable; sources differ, so each is named.
# Source: Clark 2021 (above 10); ESC/ESH 2018 (above 15); British guideline, older edition (above 20).
ARM_LIMITS = ((10, "Clark 2021"), (15, "ESC/ESH 2018"), (20, words.OLDER_GUIDELINE))

MEAN = rule(
    "mean arterial pressure",
    formula="diastolic + (systolic - diastolic) / 3; systolic - diastolic",
    source="DeMers and Wachs, StatPearls",
    limits="an estimate at resting rates; no verdict",
    missing="a palpable pressure (no diastolic) or an impossible one gives no figure",
)
ARMS = rule(
    "difference between the arms",
    formula="right systolic - left systolic",
    source="; ".join(source for _, source in ARM_LIMITS),
    limits="sources differ: above 10, 15 and 20 are each named; one pair proves nothing (of 3350 people without "
    "vascular disease 38 % differ by 10 or more)",
    missing="one arm only, an arm not said, or arms in different positions or minutes: no figure",
)


def mean_pressure(pressure: Pressure) -> float | None:
    """Diastolic plus a third of the pulse pressure; None when the diastolic was not measured.

    An estimate at resting rates. Source: DeMers and Wachs, StatPearls.
    """
    if pressure.diastolic is None:
        return None
    return (pressure.systolic + 2 * pressure.diastolic) / 3


def pulse_pressure(pressure: Pressure) -> int | None:
    """Systolic minus diastolic; None when the diastolic was not measured."""
    return None if pressure.diastolic is None else pressure.systolic - pressure.diastolic


def mean_pressures(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Mean and pulse pressure of every complete pressure.

    Source: DeMers and Wachs, StatPearls.
    """
    for reading in readings_of(findings):
        if reading.pressure is None:
            continue
        mean, pulse = mean_pressure(reading.pressure), pulse_pressure(reading.pressure)
        if mean is None or pulse is None:
            continue
        text = words.MEAN_PRESSURE.format(pressure=reading.pressure, mean=mean, pulse=pulse)
        yield MEAN.figure(text, reading.places[:1], value=round(mean, 1), unit="mm[Hg]")


def arm_difference(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Right minus left systolic, where both arms were taken in one position at one time.

    A single pair proves nothing. Source: Clark 2021; ESC/ESH 2018 (limits differ, all are named).
    """
    readings = readings_of(findings)
    refused = conflicting(readings)
    arms = [one for one in readings if one.pressure is not None and one.side in (Side.LEFT, Side.RIGHT)]
    stances = dict.fromkeys((one.position, one.minutes) for one in arms)
    for stance in stances:
        here = [one for one in arms if (one.position, one.minutes) == stance]
        rights = [one for one in here if one.side is Side.RIGHT]
        lefts = [one for one in here if one.side is Side.LEFT]
        if len(rights) == 1 and len(lefts) == 1 and rights[0] not in refused and lefts[0] not in refused:
            yield from _difference(rights[0], lefts[0])


def _difference(right: Reading, left: Reading) -> Iterator[Figure]:
    if right.pressure is None or left.pressure is None:
        return
    difference = right.pressure.systolic - left.pressure.systolic
    above = [f"{limit} ({source})" for limit, source in ARM_LIMITS if abs(difference) > limit]
    lowest, source = ARM_LIMITS[0]
    judged = (
        words.ABOVE_LIMITS.format(limits=", ".join(above))
        if above
        else words.NOT_ABOVE.format(limit=lowest, source=source)
    )
    higher = words.RIGHT_HIGHER if difference > 0 else words.LEFT_HIGHER if difference < 0 else words.EQUAL
    where = f", {right.when}" if right.when else ""
    text = words.ARM_DIFFERENCE.format(where=where, difference=abs(difference), higher=higher, judged=judged)
    yield ARMS.figure(text, (right.places[0], left.places[0]), value=float(difference), unit="mm[Hg]")
