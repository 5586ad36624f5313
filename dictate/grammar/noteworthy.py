"""Noteworthy values: which findings stand out by the rules of the grammar, and which have no rule."""

from __future__ import annotations

from dictate.grammar.named import conditions_of
from dictate.grammar.schema import Grammar, Item, Noteworthy
from dictate.grammar.units import convert
from dictate.model import Finding, Grade, Quantity, Score, Status, Value


def is_noteworthy(finding: Finding, grammar: Grammar) -> bool:
    """Whether the item's own rule says that the finding stands out; without a rule it does not.

    Statuses of the rule, its values, its limits (both exclusive), and grades that their scale does not call normal.
    """
    item = grammar.items.get(finding.item)
    if item is None:
        return False
    rule = item.noteworthy
    if rule is not None and _stands_out(finding, item, rule, grammar):
        return True
    return finding.status is Status.MEASURED and _off_scale(finding.value, item, grammar)


def has_rule(finding: Finding, grammar: Grammar) -> bool:
    """Whether the grammar can tell a noteworthy value of this kind from another; False: list it as it is.

    A measured value needs a rule on values: values, limits, or the normal grades of its scale. Every other status is
    plain once the item has any rule.
    """
    item = grammar.items.get(finding.item)
    if item is None:
        return False
    rule = item.noteworthy
    if finding.status is not Status.MEASURED:
        return rule is not None
    if rule is not None and (rule.values or finding.status.value in rule.statuses):
        return True
    if isinstance(finding.value, Grade):
        scale = grammar.scales.get(finding.value.scale or item.scale)
        return scale is not None and bool(scale.normal)
    return rule is not None and (rule.below is not None or rule.above is not None) and bool(_numbers(finding, item))


def _stands_out(finding: Finding, item: Item, rule: Noteworthy, grammar: Grammar) -> bool:
    if finding.status.value in rule.statuses:
        return True
    if finding.status in (Status.NOT_EXAMINED, Status.NOT_ASSESSABLE, Status.UNCHANGED):
        return False
    if {str(finding.value or ""), *finding.detail} & {*rule.values}:
        return True
    return not {*conditions_of(finding, grammar)} & {*rule.unless} and any(
        (rule.below is not None and number < rule.below) or (rule.above is not None and number > rule.above)
        for number in _numbers(finding, item)
    )


def _numbers(finding: Finding, item: Item) -> list[float]:
    """The plain numbers of the value in the item's usual unit."""
    value = finding.value
    if isinstance(value, Score):
        return [] if value.points is None or value.mark else [value.points]
    if not isinstance(value, Quantity):
        return []
    first = value.number if value.then is None else value.then  # a pupil before light was in the dark
    said = [number for number in (first, value.upto) if number is not None]
    converted = [convert(number, finding.unit or item.unit, item.unit) for number in said]
    return [number for number in converted if number is not None]


def _off_scale(value: Value | None, item: Item, grammar: Grammar) -> bool:
    """A grade that its scale does not count among the normal ones; a scale that names none is not judged."""
    if not isinstance(value, Grade):
        return False
    scale = grammar.scales.get(value.scale or item.scale)
    return scale is not None and bool(scale.normal) and value.grade not in scale.normal
