"""Senses named without the word that makes them one."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("say", "wanted"),
    [
        ("Sensory. Pain and temperature intact.", ["pinprick normal", "temperature_sense normal"]),
        (
            "Sensory. Loss of pain and temperature below T4 on the left.",
            ["pinprick left t4 abnormal loss", "temperature_sense left t4 abnormal loss"],
        ),
        ("Temperature 37.2 degrees.", ["temperature measured 37.2"]),
    ],
)
def test_pain_and_temperature_are_two_senses(rows: Rows, say: str, wanted: list[str]) -> None:
    """Under their heading only."""
    assert rows(say) == wanted
