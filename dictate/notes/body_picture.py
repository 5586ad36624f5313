"""Strength and reflexes by side on a schematic figure seen from the front: the patient's right is on the left."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from textwrap import wrap

from dictate.catalogue import note as words
from dictate.grammar import Grammar, conditions_of
from dictate.model import Examination, Finding, Side
from dictate.notes.drawing import Picture, dot, drawing, label, line, path
from dictate.notes.phrases import STAY, hedge, is_blanket, item_name, phrase, stands_out, statement

WIDTH, MIDDLE, ROW, TOP = 380, 190, 16, 34
LONGEST = 64  # signs of a line below the figure
BODY = 280  # height of the figure
# Where on the figure an item is examined: share of its height from the top of the head, distance from the middle line.
PLACES: dict[str, tuple[float, float]] = {
    "neck": (0.17, 4), "deltoid": (0.23, 27), "supraspinatus": (0.2, 20), "infraspinatus": (0.25, 20),
    "serratus": (0.3, 18), "pectoral": (0.27, 14), "shoulder": (0.22, 24), "latissimus": (0.33, 18),
    "rhomboids": (0.26, 9), "upper_limb": (0.36, 34), "biceps": (0.31, 30), "triceps": (0.34, 33),
    "brachioradialis": (0.4, 37), "pronator": (0.41, 35), "supinator": (0.42, 38), "wrist": (0.48, 43),
    "finger": (0.53, 46), "interossei": (0.535, 47), "interosseous": (0.535, 45), "digiti": (0.54, 49),
    "pollicis": (0.52, 42), "hoffmann": (0.535, 48), "trunk": (0.4, 4), "abdominal": (0.42, 10),
    "cremasteric": (0.55, 5), "iliopsoas": (0.52, 11), "gluteus": (0.52, 16), "hip": (0.51, 17),
    "lower_limb": (0.62, 16), "adductor": (0.6, 9), "quadriceps": (0.63, 15), "hamstring": (0.66, 18),
    "hamstrings": (0.66, 18), "patellar": (0.73, 16), "tibialis": (0.83, 17), "gastrocnemius": (0.81, 20),
    "peronei": (0.85, 21), "achilles": (0.92, 19), "clonus": (0.93, 17), "hallucis": (0.96, 20), "toe": (0.965, 24),
    "plantar": (0.97, 22), "jaw": (0.1, 4),
}  # fmt: skip
REFLEXES = frozenset("plantar_response hoffmann clonus abdominal_reflex cremasteric_reflex crossed_adductor".split())


@dataclass(frozen=True)
class Mark:
    """One row beside the figure: what was said of one item on one side."""

    name: str
    said: str
    stands_out: bool
    where: tuple[float, float] | None


def strength_picture(exam: Examination, grammar: Grammar) -> Picture | None:
    """Muscle strength; None where none was said with its side."""
    return _picture(words.STRENGTH_TITLE, exam, grammar, lambda item: item.startswith("strength_"))


def reflex_picture(exam: Examination, grammar: Grammar) -> Picture | None:
    """Reflexes; None where none was said with its side."""
    return _picture(words.REFLEX_TITLE, exam, grammar, lambda item: item.startswith("reflex_") or item in REFLEXES)


def _picture(title: str, exam: Examination, grammar: Grammar, wanted: Callable[[str], bool]) -> Picture | None:
    said = [one for one in exam.findings if wanted(one.item)]
    sides = {
        side: [_mark(one, grammar) for one in said if one.side in (side, Side.BOTH) and not is_blanket(grammar, one)]
        for side in (Side.RIGHT, Side.LEFT)
    }
    if not any(sides.values()):
        return None
    others = [one for one in said if one.side not in (*sides, Side.BOTH) or is_blanket(grammar, one)]
    rows = _table(said, grammar)
    columns: tuple[str, ...] = words.BODY_COLUMNS
    if not any(row[-1] for row in rows):  # every side was said: no empty column
        columns, rows = columns[:-1], tuple(row[:-1] for row in rows)
    told = "; ".join(" ".join(filter(None, row)) for row in rows)
    description = words.BODY_DESCRIPTION.format(rows=told)
    count = max(map(len, sides.values()))
    tall = TOP + max(BODY, ROW * count) + 12
    notes = [f"{item_name(grammar, one.item)} {phrase(one, grammar)}" for one in others]
    shown = [part for note in notes for part in wrap(words.BODY_ALSO.format(said=note).replace(STAY, " "), LONGEST)]
    foot = [label(part, 4, tall + 14 + 14 * at, size=10) for at, part in enumerate(shown)]
    height = tall + 20 + 14 * len(foot)
    top = TOP + max(0, ROW * count - BODY) / 2
    svg = drawing(title, description, WIDTH, height, *_figure(top), *_sides(sides, top, tall - 12), *foot,
                  label(words.BODY_KEY, 4, height - 6, size=10))  # fmt: skip
    return Picture(title, description, svg, columns, rows)


def _mark(finding: Finding, grammar: Grammar) -> Mark:
    name = item_name(grammar, finding.item).split(" (")[0]
    where = next(
        (at for part, at in sorted(PLACES.items(), key=lambda one: -len(one[0])) if part in finding.item), None
    )
    site = finding.site.replace("_", " ")
    said = " ".join((_said(finding, grammar).split(" (")[0], *conditions_of(finding, grammar)))
    return Mark(f"{name} {site}".strip(), said, stands_out(finding, grammar), where)


def _said(finding: Finding, grammar: Grammar) -> str:
    return " ".join(filter(None, (hedge(finding, grammar), statement(finding, grammar))))


def _table(said: list[Finding], grammar: Grammar) -> tuple[tuple[str, ...], ...]:
    """Item, right, left; what has no side of its own stands in the last column."""
    found: dict[str, list[list[str]]] = {}
    for one in said:
        site = one.site.replace("_", " ")
        cells = found.setdefault(f"{item_name(grammar, one.item)} {site}".strip(), [[], [], []])
        text = _said(one, grammar)
        blanket = is_blanket(grammar, one)
        if one.side in (Side.RIGHT, Side.BOTH) and not blanket:
            cells[0].append(text)
        if one.side in (Side.LEFT, Side.BOTH) and not blanket:
            cells[1].append(text)
        if blanket or one.side not in (Side.RIGHT, Side.LEFT, Side.BOTH):
            cells[2].append(phrase(one, grammar))
    wide = [one.side for one in said if is_blanket(grammar, one)]
    empty = [
        words.NOT_SAID_BY_ITSELF if {side, Side.BOTH, None} & set(wide) else words.NOT_SAID
        for side in (Side.RIGHT, Side.LEFT)
    ]
    return tuple((name, *_told(cells, empty)) for name, cells in found.items())


def _told(cells: list[list[str]], empty: list[str]) -> Iterator[str]:
    """A side that nothing was said of says so: a blank could be read as normal."""
    *sides, other = (words.AND_ALSO.join(cell) for cell in cells)
    yield from (cell or ("" if other else nothing) for cell, nothing in zip(sides, empty, strict=True))
    yield other


def _sides(sides: dict[Side, list[Mark]], top: float, last: float) -> Iterator[str]:
    for side, marks in sides.items():
        sign = -1 if side is Side.RIGHT else 1
        edge = 4 if side is Side.RIGHT else WIDTH - 4
        anchor = "start" if side is Side.RIGHT else "end"
        yield label(words.PATIENTS_SIDE[side], edge, 16, anchor=anchor, weight="bold")
        marks = sorted(marks, key=lambda mark: mark.where[0] if mark.where else 2)
        for y, mark in zip(_heights(marks, top, last), marks, strict=True):
            weight = "bold" if mark.stands_out else "normal"
            yield label(f"{mark.name} {mark.said}", edge, y + 4, anchor=anchor, size=10, weight=weight)
            if mark.where is None:
                continue
            x, there = MIDDLE + sign * mark.where[1], top + mark.where[0] * BODY
            if sign * (edge - x) > _long(mark):
                yield line(edge - sign * _long(mark), y, x, there, faint=True)
            yield dot(x, there, filled=mark.stands_out, radius=3)


def _long(mark: Mark) -> float:
    """About how wide the row's text is, in a wide letter."""
    return 8 + (6.9 if mark.stands_out else 6.2) * len(f"{mark.name} {mark.said}")


