"""Visual acuity: Snellen fractions in feet or metres as decimal and logMAR, and the lines between the eyes."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.model import Acuity, Figure, Finding, Side, Status, number_text
from dictate.reckoning.rules import rule

DECIMAL = re.compile(r"[0-2]\.\d{1,2}")
LOGMAR = re.compile(r"logMAR (-?\d\.\d{1,2})")
FRACTION = re.compile(r"(\d+(?:\.\d+)?)/(\d+(?:\.\d+)?)(?:([+-])(\d)?)?")
# Source: Holladay 2004, table 1: lines of a five-letter logMAR chart, as denominators of 20.
LOGMAR_LINES = (10, 12.5, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200)
LETTER = 0.02  # Source: Bach, visual acuity cheat sheet; Holladay 2004: one letter of a five-letter line
LINE = 0.1

ACUITY = rule(
    "visual acuity",
    formula="decimal = distance / line, or as said; logMAR = -log10(decimal); lines = difference of logMAR / 0.1",
    source="Holladay 2004; Bach (letters: 0.02)",
    limits="letters count only with their number and on five-letter logMAR lines; eyes compared only under the "
    "same words "
    "(corrected, near); nothing is written when both eyes are 1.0",
    missing="words (counting fingers, hand movements, light perception) and near print stay words; one eye: no "
    "comparison",
)


def decimal_of(text: str) -> float | None:
    """Distance over line: 20/40 and 6/12 are 0.5; None for words and impossible fractions. Source: Holladay 2004.

    A decimal stays itself, and logMAR x is 10 to the power of -x.
    """
    if DECIMAL.fullmatch(text):
        return float(text) or None
    if logmar := LOGMAR.fullmatch(text):
        return float(10 ** -float(logmar[1]))
    found = FRACTION.fullmatch(text)
    if found is None or 0 in (float(found[1]), float(found[2])):
        return None
    return float(found[1]) / float(found[2])


def logmar_of(text: str) -> float | None:
    """-log10 of the decimal, letters included where they can count; None for words. Source: Holladay 2004; Bach."""
    found, decimal = FRACTION.fullmatch(text), decimal_of(text)
    if decimal is None:
        return None
    if found is None:
        return -math.log10(decimal)
    letters = float(found[4] or 0) * (-1 if found[3] == "+" else 1)
    five_letter = any(math.isclose(20 / decimal, line, rel_tol=0.02) for line in LOGMAR_LINES)
    return -math.log10(decimal) + (LETTER * letters if five_letter else 0)


def acuity_figure(findings: tuple[Finding, ...]) -> Iterator[Figure]:
    """Decimal and logMAR of every fraction, and lines between the eyes where both were read alike."""
    read = [
        (at, finding, str(finding.value))
        for at, finding in enumerate(findings)
        if finding.item == "visual_acuity" and finding.status is Status.MEASURED and isinstance(finding.value, Acuity)
        if decimal_of(str(finding.value)) is not None
    ]
    if not read or all(decimal_of(text) == 1 for _, _, text in read):
        return
    parts = [_part(finding, text) for _, finding, text in read]
    between = _between([(finding, text) for _, finding, text in read])
    yield ACUITY.figure(words.ACUITY.format(parts=", ".join(parts), between=between), tuple(at for at, _, _ in read))


def _part(finding: Finding, text: str) -> str:
    """`right 20/40 corrected = 0.5 (logMAR 0.30)`."""
    decimal, logmar = decimal_of(text) or 0, logmar_of(text) or 0
    side = "" if finding.side is None else f"{words.SIDES[finding.side]} "
    said = " ".join((text, *finding.detail))
    return words.ACUITY_EYE.format(
        side=side, said=said, decimal=number_text(round(decimal, 2 if decimal >= 0.1 else 3)), logmar=logmar + 0
    )


def _between(read: list[tuple[Finding, str]]) -> str:
    """`; left 1.2 lines worse`; empty when an eye is missing, read twice, or read under other words."""
    eyes = {side: [(f, text) for f, text in read if f.side is side] for side in (Side.RIGHT, Side.LEFT)}
    if any(len(one) != 1 for one in eyes.values()):
        return ""
    (right, right_text), (left, left_text) = eyes[Side.RIGHT][0], eyes[Side.LEFT][0]
    if set(right.detail) != set(left.detail):
        return words.ACUITY_NOT_COMPARED
    lines = ((left_text_mar := logmar_of(left_text) or 0) - (right_mar := logmar_of(right_text) or 0)) / LINE
    if math.isclose(left_text_mar, right_mar, abs_tol=0.005):
        return ""
    count = round(abs(lines), 1)
    worse = words.SIDES[Side.LEFT if lines > 0 else Side.RIGHT]
    form = words.ONE_LINE_WORSE if count == 1 else words.LINES_WORSE
    return form.format(side=worse, count=number_text(count))
