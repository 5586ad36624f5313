"""Sums of scales: coma scale, also with pupils, FOUR, stroke and ataxia scales; never from missing parts."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.grammar.sums import ATAXIA, COMA, FOUR, STROKE, Parts, Sum, parts_of, points_of
from dictate.model import Choice, Figure, Finding, Side, Status, number_text
from dictate.reckoning.rules import Rule, rule

COMA_RULE = rule(
    COMA.name,
    formula="eye + verbal + motor",
    source="Teasdale 2014",
    limits="3 to 15; no verdict; not repeated beside an equal dictated total; "
    "a verbal 1 of an intubated patient is named",
    missing="a part said twice, or two missing: no total; one missing or not testable (T): says which, no total",
)
PUPILS_RULE = rule(
    "coma scale with pupils",
    formula="coma scale - pupils without reaction to light",
    source="Brennan 2018",
    limits="1 to 15; written when a pupil does not react to light, since it equals the coma scale otherwise; a "
    "reaction to near counts for nothing",
    missing="no total (a part missing or not testable), or a pupil whose reaction was not said: no figure",
)
FOUR_RULE = rule(
    FOUR.name,
    formula="eye + motor + brainstem + respiration",
    source="Wijdicks 2005",
    limits="0 to 16; no verdict; not repeated beside an equal dictated total",
    missing="a part said twice, or more than one missing: no total; one missing: says which, no total",
)
STROKE_RULE = rule(
    STROKE.name,
    formula="sum of the fifteen items",
    source="Brott 1989; NINDS form",
    limits="0 to 42; items 5, 6, 7 and 10 may be untestable: not counted, and named",
    missing="an item said twice, or more than one missing: no total; one missing: says which, no total",
)
ATAXIA_RULE = rule(
    ATAXIA.name,
    formula="items 1 to 4 + means of right and left of items 5 to 8",
    source="Schmitz-Hübsch 2006",
    limits="0 to 40, in halves; no verdict",
    missing="one item missing, or one side of one of items 5 to 8: says which, no total; more missing: nothing",
)
REACTS = ("brisk", "sluggish", "reactive", "hippus", "to light but not to near")


def coma_sum(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Eye, verbal and motor points added, when all three are plain numbers and no equal total was dictated.

    An untestable part ("T") gives no total. Source: Teasdale 2014; Glasgow scale FAQ.
    """
    yield from _sum_figure(findings, COMA, COMA_RULE)


