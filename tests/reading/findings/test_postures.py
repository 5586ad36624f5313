"""Position, minutes and manoeuvre of readings and symptoms."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("Blood pressure 130/80.", ["blood_pressure measured 130/80"]),
        ("Blood pressure lying 138/82.", ["blood_pressure supine measured 138/82"]),
        ("Standing: blood pressure 110/70.", ["blood_pressure standing measured 110/70"]),
        ("Lying. Blood pressure 138/82.", ["blood_pressure supine measured 138/82"]),
        ("Tilted, blood pressure 116/72.", ["blood_pressure tilted measured 116/72"]),
        ("At three minutes standing blood pressure 118/70.", ["blood_pressure standing 3 min measured 118/70"]),
        ("Standing for two minutes, blood pressure 118/70.", ["blood_pressure standing 2 min measured 118/70"]),
        ("Blood pressure standing at once 116/72.", ["blood_pressure standing 0 min measured 116/72"]),
        (
            "Standing, at one, 118/70, at three 104/70.",
            ["blood_pressure standing 1 min measured 118/70", "blood_pressure standing 3 min measured 104/70"],
        ),
        ("Blood pressure after stairs 150/90.", ["blood_pressure stairs measured 150/90"]),
        (
            "Blood pressure sitting right arm 136/82, left arm 134/80.",
            ["blood_pressure right sitting measured 136/82", "blood_pressure left sitting measured 134/80"],
        ),
        (
            "Blood pressure lying 138/82, standing 118/70.",
            ["blood_pressure supine measured 138/82", "blood_pressure standing measured 118/70"],
        ),
        (
            "Blood pressure lying 138/82, pulse 68.",
            ["blood_pressure supine measured 138/82", "heart_rate supine measured 68"],
        ),
        (
            "Blood pressure lying 138/82. Pulse 68.",
            ["blood_pressure supine measured 138/82", "heart_rate supine measured 68"],
        ),
        (
            "Blood pressure lying down 138/82. Standing at three minutes, blood pressure 118/70, pulse 80.",
            [
                "blood_pressure supine measured 138/82",
                "blood_pressure standing 3 min measured 118/70",
                "heart_rate standing 3 min measured 80",
            ],
        ),
        (
            "Immediately on standing, blood pressure 110/70, pulse 90. At three minutes 118/72.",
            [
                "blood_pressure standing 0 min measured 110/70",
                "heart_rate standing 0 min measured 90",
                "blood_pressure standing 3 min measured 118/72",
            ],
        ),
        (
            "Lying: blood pressure 138/82, pulse 68. Standing at three minutes: 118/70, pulse 80.",
            [
                "blood_pressure supine measured 138/82",
                "heart_rate supine measured 68",
                "blood_pressure standing 3 min measured 118/70",
                "heart_rate standing 3 min measured 80",
            ],
        ),
        (
            "Standing at one minute, blood pressure one oh eight over sixty six, pulse seventy eight, lightheaded.",
            [
                "blood_pressure standing 1 min measured 108/66",
                "heart_rate standing 1 min measured 78",
                "orthostatic_symptoms standing 1 min present lightheaded",
            ],
        ),
        ("Lightheaded on standing.", ["orthostatic_symptoms standing present lightheaded"]),
        (
            "Blood pressure lying 140/80. No dizziness on standing.",
            ["blood_pressure supine measured 140/80", "orthostatic_symptoms standing absent"],
        ),
    ],
)
def test_a_reading_has_the_posture_it_was_said_with(rows, phrase, findings):
    """In its own words, in those of its list, or of the pressure directly before the pulse."""
    assert rows(phrase) == findings


@pytest.mark.parametrize(
    ("phrase", "finding"),
    [
        ("Blood pressure lying 138/82. Gait normal. Pulse 68.", "heart_rate measured 68"),
        ("Blood pressure lying 138/82. Blood pressure 130/80.", "blood_pressure measured 130/80"),
        ("Blood pressure lying 138/82. Pulse 68. Pulse 70.", "heart_rate measured 70"),
    ],
)
def test_a_posture_ends(rows, phrase, finding):
    """With a finding of something else, with another pressure, with the pulse after it."""
    assert rows(phrase)[-1] == finding


def test_a_posture_says_nothing_of_other_items(reading):
    """A temperature in the same breath has no position."""
    findings = reading("Blood pressure lying 138/82, temperature 36.8.").findings
    assert [(finding.item, finding.position) for finding in findings] == [
        ("blood_pressure", "supine"),
        ("temperature", None),
    ]


def test_the_words_of_the_posture_are_evidence(reading):
    """ "Standing at three minutes" stands with the reading it belongs to."""
    (finding,) = reading("Standing at three minutes, blood pressure 118/70.").findings
    assert "Standing" in finding.quote


def test_minutes_before_the_position_are_those_of_standing(reading):
    """ "After two minutes standing", though the words also belong to a longer phrase of other items."""
    found = reading("After two minutes standing, ninety two over sixty four, pulse sixty, and she felt woozy.").findings
    assert [(one.item, one.position, one.minutes) for one in found] == [
        ("blood_pressure", "standing", 2.0),
        ("heart_rate", "standing", 2.0),
        ("orthostatic_symptoms", "standing", 2.0),
    ]
