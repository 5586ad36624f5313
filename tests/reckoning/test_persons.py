"""Age and height as dictated."""

from __future__ import annotations

import pytest
from by_hand import transcript
from reckoning.series import finding

from dictate.model import Quantity, Status, Text
from dictate.reckoning import person_of


@pytest.mark.parametrize(
    ("words", "age", "quote"),
    [
        ("This seventy two year old man was seen.", 72, "seventy two year old man"),
        ("72-year-old right handed woman.", 72, "72-year-old"),
        ("Nineteen year old student, faints.", 19, "Nineteen year old"),
        ("A 45 year old right handed carpenter.", 45, "45 year old"),
        ("Eighty year old lady, unsteady.", 80, "Eighty year old lady,"),
        ("72yo man.", 72, "72yo man."),
        ("84 y/o F.", 84, "84 y/o F."),
        ("The patient is 45 years old.", 45, "45 years old."),
        ("He is a hundred and two years old.", 102, "a hundred and two years old."),
        ("She is thirty four years of age.", 34, "thirty four years of age."),
        ("An eighteen month old girl.", 1.5, "eighteen month old girl."),
        ("Age sixteen.", 16, "Age sixteen."),
        ("Age 72, male.", 72, "Age 72, male."),
        ("His age is thirty four.", 34, "age is thirty four."),
        ("Patient aged 102.", 102, "aged 102."),
        ("Aged 19 years.", 19, "Aged 19 years."),
        ("He is a 72 year old.", 72, "72 year old."),
        ("She's 81 years old.", 81, "81 years old."),
    ],
)
def test_an_age_is_read_with_its_words(words, age, quote):
    """Spoken or in digits, in years or months."""
    person = person_of(transcript(words), ())
    assert (person.age_years, person.age_from) == (age, "spoken")
    assert [one.quote for one in person.evidence] == [quote]


@pytest.mark.parametrize(
    "words",
    [
        "Her mother, a 72 year old woman, has tremor.",
        "Father died of a stroke aged 72.",
        "He had a stroke at age forty.",
        "A seizure since the age of twelve.",
        "He was diagnosed aged 19.",
        "He was five years old when he fell.",
        "A five year old scar on the left.",
        "Symptoms for two years.",
        "A twenty year old fracture in this patient.",
        "The patient has a ten year old scar.",
        "He has a 30 pack year history.",
        "Blood pressure one forty over eighty.",
        "The patient is 450 years old.",
        "Two hundred year old man.",
    ],
)
def test_other_numbers_of_years_are_no_age(words):
    """Relatives, earlier times, scars and durations."""
    person = person_of(transcript(words), ())
    assert (person.age_years, person.age_from, person.evidence) == (None, "", ())


def test_two_different_ages_are_left_open():
    """Neither is chosen; the same one twice is one."""
    person = person_of(transcript("72 year old man. 27 year old man."), ())
    assert (person.age_years, person.dictated_ages) == (None, (72, 27))
    assert person_of(transcript("72 year old man. The patient is 72 years old."), ()).age_years == 72


def test_the_option_wins():
    """And is said to be one; what was dictated stays."""
    person = person_of(transcript("72 year old man."), (), age=70, height=171.0)
    assert (person.age_years, person.age_from, person.dictated_ages) == (70, "option", (72,))
    assert (person.height_cm, person.height_from) == (171.0, "option")


@pytest.mark.parametrize(
    ("value", "unit", "height"),
    [
        (Quantity(number=172), "cm", 172),
        (Quantity(number=1.72), "m", 172),
        (Quantity(number=68), "[in_i]", 172.72),
        (Text(words="5'10"), "[ft_i]", 177.8),
        (Text(words="5'10\""), "[ft_i]", 177.8),
        (Quantity(number=172), "", None),
        (Quantity(number=170, upto=175), "cm", None),
        (Text(words="tall"), "", None),
    ],
)
def test_a_height_is_given_in_centimetres(value, unit, height):
    """Source: 1 in = 2.54 cm, 1 ft = 12 in, exact; without a unit it stays open."""
    person = person_of(transcript(), (finding("height", value, unit=unit),))
    assert person.height_cm == pytest.approx(height)
    assert person.height_from == ("spoken" if height else "")


def test_two_heights_are_left_open():
    """Neither is chosen; a height that was not measured is none."""
    two = tuple(finding("height", Quantity(number=number), unit="cm") for number in (170.0, 180.0))
    assert person_of(transcript(), two).height_cm is None
    assert person_of(transcript(), (finding("height", status=Status.NOT_EXAMINED),)).height_cm is None


@pytest.mark.parametrize(
    "words",
    ["Twenty year old scar on the arm.", "Six year old brother has epilepsy.", "Gait normal. Twenty year old shoes."],
)
def test_what_is_old_and_no_patient_gives_no_age(words):
    """A thing, a relative, or words that do not open the dictation."""
    assert person_of(transcript(words), ()).age_years is None
