"""Walking: speed over a distance, timed up and go, tandem steps."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.grammar.units import convert
from dictate.grammar.walks import mean_walk, walk_change, walk_in, walk_of
from dictate.model import Figure, Finding, Quantity, Status, number_text
from dictate.reckoning.rules import rule

TRIAL = re.compile(r"\b(?:trial|attempt|run)\b")  # said of one of several walks that are otherwise alike
UNITS = {"m": "m", "ft": "[ft_i]"}
# Source: Cruz-Jentoft 2019 (looked up, secondary): gait speed of 0.8 m/s or less.
SLOW = 0.8
# Source: Goldman 2013 (looked up: abstract): bands of the 25-foot walk, below 6 s, 6 to 7.99 s, 8 s or more.
BANDS_FT, BAND_EDGES_S = (25, "ft"), (6, 8)
# Source: Perry 1995 as quoted by Schmid 2007 (looked up): below 0.4, 0.4 to 0.8 and above 0.8 m/s, after stroke.
WALKER_EDGES = (0.4, 0.8)
# Source: CDC STEADI (looked up, secondary); Shumway-Cook 2000 (Barry 2014, looked up); Cruz-Jentoft 2019 (secondary).
UP_AND_GO_LIMITS = ((12, "CDC STEADI"), (13.5, "Shumway-Cook 2000"), (20, "Cruz-Jentoft 2019"))
# Source: Schmitz-Hübsch 2006, SARA item 1: more than ten tandem steps, up to one misstep.
TANDEM_STEPS, TANDEM_MISSTEPS = 10, 1

SPEED = rule(
    "walking speed",
    formula="distance / mean time of the trials",
    source="arithmetic; Cruz-Jentoft 2019 (0.8 m/s); Cutter 1999 (mean of two trials); "
    "Goldman 2013 (25 feet: 6 and 8 s); Perry 1995 (0.4 and 0.8 m/s)",
    limits="0.8 m/s or less is named, and the band of the time over 25 feet or else of the speed; mean of the times, "
    "not of the speeds, of walks under the same conditions; "
    "what the bands were made for (multiple sclerosis, stroke) is not claimed of the patient",
    missing="distance or time not said, or a time beyond 180 s: no speed; a speed that was dictated stands as said",
)
SINCE = rule(
    "25-foot walk since the earlier visit",
    formula="(earlier time / later time - 1) * 100 >= 20",
    source="Hobart 2013 (speed better by 20 % or more, in multiple sclerosis)",
    limits="met or not on the two times named, of speed and not of time; what it was shown for is not claimed of the "
    "patient; `dictate compare` says the same of two visits",
    missing="no earlier record of the patient with a 25-foot walk under the same conditions: no figure",
)
UP_AND_GO = rule(
    "timed up and go",
    formula="seconds >= 12, 13.5, 20",
    source="; ".join(source for _, source in UP_AND_GO_LIMITS),
    limits="sources differ: each limit reached is named",
    missing="several times said: each is judged by itself",
)
TANDEM = rule(
    "tandem steps",
    formula="steps > 10, missteps <= 1",
    source="Schmitz-Hübsch 2006 (SARA, item 1)",
    limits="states how the number stands to the scale's own; no verdict on gait",
    missing="a number without the word steps or missteps, or said as a bound (more than ten): no figure",
)
LONGEST_S = 180  # Source: Cutter 1999: a trial ends there


def speed_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Speed of each distance, from the mean of its times. Source: arithmetic; Cutter 1999."""
    trials: dict[tuple[float, str, str], list[tuple[float, int]]] = {}
    for at, finding in enumerate(findings):
        found = walk_of(finding)
        if found is not None:
            how = " ".join(part for part in finding.detail if not TRIAL.search(part))
            trials.setdefault((found.distance, found.unit, how), []).append((found.seconds, at))
    for (distance, unit, how), times in trials.items():
        metres = convert(distance, UNITS[unit], "m")
        if metres is None or any(not 0 < seconds <= LONGEST_S for seconds, _ in times):
            continue
        mean = sum(seconds for seconds, _ in times) / len(times)
        speed = metres / mean
        several = "" if len(times) == 1 else words.MEAN_OF_TRIALS.format(count=len(times))
        judged = words.SLOW_WALK if speed <= SLOW + 1e-9 else words.USUAL_WALK
        if (distance, unit) == BANDS_FT:
            judged += words.WALK_BAND_FEET.format(band=band_of(mean))
        elif speed <= SLOW + 1e-9:
            judged += words.WALK_BAND_SPEED.format(band=walker_band(speed))
        walked = words.WALKED.format(
            distance=number_text(distance),
            unit=unit,
            seconds=number_text(round(mean, 2)),
            how=f" {how}" if how else "",
            several=several,
        )
        text = words.WALKING_SPEED.format(speed=speed, walked=walked, judged=judged)
        yield SPEED.figure(text, tuple(at for _, at in times), value=round(speed, 4), unit="m/s")


