"""Pupils in one light and another. No source: how they are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    "said",
    [
        "Left pupil 2 in the light and 3 in the dark.",
        "Left pupil 2 mm in light, 3 mm in darkness.",
        "Pupils: left 2 in the light, 3 in the dark.",
    ],
)
def test_the_side_is_that_of_both(rows: Rows, said: str) -> None:
    """Said once."""
    assert [row.partition(" (")[0] for row in rows(said)] == [
        "pupil_size left measured 2",
        "pupil_size left measured 3",
    ]


def test_another_side_is_its_own(rows: Rows) -> None:
    """And takes the numbers behind it."""
    found = rows("Left pupil 2 in the light and 3 in the dark, right 3 in the light and 6 in the dark.")
    assert [row.split()[1] for row in found] == ["left", "left", "right", "right"]
