"""Timed walks: distance, time and trials in any order."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import read, transcript_of_text


@pytest.mark.parametrize(
    ("say", "walks"),
    [
        ("Timed walk 25 feet in 5.2 seconds.", ["25 ft in 5.2 s"]),
        ("Timed walk 25 feet 5.2 seconds.", ["25 ft in 5.2 s"]),
        ("Timed 25-foot walk 5.2 and 5.6 seconds.", ["25 ft in 5.2 s", "25 ft in 5.6 s"]),
        ("25 foot walk 5.2 seconds, second trial 5.6 seconds.", ["25 ft in 5.2 s", "25 ft in 5.6 s"]),
        ("Ten metre walk 10.2 seconds, 10.6 seconds, 10.4 seconds.", [f"10 m in {s} s" for s in (10.2, 10.6, 10.4)]),
        ("T25FW 6.1 s.", ["25 ft in 6.1 s"]),
        ("Four metre gait speed 0.6 metres per second.", ["0.6"]),
    ],
)
def test_no_trial_is_lost_and_no_distance_is_a_time(grammar: Grammar, say: str, walks: list[str]) -> None:
    """Each trial is a finding of its own, over the distance last said."""
    found = read(transcript_of_text(say), grammar).findings
    assert [str(one.value) for one in found if one.item == "timed_walk"] == walks


@pytest.mark.parametrize(
    ("say", "details"),
    [
        ("Visual acuity with glasses 20/25 right, 20/40 left.", [("with glasses",), ("with glasses",)]),
        ("Visual acuity 20/25 right, 20/40 left, both corrected.", [("corrected",), ("corrected",)]),
        ("Visual acuity right 20/30 corrected, left 20/20 uncorrected.", [("corrected",), ("uncorrected",)]),
        ("Acuity without glasses right 20/100, with glasses right 20/20.", [("without glasses",), ("with glasses",)]),
        ("Pupils right 5 mm, left 4 mm in the dark; right 4 mm, left 3 mm in bright light.",
         [("in the dark",), ("in the dark",), ("in bright light",), ("in bright light",)]),
        ("Timed up and go more than 30 seconds.", [("more than",)]),
        ("Tandem gait: more than ten steps.", [("more than",)]),
    ],
)  # fmt: skip
def test_the_conditions_of_a_number_stand_beside_it(grammar: Grammar, say: str, details: list[tuple[str, ...]]) -> None:
    """What the number was taken under, and whether it is only a bound, is never dropped."""
    assert [one.detail for one in read(transcript_of_text(say), grammar).findings] == details


@pytest.mark.parametrize(
    ("say", "minutes"),
    [
        ("Blood pressure lying 142/84, standing at 15 seconds 110/60.", [None, 0.25]),
        ("Lying blood pressure 130/80. Ten seconds after standing 89/62.", [None, 0.1667]),
        ("Blood pressure standing after 90 seconds 118/70.", [1.5]),
        ("Blood pressure lying 138/82. Standing: immediately 120/78, one minute 124/80.", [None, 0, 1]),
    ],
)
def test_seconds_after_standing_are_a_time(grammar: Grammar, say: str, minutes: list[float | None]) -> None:
    """Seconds with "standing at", "after" say when; they are parts of minutes."""
    found = read(transcript_of_text(say), grammar).findings
    assert [one.minutes for one in found if one.item == "blood_pressure"] == minutes


@pytest.mark.parametrize(
    ("say", "lines"),
    [
        ("Visual acuity 20/40 minus one right, 20/30 plus two left.", ["20/40-1", "20/30+2"]),
        ("Visual acuity six six right, six nine left.", ["6/6", "6/9"]),
    ],
)
def test_lines_of_the_chart(grammar: Grammar, say: str, lines: list[str]) -> None:
    """Letters beyond or short of a line, and lines in metres without "over"."""
    assert [str(one.value) for one in read(transcript_of_text(say), grammar).findings] == lines
