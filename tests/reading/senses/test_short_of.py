"""Words that fall short of what follows them. No source: how findings are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("The left deltoid is nearly full.", ["strength_deltoid left abnormal nearly full"]),
        ("Gait is anything but normal.", ["gait abnormal anything but normal"]),
        ("The left ankle jerk is almost absent.", ["reflex_achilles left abnormal almost absent"]),
        ("The left deltoid is not quite five.", []),
    ],
)
def test_what_is_only_nearly_so_is_not_so(rows: Rows, text: str, wanted: list[str]) -> None:
    assert rows(text) == wanted
