"""What is told beside a pressure or a rhythm. No source: how vital signs are written and dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        (
            "BP 124/70 sit, 120/72 stand (2 min).",
            ["blood_pressure sitting measured 124/70", "blood_pressure standing 2 min measured 120/72"],
        ),
        (
            "BP lie 130/80 stand 110/70.",
            ["blood_pressure supine measured 130/80", "blood_pressure standing measured 110/70"],
        ),
        (
            "Straight after standing 120/70, pulse 82.",
            ["blood_pressure standing 0 min measured 120/70", "heart_rate standing 0 min measured 82"],
        ),
        ("Right after standing up 110/70.", ["blood_pressure standing 0 min measured 110/70"]),  # no right arm
        ("Pulse 78 blood pressure lying 118/76.", ["heart_rate measured 78", "blood_pressure supine measured 118/76"]),
        (
            "BP 142/78 pulse 88 sats 97% vital capacity 3.1 litres sitting up and 2.4 litres lying flat.",
            [
                "blood_pressure measured 142/78",
                "heart_rate measured 88",
                "oxygen_saturation measured 97",
                "vital_capacity sitting measured 3.1",
                "vital_capacity supine measured 2.4",
            ],
        ),
        (
            "BP 132/84, seated, in the right arm, and the pulse 74.",
            ["blood_pressure right sitting measured 132/84", "heart_rate sitting measured 74"],
        ),
        (
            "BP 142/80 sitting, pulse 72 standing after one minute 136/82.",
            [
                "blood_pressure sitting measured 142/80",
                "heart_rate sitting measured 72",
                "blood_pressure standing 1 min measured 136/82",
            ],
        ),
        ("BP 142/84 pulse 72 lying.", ["blood_pressure supine measured 142/84", "heart_rate supine measured 72"]),
    ],
)
def test_a_position_is_of_the_readings_it_is_told_with(rows: Rows, said: str, found: list[str]) -> None:
    """Of none that came before another thing was named."""
    assert rows(f"General. {said}") == found


@pytest.mark.parametrize("said", ["Seen in bed four. BP 120/80.", "Able to sit and stand. BP 120/80."])
def test_what_is_no_position_gives_none(rows: Rows, said: str) -> None:
    """A number of a bed, a task."""
    assert rows(f"General. {said}") == ["blood_pressure measured 120/80"]


@pytest.mark.parametrize("said", ["Sinus rhythm at 72.", "Rhythm regular at 72.", "Pulse regular at 72."])
def test_a_number_behind_at_is_the_rate(rows: Rows, said: str) -> None:
    """And no word of the rhythm."""
    assert rows(f"General. {said}") == ["heart_rhythm normal regular", "heart_rate measured 72"]