def _heights(marks: list[Mark], top: float, last: float) -> list[float]:
    """Rows near their place, and none upon another."""
    heights: list[float] = []
    for mark in marks:
        wanted = top + (mark.where[0] if mark.where else 1) * BODY
        heights.append(max(wanted, heights[-1] + ROW) if heights else wanted)
    low = last
    for at in range(len(heights) - 1, -1, -1):
        heights[at] = min(heights[at], low)
        low = heights[at] - ROW
    return heights


def _figure(top: float) -> Iterator[str]:
    """A body of a few strokes."""

    def at(x: float, y: float) -> str:
        return f"{MIDDLE + x:.0f} {top + y * BODY:.0f}"

    yield path(f"M{at(0, 0)} a14 17 0 1 0 0.1 0 z")
    for side in (-1, 1):
        yield path(
            f"M{at(side * 5, 0.12)} L{at(side * 5, 0.17)} L{at(side * 24, 0.19)} Q{at(side * 31, 0.2)} "
            f"{at(side * 33, 0.3)} L{at(side * 42, 0.46)} L{at(side * 50, 0.54)} L{at(side * 42, 0.545)} "
            f"L{at(side * 35, 0.47)} L{at(side * 22, 0.29)} L{at(side * 18, 0.46)} Q{at(side * 24, 0.53)} "
            f"{at(side * 23, 0.62)} L{at(side * 21, 0.75)} L{at(side * 22, 0.84)} L{at(side * 20, 0.95)} "
            f"L{at(side * 27, 0.985)} L{at(side * 13, 0.985)} L{at(side * 12, 0.84)} L{at(side * 10, 0.74)} "
            f"L{at(side * 1, 0.55)}"
        )