def band_of(seconds: float) -> str:
    """The band of a 25-foot walk, as a number only. Source: Goldman 2013."""
    low, high = BAND_EDGES_S
    if seconds < low:
        return words.BELOW_SECONDS.format(low=low)
    return (
        words.SECONDS_BETWEEN.format(low=low, high=high) if seconds < high else words.SECONDS_OR_MORE.format(high=high)
    )


def walker_band(speed: float) -> str:
    """The band of a walking speed; both edges fall in the middle one. Source: Perry 1995."""
    low, high = WALKER_EDGES
    if speed < low - 1e-9:
        return words.BELOW_SPEED.format(low=low)
    return (
        words.SPEED_BETWEEN.format(low=low, high=high) if speed <= high + 1e-9 else words.ABOVE_SPEED.format(high=high)
    )


def walk_since_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """The mean of today's 25-foot walks against the walk that the earlier record has. Source: Hobart 2013."""
    at = tuple(place for place, finding in enumerate(findings) if walk_of(finding) is not None)
    tied = next((findings[place].earlier for place in at if findings[place].earlier is not None), None)
    mean = mean_walk([findings[place] for place in at]) if at else None
    before = None if tied is None else walk_in(tied.said)
    now = None if mean is None else walk_of(mean)
    change = walk_change(before, now)
    if change and tied is not None:
        day = words.ON_DAY.format(day=tied.day) if tied.day else ""
        yield SINCE.figure(words.WALK_SINCE.format(before=before, day=day, now=now, change=change), at)


def up_and_go_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Which published limits the time reaches. Source: CDC STEADI; Shumway-Cook 2000; Cruz-Jentoft 2019."""
    for at, finding in enumerate(findings):
        value = finding.value
        if finding.item != "timed_up_and_go" or not isinstance(value, Quantity) or finding.unit not in ("s", ""):
            continue
        if value.upto is not None or value.then is not None:
            continue
        reached = [f"{number_text(limit)} s ({source})" for limit, source in UP_AND_GO_LIMITS if value.number >= limit]
        lowest, source = UP_AND_GO_LIMITS[0]
        judged = (
            words.REACHES.format(limits=", ".join(reached))
            if reached
            else words.BELOW_LIMIT.format(limit=number_text(lowest), source=source)
        )
        yield UP_AND_GO.figure(
            words.UP_AND_GO.format(seconds=number_text(value.number), judged=judged),
            (at,),
            value=value.number,
            unit="s",
        )


def tandem_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Counted steps and missteps against the scale's own numbers, in one line. Source: Schmitz-Hübsch 2006."""
    parts: dict[str, int] = {}
    for at, finding in enumerate(findings):
        if finding.item == "tandem_gait" and finding.status not in (Status.NOT_EXAMINED, Status.NOT_ASSESSABLE):
            note = finding.value.note if isinstance(finding.value, Quantity) else ""
            parts |= dict.fromkeys(_tandem_parts(f"{finding.value or ''} {note}"), at)
    if parts:
        places = tuple(dict.fromkeys(parts.values()))
        yield TANDEM.figure(words.TANDEM.format(parts=", ".join(parts)), places)


def _tandem_parts(said: str) -> Iterator[str]:
    """`10 steps (not more than ten)`, `1 misstep (up to one)`."""
    if steps := re.search(r"(\d+) steps?\b", said):
        form = words.STEPS_ABOVE if int(steps[1]) > TANDEM_STEPS else words.STEPS_NOT_ABOVE
        yield form.format(count=steps[1])
    if missteps := re.search(r"(\d+) missteps?\b", said):
        form = words.USUAL_MISSTEPS if int(missteps[1]) <= TANDEM_MISSTEPS else words.MORE_MISSTEPS
        one = words.ONE_MISSTEP if missteps[1] == "1" else words.MISSTEPS
        yield form.format(said=one.format(count=missteps[1]))
