"""Orientation said by its spheres in any order, well or badly known."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import read, transcript_of_text

PERSON, PLACE, TIME = "orientation_person", "orientation_place", "orientation_time"


@pytest.mark.parametrize(
    ("text", "well", "badly"),
    [
        ("Orientated in person and place but not in time.", {PERSON, PLACE}, {TIME}),
        ("Oriented to person, place, not time.", {PERSON, PLACE}, {TIME}),
        ("Oriented to self, but not to place or the date.", {PERSON}, {PLACE, TIME}),
        ("Oriented except for the date.", {PERSON, PLACE}, {TIME}),
        ("Oriented to the year but not the date.", set(), {TIME}),
        ("Disoriented to time but not to place.", {PLACE}, {TIME}),
        ("Disoriented in time and place, oriented to person.", {PERSON}, {PLACE, TIME}),
        ("Not oriented to time but oriented to place.", {PLACE}, {TIME}),
        ("Not oriented to time but to place.", {PLACE}, {TIME}),
        ("Not oriented to place or time.", set(), {PLACE, TIME}),
        ("Not fully oriented to time.", set(), {TIME}),
        ("Partially oriented to time and place.", set(), {PLACE, TIME}),
        ("Oriented to person only.", {PERSON}, set()),
        ("Oriented.", {PERSON, PLACE, TIME}, set()),
    ],
)
def test_each_sphere_is_known_well_or_badly(grammar: Grammar, text: str, well: set[str], badly: set[str]) -> None:
    findings = read(transcript_of_text(f"Mental status. {text}"), grammar).findings
    assert {f.item for f in findings if f.status.value == "normal"} == well
    assert {f.item for f in findings if f.status.value == "abnormal"} == badly


def test_a_phrase_that_reaches_over_the_edge_stays(grammar: Grammar) -> None:
    """What follows the spheres is of something else."""
    findings = read(transcript_of_text("Oriented to person and place at the time of writing."), grammar).findings
    assert {f.item for f in findings} == {PERSON, PLACE}
