"""Visual fields by quadrant, as the patient sees them; only what the words say without doubt is shaded."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.model import Certainty, Examination, Finding, Side, Status
from dictate.notes.drawing import INK, Picture, drawing, label, line, path, tag
from dictate.notes.phrases import phrase

RADIUS, GAP, TOP = 62, 30, 34
WIDTH = 4 * RADIUS + 3 * GAP
CENTRE = {Side.LEFT: GAP + RADIUS, Side.RIGHT: 2 * GAP + 3 * RADIUS}  # of each eye's circle
MIDDLE = TOP + RADIUS
FIELDS = "visual_fields"
EYES = (Side.LEFT, Side.RIGHT)
Quadrant = tuple[Side, Side, str]  # eye, half of the field as the patient sees it, upper or lower
UPPER, LOWER = "upper", "lower"


def field_picture(exam: Examination, grammar: Grammar) -> Picture | None:
    """The picture; None where no field was said that can be drawn."""
    said = [one for one in exam.findings if one.item == FIELDS]
    lost = {quadrant for one in said for quadrant in lost_quadrants(one)}
    full = {eye for one in said if _is_full(one) for eye in EYES if one.side in (eye, Side.BOTH)}
    if not lost and not full:
        return None
    rows = tuple((phrase(one, grammar),) for one in said)
    description = words.FIELD_DESCRIPTION.format(rows="; ".join(row[0] for row in rows))
    parts = [part for eye in EYES for part in _eye(eye, lost, full)]
    low = TOP + 2 * RADIUS + 36
    key = [label(text, 4, low + 14 * at, size=10) for at, text in enumerate(words.FIELD_KEY)]
    svg = drawing(words.FIELD_TITLE, description, WIDTH, low + 14 * len(key) - 6, *parts, *key)
    return Picture(words.FIELD_TITLE, description, svg, words.FIELD_COLUMNS, rows)


def lost_quadrants(finding: Finding) -> frozenset[Quadrant]:
    """The quadrants that the words of one finding call lost; empty where they leave it open which."""
    text = str(finding.value or "").lower()
    if finding.status is not Status.ABNORMAL or finding.certainty is not Certainty.STATED:
        return frozenset()
    levels = _levels(text)
    one_side = finding.side if finding.side in EYES else None
    if one_side and is_homonymous(finding) and ("hemianop" in text or "quadrantanop" in text):
        if "quadrantanop" in text and len(levels) != 1:
            return frozenset()
        return frozenset((eye, one_side, level) for eye in EYES for level in levels)
    if "bitemporal hemianop" in text:
        return frozenset((eye, eye, level) for eye in EYES for level in levels)
    if "binasal hemianop" in text:
        return frozenset((eye, _other(eye), level) for eye in EYES for level in levels)
    eyes = EYES if finding.side is Side.BOTH else (one_side,) if one_side else ()
    if "altitudinal" in text and len(levels) == 1:
        return frozenset((eye, half, level) for eye in eyes for half in EYES for level in levels)
    if "temporal hemianop" in text or "nasal hemianop" in text:
        return frozenset((eye, eye if "temporal" in text else _other(eye), level) for eye in eyes for level in levels)
    return frozenset()


def is_homonymous(finding: Finding) -> bool:
    """Whether its side is that half of the fields of both eyes."""
    said = finding.item == FIELDS and finding.side in EYES
    return said and "homonymous" in str(finding.value or "").lower()


def _levels(text: str) -> tuple[str, ...]:
    upper, lower = "superior" in text or "upper" in text, "inferior" in text or "lower" in text
    if upper == lower:
        return (UPPER, LOWER)
    return (UPPER,) if upper else (LOWER,)


def _other(eye: Side) -> Side:
    return Side.RIGHT if eye is Side.LEFT else Side.LEFT


def _is_full(finding: Finding) -> bool:
    return finding.status is Status.NORMAL and finding.certainty is Certainty.STATED


def _eye(eye: Side, lost: set[Quadrant], full: set[Side]) -> Iterator[str]:
    centre = CENTRE[eye]
    known = eye in full or any(quadrant[0] is eye for quadrant in lost)
    dash = {} if known else {"stroke_dasharray": "4 4"}
    for _, half, level in sorted(quadrant for quadrant in lost if quadrant[0] is eye):
        x = centre + (RADIUS if half is Side.RIGHT else -RADIUS)
        y = MIDDLE + (RADIUS if level == LOWER else -RADIUS)
        turn = 1 if (half is Side.RIGHT) == (level == LOWER) else 0
        steps = f"M{centre} {MIDDLE} L{x} {MIDDLE} A{RADIUS} {RADIUS} 0 0 {turn} {centre} {y} Z"
        yield path(steps, fill=INK, opacity="0.55", width=0.5)
    yield tag("circle", cx=centre, cy=MIDDLE, r=RADIUS, stroke=INK, stroke_width=1.6, fill="none", **dash)
    yield line(centre - RADIUS, MIDDLE, centre + RADIUS, MIDDLE, faint=True)
    yield line(centre, MIDDLE - RADIUS, centre, MIDDLE + RADIUS, faint=True)
    yield label(words.EYES[eye], centre, TOP - 12, anchor="middle", weight="bold")
    if not known:
        yield label(words.NOT_SAID, centre, TOP + 2 * RADIUS + 16, anchor="middle", size=10)
    elif not any(quadrant[0] is eye for quadrant in lost):
        yield label(words.STATUSES[Status.NORMAL], centre, TOP + 2 * RADIUS + 16, anchor="middle", size=10)
