"""What was not tested, and who was not watched."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("say", "wanted"),
    [
        (
            "Sensory. Neither light touch nor pinprick could be tested.",
            ["light_touch not_assessable", "pinprick not_assessable"],
        ),
        (
            "Sensory. Neither light touch nor pinprick was tested.",
            ["light_touch not_examined", "pinprick not_examined"],
        ),
        ("Sensory. Neither light touch nor pinprick was impaired.", ["light_touch normal", "pinprick normal"]),
        ("Gait. I did not see her walk.", ["gait not_examined"]),
        ("Gait. I did not see any freezing.", ["freezing absent"]),
        ("Sensory. No Romberg today.", ["romberg not_examined"]),
        ("I did not formally test coordination.", ["coordination_all not_examined"]),
    ],
)
def test_what_is_denied_is_the_examining(rows: Rows, say: str, wanted: list[str]) -> None:
    """A test that was not done is never a finding that was not there."""
    assert rows(say) == wanted
