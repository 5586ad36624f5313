"""Motor level from key muscles beside a dictated sensory level; sensory level from two modalities by segment."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from dictate.catalogue import figures as words
from dictate.model import Figure, Finding, Grade, Side, Status
from dictate.reckoning.rules import rule

# Source: ISNCSCI (Rupp 2021; looked up, secondary): one key muscle for each of these segments.
KEY_MUSCLES = {
    "C5": "strength_biceps",
    "C6": "strength_wrist_extensors",
    "C7": "strength_triceps",
    "C8": "strength_finger_flexors",
    "T1": "strength_abductor_digiti_minimi",
    "L2": "strength_iliopsoas",
    "L3": "strength_quadriceps",
    "L4": "strength_tibialis_anterior",
    "L5": "strength_extensor_hallucis_longus",
    "S1": "strength_gastrocnemius",
}
SEGMENTS = tuple(
    f"{letter}{number}"
    for letter, last, first in (("C", 8, 2), ("T", 12, 1), ("L", 5, 1), ("S", 5, 1))
    for number in range(first, last + 1)
)
ABOVE_FIRST = "C4"  # the segment above the first key muscle
NORMAL, AGAINST_GRAVITY = "5", 3
INTACT = "INT"
LEVEL = re.compile(r"[CTLS]\d{1,2}")

MOTOR_LEVEL = rule(
    "motor level",
    formula="lowest key muscle of grade 3 or more with every one above it 5; without key muscle: the sensory level",
    source="ISNCSCI (Rupp 2021; looked up, secondary)",
    limits="only beside a dictated sensory or motor level, which is kept as said: some name the last normal segment, "
    "some the first abnormal one; an equal motor level is not repeated; no level of the lesion is claimed",
    missing="a key muscle above the level not graded, or a side not said: no level",
)


def motor_level(grades: Mapping[str, str], *, sensory: str = "") -> str | None:
    """The motor level of one side; None when a muscle that decides it is missing.

    grades: key segment → grade. sensory: the level that decides where there is no key muscle; "": not known.
    INT: every key muscle is 5. Source: ISNCSCI (Rupp 2021).
    """
    level = ABOVE_FIRST if sensory in ("", INTACT) or _order(sensory) >= _order(ABOVE_FIRST) else sensory
    for segment in KEY_MUSCLES:
        if segment == "L2" and not sensory:
            return None  # the trunk has no key muscles, and nothing else decides there
        if segment == "L2" and sensory not in ("", INTACT) and _order("T1") < _order(sensory) < _order("L2"):
            return sensory  # all arms are 5, and no key muscle lies between
        grade = grades.get(segment)
        if grade is None:
            return None
        if grade == NORMAL:
            level = segment
            continue
        above = SEGMENTS[SEGMENTS.index(segment) - 1]
        if _points(grade) >= AGAINST_GRAVITY:
            return segment
        if segment in ("C5", "L2"):
            reaches = sensory == INTACT or (sensory != "" and _order(sensory) >= _order(above))
            return above if reaches else (sensory or None)
        return level
    return INTACT


def _points(grade: str) -> float:
    """Order of a grade: 3- is below 3, 3+ above it."""
    return int(grade[0]) + {"-": -0.5, "+": 0.5}.get(grade[1:], 0)


def _order(segment: str) -> int:
    return SEGMENTS.index(segment)


def sensory_level(touch: Mapping[str, int], pin: Mapping[str, int]) -> str | None:
    """Lowest segment with touch and pin 2 of 2, all above it 2; INT when all are; None when a score is missing.

    Source: ISNCSCI (Rupp 2021).
    """
    level = None
    for segment in SEGMENTS:
        scores = touch.get(segment), pin.get(segment)
        if None in scores:
            return None
        if scores != (2, 2):
            return level
        level = segment
    return INTACT


def motor_level_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """The motor level of each side, beside a sensory or a motor level that was dictated."""
    for side in (Side.RIGHT, Side.LEFT):
        sensory = _dictated(findings, "sensory_level", side)
        motor = _dictated(findings, "motor_level", side)
        grades = _grades(findings, side)
        if not (sensory or motor) or grades is None:
            continue
        said = {text for text in sensory.values() if LEVEL.fullmatch(text) and text in SEGMENTS}
        level = motor_level(grades[0], sensory=said.pop() if len(said) == 1 else "")
        if level in (None, INTACT) or set(motor.values()) == {level}:
            continue
        beside = words.SENSORY_AS_SAID if sensory else ""
        if motor:
            beside = words.MOTOR_AS_SAID.format(levels=", ".join(dict.fromkeys(motor.values())))
        text = words.MOTOR_LEVEL.format(side=words.SIDES[side], level=level, beside=beside)
        yield MOTOR_LEVEL.figure(text, (*grades[1], *sensory, *motor))


def _dictated(findings: tuple[Finding, ...], item: str, side: Side) -> dict[int, str]:
    """Places and words of the levels dictated for that side, for both, or without a side."""
    return {
        at: str(finding.value).upper()
        for at, finding in enumerate(findings)
        if finding.item == item and finding.status is Status.MEASURED and finding.value is not None
        if finding.side in (side, Side.BOTH, None)
    }


def _grades(findings: tuple[Finding, ...], side: Side) -> tuple[dict[str, str], tuple[int, ...]] | None:
    """Grades of the key muscles of one side; None when one was said twice differently."""
    grades: dict[str, str] = {}
    places: list[int] = []
    segments = {item: segment for segment, item in KEY_MUSCLES.items()}
    for at, finding in enumerate(findings):
        if (
            finding.item not in segments
            or finding.side not in (side, Side.BOTH)
            or not isinstance(finding.value, Grade)
        ):
            continue
        segment = segments[finding.item]
        if grades.get(segment, finding.value.grade) != finding.value.grade:
            return None
        grades[segment] = finding.value.grade
        places.append(at)
    return (grades, tuple(places)) if grades else None
