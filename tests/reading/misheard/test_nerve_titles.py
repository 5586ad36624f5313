"""Cranial nerves counted in words. From memory, no source."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Cranial nerves. One, smell intact. Two, acuity 6/6 both. Five, sensation intact. Twelve, tongue midline.",
            ["smell normal", "visual_acuity both measured 6/6", "facial_sensation normal", "tongue midline normal"],
        ),
        ("Cranial nerve five, sensation intact.", ["facial_sensation normal"]),
        (
            "CN 5 sensation reduced on the left. CN 7 normal.",
            ["facial_sensation left abnormal reduced", "facial_strength normal"],
        ),
        (
            "CN: II: 6/6 both, III/IV/VI: full, V: normal sensation, VII: no droop.",
            [
                "visual_acuity both measured 6/6",
                "eye_movements normal",
                "facial_sensation normal",
                "facial_strength normal",
            ],
        ),
    ],
)
def test_numbers_of_nerves_are_titles(rows, phrase, findings):
    """What follows is of that nerve."""
    assert rows(phrase) == findings


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Cranial nerves intact. Two, acuity was not tested.",
            ["cranial_nerves_all normal", "visual_acuity not_examined"],
        ),
        (
            "Cranial nerves normal. Power five, deltoid four on the left.",
            ["cranial_nerves_all normal", "strength_all measured 5", "strength_deltoid left measured 4"],
        ),
    ],
)
def test_other_numbers_stay_what_they_are(rows, phrase, findings):
    """Fewer than three that count upwards, or not at the beginning of a sentence."""
    assert rows(phrase) == findings
