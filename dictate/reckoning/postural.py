"""Postural series: changes from the baseline, and every criterion that can be judged on them."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.model import Figure, Finding, Position, number_text
from dictate.reckoning.changes import UPRIGHT, Change, change_text, changes_of, inputs_of
from dictate.reckoning.falls import fall_figure, initial_figure, larger_fall_figure, low_figure, sitting_figure
from dictate.reckoning.rates import ratio_figure, rhythm_forbids, rise_figure
from dictate.reckoning.readings import Reading, conflicting, readings_of


def postural_figures(findings: tuple[Finding, ...], *, age: float | None = None) -> Iterator[Figure]:
    """Changes from the baseline and the criteria they meet; nothing without a baseline and an upright reading.

    Source: Freeman 2011; Brignole 2018; Shaw 2017; Sheldon 2015; Norcliffe-Kaufmann 2018.
    """
    readings = readings_of(findings)
    refused = tuple(
        one
        for one in conflicting(readings)
        if one.position is Position.SUPINE or one.position in (*UPRIGHT, Position.SITTING)
    )
    usable = tuple(one for one in readings if one not in refused)
    if refused and any(one.position in UPRIGHT for one in readings):
        yield _refusal(refused)
    changes = changes_of(usable)
    if not changes:
        return
    yield from _listed(changes)
    if changes[0].baseline.position is Position.SITTING:
        yield from sitting_figure(changes)
        yield from low_figure(changes)
        return
    if any(one.position is Position.SITTING for one in usable):
        yield from _listed(changes_of(usable, from_sitting=True))
    yield from fall_figure(changes)
    yield from larger_fall_figure(changes)
    yield from initial_figure(changes)
    yield from low_figure(changes)
    yield from rise_figure(changes, age=age)
    if not rhythm_forbids(findings):
        yield from ratio_figure(changes)


def _refusal(refused: tuple[Reading, ...]) -> Figure:
    values = ", ".join(f"{one.pressure or number_text(one.rate or 0)} ({one.when})" for one in refused)
    return Figure(
        name="postural change",
        text=f"Postural change not judged on readings dictated twice with different values: {values}",
        inputs=tuple(place for one in refused for place in one.places),
    )


def _listed(changes: tuple[Change, ...]) -> Iterator[Figure]:
    """One figure for every baseline (arm), with a part for every upright reading."""
    for baseline in dict.fromkeys(change.baseline for change in changes):
        group = tuple(change for change in changes if change.baseline is baseline)
        yield Figure(
            name="postural change",
            text=f"Change from {_baseline_text(baseline)}: {'; '.join(map(_change_text, group))}",
            formula="upright - baseline",
            source="arithmetic",
            inputs=inputs_of(group),
        )


def _change_text(change: Change) -> str:
    """`standing at 3 min: pressure -22/-4, rate +8`."""
    fall = ""
    if change.systolic is not None:
        diastolic = "not known" if change.diastolic is None else change_text(-change.diastolic)
        fall = f"pressure {change_text(-change.systolic)}/{diastolic}"
    rate = "" if change.rate is None else f"rate {change_text(change.rate)}"
    return f"{change.upright.when}: {', '.join(filter(None, (fall, rate)))}"


def _baseline_text(baseline: Reading) -> str:
    rate = "" if baseline.rate is None else number_text(baseline.rate)
    return f"{baseline.when} {', '.join(filter(None, (str(baseline.pressure or ''), rate)))}"
