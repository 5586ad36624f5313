"""Muscle sum score: six movements on both sides; only from twelve plain grades."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Figure, Finding, Grade, Side
from dictate.reckoning.rules import rule

# Source: Kleyweg 1991: six movements, both sides, 0 to 5 each.
MUSCLES = {
    "strength_deltoid": words.SHOULDER_ABDUCTION,
    "strength_biceps": words.ELBOW_FLEXION,
    "strength_wrist_extensors": words.WRIST_EXTENSION,
    "strength_iliopsoas": words.HIP_FLEXION,
    "strength_quadriceps": words.KNEE_EXTENSION,
    "strength_tibialis_anterior": words.ANKLE_DORSIFLEXION,
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
        yield MUSCLE_SUM.figure(words.MUSCLE_SUM_MISSING.format(movement=MUSCLES[name], side=words.SIDES[side]), inputs)
        return
    signed = [grades[key][0] for key in wanted if grades[key][0] not in WHOLE_GRADES]
    if signed:
        reason = words.NO_VALUE_IN_SUM.format(grades=", ".join(dict.fromkeys(signed)))
        yield MUSCLE_SUM.figure(words.MUSCLE_SUM_REFUSED.format(reason=reason), inputs)
        return
    total = sum(int(grades[key][0]) for key in wanted)
    judged = words.SUM_LOW if total < WEAKNESS_BELOW else words.SUM_NOT_LOW
    text = words.MUSCLE_SUM.format(total=total, judged=judged)
    yield MUSCLE_SUM.figure(text, inputs, value=float(total), unit="{score}")
