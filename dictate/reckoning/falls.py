"""Falls of pressure on standing and the published criteria they meet."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.model import Figure
from dictate.reckoning.changes import Change, inputs_of, times_of

# Source: Freeman 2011: sustained fall of at least 20 systolic or 10 diastolic within 3 min of standing or tilt.
FALL_SYSTOLIC, FALL_DIASTOLIC, CLASSICAL_MIN = 20, 10, 3
# Source: Freeman 2011: with supine hypertension a fall of 30 systolic may suit better.
FALL_WITH_HYPERTENSION = 30
# Source: Fanciulli 2018: supine hypertension at 140 systolic and/or 90 diastolic (other sources: above 160).
HYPERTENSION_SYSTOLIC, HYPERTENSION_DIASTOLIC = 140, 90
# Source: Freeman 2011: initial fall above 40 systolic and/or 20 diastolic within 15 s, beat to beat.
INITIAL_SYSTOLIC, INITIAL_DIASTOLIC, INITIAL_MIN = 40, 20, 0.25
# Source: Brignole 2018: standing systolic below 90 counts as abnormal by itself.
LOW_STANDING = 90
# Source: Shaw 2017: from sitting, a fall of at least 15 systolic or 7 diastolic.
SITTING_SYSTOLIC, SITTING_DIASTOLIC = 15, 7
FALL_SOURCE = "Freeman 2011"


def fall_met(change: Change) -> bool:
    """Whether the fall has the size of orthostatic hypotension. Source: Freeman 2011."""
    return change.falls(FALL_SYSTOLIC, FALL_DIASTOLIC)


def _fall_text(change: Change) -> str:
    """How the fall was met: `20/4`, with the limit that it reached."""
    which = []
    if change.systolic is not None and change.systolic >= FALL_SYSTOLIC:
        which.append("systolic")
    if change.diastolic is not None and change.diastolic >= FALL_DIASTOLIC:
        which.append("diastolic")
    diastolic = "not known" if change.diastolic is None else change.diastolic
    return f"{change.systolic}/{diastolic}, {' and '.join(which)}"


def fall_verdict(changes: tuple[Change, ...]) -> tuple[str, str]:
    """(`classical` | `delayed` | `met, time open` | `not met` | `not judged`, the sentence behind it).

    Source: Freeman 2011 ("within 3 min" read as up to and including); Gibbons 2006 for a delayed fall.
    """
    judged = [change for change in changes if change.systolic is not None]
    counted = [change for change in judged if change.counts]
    early = [change for change in counted if change.minutes is not None and change.minutes <= CLASSICAL_MIN]
    late = [change for change in counted if change not in early]
    early_met = [change for change in early if fall_met(change)]
    late_met = [change for change in late if fall_met(change)]
    open_met = [change for change in judged if change.minutes is None and fall_met(change)]
    at_once_met = [change for change in judged if change.minutes is not None and not change.counts and fall_met(change)]
    if early_met:
        missed = [change for change in early if not fall_met(change) and _later(change, early_met[0])]
        later = f"; not met at {times_of(missed)}" if missed else ""
        return "classical", f"met at {times_of(early_met)}, within 3 min ({_fall_text(early_met[0])}){later}"
    if open_met:
        return "met, time open", f"met ({_fall_text(open_met[0])}), but the time since standing was not said"
    if late_met and early:
        return (
            "delayed",
            f"first met at {times_of(late_met[:1])} ({_fall_text(late_met[0])}), not met up to 3 min: delayed",
        )
    if late_met:
        return (
            "met, time open",
            f"met at {times_of(late_met)} ({_fall_text(late_met[0])}), but no reading from 1 to 3 min",
        )
    if at_once_met and not counted:
        return "not judged", f"met at {times_of(at_once_met)} only; no later reading shows whether it lasted"
    if judged and not counted and all(change.minutes is not None for change in judged):
        return "not judged", "no reading from 1 min on"
    if not judged:
        return "not judged", "no pressures to compare"
    return (
        "not met",
        f"not met; a fall of that size at {times_of(at_once_met)} did not last" if at_once_met else "not met",
    )


def _later(change: Change, other: Change) -> bool:
    return change.minutes is not None and other.minutes is not None and change.minutes > other.minutes


def fall_figure(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """The criterion of orthostatic hypotension as met, not met or not judged."""
    if not any(change.systolic is not None for change in changes):
        return
    verdict, sentence = fall_verdict(changes)
    lead = "not judged: " if verdict == "not judged" else ""
    largest = max(change.systolic for change in changes if change.systolic is not None)
    yield Figure(
        name="orthostatic hypotension criterion",
        text=f"Orthostatic hypotension criterion (fall of 20 systolic or 10 diastolic): {lead}{sentence}",
        formula="baseline - upright",
        source=f"{FALL_SOURCE}; Gibbons 2006 (delayed)" if verdict == "delayed" else FALL_SOURCE,
        inputs=inputs_of(changes),
        value=float(largest),
        unit="mm[Hg]",
    )


def larger_fall_figure(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """With a high lying pressure, whether the larger fall of 30 is reached as well."""
    pressure = changes[0].baseline.pressure
    if pressure is None or not any(fall_met(change) for change in changes):
        return
    if pressure.systolic < HYPERTENSION_SYSTOLIC and (pressure.diastolic or 0) < HYPERTENSION_DIASTOLIC:
        return
    counted = [
        change for change in changes if change.systolic is not None and (change.counts or change.minutes is None)
    ]
    if not counted:
        return
    met = [change for change in counted if change.systolic is not None and change.systolic >= FALL_WITH_HYPERTENSION]
    yield Figure(
        name="fall of 30 systolic",
        text=f"Fall of 30 systolic (lying pressure {pressure}, 140/90 or more): {'met' if met else 'not met'}",
        formula="baseline systolic - upright systolic",
        source="Freeman 2011; Fanciulli 2018 (140/90)",
        inputs=inputs_of(tuple(counted)),
    )


def initial_met(change: Change) -> bool:
    """Whether a fall within 15 s is larger than 40 systolic or 20 diastolic. Source: Freeman 2011."""
    if change.minutes is None or not 0 <= change.minutes <= INITIAL_MIN:
        return False
    return (change.systolic is not None and change.systolic > INITIAL_SYSTOLIC) or (
        change.diastolic is not None and change.diastolic > INITIAL_DIASTOLIC
    )


def initial_figure(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """A fall of the initial size, only where one was read within 15 s."""
    met = tuple(change for change in changes if initial_met(change))
    if met:
        yield Figure(
            name="initial fall",
            text="Fall above 40 systolic or 20 diastolic within 15 s: reached; only beat-to-beat pressure confirms it",
            formula="baseline - upright",
            source=FALL_SOURCE,
            inputs=inputs_of(met),
        )


def low_figure(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """Upright systolic pressures below 90."""
    low = [change for change in changes if change.upright.pressure and change.upright.pressure.systolic < LOW_STANDING]
    if low:
        values = ", ".join(f"{change.upright.pressure} ({change.upright.when})" for change in low)
        yield Figure(
            name="low standing pressure",
            text=f"Systolic below 90 upright: {values}",
            source="Brignole 2018",
            inputs=tuple(change.upright.places[0] for change in low),
        )


def sitting_figure(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """From sitting other limits hold, and the fall is never called one from lying."""
    judged = tuple(change for change in changes if change.systolic is not None)
    counted = tuple(change for change in judged if change.counts or change.minutes is None)
    if not judged:
        return
    met = [change for change in counted if change.falls(SITTING_SYSTOLIC, SITTING_DIASTOLIC)]
    largest = max(change.systolic for change in judged if change.systolic is not None)
    verdict = "met" if met else "not met" if counted else "not judged: no reading from 1 min on"
    yield Figure(
        name="sit-to-stand criterion",
        text=f"Sitting to standing, fall of 15 systolic or 7 diastolic: {verdict}; no lying reading to compare",
        formula="sitting - standing",
        source="Shaw 2017",
        inputs=inputs_of(judged),
        value=float(largest),
        unit="mm[Hg]",
    )
