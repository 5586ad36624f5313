"""total-mismatch: parts against the dictated sum."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from dictate.checks.registry import Doubt, check
from dictate.checks.wording import topic
from dictate.grammar import Grammar
from dictate.model import Examination, Finding, Score, Status, number_text


@dataclass(frozen=True, slots=True)
class Sum:
    """A total and the parts it is made of, each with its lowest and highest points."""

    total: str
    parts: dict[str, tuple[int, int]]


SUMS = (
    # Source: Teasdale and Jennett 1974; Teasdale 2014.
    Sum("gcs_total", {"gcs_eye": (1, 4), "gcs_verbal": (1, 5), "gcs_motor": (1, 6)}),
    # Source: Wijdicks 2005.
    Sum("four_score", {"four_eye": (0, 4), "four_motor": (0, 4), "four_brainstem": (0, 4), "four_respiration": (0, 4)}),
    # Source: Brott 1989; NINDS form.
    Sum(
        "nihss_total",
        {
            f"nihss_{part}": (0, highest)
            for part, highest in {
                "consciousness": 3,
                "questions": 2,
                "commands": 2,
                "gaze": 2,
                "visual": 3,
                "facial": 3,
                "arm_left": 4,
                "arm_right": 4,
                "leg_left": 4,
                "leg_right": 4,
                "ataxia": 2,
                "sensory": 2,
                "language": 3,
                "dysarthria": 2,
                "neglect": 2,
            }.items()
        },
    ),
)


@check("total-mismatch", severity="must")
def total_mismatch(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """The dictated parts cannot give the dictated total.

    Why: one of the numbers was misheard or misspoken. A part that could not be tested leaves the total as dictated.
    Example: "eyes four, verbal five, motor six, coma scale fourteen" asks: 14 or 15?
    """
    for one in SUMS:
        yield from _mismatch(exam, grammar, one)


def _mismatch(exam: Examination, grammar: Grammar, one: Sum) -> Iterator[Doubt]:
    parts = [finding for finding in exam.findings if finding.item in one.parts]
    names = {finding.item for finding in parts}
    if not parts or len(names) != len(parts) or any(finding.status is Status.NOT_ASSESSABLE for finding in parts):
        return  # nothing to add up; said twice (values-conflict asks); a part that could not be tested
    points = [_points(finding) for finding in parts]
    if None in points:
        return
    known = sum(point for point in points if point is not None)
    missing = [limits for name, limits in one.parts.items() if name not in names]
    lowest = known + sum(low for low, _ in missing)
    highest = known + sum(high for _, high in missing)
    for total in exam.findings:
        said = _points(total) if total.item == one.total else None
        if said is None or lowest <= said <= highest:
            continue
        reach = (
            f"allow {number_text(lowest)} to {number_text(highest)}" if missing else f"add up to {number_text(known)}"
        )
        message = f"{topic(total, grammar)} {number_text(said)}, but the parts {reach}: which is right?"
        answers = () if missing else (number_text(said), number_text(known))
        yield Doubt(total, message, answers, others=tuple(parts))


def _points(finding: Finding) -> float | None:
    """The points as plain number; None when untestable or without number."""
    value = finding.value
    return value.points if isinstance(value, Score) and not value.mark else None
