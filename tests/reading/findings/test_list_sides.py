"""reading.list_sides: a side said once, at the end of a list."""

from __future__ import annotations

from collections.abc import Callable

import pytest


@pytest.mark.parametrize(
    ("text", "sides"),
    [
        ("deltoid 4 biceps 4 plus triceps 5 on the right", ["right", "right", "right"]),
        ("Deltoid 5, biceps 5, triceps 4, on the right.", ["right", "right", "right"]),
        ("Deltoid 4, biceps 5, triceps 4 on the right.", ["right", "right", "right"]),
        ("Deltoid 5, biceps 5, triceps 4 on the right.", ["", "", "right"]),
        ("Knee jerks 4+, ankle jerks 0 on the right.", ["", "right"]),
        ("BJ 2+ TJ 2+ KJ 3+ bilat", ["both", "both", "both"]),
    ],
)
def test_it_is_of_what_can_have_no_other(rows: Callable[[str], list[str]], text: str, sides: list[str]) -> None:
    """What is as it should be may be so on both sides, and is asked about."""
    told = [row.split() for row in rows(text)]
    assert [next((word for word in words if word in ("left", "right", "both")), "") for words in told] == sides
