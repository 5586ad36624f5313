"""Readings of pressure and heart rate with position, arm and minute, as the other rooms of reckoning need them."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from dictate.catalogue import figures as words
from dictate.model import Finding, Position, Pressure, Quantity, Side, Status, number_text

REPEATED = re.compile(r"\b(repeat(ed)?|again|recheck(ed)?|second|third|later|after)\b", re.IGNORECASE)
LYING = re.compile(r"(\d+(?:\.\d+)?) ?min(?:utes?)? (?:of )?(?:lying|supine|rest|recumbent)", re.IGNORECASE)
NEAR = 3  # a rate this many findings behind a pressure, with its position and minute, was taken with it
RATE_UNITS = ("/min", "")


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
        """`supine`, `standing at 3 min`, `standing at once`, `standing, time not said`."""
        name = "" if self.position is None else words.POSITIONS[self.position]
        if self.position not in (Position.STANDING, Position.TILTED):
            return name
        if self.minutes is None:
            return words.WHEN_UNSAID.format(position=name)
        return f"{name} {minutes_text(self.minutes)}"

    @property
    def lying(self) -> float | None:
        """Minutes of lying said with it; None: not said."""
        found = [LYING.search(part) for part in self.detail]
        return next((float(one.group(1)) for one in found if one), None)

    @property
    def stance(self) -> tuple[Position | None, float | None]:
        """Position and minute."""
        return self.position, self.minutes


def minutes_text(minutes: float) -> str:
    """`at 3 min`, `at once`, `at 15 s`."""
    return words.AT.format(time=time_text(minutes))


def time_text(minutes: float) -> str:
    """`3 min`, `once`, `15 s`."""
    if minutes == 0:
        return words.ONCE
    if minutes < 1:
        return words.SECONDS.format(seconds=number_text(round(minutes * 60)))
    return words.MINUTES.format(minutes=number_text(minutes))


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
        elif finding.item == "heart_rate" and isinstance(value, Quantity) and _is_rate(value, finding.unit):
            last = found[-1] if found else None
            if last and last.rate is None and last.stance == stance and at - last.places[-1] <= NEAR:
                found[-1] = replace(last, rate=value.number, places=(*last.places, at))
            else:
                found.append(Reading(*stance, None, None, value.number, (at,), detail))
    return _paired(found)


def _is_possible(value: Pressure) -> bool:
    return value.diastolic is None or value.diastolic < value.systolic


def _is_rate(value: Quantity, unit: str) -> bool:
    """A plain number of beats a minute: no range, no change, no seconds taken for beats."""
    return value.upto is None and value.then is None and not value.note and unit in RATE_UNITS


def _paired(readings: list[Reading]) -> tuple[Reading, ...]:
    """A rate and a pressure that are the only ones of their position and minute belong together, however far apart."""
    kept = list(readings)
    for rate in readings:
        here = [one for one in readings if one.stance == rate.stance and one.position is not None]
        others = [one for one in here if one is not rate]
        if rate.pressure is None and len(others) == 1 and others[0].pressure is not None and others[0].rate is None:
            whole = replace(others[0], rate=rate.rate, places=tuple(sorted((*others[0].places, *rate.places))))
            kept[kept.index(others[0])] = whole
            kept.remove(rate)
    return tuple(kept)


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
