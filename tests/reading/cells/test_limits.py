"""A word behind what was found that says that it was found there alone."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dictate.model import Status
from dictate.reading.read import Reading

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Naming intact for high frequency words only.", "for high frequency words only"),
        ("Naming intact for common objects only.", "for common objects only"),
        ("Follows one step commands only.", "one step commands only"),
        ("Naming intact for high frequency words.", "for high frequency words"),
    ],
)
def test_the_limit_stays_with_what_it_limits(reading: Callable[[str], Reading], text: str, wanted: str) -> None:
    """Without it more would be normal than was said."""
    (finding,) = reading(text).findings
    assert (finding.status, finding.detail) == (Status.NORMAL, (wanted,))


def test_a_side_or_a_number_needs_none(rows: Rows) -> None:
    """The side, or the number, says it."""
    assert rows("Hearing reduced on the left only.") == ["hearing left abnormal reduced"]
    assert rows("Recall 1/3 only.") == ["recall measured 1/3"]
