"""A timed walk as it is written ("25 ft in 5 s"), and whether one is faster than another by so much that it counts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from dictate.catalogue import figures as words
from dictate.model import Finding, Quantity, Status, Text, number_text

ITEM = "timed_walk"
WALK = re.compile(r"(\d+(?:\.\d+)?) (m|ft) in(?: (\d+(?:\.\d+)?)(?: s)?)?")
TRIALS = frozenset({"first trial", "second trial", "third trial"})  # of one walk, compared by their mean
# Source: Hobart 2013 (looked up: abstract): speed over 25 feet better by 20 % or more, in multiple sclerosis.
CHANGE_OVER, CHANGE_PERCENT = (25, "ft"), 20


@dataclass(frozen=True, slots=True)
class Walk:
    """One walk; distance in `unit` (m or ft), time in s."""

    distance: float
    unit: str
    seconds: float

    def __str__(self) -> str:
        """`25 ft in 5 s`."""
        return f"{number_text(self.distance)} {self.unit} in {number_text(round(self.seconds, 2))} s"


def walk_in(text: str) -> Walk | None:
    """The walk that is written so; None: no walk with its distance and time."""
    found = WALK.fullmatch(text)
    return Walk(float(found[1]), found[2], float(found[3])) if found and found[3] else None


def walk_of(finding: Finding) -> Walk | None:
    """Distance and time of a timed walk; None when one was not said, or the time is a bound or a range."""
    if finding.item != ITEM or finding.status is not Status.MEASURED or finding.value is None or finding.is_bound:
        return None
    value = finding.value
    if not isinstance(value, Quantity):
        return walk_in(str(value))
    found = WALK.fullmatch(value.note)
    plain = found is not None and found[3] is None and value.upto is None and value.then is None
    if found is None or not plain or finding.unit not in ("s", ""):
        return None
    return Walk(float(found[1]), found[2], value.number)


def mean_walk(findings: Sequence[Finding]) -> Finding | None:
    """Several trials over one distance as one walk, the mean of their times; None when they are none.

    Source: Cutter 1999; NINDS common data elements (looked up): mean of two trials.
    """
    walks = [walk for one in findings if (walk := walk_of(one)) is not None]
    if len(walks) < len(findings) or len({(one.distance, one.unit) for one in walks}) != 1:
        return None
    mean = sum(one.seconds for one in walks) / len(walks)
    text = Text(words=str(Walk(walks[0].distance, walks[0].unit, mean)))
    return findings[0].model_copy(update={"value": text})


def faster_percent(earlier_s: float, later_s: float) -> float:
    """How much faster the later walk over the same distance is, in percent of the earlier speed; negative: slower.

    Speed, not time: 6.0 then 4.8 s are 25 % faster in 20 % less time. Source: arithmetic.
    """
    return 100 * (earlier_s / later_s - 1)


def is_compared(finding: Finding) -> bool:
    """Whether it is a walk over the distance at which a change says something."""
    walk = walk_of(finding)
    return walk is not None and (walk.distance, walk.unit) == CHANGE_OVER


def walk_change(earlier: Walk | None, later: Walk | None) -> str:
    """`speed +20 %; faster by 20 % or more (Hobart 2013): met`; empty when they are not both walks of 25 feet."""
    if earlier is None or later is None or not earlier.seconds or not later.seconds:
        return ""
    if {(earlier.distance, earlier.unit), (later.distance, later.unit)} != {CHANGE_OVER}:
        return ""
    percent = faster_percent(earlier.seconds, later.seconds)
    verdict = words.CHANGE_MET if percent >= CHANGE_PERCENT - 1e-9 else words.CHANGE_NOT_MET
    return words.WALK_CHANGE.format(percent=f"{percent:+.1f}".removesuffix(".0"), verdict=verdict)
