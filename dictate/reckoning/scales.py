"""Sums of scales: coma scale, stroke scale, muscle strength; never from missing parts."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.model import Figure, Finding, Grade, Score, Side, Status, number_text

# Source: Teasdale and Jennett 1974; Teasdale 2014: lowest and highest points of each part.
COMA_PARTS = {"gcs_eye": (1, 4), "gcs_verbal": (1, 5), "gcs_motor": (1, 6)}
COMA_TOTAL = "gcs_total"
# Source: Brott 1989; NINDS form.
STROKE_PARTS = {
    "nihss_consciousness": (0, 3),
    "nihss_questions": (0, 2),
    "nihss_commands": (0, 2),
    "nihss_gaze": (0, 2),
    "nihss_visual": (0, 3),
    "nihss_facial": (0, 3),
    "nihss_arm_left": (0, 4),
    "nihss_arm_right": (0, 4),
    "nihss_leg_left": (0, 4),
    "nihss_leg_right": (0, 4),
    "nihss_ataxia": (0, 2),
    "nihss_sensory": (0, 2),
    "nihss_language": (0, 3),
    "nihss_dysarthria": (0, 2),
    "nihss_neglect": (0, 2),
}
STROKE_TOTAL = "nihss_total"
# Source: Wijdicks 2005.
FOUR_HIGHEST = 4
# Source: Kleyweg 1991: six movements, both sides, 0 to 5 each.
MUSCLES = {
    "strength_deltoid": "shoulder abduction",
    "strength_biceps": "elbow flexion",
    "strength_wrist_extensors": "wrist extension",
    "strength_iliopsoas": "hip flexion",
    "strength_quadriceps": "knee extension",
    "strength_tibialis_anterior": "ankle dorsiflexion",
}
WHOLE_GRADES = ("0", "1", "2", "3", "4", "5")
# Source: De Jonghe 2002: below 48 of 60.
WEAKNESS_BELOW = 48


def coma_sum(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Eye, verbal and motor points added, when all three are plain numbers and no equal total was dictated.

    An untestable part ("T") gives no total. Source: Teasdale 2014; Glasgow scale FAQ.
    """
    yield from _sum_figure(findings, COMA_PARTS, COMA_TOTAL, "coma scale sum", "Teasdale 2014", of=15)


def stroke_sum(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """The fifteen stroke scale items added, when all were dictated. Source: Brott 1989; NINDS form."""
    yield from _sum_figure(findings, STROKE_PARTS, STROKE_TOTAL, "stroke scale sum", "Brott 1989; NINDS form", of=42)


def four_sum(eye: int | None, motor: int | None, brainstem: int | None, respiration: int | None) -> int | None:
    """FOUR score, 0 to 16; None when a part is missing or outside 0 to 4. Source: Wijdicks 2005."""
    total = 0
    for part in (eye, motor, brainstem, respiration):
        if part is None or not 0 <= part <= FOUR_HIGHEST:
            return None
        total += part
    return total


def _sum_figure(
    findings: tuple[Finding, ...],
    parts: dict[str, tuple[int, int]],
    total: str,
    name: str,
    source: str,
    *,
    of: int,
) -> Iterator[Figure]:
    places = _single_places(findings, tuple(parts))
    if places is None:
        return
    points = [_points(findings[place]) for place in places]
    if any(
        one is None or not parts[findings[at].item][0] <= one <= parts[findings[at].item][1]
        for one, at in zip(points, places, strict=True)
    ):
        return
    value = sum(one for one in points if one is not None)
    if any(finding.item == total and _points(finding) == value for finding in findings):
        return
    said = ", ".join(number_text(one) for one in points if one is not None)
    yield Figure(
        name=name,
        text=f"{name[:1].upper()}{name[1:]}, computed: {number_text(value)} of {of} ({said})",
        formula=" + ".join(parts),
        source=source,
        inputs=places,
        value=float(value),
        unit="{score}",
    )


def _single_places(findings: tuple[Finding, ...], names: tuple[str, ...]) -> tuple[int, ...] | None:
    """Where each of these items stands; None when one is missing or was said twice."""
    places: list[int] = []
    for name in names:
        at = [place for place, finding in enumerate(findings) if finding.item == name]
        if len(at) != 1:
            return None
        places += at
    return tuple(places)


def _points(finding: Finding) -> float | None:
    """Plain points; None when untestable, not examined or without number."""
    value = finding.value
    if finding.status is not Status.MEASURED or not isinstance(value, Score) or value.mark:
        return None
    return value.points


def muscle_sum(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Sum score of six movements on both sides, 0 to 60; only from twelve plain grades.

    With one movement missing, or a grade with a sign, it says so instead: the original has no rule for either.
    Source: Kleyweg 1991; De Jonghe 2002 (below 48).
    """
    grades: dict[tuple[str, Side], tuple[str, int]] = {}
    for at, finding in enumerate(findings):
        if finding.item not in MUSCLES or not isinstance(finding.value, Grade) or finding.side is None:
            continue
        for side in (Side.RIGHT, Side.LEFT) if finding.side is Side.BOTH else (finding.side,):
            if (finding.item, side) in grades and grades[finding.item, side][0] != finding.value.grade:
                return  # said twice with different grades: none is chosen
            grades[finding.item, side] = (finding.value.grade, at)
    wanted = [(name, side) for name in MUSCLES for side in (Side.RIGHT, Side.LEFT)]
    missing = [key for key in wanted if key not in grades]
    inputs = tuple(sorted({grades[key][1] for key in wanted if key in grades}))
    if len(missing) > 1:
        return
    if missing:
        name, side = missing[0]
        yield _no_muscle_sum(f"{MUSCLES[name]} {side.value} is missing", inputs)
        return
    signed = [grades[key][0] for key in wanted if grades[key][0] not in WHOLE_GRADES]
    if signed:
        yield _no_muscle_sum(f"{', '.join(dict.fromkeys(signed))} has no value in it", inputs)
        return
    total = sum(int(grades[key][0]) for key in wanted)
    judged = "below 48" if total < WEAKNESS_BELOW else "not below 48"
    yield Figure(
        name="muscle sum score",
        text=f"Muscle sum score of six movements on both sides: {total} of 60, {judged}",
        formula="sum of twelve grades of 0 to 5",
        source="Kleyweg 1991; De Jonghe 2002 (below 48)",
        inputs=inputs,
        value=float(total),
        unit="{score}",
    )


def _no_muscle_sum(reason: str, inputs: tuple[int, ...]) -> Figure:
    return Figure(
        name="muscle sum score",
        text=f"Muscle sum score not computed: {reason}",
        source="Kleyweg 1991",
        inputs=inputs,
    )
