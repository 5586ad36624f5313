"""Readings of pressure and heart rate with position, arm and minute, as the other rooms of reckoning need them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from dictate.model import Finding, Position, Pressure, Quantity, Side, Status, number_text

REPEATED = re.compile(r"\b(repeat(ed)?|again|recheck(ed)?|second|third|later|after)\b", re.IGNORECASE)
NEAR = 3  # a rate this many findings behind a pressure, with its position and minute, was taken with it


@dataclass(frozen=True, slots=True)
class Reading:
    """One measurement: pressure, rate, or both; `places` are places among the findings."""

    position: Position | None
    minutes: float | None
    side: Side | None
    pressure: Pressure | None
    rate: float | None
    places: tuple[int, ...]
    detail: tuple[str, ...] = ()

    @property
    def when(self) -> str:
        """`supine`, `standing at 3 min`, `standing, time not said`."""
        name = "" if self.position is None else self.position.value
        if self.position not in (Position.STANDING, Position.TILTED):
            return name
        if self.minutes is None:
            return f"{name}, time not said"
        return f"{name} at {number_text(self.minutes)} min"


def readings_of(findings: tuple[Finding, ...]) -> tuple[Reading, ...]:
    """All readings in the order said. Those after a manoeuvre (stairs), and impossible ones, are left out."""
    found: list[Reading] = []
    for at, finding in enumerate(findings):
        if finding.status is not Status.MEASURED or finding.site:
            continue
        value = finding.value
        stance = (finding.position, finding.minutes)
        detail = finding.detail or (("repeated",) if REPEATED.search(finding.quote) else ())
        if finding.item == "blood_pressure" and isinstance(value, Pressure) and _is_possible(value):
            found.append(Reading(*stance, finding.side, value, None, (at,), detail))
        elif finding.item == "heart_rate" and isinstance(value, Quantity) and value.upto is None and value.then is None:
            last = found[-1] if found else None
            if last and last.rate is None and (last.position, last.minutes) == stance and at - last.places[-1] <= NEAR:
                found[-1] = Reading(*stance, last.side, last.pressure, value.number, (*last.places, at), last.detail)
            else:
                found.append(Reading(*stance, None, None, value.number, (at,), detail))
    return tuple(found)


def _is_possible(value: Pressure) -> bool:
    return value.diastolic is None or value.diastolic < value.systolic


def conflicting(readings: tuple[Reading, ...]) -> tuple[Reading, ...]:
    """Readings said twice with different values, and nothing that tells them apart: none of them is chosen."""

    def clash(one: Reading, other: Reading) -> bool:
        if (one.position, one.minutes, one.side) != (other.position, other.minutes, other.side):
            return False
        if one.detail or other.detail:
            return False
        pressures = None not in (one.pressure, other.pressure) and one.pressure != other.pressure
        rates = one.pressure == other.pressure and None not in (one.rate, other.rate) and one.rate != other.rate
        return pressures or rates

    return tuple(one for one in readings if any(clash(one, other) for other in readings if other is not one))
