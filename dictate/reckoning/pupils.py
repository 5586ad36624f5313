"""Difference between the pupils, before light and in light."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Figure, Finding, Quantity, Side, Status, number_text
from dictate.reckoning.rules import rule

# Source: common teaching (from memory): more than 1 mm is beyond what is usually called physiological.
BEYOND_MM = 1.0
DARK, LIGHT, PLAIN = words.IN_THE_DARK, words.IN_LIGHT, ""

PUPILS = rule(
    "difference between the pupils",
    formula="larger - smaller, in the same light",
    source="Lam 1987 (0.4 mm or more in 19 % of healthy people at one look); above 1 mm: common teaching",
    limits="above 1 mm or not, no verdict; whole millimetres are no finer than half a millimetre; equal pupils: "
    "no figure",
    missing="one pupil, a side not said, or sizes in different light: no figure",
)


def pupil_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Right against left in each light that both were measured in, where they differ."""
    sizes: dict[str, dict[Side, float]] = {}
    places: list[int] = []
    for at, finding in enumerate(findings):
        value = finding.value
        if finding.item != "pupil_size" or finding.status is not Status.MEASURED or not isinstance(value, Quantity):
            continue
        if value.upto is not None or finding.side not in (Side.LEFT, Side.RIGHT):
            continue
        places.append(at)
        for light, size in _by_light(finding, value):
            if finding.side in sizes.setdefault(light, {}):
                return  # said twice in one light: none is chosen
            sizes[light][finding.side] = size
    parts = []
    largest = 0.0
    for light, both in sizes.items():
        if len(both) == 2:
            difference = round(both[Side.RIGHT] - both[Side.LEFT], 2)
            largest = max(largest, abs(difference))
            larger = (
                words.EQUAL
                if not difference
                else words.LARGER.format(side=words.SIDES[Side.RIGHT if difference > 0 else Side.LEFT])
            )
            parts.append(
                " ".join(
                    filter(
                        None,
                        (light, words.PUPIL_DIFFERENCE.format(millimetres=number_text(abs(difference)), larger=larger)),
                    )
                )
            )
    if not largest:
        return
    limit = words.PUPILS_ABOVE if largest > BEYOND_MM else words.PUPILS_NOT_ABOVE
    yield PUPILS.figure(
        words.PUPILS_DIFFER.format(parts=", ".join(parts), limit=limit), tuple(places), value=largest, unit="mm"
    )


def _by_light(finding: Finding, value: Quantity) -> Iterator[tuple[str, float]]:
    """Sizes with the light they were said for: `4 to 2` is before and in light."""
    if value.then is not None:
        yield words.BEFORE_LIGHT, value.number
        yield LIGHT, value.then
        return
    said = " ".join(finding.detail).lower()
    dark = "dark" in said or "dim" in said
    yield (DARK if dark else LIGHT if "light" in said else PLAIN), value.number
