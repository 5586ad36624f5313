"""How words sound."""

from __future__ import annotations

import pytest

from dictate.grammar.sounds import distance, sounds


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("ptosis", "tosis"),
        ("rhomberg", "romberg"),
        ("fundi", "fundy"),
        ("gait", "gate"),
        ("knee", "nee"),
        ("dysarthria", "disarthria"),
    ],
)
def test_spellings_of_one_sound_are_near(one: str, other: str) -> None:
    """Silent letters and doubled ones count for little."""
    assert distance(sounds(one), sounds(other)) <= 0.15


@pytest.mark.parametrize(("one", "other"), [("ptosis", "diplopia"), ("clonus", "gait"), ("rigidity", "weakness")])
def test_other_terms_are_far(one: str, other: str) -> None:
    """Terms that nobody mixes up."""
    assert distance(sounds(one), sounds(other)) > 0.5


def test_distance_is_the_same_both_ways_and_ends_at_one() -> None:
    """And no distance from itself."""
    assert distance("tosis", "tosus") == distance("tosus", "tosis") > 0
    assert distance("tosis", "tosis") == 0
    assert distance("", "") == 0
    assert distance("ab", "abcdefghi", most=0.3) == 1.0
