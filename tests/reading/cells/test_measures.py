"""Numbers of a cell → value: units, counts, distances, grades of a sign."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "written", "unit"),
    [
        ("Pulse 66.", "66", "/min"),
        ("Weight seventy kilos.", "70", "kg"),
        ("Weight 70.", "70", ""),
        ("Temperature thirty six point eight degrees celsius.", "36.8", "Cel"),
        ("Temperature 98.6 fahrenheit.", "98.6", "[degF]"),
        ("Temperature 36.8.", "36.8", ""),
        ("Oxygen saturation ninety eight percent on room air.", "98", "%"),
        ("Grip strength thirty two kilos on the right.", "32", "kg"),
        ("Vibration at the right great toe six seconds.", "6", "s"),
        ("Blood pressure 142/84.", "142/84", "mm[Hg]"),
        ("Right pupil four millimetres.", "4", "mm"),
        ("Height five feet ten inches.", "5'10", "[ft_i]"),
    ],
)
def test_a_number_has_the_unit_that_was_said(reading, phrase, written, unit):
    """Or the only one it can have; where several are possible and none was said, none is claimed."""
    (finding,) = reading(phrase).findings
    assert (str(finding.value), finding.unit) == (written, unit)


@pytest.mark.parametrize(
    ("phrase", "finding"),
    [
        ("Clonus three beats at the left ankle.", "clonus left ankle present 3 beats"),
        ("Two out of six systolic murmur at the apex.", "murmur apex present 2/6 systolic"),
        ("Straight leg raise positive at forty degrees on the right.", "straight_leg_raise right measured 40"),
        ("Vibration six out of eight at the ankles.", "vibration ankle measured 6/8"),
        ("Joint position five out of six at the left great toe.", "joint_position left great_toe measured 5/6"),
    ],
)
def test_a_count_belongs_to_its_sign(rows, phrase, finding):
    """Beats of clonus, the grade of a murmur, degrees, points."""
    assert rows(phrase) == [finding]


@pytest.mark.parametrize(
    ("phrase", "written"),
    [
        ("Timed walk, ten metres in twelve seconds.", "10 m in 12 s"),
        ("Timed walk, ten metres in eight and a half seconds.", "10 m in 8.5 s"),
        ("Ten metre walk nine seconds.", "10 m in 9 s"),
    ],
)
def test_a_walk_has_distance_and_time(rows, phrase, written):
    """The distance may stand in the name."""
    assert rows(phrase) == [f"timed_walk measured {written}"]


@pytest.mark.parametrize(
    "phrase", ["Strength 3 kilograms right.", "Deltoid 4 kg on the left.", "Biceps reflex 2 mm left.", "Power 4 cm."]
)
def test_a_grade_is_said_without_a_unit(reading, phrase):
    """A force in kilograms (a grip of 30 heard as 3) is no grade of five; common practice, no source."""
    assert reading(phrase).findings == ()


def test_a_letter_behind_a_grade_is_its_side(rows):
    """L is left, no litre."""
    assert rows("Deltoid 4 L, 5 R.") == ["strength_deltoid left measured 4", "strength_deltoid right measured 5"]


@pytest.mark.parametrize("phrase", ["Pulse four beats of clonus.", "Gait five.", "Blood pressure twelve over eight."])
def test_a_number_that_cannot_be_of_the_item_is_not_its_value(reading, phrase):
    """It is kept in view instead."""
    read = reading(phrase)
    assert not any(finding.item in ("heart_rate", "gait", "blood_pressure") for finding in read.findings)


@pytest.mark.parametrize(
    ("phrase", "details"),
    [
        ("Rest tremor absent.", ("rest",)),
        ("Postural tremor is absent in the hands.", ("postural",)),
        ("No rest tremor.", ("rest",)),
        ("Tremor absent.", ()),
    ],
)
def test_a_kind_that_is_denied_is_all_that_is_denied(reading, phrase, details):
    """ "Rest tremor absent" was every tremor denied; a tremor of another kind may be there."""
    (finding,) = reading(phrase).findings
    assert (finding.status, finding.detail) == ("absent", details)
