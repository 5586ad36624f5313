"""One node into its cell or a new one. No source: how findings are told, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Tremor moderate right, mild left.", ["tremor right present moderate", "tremor left present mild"]),
        ("Knee jerks 2+ right, 3+ left.", ["reflex_patellar right measured 2+", "reflex_patellar left measured 3+"]),
        ("Drift on the left, none on the right.", ["pronator_drift left present", "pronator_drift right absent"]),
        ("Bulk normal, tremor of the left hand.", ["bulk normal", "tremor left hand present"]),
    ],
)
def test_a_new_side_begins_a_new_reading(rows: Rows, said: str, found: list[str]) -> None:
    """With the value that stands beside it, and none of the one before; a comma in front of a name parts nothing."""
    assert rows(said) == found
