"""total-mismatch: parts against the dictated sum."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import queries as say
from dictate.checks.registry import Doubt, check
from dictate.checks.wording import name_of, topic
from dictate.grammar import Grammar
from dictate.grammar.sums import SUMS, Sum, parts_of, points_of
from dictate.model import Examination, number_text

MUSCLE_SUM = "muscle sum score"  # the figure
DICTATED_SUM, NAMED_SCORE = "muscle_sum", "named_score"  # the items that a dictated one is of
MUSCLES = re.compile(r"\bMRC sum score\b|\bsum score MRC\b", re.IGNORECASE)


@check("total-mismatch", severity="must")
def total_mismatch(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """The dictated parts cannot give the dictated total.

    Why: one of the numbers was misheard or misspoken. A part that could not be tested leaves the total as
    dictated, but for the stroke scale, where such an item is not counted.
    Example: "eyes four, verbal five, motor six, coma scale fourteen" asks: 14 or 15?
    """
    for one in SUMS:
        yield from _mismatch(exam, grammar, one)
    yield from _muscles(exam, grammar)


def _muscles(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A dictated MRC sum score against the figure, which is there only when all twelve grades are."""
    figure = next((one for one in exam.figures if one.name == MUSCLE_SUM and one.value is not None), None)
    for total in exam.findings if figure is not None else ():
        is_sum = total.item == DICTATED_SUM or (total.item == NAMED_SCORE and MUSCLES.search(total.quote))
        said = points_of(total) if is_sum else None
        if figure is None or said is None or said == figure.value:
            continue
        added = number_text(figure.value or 0)
        message = say.MUSCLE_SUM.format(said=number_text(said), added=added)
        others = tuple(exam.findings[at] for at in figure.inputs)
        yield Doubt(total, message, (number_text(said), added), others=others)


def _mismatch(exam: Examination, grammar: Grammar, one: Sum) -> Iterator[Doubt]:
    parts = parts_of(exam.findings, one)
    if parts is None or not parts.places or set(parts.untestable) - one.may_be_untestable:
        return  # nothing to add up; said twice (values-conflict asks); a part that could not be tested
    lowest = parts.known + sum(one.parts[name][0] for name in parts.missing)
    highest = parts.known + sum(one.parts[name][1] for name in parts.missing)
    for total in exam.findings:
        said = points_of(total) if total.item == one.total else None
        if said is None or lowest <= said <= highest:
            continue
        reach = say.ADD_UP.format(total=number_text(parts.known))
        if parts.missing:
            reach = say.ALLOW.format(low=number_text(lowest), high=number_text(highest))
        if parts.untestable:
            reach += say.WITHOUT.format(names=", ".join(name_of(grammar, name) for name in parts.untestable))
        message = say.TOTAL_MISMATCH.format(topic=topic(total, grammar), said=number_text(said), reach=reach)
        answers = () if parts.missing else (number_text(said), number_text(parts.known))
        yield Doubt(total, message, answers, others=tuple(exam.findings[at] for at in parts.places))
