"""How a check names items, findings and times in its questions."""

from __future__ import annotations

from dictate.catalogue import queries as say
from dictate.catalogue.note import POSITIONS, SIDES, STATUSES, UNITS
from dictate.grammar import Grammar, Item, scale_named
from dictate.model import SEGMENT, Choice, Finding, Status, Text, number_text


def item_of(grammar: Grammar, name: str) -> Item | None:
    """The item of that id; None for one the grammar does not hold."""
    try:
        return grammar.item(name)
    except KeyError:
        return None


def name_of(grammar: Grammar, name: str) -> str:
    """The item's name as the grammar writes it, else made from its id."""
    item = item_of(grammar, name)
    return name.replace("_", " ") if item is None else item.name


def title(finding: Finding, grammar: Grammar) -> str:
    """Name of the scale, where the item stands for many, else of the item."""
    return scale_named(finding, grammar) or name_of(grammar, finding.item)


def capital(text: str) -> str:
    """First letter in capitals, the others as they are."""
    return text[:1].upper() + text[1:]


def said(finding: Finding) -> str:
    """What was said of the item: `142/84 mmHg`, `extensor`, `absent`."""
    if finding.value is None:
        return STATUSES[finding.status]
    unit = UNITS.get(finding.unit, f" {finding.unit.strip('{}')}" if finding.unit else "")
    text = f"{finding.value}{unit}"
    if finding.status in (Status.PRESENT, Status.ABSENT) and isinstance(finding.value, Text | Choice):
        return f"{text} {STATUSES[finding.status]}"
    return text


def place_words(finding: Finding) -> str:
    """Side, site and circumstances: `right hand`, `standing, 3 min`; empty when none was said."""
    side = SIDES[finding.side] if finding.side else ""
    site = finding.site.upper() if SEGMENT.fullmatch(finding.site) else finding.site.replace("_", " ")
    parts = [" ".join(filter(None, (side, site)))]
    if finding.position is not None:
        parts.append(POSITIONS[finding.position])
    if finding.minutes is not None:
        parts.append(say.MINUTES.format(minutes=number_text(finding.minutes)))
    return ", ".join(filter(None, parts))


def phrase(finding: Finding, grammar: Grammar) -> str:
    """Item, place and what was said: `knee jerk left 3+`."""
    return " ".join(filter(None, (title(finding, grammar), place_words(finding), said(finding))))


def topic(finding: Finding, grammar: Grammar) -> str:
    """Item and place, with a capital: `Knee jerk left`."""
    return capital(" ".join(filter(None, (title(finding, grammar), place_words(finding)))))


def clock(time_s: float) -> str:
    """Seconds as m:ss."""
    return f"{int(time_s) // 60}:{int(time_s) % 60:02d}"
