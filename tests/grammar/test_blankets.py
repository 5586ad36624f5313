"""What a blanket speaks of."""

from __future__ import annotations

import pytest
from by_hand import finding

from dictate.grammar import Grammar
from dictate.grammar.blankets import covers_item
from dictate.model import Status


@pytest.mark.parametrize(
    ("blanket", "item", "covers"),
    [
        ("motor_all", "pronator_drift", True),
        ("motor_all", "strength_deltoid", True),
        ("motor_all", "strength_all", True),
        ("motor_all", "reflex_patellar", False),
        ("motor_all", "motor_all", False),
        ("reflexes_all", "plantar_response", True),
        ("sensory_all", "romberg", False),
        ("mental_status_all", "speech", False),
        ("strength_all", "strength_upper_limb", True),
        ("strength_all", "pronator_drift", False),
        ("coordination_all", "gait", False),
        ("coordination_all", "finger_nose", True),
        ("cranial_nerves_2_12", "facial_strength", True),
    ],
)
def test_what_a_blanket_speaks_of(blanket: str, item: str, covers: bool, grammar: Grammar) -> None:
    """What it lists, or its whole component less what stands in it and is no part of it; never itself."""
    one, wide = (finding(grammar.component_of(name), name, Status.NORMAL) for name in (item, blanket))
    assert covers_item(wide, grammar.item(blanket), one, grammar) is covers
