"""Arteries to the head: retinal against brachial diastolic pressure, facial pulse on compression beside bruits."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Choice, Figure, Finding, Position, Pressure, Quantity, Side, Status, number_text
from dictate.reckoning.rules import rule

SIDES = (Side.RIGHT, Side.LEFT)
BRUITS = ("carotid_bruit", "orbital_bruit", "temporal_bruit")
FACIAL = "facial_pulse_on_compression"

RETINAL = rule(
    "retinal artery pressure",
    formula="brachial diastolic - retinal diastolic; retinal / brachial; (higher - lower) / higher between the eyes",
    source="arithmetic; Perry and Rose 1958 (the gap)",
    limits="figures depend on the instrument, and papers on different thresholds: none is built in, no verdict",
    missing="one eye: no comparison of the eyes; no brachial diastolic, or several that differ: no gap",
)
PULSES = rule(
    "facial pulse and bruits",
    formula="findings of each side next to each other",
    source="Fisher 1970; Caplan 1973 (from memory); Doppler study of 100 healthy adults (nasal artery reversed "
    "in 39 %)",
    limits="they cannot tell a narrowed from a blocked vessel, and loss at the inner corner alone proves no "
    "disease; no verdict",
    missing="no facial pulse said to change on compression: no figure",
)


def retinal_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Gap to the arm of each eye, and the eyes against each other. Source: arithmetic; no verdict."""
    eyes: dict[Side, tuple[float, int]] = {}
    for at, finding in enumerate(findings):
        value = finding.value
        if finding.item != "retinal_artery_diastolic" or not isinstance(value, Quantity) or value.upto is not None:
            continue
        for side in SIDES if finding.side is Side.BOTH else (finding.side,):
            if side not in SIDES or side in eyes:
                return
            eyes[side] = (value.number, at)
    parts, places = [], [at for _, at in eyes.values()]
    for side in (one for one in SIDES if one in eyes):
        arm = _brachial(findings, side, findings[eyes[side][1]])
        if arm is not None:
            places.append(arm[1])
            gap, ratio = arm[0] - eyes[side][0], eyes[side][0] / arm[0]
            parts.append(
                words.RETINAL_GAP.format(side=words.SIDES[side], gap=number_text(gap), arm=arm[0], ratio=ratio)
            )
    if len(eyes) == 2:
        parts.append(_eyes(eyes[Side.RIGHT][0], eyes[Side.LEFT][0]))
    if parts:
        text = words.RETINAL.format(parts="; ".join(parts))
        yield RETINAL.figure(text, tuple(dict.fromkeys(places)))


def percent_lower(one: float, other: float) -> float:
    """How much lower the lower is, in percent of the higher: 60 and 48 give 20. Source: own formula."""
    return 100 * abs(one - other) / max(one, other)


def _eyes(right: float, left: float) -> str:
    if right == left:
        return words.EYES_ALIKE
    lower = words.SIDES[Side.RIGHT if right < left else Side.LEFT]
    percent = number_text(round(percent_lower(right, left), 1))
    return words.EYE_LOWER.format(side=lower, difference=number_text(abs(right - left)), percent=percent)


def _brachial(findings: tuple[Finding, ...], side: Side, eye: Finding) -> tuple[int, int] | None:
    """Brachial diastolic of that position, of the same arm where it was taken; None: none, or several that differ."""
    taken = [
        (finding.value.diastolic, at, finding.side)
        for at, finding in enumerate(findings)
        if finding.item == "blood_pressure" and isinstance(finding.value, Pressure) and finding.value.diastolic
        if not finding.site
        and (finding.position in (None, eye.position) or (eye.position is None and not _up(finding)))
    ]
    own = [one for one in taken if one[2] is side] or taken
    return (own[0][0], own[0][1]) if own and len({diastolic for diastolic, _, _ in own}) == 1 else None


def pulses_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """The bits of evidence next to each other, with their caution; only when a facial pulse changed on compression."""
    pulses = [(at, f) for at, f in enumerate(findings) if f.item == FACIAL and isinstance(f.value, Choice)]
    if not any(finding.status is Status.ABNORMAL for _, finding in pulses):
        return
    bruits = [
        (at, finding)
        for at, finding in enumerate(findings)
        if finding.item in BRUITS and finding.status in (Status.PRESENT, Status.ABSENT)
    ]
    said = [words.FACIAL_PULSE.format(side=_side(finding), said=finding.value) for _, finding in pulses]
    said += [words.BRUITS[f.item].format(side=_side(f), said=words.STATUSES[f.status]) for _, f in bruits]
    text = words.PULSES.format(said=", ".join(said))
    yield PULSES.figure(text[:1].upper() + text[1:], tuple(at for at, _ in (*pulses, *bruits)))


def _up(finding: Finding) -> bool:
    """Whether it was taken upright: the eye was not, unless that was said."""
    return finding.position in (Position.STANDING, Position.TILTED)


def _side(finding: Finding) -> str:
    return "" if finding.side is None else f"{words.SIDES_IN_FULL[finding.side]} "
