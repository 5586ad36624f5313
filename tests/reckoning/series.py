"""Findings of a postural series, and of scales, made by hand."""

from __future__ import annotations

from dictate.model import (
    Component,
    Evidence,
    Figure,
    Finding,
    Grade,
    Position,
    Pressure,
    Quantity,
    Score,
    Side,
    Status,
)
from dictate.reckoning import reckon
from dictate.reckoning.changes import Change, changes_of
from dictate.reckoning.readings import readings_of


def finding(item: str, value: object = None, *, component: Component = Component.GENERAL, **more: object) -> Finding:
    """A measured finding with one word of evidence."""
    fields = {"status": Status.MEASURED, "evidence": (Evidence(first=0, last=0, quote=item),), **more}
    return Finding(component=component, item=item, value=value, **fields)


def pressure(text: str, position: str = "", minutes: float | None = None, **more: object) -> Finding:
    """A pressure: pressure("142/84", "supine")."""
    systolic, diastolic = text.split("/")
    value = Pressure(systolic=int(systolic), diastolic=int(diastolic) if diastolic.isdigit() else None)
    place = Position(position) if position else None
    return finding("blood_pressure", value, position=place, minutes=minutes, unit="mm[Hg]", **more)


def rate(number: float, position: str = "", minutes: float | None = None, **more: object) -> Finding:
    """A heart rate: rate(72, "standing", 3.0)."""
    place = Position(position) if position else None
    return finding("heart_rate", Quantity(number=number), position=place, minutes=minutes, unit="/min", **more)


def series(text: str) -> tuple[Finding, ...]:
    """Readings written as `supine 150/85, 65 > 1 min 118/70, 70 > 10 s 90/60 > standing 118/78 > - , 98`.

    A time means standing; a dash for a pressure that was not taken.
    """
    found: list[Finding] = []
    for part in text.split(">"):
        words = part.replace(",", " ").split()
        minutes, position = None, words[0]
        if words[1] in ("min", "s"):
            minutes = float(words[0]) / (60 if words[1] == "s" else 1)
            position, words = "standing", words[1:]
        if words[1] != "-":
            found.append(pressure(words[1], position, minutes))
        if len(words) > 2:
            found.append(rate(float(words[2]), position, minutes))
    return tuple(found)


def changes(text: str) -> tuple[Change, ...]:
    """The changes of a series against its baseline."""
    return changes_of(readings_of(series(text)))


def figures(name: str, findings: tuple[Finding, ...], **known: object) -> tuple[Figure, ...]:
    """The figures of that name."""
    return tuple(figure for figure in reckon(findings, **known) if figure.name == name)


def totals(name: str, findings: tuple[Finding, ...]) -> list[float]:
    """The values of the figures of that name; those that only say why there is none are left out."""
    return [figure.value for figure in figures(name, findings) if figure.value is not None]


def coma(
    eye: float | None, verbal: float | str | None, motor: float | None, total: float | None = None
) -> tuple[Finding, ...]:
    """Parts of the coma scale; `T`: not testable; None: not said."""
    found = []
    for item, points in (("gcs_eye", eye), ("gcs_verbal", verbal), ("gcs_motor", motor), ("gcs_total", total)):
        if points == "T":
            value, status = Score(points=None, mark="T"), Status.NOT_ASSESSABLE
        elif points is None:
            continue
        else:
            value, status = Score(points=float(points)), Status.MEASURED
        found.append(finding(item, value, component=Component.MENTAL_STATUS, status=status))
    return tuple(found)


MUSCLES = ("deltoid", "biceps", "wrist_extensors", "iliopsoas", "quadriceps", "tibialis_anterior")


def muscles(right: str, left: str) -> tuple[Finding, ...]:
    """Grades of the six movements, right and left: muscles("5 5 5 5 5 5", "2 3 1 3 4 2"); a dash: not said."""
    return tuple(
        finding(f"strength_{muscle}", Grade(scale="mrc", grade=grade), component=Component.MOTOR, side=side)
        for side, grades in ((Side.RIGHT, right), (Side.LEFT, left))
        for muscle, grade in zip(MUSCLES, grades.split(), strict=True)
        if grade != "-"
    )
