"""Words without a name, and what they go on about."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize("text", ["MMSE 28/30. QX 3.", "EDSS 3.5. F&Z 4.", "MoCA 24/30. Nine."])
def test_a_number_after_a_scale_is_not_the_scale_again(rows: Rows, text: str) -> None:
    """A scale without a name here would lend its points to the one before."""
    assert len(rows(text)) == 1


def test_a_side_goes_on_about_the_last_item(rows: Rows) -> None:
    """The second sentence has no name of its own."""
    assert rows("Finger nose normal on the right. Dysmetria on the left.")[1:] == [
        "finger_nose left abnormal dysmetria"
    ]
