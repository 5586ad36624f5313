"""Numbers over three visits and more: one small chart for each thing, in the order of the visits."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dictate.catalogue import note as words
from dictate.model import number_text
from dictate.notes.drawing import Picture, dot, drawing, label, line
from dictate.notes.trends import Trend

LEFT, TOP, STEP, PLOT = 30, 24, 84, 80


def trend_pictures(trends: Sequence[Trend]) -> tuple[Picture, ...]:
    """A picture of every trend that has a number at three visits or more."""
    return tuple(_picture(trend) for trend in trends if trend.is_drawn)


def _picture(trend: Trend) -> Picture:
    rows = tuple((words.VISIT_SHORT.format(number=at + 1), point.text) for at, point in enumerate(trend.points))
    description = "; ".join(f"{visit}: {said}" for visit, said in rows)
    title = words.TREND_TITLE.format(name=trend.name)
    width = LEFT + STEP * len(trend.points)
    svg = drawing(title, description, width, TOP + PLOT + 44, *_curves(trend), *_axis(trend))
    return Picture(title, description, svg, words.TREND_COLUMNS, rows)


def _axis(trend: Trend) -> Iterator[str]:
    foot = TOP + PLOT + 12
    yield line(LEFT, foot, LEFT + STEP * len(trend.points) - 20, foot, faint=True)
    for at, point in enumerate(trend.points):
        x = LEFT + STEP * (at + 0.4)
        yield label(words.VISIT_SHORT.format(number=at + 1), x, foot + 14, anchor="middle", size=10)
        if not point.numbers:
            yield label(words.NO_NUMBER, x, foot + 26, anchor="middle", size=10)


def _curves(trend: Trend) -> Iterator[str]:
    """First numbers with filled marks and a full line, second ones (diastolic) with rings and a dashed line."""
    numbers = [number for point in trend.points for number in point.numbers]
    low, high = min(numbers), max(numbers)
    for which in (0, 1):
        before: tuple[float, float] | None = None
        for at, point in enumerate(trend.points):
            if len(point.numbers) <= which:
                before = None  # a line never leaps over a visit without a number
                continue
            x = LEFT + STEP * (at + 0.4)
            y = TOP + PLOT * (1 - (point.numbers[which] - low) / ((high - low) or 1))
            if before:
                yield line(*before, x, y, width=1.5, dash="4 3" if which else "")
            yield dot(x, y, filled=not which)
            yield label(number_text(point.numbers[which]), x, y - 7, anchor="middle", size=10)
            before = (x, y)
