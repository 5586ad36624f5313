"""How far something reaches over the body."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("say", "wanted"),
    [
        ("Light touch reduced from the toes to the knees bilaterally.", ["light_touch both knee abnormal reduced"]),
        ("Pinprick reduced in the legs to the knees on both sides.", ["pinprick both knee abnormal reduced"]),
        (
            "Pinprick reduced in the left leg and the left hand.",
            ["pinprick left leg abnormal reduced", "pinprick left hand abnormal reduced"],
        ),
    ],
)
def test_where_it_ends_is_the_place(rows: Rows, say: str, wanted: list[str]) -> None:
    """The place that is reached stands in the finding."""
    assert rows(say) == wanted
