"""The postural series over time: pressures as bars from systolic to diastolic, heart rate as rings."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.model import Examination, Finding, Position, Pressure, Quantity, Status, number_text
from dictate.notes.codes import COMPARATORS
from dictate.notes.drawing import Picture, dot, drawing, label, line
from dictate.notes.phrases import bound, circumstances, statement

LEFT, TOP, STEP, PLOT = 44, 26, 62, 170
GRID = 20  # mmHg and beats a minute between two lines
LEAST = 300  # width, for the key below
ROOM = 8  # below the lowest number, for its label
CAP = 5
ARROW = 12  # of a number that was said as a bound: it points to where the value lies
TIP = 3


@dataclass
class Stance:
    """What was said of one position at one time."""

    name: str
    pressures: list[tuple[Pressure, str]] = field(default_factory=list)  # and the word that makes it a bound
    rates: list[tuple[float, str]] = field(default_factory=list)
    symptoms: list[str] = field(default_factory=list)
    has_symptoms: bool = False


def series_picture(exam: Examination, grammar: Grammar) -> Picture | None:
    """The picture; None where pressures or rates were not said in two positions or at two times."""
    stances = [one for one in _stances(exam.findings, grammar) if one.pressures or one.rates]
    if len(stances) < 2:
        return None
    rows = tuple(_row(one) for one in stances)
    told = "; ".join(f"{row[0]}: {', '.join(filter(None, row[1:]))}" for row in rows)
    description = words.SERIES_DESCRIPTION.format(rows=told)
    svg = drawing(
        words.POSTURAL,
        description,
        max(LEFT + STEP * len(stances) + 8, LEAST),
        TOP + PLOT + 76,
        *_frame(stances),
        *_marks(stances),
    )
    return Picture(words.POSTURAL, description, svg, words.SERIES_COLUMNS, rows)


def _stances(findings: Sequence[Finding], grammar: Grammar) -> list[Stance]:
    found: dict[tuple[Position, float | None], Stance] = {}
    for one in findings:
        if one.position is None or one.site:
            continue
        stance = found.setdefault((one.position, one.minutes), Stance(circumstances(one)))
        if isinstance(one.value, Pressure) and one.item == "blood_pressure":
            stance.pressures.append((one.value, bound(one)))
        elif isinstance(one.value, Quantity) and one.item == "heart_rate" and one.value.upto is None:
            stance.rates.append((one.value.number, bound(one)))
        elif one.item == "orthostatic_symptoms" and one.status in (Status.PRESENT, Status.ABSENT):
            stance.symptoms.append(statement(one, grammar))
            stance.has_symptoms |= one.status is Status.PRESENT
    return list(found.values())


def _row(one: Stance) -> tuple[str, ...]:
    pressures = words.AND_ALSO.join(_said(str(pressure), limit, "mm[Hg]") for pressure, limit in one.pressures)
    rates = words.AND_ALSO.join(_said(number_text(rate), limit, "/min") for rate, limit in one.rates)
    return one.name, *(said or words.NOT_SAID for said in (pressures, rates, "; ".join(one.symptoms)))


def _said(number: str, limit: str, unit: str) -> str:
    return f"{limit} {number}{words.UNITS[unit]}".lstrip()


def _range(stances: Sequence[Stance]) -> tuple[float, float]:
    numbers = [n for one in stances for n, _ in one.rates]
    for pressure in (pressure for one in stances for pressure, _ in one.pressures):
        numbers += [pressure.systolic, pressure.systolic if pressure.diastolic is None else pressure.diastolic]
    return (min(numbers) - ROOM) // GRID * GRID, -(-max(numbers) // GRID) * GRID


def _height(number: float, stances: Sequence[Stance]) -> float:
    low, high = _range(stances)
    return TOP + PLOT * (1 - (number - low) / ((high - low) or 1))


def _frame(stances: Sequence[Stance]) -> Iterator[str]:
    low, high = _range(stances)
    right = LEFT + STEP * len(stances)
    step = GRID if high - low <= 10 * GRID else 2 * GRID
    for number in range(int(low), int(high) + 1, step):
        height = _height(number, stances)
        yield line(LEFT, height, right, height, faint=True)
        yield label(number_text(number), LEFT - 6, height + 4, anchor="end", size=10)
    yield label(words.SERIES_UNITS, 2, 12, size=10)
    for at, stance in enumerate(stances):
        x = LEFT + STEP * (at + 0.5)
        first, _, rest = stance.name.partition(" ")
        yield label(first, x, TOP + PLOT + 16, anchor="middle", size=10)
        yield label(rest, x, TOP + PLOT + 28, anchor="middle", size=10)
        if stance.has_symptoms:
            yield label(words.SYMPTOMS_MARK, x, TOP + PLOT + 40, anchor="middle", size=10, weight="bold")
    yield label(words.SERIES_KEY, 2, TOP + PLOT + 57, size=10)
    if any(limit for one in stances for _, limit in (*one.pressures, *one.rates)):
        yield label(words.SERIES_BOUNDS, 2, TOP + PLOT + 70, size=10)


def _marks(stances: Sequence[Stance]) -> Iterator[str]:
    before: tuple[float, float] | None = None
    for at, stance in enumerate(stances):
        x = LEFT + STEP * (at + 0.5)
        for pressure, limit in stance.pressures:
            yield from _pressure(pressure, limit, x - 8, stances)
        for rate, limit in stance.rates:
            height = _height(rate, stances)
            if limit:  # no ring, and no line to it: nobody said how high it was
                yield from _arrow(x + 12, height, limit)
            else:
                if before:
                    yield line(*before, x + 12, height, dash="3 3", faint=True)
                yield dot(x + 12, height, filled=False)
            yield label(
                _limited(number_text(rate), limit), x + 12, height + _aside(limit, -7), anchor="middle", size=10
            )
            before = None if limit else (x + 12, height)


def _pressure(pressure: Pressure, limit: str, x: float, stances: Sequence[Stance]) -> Iterator[str]:
    top = _height(pressure.systolic, stances)
    yield line(x - CAP, top, x + CAP, top, width=2)
    yield label(
        _limited(str(pressure.systolic), limit), x, top + _aside(limit, -4), anchor="middle", size=10, weight="bold"
    )
    if limit:
        yield from _arrow(x, top, limit)
    if pressure.diastolic is None:
        return
    foot = _height(pressure.diastolic, stances)
    if limit:  # no bar: it would say that the pressure reached from one number to the other
        yield from _arrow(x, foot, limit)
    else:
        yield line(x, top, x, foot, width=4)
    yield line(x - CAP, foot, x + CAP, foot, width=2)
    yield label(
        _limited(str(pressure.diastolic), limit), x, foot + _aside(limit, 12), anchor="middle", size=10, weight="bold"
    )


def _arrow(x: float, height: float, limit: str) -> Iterator[str]:
    """Up where the value is this or more, down where it is this or less; open at its end, as the value is."""
    end = height - ARROW if _is_least(limit) else height + ARROW
    back = end + (TIP if end < height else -TIP)
    yield line(x, height, x, end, dash="2 2", width=1.5)
    for aside in (-TIP, TIP):
        yield line(x + aside, back, x, end, width=1.5)


def _aside(limit: str, usual: float) -> float:
    """How far below its number a label stands: as usual, or away from the arrow of a limit."""
    if not limit:
        return usual
    return 12 if _is_least(limit) else -4


def _is_least(limit: str) -> bool:
    return COMPARATORS[limit].startswith(">")


def _limited(number: str, limit: str) -> str:
    return f"{words.SIGNS[COMPARATORS[limit]]}{number}" if limit else number
