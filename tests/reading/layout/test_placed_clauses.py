"""Clauses that each begin with their place. No source: how findings are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("On the left ptosis, on the right proptosis.", ["ptosis left present", "proptosis right present"]),
        (
            "In the left arm tremor and in the right leg chorea.",
            ["tremor left arm present", "chorea right leg present"],
        ),
        ("On the left there is ptosis, but on the right miosis.", None),
    ],
)
def test_each_place_is_of_its_own_finding(rows: Rows, said: str, found: list[str] | None) -> None:
    """However the clauses are joined."""
    assert rows(said) == (found or ["ptosis left present", "pupil_size right abnormal constricted"])


@pytest.mark.parametrize(
    ("said", "found"),
    [
        (
            "On the left pinprick reduced, on the right normal.",
            ["pinprick left abnormal reduced", "pinprick right normal"],
        ),
        ("On the left power 4, on the right 5.", ["strength_all left measured 4", "strength_all right measured 5"]),
        ("Ptosis on the left, on the right proptosis.", ["ptosis left present", "proptosis right present"]),
    ],
)
def test_what_names_nothing_goes_on(rows: Rows, said: str, found: list[str]) -> None:
    """A clause of a place and a word for how it was is of the name before it."""
    assert rows(said) == found
