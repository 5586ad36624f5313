"""Sensory and motor level, key muscles.

Source: International Standards for Neurological Classification of Spinal Cord Injury (Rupp R et al. 2021): rules and
key muscles as documented for an open implementation (looked up, secondary); the worked cases beyond the first are the
rule's arithmetic. Counts: Burns SP, Tansey KE. Spinal Cord 2020 (looked up: abstract).
"""

from __future__ import annotations

import pytest

from dictate.reckoning.levels import INTACT, KEY_MUSCLES, SEGMENTS, motor_level, sensory_level


def test_counts():
    """28 dermatomes a side with S4-5 as one, ten key muscles. Source: Burns and Tansey 2020 (looked up)."""
    assert len(SEGMENTS) - 1 == 28
    assert len(KEY_MUSCLES) == 10


@pytest.mark.parametrize(
    ("grades", "sensory", "level"),
    [
        ({"C5": "5", "C6": "5", "C7": "3", "C8": "0"}, "", "C7"),
        ({"C5": "5", "C6": "4", "C7": "3"}, "", "C6"),
        ({"C5": "2"}, "C4", "C4"),
        ({"C5": "2"}, "", None),
        ({"C5": "2"}, "C3", "C3"),
        ({"C5": "5", "C6": "2"}, "C8", "C5"),
        ({**dict.fromkeys(("C5", "C6", "C7", "C8", "T1"), "5"), "L2": "3"}, "", None),
        ({"C5": "5", "C7": "3"}, "C8", None),
        (dict.fromkeys(("C5", "C6", "C7", "C8", "T1"), "5"), "T10", "T10"),
        ({**dict.fromkeys(("C5", "C6", "C7", "C8", "T1"), "5"), "L2": "3"}, "L3", "L2"),
        ({**dict.fromkeys(("C5", "C6", "C7", "C8", "T1"), "5"), "L2": "1"}, "L3", "L1"),
        (dict.fromkeys(KEY_MUSCLES, "5"), INTACT, INTACT),
    ],
)
def test_the_motor_level(grades, sensory, level):
    """Lowest key muscle of 3 or more with every one above it 5. Source: ISNCSCI (looked up, secondary), arithmetic."""
    assert motor_level(grades, sensory=sensory) == level


def scores(last_normal: str) -> dict[str, int]:
    """2 down to that segment, 1 below."""
    end = SEGMENTS.index(last_normal)
    return {segment: 2 if at <= end else 1 for at, segment in enumerate(SEGMENTS)}


@pytest.mark.parametrize(
    ("touch", "pin", "level"), [("C5", "C5", "C5"), ("T6", "T4", "T4"), ("T4", "T6", "T4"), ("S5", "S5", INTACT)]
)
def test_the_sensory_level(touch, pin, level):
    """The higher of touch and pin; all normal is INT. Source: ISNCSCI (looked up, secondary), arithmetic."""
    assert sensory_level(scores(touch), scores(pin)) == level


def test_no_sensory_level_from_missing_scores():
    """A segment above the level that was not scored leaves it open. Source: own rule."""
    touch = scores("T6")
    del touch["C7"]
    assert sensory_level(touch, scores("T6")) is None
    assert sensory_level({"C2": 1}, {"C2": 2}) is None
