"""What bears on a postural series as it was said: symptoms, rhythm, arms, and the readings that are missing."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Figure, Finding, Position, Side, Status
from dictate.reckoning.changes import ARMS, SUSTAINED_FROM_MIN, UPRIGHT, Change, changes_of, inputs_of
from dictate.reckoning.readings import Reading, minutes_text
from dictate.reckoning.rules import rule

DIZZINESS = ("dizziness",)
CLASSICAL_MIN, LATE_MIN = 3, 5
SYMPTOMS = "orthostatic_symptoms"

RHYTHM = rule(
    "rhythm of the series",
    formula="as said",
    source="Norcliffe-Kaufmann 2018 (the ratio needs sinus rhythm)",
    limits="an irregular or paced rhythm makes rises of rate uncertain; no ratio is computed",
    missing="rhythm not said: the ratio stands with the words that it holds for sinus rhythm",
)
OTHER_ARM = rule(
    "arms of the series",
    formula="as said",
    source="own rule: pressures of different arms are not compared",
    limits="names the arms; computes nothing",
    missing="arm not said on one side: compared, since nothing says otherwise",
)
MISSING = rule(
    "postural readings missing",
    formula="as said",
    source="Freeman 2011 (1 to 3 min); five minutes: common practice, no source",
    limits="only with a complaint of dizziness as scope, and only when a pressure was dictated at all",
    missing="this figure is the list of what is missing",
)


def symptoms_said(findings: tuple[Finding, ...]) -> str:
    """Symptoms on standing as said, with their time: `lightheaded standing at 1 min, none standing at 5 min`."""
    parts = []
    for finding in findings:
        if finding.item != SYMPTOMS or finding.site or finding.position not in (*UPRIGHT, None):
            continue
        said = " ".join(filter(None, (str(finding.value or ""), *finding.detail)))
        if finding.status is Status.ABSENT:
            said = words.NO_SYMPTOMS.format(symptoms=said) if said else words.NO_SYMPTOM
        elif finding.status is not Status.PRESENT:
            continue
        time = "" if finding.minutes is None else f" {minutes_text(finding.minutes)}"
        parts.append(f"{said or words.SYMPTOMS_PRESENT}{time}")
    return ", ".join(dict.fromkeys(parts))


def rhythm_figure(findings: tuple[Finding, ...], changes: tuple[Change, ...]) -> Iterator[Figure]:
    """A rhythm that was said to be other than regular, where rates were compared."""
    rates = [change for change in changes if change.rate is not None]
    rhythms = [(at, finding) for at, finding in enumerate(findings) if finding.item == "heart_rhythm"]
    if rates and rhythms:
        at, finding = rhythms[-1]
        said = str(finding.value or words.STATUSES[finding.status])
        text = words.RHYTHM.format(rhythm=said)
        yield RHYTHM.figure(text, tuple(dict.fromkeys((*inputs_of(rates), at))))


def arms_figure(readings: tuple[Reading, ...]) -> Iterator[Figure]:
    """Upright pressures that found no baseline of their own arm."""
    lying = [one for one in readings if one.position is Position.SUPINE and one.pressure]
    compared = {one.upright.places for one in changes_of(readings) if one.systolic is not None}
    for upright in readings:
        if upright.position not in UPRIGHT or upright.pressure is None or upright.side not in ARMS:
            continue
        if lying and upright.places not in compared:
            other = Side.LEFT if upright.side is Side.RIGHT else Side.RIGHT
            when = f"{upright.when[:1].upper()}{upright.when[1:]}"
            sides = words.SIDES[upright.side or Side.BOTH], words.SIDES[other]
            text = words.OTHER_ARM.format(when=when, side=sides[0], other=sides[1])
            yield OTHER_ARM.figure(text, (*(place for one in lying for place in one.places[:1]), upright.places[0]))


def missing_figure(readings: tuple[Reading, ...], *, scope: str) -> Iterator[Figure]:
    """Which readings the postural criteria would need and were not dictated; only with dizziness as scope."""
    pressures = [one for one in readings if one.pressure is not None]
    if scope not in DIZZINESS or not pressures:
        return
    wanted = missing_readings(tuple(pressures))
    if wanted:
        inputs = tuple(one.places[0] for one in pressures)
        yield MISSING.figure(words.READINGS_MISSING.format(wanted=wanted), inputs)


def missing_readings(pressures: tuple[Reading, ...]) -> str:
    """`lying; standing from 1 to 3 min; standing at 5 min`; empty when nothing is missing."""
    upright = [one for one in pressures if one.position in UPRIGHT]
    timed = [one.minutes for one in upright if one.minutes is not None]
    wanted = []
    if not any(one.position is Position.SUPINE for one in pressures):
        wanted.append(words.WANTED_LYING)
    if not upright:
        wanted.append(words.WANTED_STANDING)
    elif not any(SUSTAINED_FROM_MIN <= one <= CLASSICAL_MIN for one in timed):
        wanted.append(words.WANTED_EARLY.format(first=SUSTAINED_FROM_MIN, last=CLASSICAL_MIN))
    if not any(one >= LATE_MIN for one in timed):
        wanted.append(words.WANTED_LATE.format(minutes=LATE_MIN))
    if upright and not any(one.rate is not None for one in upright):
        wanted.append(words.WANTED_RATE)
    return "; ".join(wanted)
