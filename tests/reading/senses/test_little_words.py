"""Little words that turn what stands beside them. No source: how findings are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Left radial pulse hardly palpable.", "peripheral_pulses left radial abnormal hardly palpable"),
        ("Right carotid scarcely felt.", "carotid_pulse right abnormal scarcely felt"),
        ("Left radial pulse palpable.", "peripheral_pulses left radial normal"),
    ],
)
def test_what_is_hardly_so_is_not_normal(rows: Rows, said: str, found: str) -> None:
    """And what is so is."""
    assert rows(said) == [found]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Facial strength normal, tongue to the left.", "tongue left abnormal deviates"),
        ("Facial strength normal, uvula to the right.", "palate right abnormal deviates"),
        ("Facial strength normal, tongue moves well to the left and right.", "tongue both normal"),
    ],
)
def test_a_tongue_leans_to_one_side(rows: Rows, said: str, found: str) -> None:
    """What moves to both deviates to neither."""
    assert rows(said)[-1] == found
