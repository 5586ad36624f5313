"""Rises of heart rate on standing, and their ratio to the fall of pressure."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Figure, Finding, Status, number_text
from dictate.reckoning.changes import Change, change_text, inputs_of, times_of
from dictate.reckoning.falls import MET, fall_met, fall_verdict
from dictate.reckoning.readings import minutes_text
from dictate.reckoning.rules import rule

# Source: Freeman 2011; Sheldon 2015: sustained rise of at least 30/min within 10 min, 40 at 12 to 19 years.
RISE, RISE_YOUNG, RISE_WITHIN_MIN = 30, 40, 10
YOUNGEST, FIRST_ADULT = 12, 20
# Source: Norcliffe-Kaufmann 2018: ratio of changes below 0.5 with orthostatic hypotension in sinus rhythm.
RATIO = 0.5
PACED = re.compile(r"\b(paced|pacemaker|fibrillation|flutter)\b", re.IGNORECASE)

RISING = rule(
    "postural heart-rate criterion",
    formula="upright rate - baseline rate >= 30 (age 12 to 19: >= 40)",
    source="Freeman 2011; Sheldon 2015",
    limits="sustained, within 10 min, no fall of pressure; no threshold below 12 years; the symptoms it needs "
    "are named as said",
    missing="no rate with its minute from 1 to 10 min: not judged; age not given and a rise of 30 to 39 or one "
    "reading only of 40 or more, no pressures, or no minute: open, with the reason",
)
RATIO_OF_CHANGES = rule(
    "rate to pressure ratio",
    formula="(upright rate - baseline rate) / (baseline systolic - upright systolic)",
    source="Norcliffe-Kaufmann 2018",
    limits="below 0.5 or not; only with a fall of 20/10 and no rhythm said to be irregular or paced; taken at "
    "the largest fall",
    missing="rate missing, no such fall, or a systolic that does not fall: no figure",
)


def rise_verdict(changes: tuple[Change, ...], *, age: float | None) -> tuple[str, str]:
    """(`met` | `open` | `not met` | `not judged`, the sentence behind it) of the postural heart-rate criterion.

    open: a rise of that size was read, and something else that the criterion needs was not said.
    Source: Freeman 2011 (30/min within 10 min, no orthostatic hypotension); Sheldon 2015 (40/min at 12 to 19 years).
    """
    if not any(change.rate is not None for change in changes):
        return "not judged", words.NO_RATES
    if age is not None and age < YOUNGEST:
        return "not judged", words.NO_RISE_LIMIT.format(years=YOUNGEST)
    if age is not None:
        limit = RISE_YOUNG if age < FIRST_ADULT else RISE
        verdict, sentence = _verdict(changes, limit=limit, named=True)
        plain, aged = words.RISE_LIMIT, words.RISE_LIMIT_AGED
        return verdict, sentence.replace(plain.format(limit=limit), aged.format(limit=limit, age=number_text(age)))
    return _ageless(changes)


def _ageless(changes: tuple[Change, ...]) -> tuple[str, str]:
    """The verdict that holds for adults and for the young, else open.

    One reading of 40 stays open, for a later one of 30 to 39 would last for an adult and not at 16 years: a reading
    that was not taken must not decide what it leaves open. Source: Freeman 2011 (one reading shows nothing sustained).
    """
    adult, young = _verdict(changes, limit=RISE), _verdict(changes, limit=RISE_YOUNG)
    if adult[0] != "met":
        return young if adult[0] == young[0] == "open" else adult
    high = _reaching(changes, RISE_YOUNG)
    if len(high) == 1:
        return "open", words.RISE_AGE_ONCE.format(largest=_largest(high), times=times_of(high))
    if young[0] == "met":
        return young
    met = _reaching(changes, RISE)
    return "open", words.RISE_AGE_OPEN.format(largest=_largest(met), times=times_of(met))


def _verdict(changes: tuple[Change, ...], *, limit: int, named: bool = False) -> tuple[str, str]:
    """The verdict with one limit. named: the limit stands beside a rise that does not reach it as well."""
    rising = [change for change in changes if change.rate is not None]
    timed = [change for change in rising if change.counts]
    counted = _counted(changes)
    met = _reaching(changes, limit)
    unsaid = [change for change in rising if change.minutes is None and (change.rate or 0) >= limit]
    if (met or unsaid) and fall_verdict(changes)[0] in MET:
        return "not met", words.RISE_WITH_FALL.format(largest=_largest(met or unsaid))
    if met:
        return _reached(changes, counted, met, limit=limit)
    if unsaid:
        return "open", words.RISE_TIME_OPEN.format(largest=_largest(unsaid), limit=limit)
    if counted:
        beside = f", {words.RISE_LIMIT.format(limit=limit)}" if named else ""
        return "not met", words.RISE_NOT_MET.format(largest=_largest(counted), limit=beside)
    if timed:
        return "not met", words.RISE_LATE_ONLY.format(minutes=RISE_WITHIN_MIN)
    return "not judged", words.NO_RATE_IN_TIME.format(minutes=RISE_WITHIN_MIN)


def _counted(changes: tuple[Change, ...]) -> list[Change]:
    """Changes of rate read from 1 to 10 min."""
    return [c for c in changes if c.rate is not None and c.counts and (c.minutes or 0) <= RISE_WITHIN_MIN]


def _reaching(changes: tuple[Change, ...], limit: int) -> list[Change]:
    return [change for change in _counted(changes) if (change.rate or 0) >= limit]


def _largest(changes: list[Change]) -> str:
    return change_text(max(change.rate or 0 for change in changes))


def _reached(changes: tuple[Change, ...], counted: list[Change], met: list[Change], *, limit: int) -> tuple[str, str]:
    """The rise is there: whether it lasts, and whether there are pressures to judge it by."""
    after = [change for change in counted if (change.minutes or 0) > (met[0].minutes or 0)]
    if after and len(met) == 1:
        return "not met", words.RISE_NOT_LASTING.format(
            largest=_largest(met), times=times_of(met), later=_largest(after)
        )
    if not any(change.systolic is not None for change in changes):
        return "open", words.RISE_NO_PRESSURES.format(limit=limit, times=times_of(met))
    once = "" if len(met) > 1 else words.RISE_ONCE
    reached = words.RISE_LIMIT.format(limit=limit)
    return "met", words.RISE_MET.format(times=times_of(met), largest=_largest(met), limit=reached, once=once)


def rise_figure(changes: tuple[Change, ...], *, age: float | None, symptoms: str = "") -> Iterator[Figure]:
    """The heart-rate criterion as met, not met, open or not judged; symptoms: what was said of them."""
    rates = [change.rate for change in changes if change.rate is not None]
    if not rates:
        return
    verdict, sentence = rise_verdict(changes, age=age)
    lead = words.RISE_LEADS.get(verdict, "")
    told = words.WITH_SYMPTOMS.format(symptoms=symptoms or words.SYMPTOMS_NOT_SAID)
    said = told if verdict in ("met", "open") else ""
    yield RISING.figure(
        words.RATE_CRITERION.format(lead=lead, sentence=sentence, symptoms=said),
        inputs_of(change for change in changes if change.rate is not None),
        value=float(max(rates)),
        unit="/min",
    )


def rhythm_forbids(findings: tuple[Finding, ...]) -> bool:
    """Whether the rhythm was said to be anything but regular: the ratio needs sinus rhythm."""
    return any(
        finding.item == "heart_rhythm" and (finding.status is Status.ABNORMAL or PACED.search(finding.quote))
        for finding in findings
    )


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
    side = words.RATIO_BELOW if ratio < RATIO else words.RATIO_NOT_BELOW
    when = "" if change.minutes is None else f" {minutes_text(change.minutes)}"
    sum_text = f"{change_text(change.rate)}/{change.systolic} = {ratio:.2f}"
    yield RATIO_OF_CHANGES.figure(
        words.RATE_RATIO.format(when=when, sum=sum_text, side=side),
        change.places,
        value=round(ratio, 2),
        unit="/min/mm[Hg]",
    )
