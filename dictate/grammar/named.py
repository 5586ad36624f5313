"""Named scales and conditions: which scale a statement names, under what it was read, and which way is better."""

from __future__ import annotations

from dictate.grammar.schema import Grammar, Item, Way
from dictate.model import Finding, Grade


def scale_named(finding: Finding, grammar: Grammar) -> str:
    """The scale of an item that stands for many, as the note writes it; empty where none was named."""
    item = item_of(finding, grammar)
    said = _plain(name_detail(finding, grammar))
    if item is None or not said:
        return ""
    name = next((name for name, one in item.named.items() if said in map(_plain, one.terms)), "")
    if not name and said in map(_plain, item.terms):
        name = name_detail(finding, grammar)
    return "" if name == item.name else name


def name_detail(finding: Finding, grammar: Grammar) -> str:
    """The detail that is a name of the item or of one of its scales; empty where there is none."""
    item = item_of(finding, grammar) if finding.detail else None
    if item is None or not item.keeps_name:
        return ""
    names = set(map(_plain, (*item.terms, *item.context_terms)))
    return next((one for one in finding.detail if _plain(one) in names), "")


def conditions_of(finding: Finding, grammar: Grammar) -> tuple[str, ...]:
    """Under what it was read ("corrected", "dark", "reinforced"), by the grammar's names."""
    said = set(map(_plain, finding.detail))
    if not said:
        return ()
    return tuple(name for name, phrases in grammar.common.conditions.items() if said & set(map(_plain, phrases)))


def better_way(finding: Finding, grammar: Grammar) -> int:
    """1: higher numbers or grades are better, -1: lower ones, 0: nothing says so."""
    item = item_of(finding, grammar)
    return 0 if item is None else {"higher": 1, "lower": -1, "": 0}[_way(finding, item, grammar)]


def _way(finding: Finding, item: Item, grammar: Grammar) -> Way:
    if isinstance(finding.value, Grade):
        scale = grammar.scales.get(finding.value.scale)
        return scale.better if scale is not None else ""
    if item.keeps_name:
        named = item.named.get(scale_named(finding, grammar))
        return named.better if named is not None else ""
    return item.better


def item_of(finding: Finding, grammar: Grammar) -> Item | None:
    """Its item, looked up without the whole list of them: every line of a note and a comparison asks."""
    return next((p.items[finding.item] for p in grammar.components.values() if finding.item in p.items), None)


def _plain(text: str) -> str:
    return " ".join(text.lower().split())
