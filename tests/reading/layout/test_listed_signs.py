"""reading.listed_signs: the noun in front of a list is of every name in it."""

from __future__ import annotations

from collections.abc import Callable

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Weakness of dorsiflexion and eversion on the left.",
            ["strength_tibialis_anterior left abnormal weakness", "strength_peronei left abnormal weakness"],
        ),
        (
            "Weakness of the deltoid and the biceps on the right.",
            ["strength_deltoid right abnormal weakness", "strength_biceps right abnormal weakness"],
        ),
        ("Weakness of eversion on the left.", ["strength_peronei left abnormal weakness"]),
        ("No weakness of hip flexion or knee extension.", ["strength_iliopsoas normal", "strength_quadriceps normal"]),
    ],
)
def test_a_list_shares_its_sign(rows: Callable[[str], list[str]], text: str, wanted: list[str]) -> None:
    """And a name alone keeps its own."""
    assert rows(text) == wanted
