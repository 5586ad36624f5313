"""Postural series: changes from the baseline, and every criterion that can be judged on them."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Conventions, Figure, Finding, Position, number_text
from dictate.reckoning.changes import UPRIGHT, Change, change_text, changes_of, inputs_of
from dictate.reckoning.circumstances import arms_figure, missing_figure, rhythm_figure, symptoms_said
from dictate.reckoning.falls import fall_figure, initial_figure, larger_fall_figure, low_figure, sitting_figure
from dictate.reckoning.rates import ratio_figure, rhythm_forbids, rise_figure
from dictate.reckoning.readings import Reading, conflicting, readings_of
from dictate.reckoning.rules import rule

SERIES = (Position.SUPINE, Position.SITTING, *UPRIGHT)
CHANGE = rule(
    "postural change",
    formula="upright - baseline",
    source="arithmetic",
    limits="each upright reading against the last lying one before it, else against the sitting one, named so; "
    "no verdict",
    missing="no baseline, no upright reading, or another arm: no change; one position said twice with different "
    "values: "
    "not judged, both named",
)


def postural_figures(
    findings: tuple[Finding, ...],
    *,
    age: float | None = None,
    scope: str = "",
    conventions: Conventions = Conventions(),  # noqa: B008 (frozen)
) -> Iterator[Figure]:
    """Changes from the baseline and the criteria they meet; nothing without a baseline and an upright reading.

    Source: Freeman 2011; Brignole 2018; Shaw 2017; Sheldon 2015; Norcliffe-Kaufmann 2018.
    """
    readings = tuple(one for one in readings_of(findings) if one.position in SERIES)
    refused = conflicting(readings)
    usable = tuple(one for one in readings if one not in refused)
    if refused and any(one.position in UPRIGHT for one in readings):
        yield _refusal(refused)
    lying = tuple(one for one in changes_of(usable) if one.baseline.position is Position.SUPINE)
    sitting = changes_of(usable, from_sitting=True)
    yield from _listed(lying, sitting)
    if lying:
        yield from fall_figure(lying)
        yield from larger_fall_figure(lying, conventions)
        yield from initial_figure(lying)
        yield from rise_figure(lying, age=age, symptoms=symptoms_said(findings))
        yield from rhythm_figure(findings, lying) if rhythm_forbids(findings) else ratio_figure(lying)
    if not any(change.systolic is not None for change in lying):
        yield from sitting_figure(sitting)
    yield from low_figure(usable)
    yield from arms_figure(usable)
    yield from missing_figure(usable, scope=scope)


def _refusal(refused: tuple[Reading, ...]) -> Figure:
    values = ", ".join(f"{one.pressure or number_text(one.rate or 0)} ({one.when})" for one in refused)
    return CHANGE.figure(
        words.SAID_TWICE.format(values=values),
        tuple(place for one in refused for place in one.places),
    )


def _listed(lying: tuple[Change, ...], sitting: tuple[Change, ...]) -> Iterator[Figure]:
    """One figure for every upright reading, with its change from lying and from sitting, as far as both were taken."""
    uprights = tuple(dict.fromkeys(change.upright for change in (*lying, *sitting)))
    for upright in uprights:
        changes = [change for change in (*lying, *sitting) if change.upright == upright]
        twice = [one for one in uprights if one.stance == upright.stance]
        arm = words.THIS_ARM.format(side=words.SIDES[upright.side]) if len(twice) > 1 and upright.side else ""
        when = f"{upright.when[:1].upper()}{upright.when[1:]}{arm}"
        text = words.CHANGES_FROM.format(when=when, changes="; ".join(map(_change_text, changes)))
        inputs = tuple(dict.fromkeys((*upright.places, *inputs_of(changes))))
        falls = [change.systolic for change in changes[:1] if change.systolic is not None]
        value, unit = (-float(falls[0]), "mm[Hg]") if falls else (None, "")
        yield CHANGE.figure(text, inputs, value=value, unit=unit)


def _change_text(change: Change) -> str:
    """`supine -22/-4 mmHg, +8/min`."""
    fall = ""
    if change.systolic is not None:
        diastolic = words.NOT_KNOWN if change.diastolic is None else change_text(-change.diastolic)
        fall = words.FALL_IN_MMHG.format(fall=f"{change_text(-change.systolic)}/{diastolic}")
    rate = "" if change.rate is None else words.RATE_CHANGE.format(change=change_text(change.rate))
    arm = (
        words.OF_ARM.format(side=words.SIDES[change.baseline.side])
        if change.baseline.side and not change.upright.side
        else ""
    )
    return f"{change.baseline.when}{arm} {', '.join(filter(None, (fall, rate)))}"
