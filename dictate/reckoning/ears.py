"""Rinne and Weber tests read together."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Choice, Figure, Finding, Side, Status, Text
from dictate.reckoning.rules import rule

OTHER = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT}
FITS_NONE = words.EARS_FIT_NONE

FORK = rule(
    "Rinne and Weber",
    formula="the teaching rule that both tests fit together",
    source="teaching pages on the tuning-fork tests (looked up, secondary)",
    limits="names the pattern of hearing loss that the two fit, no cause; a positive Rinne is the usual one; "
    "nothing is "
    "written when all is usual",
    missing="Weber, or Rinne of one side, not said: no figure",
)


def fork_pattern(*, right_air: bool, left_air: bool, weber: Side, worse: Side | None) -> str:
    """The pattern that Rinne (air better than bone) of each side and Weber fit; empty: the usual result.

    weber: LEFT, RIGHT or MIDLINE. worse: the side said to hear worse; None: not said.
    Source: teaching rules (looked up, secondary).
    """
    air = {Side.RIGHT: right_air, Side.LEFT: left_air}
    if weber not in OTHER:
        if right_air and left_air:
            return "" if worse is None else FITS_NONE
        return FITS_NONE if right_air or left_air else words.CONDUCTIVE_BOTH
    away = OTHER[weber]
    if not air[weber]:
        return words.CONDUCTIVE.format(side=words.SIDES[weber]) if air[away] and worse is not away else FITS_NONE
    if worse is weber:
        return FITS_NONE
    if not air[away]:
        return words.SEVERE_SENSORINEURAL.format(side=words.SIDES[away])
    said = "" if worse is away else words.IF_WORSE.format(side=words.SIDES[away])
    return words.SENSORINEURAL.format(side=words.SIDES[away], worse=said)


def fork_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Both tests together, where Weber and Rinne of both sides were said and not all is usual."""
    air: dict[Side, bool] = {}
    places: list[int] = []
    for at, finding in enumerate(findings):
        if finding.item != "rinne" or finding.status not in (Status.NORMAL, Status.ABNORMAL):
            continue
        if isinstance(finding.value, Choice) and finding.value.choice == "equal":
            return
        for side in OTHER if finding.side is Side.BOTH else (finding.side,):
            better = finding.status is Status.NORMAL
            if side not in OTHER or air.get(side, better) is not better:
                return
            air[side] = better
        places.append(at)
    webers = [(at, side) for at, finding in enumerate(findings) if (side := _weber(finding)) is not None]
    if len(air) < 2 or len(webers) != 1:
        return
    losses = {
        (finding.side, at)
        for at, finding in enumerate(findings)
        if finding.item == "hearing" and finding.status is Status.ABNORMAL and finding.side in OTHER
    }
    worse = next(iter(losses))[0] if len(losses) == 1 else None
    pattern = fork_pattern(right_air=air[Side.RIGHT], left_air=air[Side.LEFT], weber=webers[0][1], worse=worse)
    if pattern:
        inputs = (*places, webers[0][0], *(at for _, at in losses))
        yield FORK.figure(words.RINNE_AND_WEBER.format(pattern=pattern), tuple(sorted(inputs)))


def _weber(finding: Finding) -> Side | None:
    """The side Weber was heard on; MIDLINE when it did not lateralise; None: not said."""
    if finding.item != "weber":
        return None
    if finding.status is Status.NORMAL:
        return Side.MIDLINE
    if finding.side in OTHER:
        return finding.side
    word = str(finding.value) if isinstance(finding.value, Choice | Text) else ""
    return Side(word) if word in ("left", "right") else None
