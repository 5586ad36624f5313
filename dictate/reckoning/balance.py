"""Standing on one leg beside the published means of an age: off unless the user asks for it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Conventions, Figure, Finding, Quantity, Status, number_text
from dictate.reckoning.rules import rule

# Source: Springer 2007 (whole seconds of the first looked up, secondary; decimals from memory): means of the best of
# three trials, which end at 45 s; youngest and oldest year of the band, eyes open, eyes closed women and men.
MEANS = (
    (18, 39, 44.7, (13.1, 16.9)),
    (40, 49, 41.9, (13.5, 12.0)),
    (50, 59, 41.2, (7.9, 8.6)),
    (60, 69, 32.1, (3.6, 5.1)),
    (70, 79, 21.5, (3.7, 2.6)),
    (80, 99, 9.4, (2.1, 1.8)),
)
ONE_LEG = re.compile(r"\b(?:one|1|single)[- ]?(?:leg|legged|limb|foot)\b", re.IGNORECASE)
EYES = re.compile(r"\beyes (open|closed)\b")

STANCE = rule(
    "one-leg stance against age",
    formula="seconds beside the mean of that age",
    source="Springer 2007 (decimals from memory; eyes closed looked up, secondary)",
    limits="off unless switched on in the settings; a mean and no limit of the normal; means of the best of three "
    "trials that end at 45 s: those of the mean of three are lower, other protocols differ (Bohannon 1984: 30 s)",
    missing="age, one leg, or whether the eyes were open not said, or an age below 18 or above 99: no figure",
)


def stance_means(age: float) -> tuple[float, tuple[float, float]] | None:
    """Mean seconds with the eyes open, and closed for women and men; None outside 18 to 99 years.

    Source: Springer 2007.
    """
    return next((row[2:] for row in MEANS if row[0] <= age < row[1] + 1), None)


def stance_figure(findings: tuple[Finding, ...], *, age: float | None, conventions: Conventions) -> Iterator[Figure]:
    """Each time on one leg beside the mean of the age; only when switched on and the age is known."""
    means = None if age is None or not conventions.one_leg_norms else stance_means(age)
    for at, finding in enumerate(findings if means is not None else ()):
        value = finding.value
        if finding.item != "stance" or finding.status is not Status.MEASURED or not isinstance(value, Quantity):
            continue
        eyes = EYES.search(" ".join(finding.detail).lower())
        plain = finding.unit == "s" and value.upto is None and value.then is None
        if not (plain and eyes and ONE_LEG.search(finding.quote)) or means is None or age is None:
            continue
        women, men = (number_text(one) for one in means[1])
        mean = number_text(means[0]) if eyes[1] == "open" else words.WOMEN_MEN.format(women=women, men=men)
        side = f" {words.SIDES[finding.side]}" if finding.side else ""
        text = words.ONE_LEG.format(
            side=side, seconds=number_text(value.number), eyes=eyes[1], age=number_text(age), mean=mean
        )
        yield STANCE.figure(text, (at,), value=value.number, unit="s")
