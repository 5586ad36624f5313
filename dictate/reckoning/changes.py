"""One upright reading against its baseline."""

from __future__ import annotations

from dataclasses import dataclass

from dictate.model import Position, Side, number_text
from dictate.reckoning.readings import Reading

UPRIGHT = (Position.STANDING, Position.TILTED)
# A reading before the first minute cannot show that a change is sustained.
SUSTAINED_FROM_MIN = 1


@dataclass(frozen=True, slots=True)
class Change:
    """Baseline against one upright reading; falls of pressure and rises of rate are positive, None: not measured."""

    baseline: Reading
    upright: Reading
    systolic: int | None
    diastolic: int | None
    rate: float | None

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
        return (*self.baseline.places, *self.upright.places)


def changes_of(readings: tuple[Reading, ...], *, from_sitting: bool = False) -> tuple[Change, ...]:
    """Every upright reading against the baseline: the last lying reading before standing, else the last sitting one.

    from_sitting: against the sitting one even where there is one lying.
    """
    first = next((at for at, one in enumerate(readings) if one.position in UPRIGHT), None)
    if first is None:
        return ()
    lying = [one for one in readings[:first] if one.position is Position.SUPINE] or [
        one for one in readings if one.position is Position.SUPINE
    ]
    baselines = (lying if not from_sitting else []) or [one for one in readings if one.position is Position.SITTING]
    found = [_change(baselines, one) for one in readings if one.position in UPRIGHT]
    return tuple(one for one in found if one is not None)


def _change(baselines: list[Reading], upright: Reading) -> Change | None:
    """Against the last baseline of the same arm; None when there is nothing to compare."""
    same_arm = [one for one in baselines if _same_arm(one, upright)]
    pressures = [one for one in same_arm if one.pressure is not None]
    rates = [one for one in same_arm if one.rate is not None]
    wanted = pressures if upright.pressure is not None and pressures else rates
    if not wanted:
        return None
    baseline = wanted[-1]
    rate_base = baseline.rate if baseline.rate is not None or not rates else rates[-1].rate
    systolic = diastolic = rate = None
    if baseline.pressure is not None and upright.pressure is not None:
        systolic = baseline.pressure.systolic - upright.pressure.systolic
        if baseline.pressure.diastolic is not None and upright.pressure.diastolic is not None:
            diastolic = baseline.pressure.diastolic - upright.pressure.diastolic
    if rate_base is not None and upright.rate is not None:
        rate = upright.rate - rate_base
    if systolic is None and rate is None:
        return None
    return Change(baseline, upright, systolic, diastolic, rate)


def _same_arm(one: Reading, other: Reading) -> bool:
    return one.side is other.side or None in (one.side, other.side) or Side.BOTH in (one.side, other.side)


def inputs_of(changes: tuple[Change, ...]) -> tuple[int, ...]:
    """Places of all findings the changes were computed from, in order."""
    return tuple(sorted({place for change in changes for place in change.places}))


def times_of(changes: list[Change]) -> str:
    """`1 and 3 min`, `an unstated time`."""
    times = [number_text(change.minutes) for change in changes if change.minutes is not None]
    said = f"{' and '.join(filter(None, (', '.join(times[:-1]), times[-1])))} min" if times else ""
    return said or "an unstated time"


def change_text(change: float) -> str:
    """A change with its sign: `+8`, `-2`, `0`."""
    return f"{'+' if change > 0 else ''}{number_text(change)}"
