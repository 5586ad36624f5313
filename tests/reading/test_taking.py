"""One node into its cell or a new one. No source: how findings are told, from memory."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.pipeline import Typed, examine


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Tremor moderate right, mild left.", ["tremor right moderate", "tremor left mild"]),
        ("Knee jerks 2+ right, 3+ left.", ["reflex_patellar right 2+", "reflex_patellar left 3+"]),
        ("Drift on the left, none on the right.", ["pronator_drift left present", "pronator_drift right absent"]),
        ("Bulk normal, tremor of the left hand.", ["bulk normal", "tremor left present"]),
    ],
)
def test_a_new_side_begins_a_new_reading(grammar: Grammar, said: str, found: list[str]) -> None:
    """With the value that stands beside it, and none of the one before; a comma in front of a name parts nothing."""
    exam = examine([Typed("x", said)], engine=None, grammar=grammar)
    told = [" ".join(filter(None, (one.item, one.side, str(one.value or one.status.value)))) for one in exam.findings]
    assert told == found
