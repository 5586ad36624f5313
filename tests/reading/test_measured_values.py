"""Measured values said in the ways in which they are said: none goes to another side, position or item."""

from __future__ import annotations

import pytest

SIDES = [
    (
        "Deltoid four on the right and left five.",
        ["strength_deltoid right measured 4", "strength_deltoid left measured 5"],
    ),
    (
        "Knee jerks two plus right and left absent.",
        ["reflex_patellar right measured 2+", "reflex_patellar left measured 0"],
    ),
    ("Pupils 3 mm right and left 4 mm.", ["pupil_size right measured 3", "pupil_size left measured 4"]),
    ("Pinprick normal right and left reduced.", ["pinprick right normal", "pinprick left abnormal reduced"]),
    ("Deltoid four right and left.", ["strength_deltoid both measured 4"]),
    ("Power 5/5 right and left, normal tone.", ["strength_all both measured 5", "tone normal"]),
]
SERIES = [
    (
        "Blood pressure in the right arm lying 140/80, in the left arm standing at one minute 118/76.",
        ["blood_pressure right supine measured 140/80", "blood_pressure left standing 1 min measured 118/76"],
    ),
    (
        "Right arm lying 140/80. Right arm standing one minute 120/70.",
        ["blood_pressure right supine measured 140/80", "blood_pressure right standing 1 min measured 120/70"],
    ),
    (
        "Blood pressure: supine 120/70 HR 66, standing one minute 110/70 HR 80.",
        [
            "blood_pressure supine measured 120/70",
            "heart_rate supine measured 66",
            "blood_pressure standing 1 min measured 110/70",
            "heart_rate standing 1 min measured 80",
        ],
    ),
    (
        "Supine 140/82, stood 122/80 immediately.",
        ["blood_pressure supine measured 140/82", "blood_pressure standing 0 min measured 122/80"],
    ),
    (
        "Standing 110/70, pulse 80 at one minute.",
        ["blood_pressure standing 1 min measured 110/70", "heart_rate standing 1 min measured 80"],
    ),
    (
        "Lying 140/80 after ten minutes, standing one minute 120/70.",
        ["blood_pressure supine measured 140/80", "blood_pressure standing 1 min measured 120/70"],
    ),
]
SERIES += [
    (
        "Blood pressure 138/84 supine with a pulse of 72, 118/70 after standing one minute with a pulse of 80 and "
        "110/66 after three minutes with a pulse of 84.",
        [
            "blood_pressure supine measured 138/84",
            "heart_rate supine measured 72",
            "blood_pressure standing 1 min measured 118/70",
            "heart_rate standing 1 min measured 80",
            "blood_pressure standing 3 min measured 110/66",
            "heart_rate standing 3 min measured 84",
        ],
    ),
    (
        "Supine 150/90; immediate standing 128/80.",
        ["blood_pressure supine measured 150/90", "blood_pressure standing 0 min measured 128/80"],
    ),
    (
        "BP lying 120 palpable, standing 90 palpable at one minute.",
        ["blood_pressure supine measured 120/palpable", "blood_pressure standing 1 min measured 90/palpable"],
    ),
    (
        "Blood pressure lying and standing 120/80.",
        ["blood_pressure supine measured 120/80", "blood_pressure standing measured 120/80"],
    ),
    (
        "Lying and standing blood pressure 130/80 and 126/80.",
        ["blood_pressure supine measured 130/80", "blood_pressure standing measured 126/80"],
    ),
    (
        "No symptoms lying or standing.",
        ["orthostatic_symptoms supine absent", "orthostatic_symptoms standing absent"],
    ),
    ("Weber right, Rinne positive both.", ["weber abnormal right", "rinne both normal positive"]),
]
OPEN = [
    ("Lying 140/82, pulse 70; at one minute 122/80, at three minutes 118/76.", [(), ("at 1 min",), ("at 3 min",)]),
    ("Lying 140/82. After one minute 122/80. After three minutes 118/76.", [(), ("after 1 min",), ("after 3 min",)]),
    (
        "Blood pressure lying 140/82, 122/80 straight away, 118/76 at three minutes.",
        [(), ("straight away",), ("at 3 min",)],
    ),
]


COUNTS = [
    ("Takes three steps to recover on the pull test.", ["pull_test measured 3"]),
    ("She takes eleven tandem steps.", ["tandem_gait measured 11"]),
    (
        "Vibration five eighths at the right toe, seven eighths at the right finger.",
        ["vibration right toe measured 5/8", "vibration right finger measured 7/8"],
    ),
    (
        "Visual acuity counting fingers right, hand movements left.",
        ["visual_acuity right measured counting fingers", "visual_acuity left measured hand movements"],
    ),
]


COUNTS += [
    ("Monofilament felt at three of ten sites on the right.", ["monofilament right measured 3/10"]),
    ("Gait speed 0.6 metres per second over four metres.", ["timed_walk measured 0.6"]),
    ("Walks 20 metres in 18 seconds with a walker.", ["timed_walk measured 20 m in 18 s"]),
    (
        "Two point discrimination 4 mm right and 6 mm left index finger.",
        ["two_point right index_finger measured 4", "two_point left index_finger measured 6"],
    ),
    (
        "Pinprick normal on the right and reduced on the left foot.",
        ["pinprick right normal", "pinprick left foot abnormal reduced"],
    ),
    ("Anisocoria about one millimetre, physiological.", ["anisocoria present 1 mm physiological"]),
]


@pytest.mark.parametrize(("text", "wanted"), [*SIDES, *SERIES, *COUNTS])
def test_values_keep_their_side_position_and_minute(rows, text, wanted):
    """Each as said."""
    assert rows(text) == wanted


@pytest.mark.parametrize(("text", "details"), OPEN)
def test_minutes_behind_a_lying_reading_leave_the_position_open(reading, text, details):
    """Nobody said that the patient stood up: neither lying nor standing is written, and the words are kept."""
    pressures = [one for one in reading(text).findings if one.item == "blood_pressure"]
    assert [(one.position, one.minutes) for one in pressures] == [("supine", None), (None, None), (None, None)]
    assert [one.detail for one in pressures] == details


@pytest.mark.parametrize("text", ["No verbal response, decerebrate.", "No verbal response, abnormal flexion to pain."])
def test_a_posture_after_no_verbal_response_is_not_denied(rows, text):
    """The "no" is of the words."""
    assert rows(text)[0] == "speech abnormal no verbal response"
    assert rows(text)[1].startswith("motor_response abnormal ")


def test_a_scale_named_before_its_parts_is_their_title(remarks):
    """Not left over."""
    assert remarks("Glasgow coma scale E4 V5 M6.") == []


def test_a_pressure_of_the_eye_is_no_blood_pressure(reading, remarks):
    """A retinal pressure said as a fraction is asked about, not taken for the arm's."""
    text = "Retinal artery pressure 40/20 right, 60/30 left."
    assert reading(text).findings == ()
    assert remarks(text) == [f"not-placed: {text}"]


@pytest.mark.parametrize(
    ("text", "status", "value", "detail"),
    [
        ("Stance steady for ten seconds.", "measured", "10", "steady"),
        ("Convergence normal, near point 6 cm.", "normal", "", "6 cm"),
        ("Gait speed 0.6 metres per second over four metres.", "measured", "0.6", "over four metres"),
    ],
)
def test_a_word_and_a_number_are_both_kept(reading, text, status, value, detail):
    """One of them is the value, the other stands beside it."""
    (finding,) = reading(text).findings
    assert (finding.status, str(finding.value or ""), finding.detail) == (status, value, (detail,))