def four_sum(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Eye, motor, brainstem and respiration added, when all were dictated. Source: Wijdicks 2005."""
    yield from _sum_figure(findings, FOUR, FOUR_RULE)


def stroke_sum(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """The fifteen stroke scale items added; untestable ones not counted and named. Source: Brott 1989; NINDS form."""
    yield from _sum_figure(findings, STROKE, STROKE_RULE)


def ataxia_sum(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """SARA: four items and four means of both sides. Source: Schmitz-Hübsch 2006."""
    yield from _sum_figure(findings, ATAXIA, ATAXIA_RULE)


def capital(text: str) -> str:
    """First letter in capitals, the others as they are."""
    return text[:1].upper() + text[1:]


def total_of(findings: tuple[Finding, ...], one: Sum) -> tuple[float, tuple[int, ...]] | None:
    """The total from all parts, and where they stand; None when one is missing, out of range or not counted."""
    parts = _whole(findings, one)
    return None if parts is None else (parts.known, parts.places)


def _whole(findings: tuple[Finding, ...], one: Sum) -> Parts | None:
    """The parts, when they give a total."""
    parts = parts_of(findings, one)
    if parts is None or parts.missing or set(parts.untestable) - one.may_be_untestable or not parts.points:
        return None
    in_range = (one.parts[name][0] <= points <= one.parts[name][1] for name, points in parts.points.items())
    return parts if all(in_range) else None


def _sum_figure(findings: tuple[Finding, ...], one: Sum, by: Rule) -> Iterator[Figure]:
    parts = _whole(findings, one)
    if parts is None:
        yield from _refused(findings, one, by)
        return
    value = parts.known
    if any(finding.item == one.total and points_of(finding) == value for finding in findings):
        return
    said = " + ".join(number_text(parts.points[name]) for name in one.parts if name in parts.points)
    name = capital(one.name)
    text = words.SUM.format(name=name, total=number_text(value), highest=one.highest, parts=said)
    if parts.untestable:
        names = ", ".join(name.partition("_")[2].replace("_", " ") for name in parts.untestable)
        text = words.SUM_OF_SCORED.format(name=name, count=len(parts.points), total=number_text(value), names=names)
    if one is COMA and parts.points["gcs_verbal"] == 1 and any(map(_is_intubated, findings)):
        text += words.VERBAL_INTUBATED
    yield by.figure(text, parts.places, value=float(value), unit="{score}")


def _is_intubated(finding: Finding) -> bool:
    """Whether the patient was said to be intubated: then verbal is not testable, and no 1. Source: scale FAQ."""
    return finding.item == "examination_conditions" and "intubated" in str(finding.value or "").lower()


def _refused(findings: tuple[Finding, ...], one: Sum, by: Rule) -> Iterator[Figure]:
    """Which single part the sum fails for; nothing where more fail, or where a total was dictated."""
    parts = parts_of(findings, one)
    if parts is None or not parts.points or any(finding.item == one.total for finding in findings):
        return
    untestable = tuple(name for name in parts.untestable if name not in one.may_be_untestable)
    lacking = (*parts.missing, *untestable)
    if len(lacking) == 1:
        reason = words.PART_UNTESTABLE if untestable else words.PART_NOT_SAID
        part = lacking[0].partition("_")[2].replace("_", " ")
        yield by.figure(words.SUM_REFUSED.format(name=capital(one.name), part=part, reason=reason), parts.places)


def with_pupils(total: float, unreactive: int) -> float:
    """Coma scale minus the number of pupils that do not react to light (0, 1, 2). Source: Brennan 2018."""
    return total - unreactive


def coma_pupils(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """The coma scale with pupils, when both pupils were said and one does not react. Source: Brennan 2018."""
    found = total_of(findings, COMA)
    dictated = [(at, points) for at, f in enumerate(findings) if f.item == COMA.total and (points := points_of(f))]
    if found is None and len(dictated) == 1 and not parts_said(findings):
        found = dictated[0][1], (dictated[0][0],)
    pupils = _pupils(findings)
    if found is None or pupils is None or any(points != found[0] for _, points in dictated):
        return
    unreactive, places = pupils
    if not unreactive:
        return
    total = with_pupils(found[0], unreactive)
    which = words.ONE_PUPIL if unreactive == 1 else words.BOTH_PUPILS
    text = words.COMA_WITH_PUPILS.format(
        coma=number_text(found[0]), unreactive=unreactive, total=number_text(total), which=which
    )
    yield PUPILS_RULE.figure(text, (*found[1], *places), value=float(total), unit="{score}")


def parts_said(findings: tuple[Finding, ...]) -> bool:
    """Whether any part of the coma scale was dictated: then a bare total is not taken instead of them."""
    return any(finding.item in COMA.parts for finding in findings)


def _pupils(findings: tuple[Finding, ...]) -> tuple[int, tuple[int, ...]] | None:
    """How many of the two pupils do not react, and where it was said; None when one is open."""
    reacts: dict[Side, bool] = {}
    places: list[int] = []
    for at, finding in enumerate(findings):
        if finding.item != "pupil_reaction" or finding.side not in (Side.LEFT, Side.RIGHT, Side.BOTH):
            continue
        if "to near" in finding.detail:
            continue  # the scale counts the reaction to light
        choice = finding.value.choice if isinstance(finding.value, Choice) else ""
        if choice == "fixed":
            reacting = False
        elif finding.status is Status.NORMAL or choice in REACTS:
            reacting = True
        else:
            return None
        for side in (Side.LEFT, Side.RIGHT) if finding.side is Side.BOTH else (finding.side,):
            if reacts.get(side, reacting) is not reacting:
                return None
            reacts[side] = reacting
        places.append(at)
    if len(reacts) < 2:
        return None
    return sum(not reacting for reacting in reacts.values()), tuple(places)
