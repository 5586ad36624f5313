"""Positions as titles of readings. No source: how series are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


SERIES = [
    "blood_pressure supine measured 142/84",
    "heart_rate supine measured 70",
    "blood_pressure standing 1 min measured 130/80",
    "heart_rate standing 1 min measured 84",
    "orthostatic_symptoms standing 1 min absent",
    "blood_pressure standing 3 min measured 120/78",
    "orthostatic_symptoms standing 3 min present lightheaded",
]


@pytest.mark.parametrize(
    "said",
    [
        "Lying. 142/84. Pulse 70. Standing one minute. 130/80. Pulse 84. No symptoms. Three minutes. 120/78. {}",
        "Lying, 142/84, pulse 70, standing one minute. 130/80, pulse 84, no symptoms, three minutes. 120/78, {}",
        "Lying 142/84. Pulse 70 standing one minute. 130/80. Pulse 84. No symptoms three minutes. 120/78. {}",
        "Lying. 142/84, pulse 70. After one minute standing. 130/80. Pulse 84, no symptoms. Three minutes, 120/78, {}",
    ],
)
def test_wherever_stops_and_commas_are_written(rows: Rows, said: str) -> None:
    """Every reading up to the next position is of that position."""
    assert rows(said.format("lightheaded.")) == SERIES


def test_what_nothing_parts_from_the_next_position_may_be_of_it(rows: Rows) -> None:
    """ "No symptoms standing": but the pressure stands behind its position."""
    assert rows("Lying. 142/84. Pulse 70. No symptoms standing one minute. 130/80.")[2:] == [
        "orthostatic_symptoms absent",
        "blood_pressure standing 1 min measured 130/80",
    ]


def test_positions_behind_their_pressures_are_no_titles(rows: Rows) -> None:
    """Nothing is read behind the last of them."""
    assert rows("142/84, lying. 130/80, standing.") == [
        "blood_pressure supine measured 142/84",
        "blood_pressure standing measured 130/80",
    ]


def test_a_second_rate_is_of_no_known_position(rows: Rows) -> None:
    """It may have been counted at any time."""
    assert rows("Blood pressure lying 138/82. Pulse 68. Pulse 70.")[2] == "heart_rate measured 70"
