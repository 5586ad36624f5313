"""Orientation with a word for each sphere, in front of it or behind it, and counted."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import read, transcript_of_text

PERSON, PLACE, TIME = "orientation_person", "orientation_place", "orientation_time"


def spheres(grammar: Grammar, text: str) -> tuple[set[str], set[str]]:
    """What is known and what is not, of the three."""
    found = [f for f in read(transcript_of_text(f"Mental status. {text}"), grammar).findings if f.item[:6] == "orient"]
    return tuple({f.item for f in found if f.status.value == how} for how in ("normal", "abnormal"))  # type: ignore[return-value]


@pytest.mark.parametrize(
    ("text", "well", "badly"),
    [
        ("Orientation: person and place intact, time: impaired.", {PERSON, PLACE}, {TIME}),
        ("Orientation intact to person and place but not time.", {PERSON, PLACE}, {TIME}),
        ("Orientation: intact to person and place, impaired to time.", {PERSON, PLACE}, {TIME}),
        ("Orientation to person and place is intact but to time is impaired.", {PERSON, PLACE}, {TIME}),
        ("Orientation: person yes, place yes, date no.", {PERSON, PLACE}, {TIME}),
        ("Orientation to time was impaired, place and person were normal.", {PERSON, PLACE}, {TIME}),
        ("Orientation in time mildly impaired, in place and to person normal.", {PERSON, PLACE}, {TIME}),
        ("Orientation normal except for the date.", {PERSON, PLACE}, {TIME}),
        ("Orientation: time off by three days, place correct.", {PLACE}, {TIME}),
        ("Orientation: self only.", {PERSON}, set()),
        ("Orientation intact.", {PERSON, PLACE, TIME}, set()),
    ],
)
def test_each_sphere_has_its_own_word(grammar: Grammar, text: str, well: set[str], badly: set[str]) -> None:
    """In front of the spheres, or behind each."""
    assert spheres(grammar, text) == (well, badly)


@pytest.mark.parametrize(
    ("text", "well", "badly"),
    [
        ("A&O x2 (not to date).", {PERSON, PLACE}, {TIME}),
        ("AO x2 to person and place.", {PERSON, PLACE}, set()),
        ("AO x1, self only.", {PERSON}, set()),
        ("A&O to self and place, not date.", {PERSON, PLACE}, {TIME}),
        ("A&O x3.", {PERSON, PLACE, TIME}, set()),
        ("A&O x2.", set(), set()),
    ],
)
def test_counted_spheres_are_those_that_are_named(grammar: Grammar, text: str, well: set[str], badly: set[str]) -> None:
    """Two of three with the third named are the others; two alone are nobody knows which."""
    assert spheres(grammar, text) == (well, badly)
    assert "alert" in {str(f.value) for f in read(transcript_of_text(f"Mental status. {text}"), grammar).findings}


def test_points_are_no_word_for_how(grammar: Grammar) -> None:
    """What is scored is not read as well known."""
    assert spheres(grammar, "Orientation: time 3/5, place 5/5.") == (set(), set())
