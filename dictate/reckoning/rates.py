"""Rises of heart rate on standing, and their ratio to the fall of pressure."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.model import Figure, Finding, Status
from dictate.reckoning.changes import Change, change_text, inputs_of, times_of
from dictate.reckoning.falls import fall_met, fall_verdict

# Source: Freeman 2011; Sheldon 2015: sustained rise of at least 30/min within 10 min, 40 at 12 to 19 years.
RISE, RISE_YOUNG, RISE_WITHIN_MIN = 30, 40, 10
YOUNGEST, FIRST_ADULT = 12, 20
# Source: Norcliffe-Kaufmann 2018: ratio of changes below 0.5 with orthostatic hypotension in sinus rhythm.
RATIO = 0.5


def rise_verdict(changes: tuple[Change, ...], *, age: float | None) -> tuple[str, str]:
    """(`met` | `not met` | `not judged`, the sentence behind it) of the postural heart-rate criterion.

    Source: Freeman 2011 (30/min within 10 min, no orthostatic hypotension); Sheldon 2015 (40/min at 12 to 19 years).
    """
    rising = [change for change in changes if change.rate is not None]
    counted = [change for change in rising if change.counts and (change.minutes or 0) <= RISE_WITHIN_MIN]
    if not rising:
        return "not judged", "no rates to compare"
    if age is not None and age < YOUNGEST:
        return "not judged", f"no threshold below {YOUNGEST} years"
    if not counted:
        if all((change.minutes or 0) > RISE_WITHIN_MIN for change in rising):
            return "not met", "not met within 10 min (read later only)"
        return "not judged", "no reading with its time from 1 to 10 min"
    limit = RISE_YOUNG if age is not None and age < FIRST_ADULT else RISE
    met = [change for change in counted if (change.rate or 0) >= limit]
    if not met:
        return "not met", f"not met (largest rise {change_text(max(change.rate or 0 for change in counted))})"
    if fall_verdict(changes)[0] in ("classical", "delayed", "met, time open"):
        return (
            "not met",
            f"not met: {change_text(max(change.rate or 0 for change in met))}, but with a fall of pressure",
        )
    if not any(change.systolic is not None for change in changes):
        return "not judged", f"a rise of {limit} reached at {times_of(met)}, but no pressures to exclude a fall"
    largest = max(change.rate or 0 for change in met)
    if age is None and largest < RISE_YOUNG:
        return "not judged", f"{change_text(largest)} reaches 30 (adults), not 40 (12 to 19 years); age not given"
    if age is None:
        limit = RISE_YOUNG
        met = [change for change in met if (change.rate or 0) >= limit]
    once = "" if len(met) > 1 else "; one reading does not show that it lasts"
    return "met", f"met at {times_of(met)} ({change_text(largest)}, limit {limit}){once}"


def rise_figure(changes: tuple[Change, ...], *, age: float | None) -> Iterator[Figure]:
    """The heart-rate criterion as met, not met or not judged."""
    rates = [change.rate for change in changes if change.rate is not None]
    if not rates:
        return
    verdict, sentence = rise_verdict(changes, age=age)
    lead = "not judged: " if verdict == "not judged" else ""
    yield Figure(
        name="postural heart-rate criterion",
        text=f"Postural heart-rate criterion (sustained rise within 10 min, no fall of pressure): {lead}{sentence}",
        formula="upright rate - baseline rate",
        source="Freeman 2011; Sheldon 2015",
        inputs=inputs_of(tuple(change for change in changes if change.rate is not None)),
        value=float(max(rates)),
        unit="/min",
    )


def rhythm_forbids(findings: tuple[Finding, ...]) -> bool:
    """Whether the rhythm was said to be anything but regular: the ratio needs sinus rhythm."""
    return any(finding.item == "heart_rhythm" and finding.status is Status.ABNORMAL for finding in findings)


def ratio_change(changes: tuple[Change, ...]) -> Change | None:
    """The reading the ratio is taken at: the one meeting the fall with the largest systolic fall; None: no ratio."""
    fits = [
        change
        for change in changes
        if fall_met(change) and change.rate is not None and change.systolic is not None and change.systolic > 0
        if change.counts or change.minutes is None
    ]
    return max(fits, key=lambda change: change.systolic or 0, default=None)


def ratio_figure(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """Change of rate over change of systolic pressure. Source: Norcliffe-Kaufmann 2018."""
    change = ratio_change(changes)
    if change is None or change.rate is None or not change.systolic:
        return
    ratio = change.rate / change.systolic
    side = "below" if ratio < RATIO else "not below"
    sum_text = f"{change_text(change.rate)}/{change.systolic} = {ratio:.2f}"
    yield Figure(
        name="rate to pressure ratio",
        text=(
            f"Ratio of rate rise to systolic fall, {change.upright.when}: {sum_text}, {side} 0.5 /min per mmHg "
            "(holds for sinus rhythm)"
        ),
        formula="(upright rate - baseline rate) / (baseline systolic - upright systolic)",
        source="Norcliffe-Kaufmann 2018",
        inputs=change.places,
        value=round(ratio, 2),
        unit="/min/mm[Hg]",
    )
