"""One upright reading against its baseline."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from dictate.catalogue import figures as words
from dictate.model import Position, Side, number_text
from dictate.reckoning.readings import Reading, time_text

UPRIGHT = (Position.STANDING, Position.TILTED)
# A reading before the first minute cannot show that a change is sustained.
SUSTAINED_FROM_MIN = 1
ARMS = (Side.LEFT, Side.RIGHT)


@dataclass(frozen=True, slots=True)
class Change:
    """Baseline against one upright reading; falls of pressure and rises of rate are positive, None: not measured."""

    baseline: Reading
    upright: Reading
    systolic: int | None
    diastolic: int | None
    rate: float | None
    rate_baseline: Reading | None = None  # None: the baseline's own

    @property
    def minutes(self) -> float | None:
        """Minutes since standing; None when not said."""
        return self.upright.minutes

    @property
    def counts(self) -> bool:
        """Whether its time was said and lets a change be called sustained."""
        return self.minutes is not None and self.minutes >= SUSTAINED_FROM_MIN

    def falls(self, systolic: int, diastolic: int) -> bool:
        """Whether the fall reaches either limit."""
        return (self.systolic is not None and self.systolic >= systolic) or (
            self.diastolic is not None and self.diastolic >= diastolic
        )

    @property
    def places(self) -> tuple[int, ...]:
        """The findings it was computed from."""
        lent = () if self.rate_baseline is None else self.rate_baseline.places
        return (*self.baseline.places, *self.upright.places, *lent)


def changes_of(readings: tuple[Reading, ...], *, from_sitting: bool = False) -> tuple[Change, ...]:
    """Every upright reading against the baseline: the last lying reading before standing, else the last sitting one.

    In order of time, those without a time last. from_sitting: against the sitting one even where there is one lying.
    """
    first = next((at for at, one in enumerate(readings) if one.position in UPRIGHT), None)
    if first is None:
        return ()
    lying = [one for one in readings[:first] if one.position is Position.SUPINE] or [
        one for one in readings if one.position is Position.SUPINE
    ]
    sitting = [one for one in readings if one.position is Position.SITTING]
    upright = sorted((one for one in readings if one.position in UPRIGHT), key=_time)
    for baselines in ([] if from_sitting else lying, sitting):
        found = [change for one in upright if (change := _change(baselines, one)) is not None]
        if found:
            return tuple(found)
    return ()


def _time(reading: Reading) -> tuple[bool, float, str]:
    """In order of minutes, unsaid ones last; then by arm, so that the order of speaking decides nothing."""
    return reading.minutes is None, reading.minutes or 0, reading.side or ""


def _change(baselines: list[Reading], upright: Reading) -> Change | None:
    """Against the last baseline of the same arm; None when there is nothing to compare."""
    same_arm = [one for one in baselines if _same_arm(one, upright)]
    pressures = [one for one in same_arm if one.pressure is not None]
    rates = [one for one in baselines if one.rate is not None]
    baseline = _reference(pressures, upright) if upright.pressure is not None and pressures else None
    if baseline is None:
        baseline = rates[-1] if rates else None
    if baseline is None:
        return None
    lent = rates[-1] if baseline.rate is None and rates else None
    rate_base = baseline.rate if lent is None else lent.rate
    systolic = diastolic = rate = None
    if baseline.pressure is not None and upright.pressure is not None and _same_arm(baseline, upright):
        systolic = baseline.pressure.systolic - upright.pressure.systolic
        if baseline.pressure.diastolic is not None and upright.pressure.diastolic is not None:
            diastolic = baseline.pressure.diastolic - upright.pressure.diastolic
    if rate_base is not None and upright.rate is not None:
        rate = upright.rate - rate_base
    if systolic is None and rate is None:
        return None
    return Change(baseline, upright, systolic, diastolic, rate, lent if rate is not None else None)


def _reference(pressures: list[Reading], upright: Reading) -> Reading:
    """The last reading of the arm; where the upright reading names none and both were taken, the higher arm's.

    Source: ESC/ESH 2018: the arm with the higher pressure is the reference (from memory).
    """
    if upright.side in ARMS or len({one.side for one in pressures}) == 1:
        return pressures[-1]
    last_of_arm = {one.side: one for one in pressures}.values()
    return max(last_of_arm, key=lambda one: one.pressure.systolic if one.pressure else 0)


def _same_arm(one: Reading, other: Reading) -> bool:
    return one.side is other.side or None in (one.side, other.side) or Side.BOTH in (one.side, other.side)


def inputs_of(changes: Iterable[Change]) -> tuple[int, ...]:
    """Places of all findings the changes were computed from, in order."""
    return tuple(sorted({place for change in changes for place in change.places}))


def times_of(changes: Iterable[Change]) -> str:
    """`1 and 3 min`, `an unstated time`; a single early one as `15 s`, `once`."""
    minutes = sorted({change.minutes for change in changes if change.minutes is not None})
    if not minutes:
        return words.UNSTATED_TIME
    if len(minutes) == 1:
        return time_text(minutes[0])
    times = [number_text(round(one, 2)) for one in minutes]
    return words.MINUTES_AND.format(times=", ".join(times[:-1]), last=times[-1])


def change_text(change: float) -> str:
    """A change with its sign: `+8`, `-2`, `0`."""
    return f"{'+' if change > 0 else ''}{number_text(change)}"
