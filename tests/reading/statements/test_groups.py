"""Names said together. No source: how findings are listed."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Light touch and pinprick reduced.", ["light_touch abnormal reduced", "pinprick abnormal reduced"]),
        ("Ptosis, gait normal.", ["ptosis present", "gait normal"]),
        ("No sensory level and saddle sensation intact.", ["sensory_level absent", "saddle_sensation normal"]),
        ("Absent at the knees and ankles, biceps 1+.", ["reflex_biceps measured 1+"]),
    ],
)
def test_names_said_together_share_what_is_told(rows: Rows, said: str, found: list[str]) -> None:
    """And a name with a value of its own stands by itself."""
    assert [row for row in rows(f"Reflexes 2+. {said}")[1:] if row in found] == found
