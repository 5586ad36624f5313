"""What a blanket speaks of: the items it lists, those of its nerves, or those of its whole component."""

from __future__ import annotations

import re

from dictate.grammar.named import item_of
from dictate.grammar.schema import Grammar, Item
from dictate.model import Component, Finding

# Items that stand in a component and are yet no part of a plain "normal" of it.
APART: dict[Component, tuple[str, ...]] = {
    Component.GENERAL: ("orthostatic_symptoms", "examination_conditions", "pain_score", "handedness"),
    Component.MENTAL_STATUS: (
        *("speech", "motor_response", "primitive_reflexes", "glabellar", "grasp", "palmomental", "snout", "rooting"),
    ),
    Component.CRANIAL_NERVES: ("positional_test", "oculocephalic", "caloric"),
    Component.SENSORY: ("romberg",),
}
ROMAN = ("I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII")


def covers_item(blanket: Finding, item: Item, finding: Finding, grammar: Grammar) -> bool:
    """Whether the blanket speaks of the finding's item: one it lists, one of its nerves, or one of its component."""
    other = item_of(finding, grammar)
    if other is None or finding.item == blanket.item:
        return False
    if finding.item in item.covers or (other.covers and set(other.covers) <= set(item.covers)):
        return True
    if finding.component is not blanket.component or finding.item in APART.get(blanket.component, ()):
        return False
    nerves = re.fullmatch(r"cranial_nerves_(\d+)_(\d+)", blanket.item)
    if nerves is not None:
        return not other.blanket and _within_nerves(other.nerve, int(nerves.group(1)), int(nerves.group(2)))
    if item.covers:
        return False
    if item.scale:
        return other.scale == item.scale
    return not other.blanket or bool(other.covers or other.scale)


def _within_nerves(nerve: str, first: int, last: int) -> bool:
    """Whether one of the item's nerves lies in the range; an item without nerve belongs to II to XII only."""
    numbers = [ROMAN.index(part) + 1 for part in re.findall(r"[IVX]+", nerve) if part in ROMAN]
    if not numbers:
        return (first, last) in ((1, 12), (2, 12))
    return any(first <= number <= last for number in numbers)
