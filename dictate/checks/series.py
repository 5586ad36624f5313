"""Postural series: readings of one item in several positions or at several times since standing."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from functools import partial

from dictate.grammar import Grammar
from dictate.model import Examination, Finding, Position, Status

POSTURAL_SCOPES = ("dizziness",)
BASELINES = (Position.SUPINE, Position.SITTING)
UPRIGHT = (Position.STANDING, Position.TILTED)
PRESSURE, RATE = "blood_pressure", "heart_rate"


def readings(exam: Examination, item: str) -> tuple[Finding, ...]:
    """Measured values of the item that may belong to a series, in the order said; those after a manoeuvre do not."""
    return tuple(
        finding
        for finding in exam.findings
        if finding.item == item and finding.status is Status.MEASURED and finding.value is not None and not finding.site
    )


def in_postural_scope(exam: Examination) -> bool:
    """Whether the complaint asks for pressures lying and standing."""
    return exam.scope in POSTURAL_SCOPES


def without_position(exam: Examination, item: str, *, scoped: bool = True) -> Iterator[Finding]:
    """Readings without position while a series of that item is going on; scoped: or the scope calls for one."""
    series = readings(exam, item)
    if any(finding.position is not None for finding in series):
        yield from (finding for finding in series if finding.position is None)
    elif scoped and in_postural_scope(exam):
        yield from series


def between_positions(exam: Examination, grammar: Grammar) -> Iterator[Finding]:
    """What was felt or counted between the readings of two positions, and is of one of them: of which was not said."""
    pressures = [at for at, finding in enumerate(exam.findings) if finding.item == PRESSURE and finding.position]
    for before, after in itertools.pairwise(pressures):
        between = exam.findings[before + 1 : after]
        one, two = exam.findings[before], exam.findings[after]
        if (one.position, one.minutes) == (two.position, two.minutes) or not all(
            map(partial(_of_series, grammar), between)
        ):
            continue
        yield from (finding for finding in between if finding.position is None and not finding.site)


def _of_series(grammar: Grammar, finding: Finding) -> bool:
    item = grammar.items.get(finding.item)
    return item is not None and item.positions and item.kind in ("presence", "quantity")


def without_time(exam: Examination, item: str) -> Iterator[Finding]:
    """Upright readings without minutes while there is a reading lying or sitting."""
    series = readings(exam, item)
    if any(finding.position in BASELINES for finding in series):
        yield from (finding for finding in series if finding.position in UPRIGHT and finding.minutes is None)
