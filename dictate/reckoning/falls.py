"""Falls of pressure on standing and the published criteria they meet."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Conventions, Figure, number_text
from dictate.reckoning.changes import UPRIGHT, Change, inputs_of, times_of
from dictate.reckoning.readings import Reading, minutes_text
from dictate.reckoning.rules import rule

# Source: Freeman 2011: sustained fall of at least 20 systolic or 10 diastolic within 3 min of standing or tilt.
FALL_SYSTOLIC, FALL_DIASTOLIC, CLASSICAL_MIN = 20, 10, 3
# Source: Freeman 2011: with supine hypertension a fall of 30 systolic may suit better.
FALL_WITH_HYPERTENSION = 30
# Source: Fanciulli 2018: supine hypertension is read after at least 5 min of lying.
LYING_MIN = 5
# Source: Freeman 2011: initial fall above 40 systolic and/or 20 diastolic within 15 s, beat to beat.
INITIAL_SYSTOLIC, INITIAL_DIASTOLIC, INITIAL_MIN = 40, 20, 0.25
# Source: Brignole 2018: standing systolic below 90 counts as abnormal by itself.
LOW_STANDING = 90
# Source: Shaw 2017: from sitting, a fall of at least 15 systolic or 7 diastolic.
SITTING_SYSTOLIC, SITTING_DIASTOLIC = 15, 7
MET = ("classical", "delayed", "met, time open")

FALL = rule(
    "orthostatic hypotension criterion",
    formula="baseline - upright >= 20 systolic or >= 10 diastolic",
    source="Freeman 2011; Gibbons 2006 (delayed)",
    limits="within 3 min read as up to and including; first met later: delayed; a reading before 1 min shows no "
    "lasting fall",
    missing="without a reading from 1 min on, or with none whose minute was said: not judged; met at a reading "
    "without its "
    "minute, or only after 3 min with none from 1 to 3 min: met, time open",
)
LARGER = rule(
    "fall of 30 systolic",
    formula="baseline systolic - upright systolic >= 30",
    source="Freeman 2011; Fanciulli 2018",
    limits="only with a high lying pressure and a fall of 20/10; sources differ on what is high: a setting",
    missing="no high lying pressure, no fall of 20/10, or readings before 1 min only: no figure; met at a reading "
    "without its minute: says so",
)
INITIAL = rule(
    "initial fall",
    formula="baseline - upright > 40 systolic or > 20 diastolic",
    source="Freeman 2011; Brignole 2018",
    limits="within 15 s, strictly greater, with recovery; only beat-to-beat pressure confirms it",
    missing="no reading within 15 s: no figure; none later: recovery not shown",
)
LOW = rule(
    "low standing pressure",
    formula="upright systolic < 90",
    source="Brignole 2018",
    limits="stated by itself, apart from the fall",
    missing="needs no baseline and no minute; no upright pressure: no figure",
)
SITTING = rule(
    "sit-to-stand criterion",
    formula="sitting - standing >= 15 systolic or >= 7 diastolic",
    source="Shaw 2017",
    limits="other limits than from lying; only when no lying reading can be compared, and never called one",
    missing="no reading with its minute from 1 min on: not judged; met at a reading without its minute: says so",
)


def fall_met(change: Change) -> bool:
    """Whether the fall has the size of orthostatic hypotension. Source: Freeman 2011."""
    return change.falls(FALL_SYSTOLIC, FALL_DIASTOLIC)


def fall_text(change: Change) -> str:
    """How the fall was met: `20/4, systolic`, with the limit that it reached."""
    which = []
    if change.systolic is not None and change.systolic >= FALL_SYSTOLIC:
        which.append(words.SYSTOLIC)
    if change.diastolic is not None and change.diastolic >= FALL_DIASTOLIC:
        which.append(words.DIASTOLIC)
    diastolic = words.NOT_KNOWN if change.diastolic is None else change.diastolic
    return f"{change.systolic}/{diastolic}, {words.AND.join(which)}"


def fall_verdict(changes: tuple[Change, ...]) -> tuple[str, str]:
    """(`classical` | `delayed` | `met, time open` | `not met` | `not judged`, the sentence behind it).

    Source: Freeman 2011 ("within 3 min" read as up to and including); Gibbons 2006 for a delayed fall.
    """
    judged = [change for change in changes if change.systolic is not None]
    counted = [change for change in judged if change.counts]
    early = [change for change in counted if (change.minutes or 0) <= CLASSICAL_MIN]
    early_met = [change for change in early if fall_met(change)]
    late_met = [change for change in counted if change not in early and fall_met(change)]
    open_met = [change for change in judged if change.minutes is None and fall_met(change)]
    if early_met:
        missed = [change for change in early if not fall_met(change) and _later(change, early_met[0])]
        later = words.NOT_MET_LATER.format(times=times_of(missed)) if missed else ""
        return "classical", words.FALL_MET.format(
            times=times_of([*early_met, *late_met]), largest=_largest_text([*early_met, *late_met]), later=later
        )
    if open_met:
        also = words.AND_AT.format(times=times_of(late_met)) if late_met else ""
        return "met, time open", words.FALL_TIME_OPEN.format(fall=fall_text(open_met[0]), also=also)
    if late_met and early:
        text = words.FALL_DELAYED.format(times=times_of(late_met[:1]), fall=fall_text(late_met[0]))
        return "delayed", text
    if late_met:
        text = words.FALL_LATE_ONLY.format(times=times_of(late_met), largest=_largest_text(late_met))
        return "met, time open", text
    return _unmet(judged, counted)


def _unmet(judged: list[Change], counted: list[Change]) -> tuple[str, str]:
    """Not met, or not judged when nothing with its minute was read from 1 min on."""
    at_once = [change for change in judged if change.minutes is not None and not change.counts and fall_met(change)]
    if not judged:
        return "not judged", words.NO_PRESSURES
    if counted:
        brief = words.FALL_BRIEF.format(times=times_of(at_once)) if at_once else ""
        gap = "" if any((change.minutes or 0) <= CLASSICAL_MIN for change in counted) else words.NONE_EARLY
        return "not met", words.FALL_NOT_MET.format(times=times_of(counted), gap=gap, brief=brief)
    if at_once:
        return "not judged", words.FALL_AT_ONCE_ONLY.format(times=times_of(at_once))
    if any(change.minutes is None for change in judged):
        return "not judged", words.TIME_UNSAID
    return "not judged", words.NO_READING_FROM_ONE


def _largest_text(changes: list[Change]) -> str:
    """The fall, or the largest of several with its minute."""
    largest = max(changes, key=lambda change: change.systolic or 0)
    if len(changes) == 1:
        return f" ({fall_text(largest)})"
    return words.MOST_AT.format(when=minutes_text(largest.minutes or 0), fall=fall_text(largest).partition(",")[0])


def _later(change: Change, other: Change) -> bool:
    return change.minutes is not None and other.minutes is not None and change.minutes > other.minutes


def fall_figure(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """The criterion of orthostatic hypotension as met, not met or not judged."""
    if not any(change.systolic is not None for change in changes):
        return
    verdict, sentence = fall_verdict(changes)
    lead = words.NOT_JUDGED if verdict == "not judged" else ""
    largest = max(change.systolic for change in changes if change.systolic is not None)
    yield FALL.figure(
        words.ORTHOSTATIC_HYPOTENSION.format(lead=lead, sentence=sentence),
        inputs_of(changes),
        value=float(largest),
        unit="mm[Hg]",
    )


def larger_fall_figure(changes: tuple[Change, ...], conventions: Conventions) -> Iterator[Figure]:
    """With a high lying pressure, whether the larger fall of 30 is reached as well."""
    counted = [
        change
        for change in changes
        if change.systolic is not None and (change.counts or change.minutes is None)
        if change.baseline.pressure is not None and conventions.is_high(change.baseline.pressure)
    ]
    if not counted or not any(fall_met(change) for change in counted):
        return
    met = [change for change in counted if change.systolic is not None and change.systolic >= FALL_WITH_HYPERTENSION]
    verdict = words.MET_AT.format(times=times_of(met)) if met else words.NOT_MET
    if met and all(change.minutes is None for change in met):
        verdict = words.MET_TIME_UNSAID
    baseline, lying = counted[0].baseline.pressure, counted[0].baseline.lying
    short = (
        words.LAIN_SHORT.format(minutes=number_text(lying), wanted=LYING_MIN)
        if lying is not None and lying < LYING_MIN
        else ""
    )
    yield LARGER.figure(
        words.LARGER_FALL.format(
            baseline=baseline, high=words.HIGH_FROM[conventions.supine_hypertension], lain=short, verdict=verdict
        ),
        inputs_of(counted),
        source=f"Freeman 2011; {conventions.hypertension_source}",
    )


def initial_met(change: Change) -> bool:
    """Whether a fall within 15 s is larger than 40 systolic or 20 diastolic. Source: Freeman 2011."""
    return is_initial(change) and (
        (change.systolic is not None and change.systolic > INITIAL_SYSTOLIC)
        or (change.diastolic is not None and change.diastolic > INITIAL_DIASTOLIC)
    )


def is_initial(change: Change) -> bool:
    """Whether the pressure was read within 15 s of standing; "immediately" is."""
    return change.systolic is not None and change.minutes is not None and 0 <= change.minutes <= INITIAL_MIN


def initial_figure(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """A fall of the initial size and its recovery, only where a pressure was read within 15 s."""
    first = tuple(change for change in changes if is_initial(change))
    if not first:
        return
    met = [change for change in first if initial_met(change)]
    later = [change for change in changes if change.systolic is not None and change.counts]
    if not met:
        verdict = words.INITIAL_NOT_REACHED
    elif not later:
        verdict = words.INITIAL_NO_RECOVERY_SHOWN
    elif fall_met(later[0]):
        verdict = words.INITIAL_NO_RECOVERY.format(when=minutes_text(later[0].minutes or 0))
    else:
        verdict = words.INITIAL_RECOVERY.format(when=minutes_text(later[0].minutes or 0))
    text = words.INITIAL_FALL.format(verdict=verdict)
    yield INITIAL.figure(text, inputs_of((*first, *(later[:1] if met else ()))))


def low_figure(readings: tuple[Reading, ...]) -> Iterator[Figure]:
    """Upright systolic pressures below 90, with or without a baseline. Source: Brignole 2018."""
    upright = [one for one in readings if one.position in UPRIGHT and one.pressure is not None]
    low = [one for one in upright if one.pressure is not None and one.pressure.systolic < LOW_STANDING]
    low.sort(key=lambda one: (one.minutes is None, one.minutes or 0, one.when, str(one.pressure)))
    if low:
        values = ", ".join(f"{one.pressure} ({one.when})" for one in low)
        yield LOW.figure(words.LOW_UPRIGHT.format(values=values), tuple(one.places[0] for one in low))


def sitting_figure(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """From sitting other limits hold, and the fall is never called one from lying."""
    judged = tuple(change for change in changes if change.systolic is not None)
    counted = tuple(change for change in judged if change.counts)
    if not judged:
        return
    met = [change for change in counted if change.falls(SITTING_SYSTOLIC, SITTING_DIASTOLIC)]
    unsaid = [c for c in judged if c.minutes is None and c.falls(SITTING_SYSTOLIC, SITTING_DIASTOLIC)]
    largest = max(change.systolic for change in judged if change.systolic is not None)
    verdict = words.SITTING_NOT_JUDGED
    if met:
        verdict = words.MET_AT.format(times=times_of(met))
    elif unsaid:
        verdict = words.SITTING_TIME_UNSAID
    elif counted:
        verdict = words.NOT_MET
    text = words.SIT_TO_STAND.format(verdict=verdict)
    yield SITTING.figure(text, inputs_of(judged), value=float(largest), unit="mm[Hg]")
