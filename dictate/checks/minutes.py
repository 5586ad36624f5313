"""Minutes since standing up by the clock of the recording: a suggestion for a question, never a value."""

from __future__ import annotations

import re

from dictate.checks.series import PRESSURE, RATE, UPRIGHT
from dictate.model import Examination, Finding, Word

STANDING = re.compile(r"\b(standing|stands?|stood|upright|tilted)\b", re.IGNORECASE)
SHORTEST_S = 30  # a reading said in the same breath as "standing" was dictated afterwards: the clock says nothing
LONGEST_MIN = 30


def minutes_by_clock(exam: Examination, finding: Finding) -> tuple[int, float] | None:
    """(whole minutes since standing, seconds on the recording since the word or reading they are counted from).

    None: typed text, another recording, no word of standing, or no gap to speak of.
    """
    words = exam.transcript.words
    last = finding.evidence[-1]
    if last.end_s is None or last.last >= len(words):
        return None
    source = words[last.last].source
    start, said_min = _anchor(exam, finding, words, source)
    if start is None:
        return None
    gap_s = last.end_s - start
    minutes = round(said_min + gap_s / 60)
    return (minutes, gap_s) if gap_s >= SHORTEST_S and 1 <= minutes <= LONGEST_MIN else None


def _anchor(exam: Examination, finding: Finding, words: tuple[Word, ...], source: int) -> tuple[float | None, float]:
    """Seconds at which counting starts, and the minutes said there: at a timed reading, else at "standing"."""
    earlier = [
        one
        for one in exam.findings
        if one is not finding and one.item in (PRESSURE, RATE) and one.evidence[-1].last < finding.evidence[-1].last
        if one.evidence[-1].end_s is not None and words[one.evidence[-1].last].source == source
    ]
    down = [one for one in earlier if one.position is not None and one.position not in UPRIGHT]
    since = max((one.evidence[-1].last for one in down), default=-1)
    timed = [one for one in earlier if one.position in UPRIGHT and one.minutes is not None]
    timed = [one for one in timed if one.evidence[-1].last > since]
    if timed:
        reading = max(timed, key=lambda one: one.evidence[-1].last)
        return reading.evidence[-1].end_s, reading.minutes or 0
    for place in range(since + 1, finding.evidence[-1].last + 1):
        word = words[place]
        if word.source == source and STANDING.search(word.text):
            return word.start_s, 0.0
    return None, 0.0
