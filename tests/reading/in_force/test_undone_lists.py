"""A list of what was left undone. No source: how notes are typed, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Gait normal. Not examined: cranial nerves, coordination.",
            ["gait normal", "cranial_nerves_all not_examined", "coordination_all not_examined"],
        ),
        (
            "Pulse 64. Not done: gag, corneal reflex.",
            ["heart_rate measured 64", "gag not_examined", "corneal_reflex not_examined"],
        ),
        ("Not examined: the patient was asleep.", []),
    ],
)
def test_it_is_of_what_is_listed(rows: Rows, text: str, wanted: list[str]) -> None:
    """And of nothing that was told before."""
    assert rows(text) == wanted
