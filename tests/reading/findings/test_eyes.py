"""How much pupils differ against how wide they are; near against light."""

from __future__ import annotations

import pytest

DIFFERENCES = [
    ("The right pupil is one millimetre larger than the left.", ["anisocoria right present 1"]),
    ("Right pupil 1 mm larger than left.", ["anisocoria right present 1"]),
    ("The right pupil is larger than the left by 1 mm.", ["anisocoria right present 1"]),
    ("Anisocoria with the right pupil 1 mm larger.", ["anisocoria right present 1"]),
    ("Anisocoria of 1 mm, right larger.", ["anisocoria right present 1"]),
    (
        "Right pupil larger, 5 mm, left 3 mm.",
        ["anisocoria right present larger", "pupil_size right measured 5", "pupil_size left measured 3"],
    ),
    (
        "Anisocoria: right 5 mm, left 3 mm.",
        ["anisocoria present", "pupil_size right measured 5", "pupil_size left measured 3"],
    ),
    ("Right pupil 5 mm, left pupil 4 mm.", ["pupil_size right measured 5", "pupil_size left measured 4"]),
]


@pytest.mark.parametrize(("text", "wanted"), DIFFERENCES)
def test_a_difference_is_no_size_and_a_size_no_difference(rows, text, wanted):
    """Only words tell 1 mm of difference from a pupil of 1 mm."""
    assert rows(text) == wanted


@pytest.mark.parametrize("text", ["The left pupil is two millimetres smaller.", "The left pupil is smaller by 2 mm."])
def test_a_smaller_pupil_is_said_to_be_smaller(reading, text):
    """The side of a difference is the larger pupil, unless it says otherwise."""
    (finding,) = reading(text).findings
    assert (finding.item, finding.side, str(finding.value), finding.detail) == ("anisocoria", "left", "2", ("smaller",))


def test_a_difference_keeps_the_light_it_was_seen_in(reading):
    """Two lights, two differences, one side."""
    text = "Anisocoria of one millimetre in the light and two millimetres in the dark, larger on the right."
    light, dark = reading(text).findings
    assert [(one.side, str(one.value), one.unit, *one.detail) for one in (light, dark)] == [
        ("right", "1", "mm", "in the light"),
        ("right", "2", "mm", "in the dark"),
    ]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Pupils react to light and near.", [("normal", "", ("to light and near",))]),
        (
            "Pupils react briskly to light, near reaction absent.",
            [("normal", "brisk", ()), ("abnormal", "absent", ("to near",))],
        ),
        ("Near response intact.", [("normal", "", ("to near",))]),
        ("Pupils do not react to light but react to near.", [("abnormal", "light near dissociation", ())]),
        ("Pupils reactive to light but not to near.", [("abnormal", "to light but not to near", ())]),
    ],
)
def test_near_is_told_from_light(reading, text, wanted):
    """Two reactions; neither is written as the other."""
    assert [(one.status, str(one.value or ""), one.detail) for one in reading(text).findings] == wanted


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Acuity 0.8 right, 0.4 left.", ["0.8", "0.4"]),
        ("Visual acuity 1.0 right, 0.5 left.", ["1.0", "0.5"]),
        ("LogMAR acuity 0.1 right, 0.4 left.", ["logMAR 0.1", "logMAR 0.4"]),
        ("Visual acuity 0.1 right, 0.4 left, logMAR.", ["logMAR 0.1", "logMAR 0.4"]),
        ("Visual acuity right logMAR minus 0.1, left logMAR 0.2.", ["logMAR -0.1", "logMAR 0.2"]),
        ("Acuity 0.8 right. LogMAR 0.1 left.", ["0.8", "logMAR 0.1"]),
    ],
)
def test_a_decimal_and_logmar_are_two_scales(reading, text, wanted):
    """0.1 is a tenth of the usual on one and nearly the usual on the other: the word decides, for its sentence."""
    assert [str(one.value) for one in reading(text).findings] == wanted


def test_a_decimal_beside_a_logmar_value_may_be_either(reading):
    """ "Right 0.8, left logMAR 0.4": the word was said of one number; of the other it is asked."""
    right, left = reading("Visual acuity right 0.8, left logMAR 0.4.").findings
    assert (str(right.value), right.readings) == ("0.8", ("0.8", "logMAR 0.8"))
    assert (str(left.value), left.readings) == ("logMAR 0.4", ())


@pytest.mark.parametrize("text", ["Visual acuity 4 right.", "His vision in 2020 was good.", "Acuity 2.5 right."])
def test_no_acuity_is_made_of_other_numbers(reading, text):
    """A whole number but one, a year, more than the charts have."""
    assert reading(text).findings == ()
