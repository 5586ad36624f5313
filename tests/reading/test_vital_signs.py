"""What is told beside a pressure or a rhythm. No source: how vital signs are written and dictated, from memory."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.pipeline import Typed, examine


def rows(grammar: Grammar, text: str) -> list[str]:
    exam = examine([Typed("x", f"General. {text}")], engine=None, grammar=grammar)
    found = []
    for one in exam.findings:
        minutes = "" if one.minutes is None else f"{one.minutes:g}"
        parts = (one.item, one.side, one.position, minutes, str(one.value or one.status.value))
        found.append(" ".join(filter(None, parts)))
    return found


@pytest.mark.parametrize(
    ("said", "found"),
    [
        (
            "BP 124/70 sit, 120/72 stand (2 min).",
            ["blood_pressure sitting 124/70", "blood_pressure standing 2 120/72"],
        ),
        ("BP lie 130/80 stand 110/70.", ["blood_pressure supine 130/80", "blood_pressure standing 110/70"]),
        ("Straight after standing 120/70, pulse 82.", ["blood_pressure standing 0 120/70", "heart_rate standing 0 82"]),
        ("Right after standing up 110/70.", ["blood_pressure standing 0 110/70"]),  # no right arm
        ("Pulse 78 blood pressure lying 118/76.", ["heart_rate 78", "blood_pressure supine 118/76"]),
        (
            "BP 142/78 pulse 88 sats 97% vital capacity 3.1 litres sitting up and 2.4 litres lying flat.",
            [
                "blood_pressure 142/78",
                "heart_rate 88",
                "oxygen_saturation 97",
                "vital_capacity sitting 3.1",
                "vital_capacity supine 2.4",
            ],
        ),
        (
            "BP 132/84, seated, in the right arm, and the pulse 74.",
            ["blood_pressure right sitting 132/84", "heart_rate sitting 74"],
        ),
        (
            "BP 142/80 sitting, pulse 72 standing after one minute 136/82.",
            ["blood_pressure sitting 142/80", "heart_rate sitting 72", "blood_pressure standing 1 136/82"],
        ),
        ("BP 142/84 pulse 72 lying.", ["blood_pressure supine 142/84", "heart_rate supine 72"]),
    ],
)
def test_a_position_is_of_the_readings_it_is_told_with(grammar: Grammar, said: str, found: list[str]) -> None:
    """Of none that came before another thing was named."""
    assert rows(grammar, said) == found


@pytest.mark.parametrize("said", ["Seen in bed four. BP 120/80.", "Able to sit and stand. BP 120/80."])
def test_what_is_no_position_gives_none(grammar: Grammar, said: str) -> None:
    """A number of a bed, a task."""
    assert rows(grammar, said) == ["blood_pressure 120/80"]


@pytest.mark.parametrize("said", ["Sinus rhythm at 72.", "Rhythm regular at 72.", "Pulse regular at 72."])
def test_a_number_behind_at_is_the_rate(grammar: Grammar, said: str) -> None:
    """And no word of the rhythm."""
    assert rows(grammar, said) == ["heart_rhythm regular", "heart_rate 72"]
