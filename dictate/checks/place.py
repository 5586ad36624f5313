"""side-missing, position-missing, time-missing: where, in which position and when."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import queries as say
from dictate.checks.coverage import is_plural, is_reassuring
from dictate.checks.minutes import minutes_by_clock
from dictate.checks.registry import Doubt, SeverityWord, check
from dictate.checks.series import (
    PRESSURE,
    RATE,
    UPRIGHT,
    between_positions,
    in_postural_scope,
    readings,
    without_position,
    without_time,
)
from dictate.checks.wording import clock, item_of, said, topic
from dictate.grammar import Grammar, Item
from dictate.model import Examination, Finding, Grade, Side, Status

SIDES = ("left", "right", "both")
ONE_SIDED = frozenset({"rapd"})  # a relative defect is one eye's against the other's
POSITIONS = ("supine", "sitting", "standing")
TIMES = ("0 min", "1 min", "3 min", "5 min")
# Places in the middle of the body, or the whole of it: no side is missing there.
MIDDLE = frozenset(
    (
        "tongue",
        "jaw",
        "neck",
        "head",
        "trunk",
        "chest",
        "abdomen",
        "back",
        "low_back",
        "spine",
        "palate",
        "lips",
        "voice",
        "perineum",
        "limb",
        "generalized",
    )
)
# Words that say by themselves how far a finding reaches.
BOTH_SIDED = re.compile(
    r"\b(throughout|generali[sz]ed|diffuse(ly)?|multifocal|widespread|global(ly)?|symmetric(al|ally)?|bilateral(ly)?|both"
    r"|stockings?|gloves?|all (four|4)|everywhere)\b",
    re.IGNORECASE,
)

BOTH_OF_TWO = re.compile(r"\band\b[^,.;]*\bboth (?=\d)", re.IGNORECASE)  # "finger extension and flexion both 0"
ONE_LIMB = re.compile(
    r"\b(?:of|in|at|over) (?:the|his|her) "
    r"(?:arm|forearm|elbow|wrist|hand|thumb|leg|thigh|knee|calf|ankle|foot|great toe|big toe)\b",
    re.IGNORECASE,
)


@check("side-missing", severity="must")
def side_missing(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A paired item was given without its side.

    Why: a reflex without a side cannot be compared at the next visit.
    Example: "biceps reflex two plus" asks: which side?
    """
    for finding in exam.findings:
        item = item_of(grammar, finding.item)
        if finding.item in ONE_SIDED and finding.side is Side.BOTH and finding.status is Status.PRESENT:
            relative = say.ONE_AGAINST_OTHER.format(topic=topic(finding, grammar), said=said(finding))
            yield Doubt(finding, relative, SIDES[:2])
        if item is None or item.blanket or finding.side is not None:
            continue
        if item.sided != "paired" and not (item.sided == "may" and item.sited and _of_one_limb(finding)):
            continue
        if _says_both(finding) or not _side_matters(finding, item, grammar):
            continue
        doubt = say.WHICH_SIDE.format(topic=topic(finding, grammar), said=said(finding))
        if not is_plural(finding, grammar):
            yield Doubt(finding, doubt, SIDES)
        elif str(finding.value) == "absent" or finding.status is Status.ABSENT:
            continue  # absent in the plural is absent on both sides
        elif finding.status is not Status.MEASURED:
            yield Doubt(finding, doubt, ("both", "left", "right"))
        elif not _is_even(finding, item, grammar):
            yield Doubt(finding, doubt, ("both", "left", "right"), severity="look")


def _of_one_limb(finding: Finding) -> bool:
    """ "Dystonia of the foot": a part that there are two of, in the singular."""
    return ONE_LIMB.search(finding.quote) is not None


def _side_matters(finding: Finding, item: Item, grammar: Grammar) -> bool:
    """Measured, or not as it should be: the sides may differ. A sign denied, or a reflex intact, is so on either."""
    if finding.status in (Status.PRESENT, Status.ABSENT):
        return not is_reassuring(finding, item, grammar)
    return finding.status in (Status.MEASURED, Status.ABNORMAL)


def _says_both(finding: Finding) -> bool:
    """In the middle of the body, or said to be everywhere."""
    if finding.site in MIDDLE or finding.site.startswith(("left_", "right_")):
        return True
    quote = BOTH_OF_TWO.sub("", finding.quote)
    words = " ".join((quote, str(finding.value or ""), *finding.detail))
    return BOTH_SIDED.search(words) is not None


def _is_even(finding: Finding, item: Item, grammar: Grammar) -> bool:
    """A value that in the plural reads the same whichever side is meant: normal or absent grades, plain numbers."""
    if not isinstance(finding.value, Grade):
        return True
    scale = grammar.scales.get(finding.value.scale or item.scale)
    return scale is None or finding.value.grade in (*scale.normal, "0")


@check("position-missing", severity="must")
def position_missing(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A pressure or rate without its position, or a symptom told between two positions, while others have one.

    Why: a fall on standing cannot be told from a reading whose position is open; one pressure by itself needs none.
    Example: "lying one forty over eighty, then one eighteen over seventy" asks: in which position?
    """
    asked = list(without_position(exam, PRESSURE))
    for finding in asked or without_position(exam, RATE):
        yield Doubt(finding, say.WHICH_POSITION.format(topic=topic(finding, grammar), said=said(finding)), POSITIONS)
    rates = {finding.position for finding in readings(exam, RATE)} - {None}
    for finding in between_positions(exam, grammar):
        if finding.item != RATE or (not rates and not asked):
            yield Doubt(
                finding, say.WHICH_POSITION.format(topic=topic(finding, grammar), said=said(finding)), POSITIONS
            )
    for item in _other_items(grammar):
        for finding in without_position(exam, item, scoped=False):
            yield Doubt(
                finding, say.WHICH_POSITION.format(topic=topic(finding, grammar), said=said(finding)), POSITIONS
            )


@check("time-missing", severity="must")
def time_missing(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A standing pressure without its time, while there is one lying or sitting.

    Why: a fall within three minutes and a later one are different findings. Minutes by the clock of the recording
    are only suggested, never filled in.
    Example: "lying 140 over 80, standing 102 over 66" asks: how long after standing up?
    """
    asked = list(without_time(exam, PRESSURE))
    item = PRESSURE if asked or readings(exam, PRESSURE) else RATE
    upright = [finding for finding in readings(exam, item) if finding.position in UPRIGHT]
    severity: SeverityWord = "must" if in_postural_scope(exam) or len(upright) > 1 else "look"
    for finding in asked if item == PRESSURE else without_time(exam, RATE):
        question = say.HOW_LONG.format(topic=topic(finding, grammar), said=said(finding))
        by_clock = minutes_by_clock(exam, finding)
        if by_clock is None:
            yield Doubt(finding, question, TIMES, severity=severity)
            continue
        minutes, seconds = by_clock
        question += say.BY_CLOCK.format(time=clock(seconds))
        yield Doubt(finding, question, (say.MINUTES.format(minutes=minutes), *TIMES), severity=severity)


def _other_items(grammar: Grammar) -> tuple[str, ...]:
    """Further items that are read in several positions (vital capacity)."""
    return tuple(
        name for name, item in grammar.items.items() if item.positions and item.kind == "quantity" and name != RATE
    )
