"""Muscle sum score: six movements on both sides; only from twelve plain grades."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.model import Figure, Finding, Grade, Side
from dictate.reckoning.rules import rule

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

MUSCLE_SUM = rule(
    "muscle sum score",
    formula="sum of twelve grades of 0 to 5",
    source="Kleyweg 1991; De Jonghe 2002 (below 48)",
    limits="0 to 60; below 48 or not; a grade with a sign (4-, 4+) has no value in it: no sum",
    missing="one movement missing: says which, no sum; more missing: nothing",
)


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
        yield MUSCLE_SUM.figure(f"Muscle sum score not computed: {MUSCLES[name]} {side.value} is missing", inputs)
        return
    signed = [grades[key][0] for key in wanted if grades[key][0] not in WHOLE_GRADES]
    if signed:
        reason = f"{', '.join(dict.fromkeys(signed))} has no value in it"
        yield MUSCLE_SUM.figure(f"Muscle sum score not computed: {reason}", inputs)
        return
    total = sum(int(grades[key][0]) for key in wanted)
    judged = "below 48" if total < WEAKNESS_BELOW else "not below 48"
    text = f"Muscle sum score of six movements on both sides: {total} of 60, {judged}"
    yield MUSCLE_SUM.figure(text, inputs, value=float(total), unit="{score}")
