"""Sums of scales: the total item, its parts and their lowest and highest points; what sums and checks share."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from dictate.model import Finding, Score, Side, Status, Text

SIDES = (Side.RIGHT, Side.LEFT)


@dataclass(frozen=True, slots=True)
class Sum:
    """A total and the parts it is made of."""

    name: str  # of the figure
    total: str
    parts: Mapping[str, tuple[int, int]]  # item → lowest and highest points
    source: str
    sided: frozenset[str] = field(default_factory=frozenset)  # parts that are the mean of right and left
    may_be_untestable: frozenset[str] = field(default_factory=frozenset)  # such a part is then not counted

    @property
    def highest(self) -> int:
        """The most there is."""
        return sum(high for _, high in self.parts.values())


# Source: Teasdale and Jennett 1974; Teasdale 2014: lowest and highest points of each part.
COMA = Sum(
    "coma scale sum", "gcs_total", {"gcs_eye": (1, 4), "gcs_verbal": (1, 5), "gcs_motor": (1, 6)}, "Teasdale 2014"
)
# Source: Wijdicks 2005: each 0 to 4.
FOUR = Sum(
    "FOUR score sum",
    "four_score",
    dict.fromkeys(("four_eye", "four_motor", "four_brainstem", "four_respiration"), (0, 4)),
    "Wijdicks 2005",
)
# Source: Brott 1989; NINDS form: maxima, and UN for amputation, joint fusion or a tube on items 5, 6, 7 and 10.
STROKE = Sum(
    "stroke scale sum",
    "nihss_total",
    {
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
    },
    "Brott 1989; NINDS form",
    may_be_untestable=frozenset(
        ("nihss_arm_left", "nihss_arm_right", "nihss_leg_left", "nihss_leg_right", "nihss_ataxia", "nihss_dysarthria")
    ),
)
# Source: Schmitz-Hübsch 2006: maxima; items 5 to 8 are the mean of both sides.
_SARA_SIDED = ("sara_finger_chase", "sara_nose_finger", "sara_hand_movements", "sara_heel_shin")
ATAXIA = Sum(
    "ataxia scale sum",
    "sara_total",
    {
        "sara_gait": (0, 8),
        "sara_stance": (0, 6),
        "sara_sitting": (0, 4),
        "sara_speech": (0, 6),
        **dict.fromkeys(_SARA_SIDED, (0, 4)),
    },
    "Schmitz-Hübsch 2006",
    sided=frozenset(_SARA_SIDED),
)
SUMS = (COMA, FOUR, STROKE, ATAXIA)


@dataclass(frozen=True, slots=True)
class Parts:
    """The parts of one sum as dictated."""

    points: dict[str, float]  # part → its points, the mean of both sides where it has two
    untestable: tuple[str, ...]
    missing: tuple[str, ...]  # not dictated, or only one side of two
    places: tuple[int, ...]  # where the parts stand among the findings

    @property
    def known(self) -> float:
        """The dictated points, added."""
        return sum(self.points.values())


def parts_of(findings: Iterable[Finding], one: Sum) -> Parts | None:
    """The parts as dictated; None: one was said twice with different points, or without plain points."""
    said: dict[str, dict[Side | None, float]] = {}
    untestable: dict[str, None] = {}
    places: list[int] = []
    for at, finding in enumerate(findings):
        if finding.item not in one.parts:
            continue
        places.append(at)
        if finding.status is Status.NOT_ASSESSABLE:
            untestable[finding.item] = None
            continue
        number = points_of(finding)
        if number is None:
            return None
        sides = SIDES if finding.side is Side.BOTH else (finding.side,)
        for side in sides if finding.item in one.sided else (None,):
            if side in said.setdefault(finding.item, {}):
                return None
            said[finding.item][side] = number
    if set(untestable) & set(said):
        return None
    points: dict[str, float] = {}
    for name, by_side in said.items():
        if name not in one.sided:
            points[name] = by_side[None]
        elif set(by_side) == set(SIDES):
            points[name] = sum(by_side.values()) / len(by_side)
    missing = tuple(name for name in one.parts if name not in points and name not in untestable)
    return Parts(points, tuple(untestable), missing, tuple(places))


def points_of(finding: Finding) -> float | None:
    """Plain points; None when untestable, not examined or without number."""
    value = finding.value
    if finding.status is not Status.MEASURED:
        return None
    if isinstance(value, Text) and value.words.isdigit():
        return float(value.words)
    return value.points if isinstance(value, Score) and not value.mark else None
