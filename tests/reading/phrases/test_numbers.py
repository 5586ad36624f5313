"""Number phrases: pressures, grades with signs, fractions, changes, as they are spoken and as they are misheard."""

from __future__ import annotations

import itertools

import pytest

from dictate.reading.phrases.numbers import find_numbers


@pytest.mark.parametrize(
    ("phrase", "systolic", "diastolic"),
    [
        ("one forty two over eighty four", 142, 84),
        ("142/84", 142, 84),
        ("142 / 84", 142, 84),
        ("142 over 84", 142, 84),
        ("one hundred and forty two over eighty four", 142, 84),
        ("a hundred and ten over seventy", 110, 70),
        ("one oh four over fifty eight", 104, 58),
        ("two oh one over one ten", 201, 110),
        ("118 on 62", 118, 62),
        ("1 19 over 50", 119, 50),
        ("1,19 over 50", 119, 50),
        ("1-16 over 70", 116, 70),
        ("1.82 over 90", 182, 90),
        ("100 and 17 over 60", 117, 60),
        ("160 to over 90", 162, 90),
        ("170 for over 92", 174, 92),
        ("1 0 2 over 66", 102, 66),
        ("130, 7 over 80", 137, 80),
    ],
)
def test_a_pressure_is_one_number_however_it_is_written(number, phrase, systolic, diastolic):
    """Spoken, in digits, or broken by the recogniser: the same pressure."""
    found = number(phrase)
    assert (found.a, found.op, found.b) == (systolic, "/", diastolic)


@pytest.mark.parametrize(("phrase", "doubt"), [("160 to over 90", 2), ("170 for over 92", 4), ("162 over 90", 0)])
def test_a_digit_that_was_heard_as_a_word_is_marked(number, phrase, doubt):
    """ "to" and "for" before "over" are most likely two and four: what was added stays visible."""
    assert number(phrase).tens == doubt


@pytest.mark.parametrize("phrase", ["seventy over palpable", "70/palp", "70 over P"])
def test_a_pressure_that_was_only_felt(number, phrase):
    """The diastolic is palpable, not a number."""
    found = number(phrase)
    assert (found.a, found.palpable, found.b) == (70, True, None)


@pytest.mark.parametrize(
    ("phrase", "grade"),
    [
        ("two plus", "2+"),
        ("2+", "2+"),
        ("2 plus", "2+"),
        ("+2", "2+"),
        ("++", "2+"),
        ("+++", "3+"),
        ("four minus", "4-"),
        ("4-", "4-"),
        ("4 minus", "4-"),
        ("five", "5"),
        ("zero", "0"),
    ],
)
def test_the_sign_of_a_grade(number, phrase, grade):
    """Plus and minus, spoken, written, or as a row of plus signs."""
    found = number(phrase)
    assert (found.first, found.op) == (grade, "")


@pytest.mark.parametrize(
    ("phrase", "first", "op", "second"),
    [
        ("four out of five", "4", "of", "5"),
        ("four of five", "4", "of", "5"),
        ("4/5", "4", "/", "5"),
        ("4-/5", "4-", "/", "5"),
        ("four minus over five", "4-", "/", "5"),
        ("4-5", "4", "-", "5"),
        ("twenty eight out of thirty", "28", "of", "30"),
        ("two out of six", "2", "of", "6"),
        ("II/VI", "2", "/", "6"),
        ("2+/4", "2+", "/", "4"),
    ],
)
def test_points_of_a_maximum(number, phrase, first, op, second):
    """ "out of", "of", a stroke, a hyphen; Roman where a murmur is written so."""
    found = number(phrase)
    assert (found.first, found.op, found.second) == (first, op, second)


@pytest.mark.parametrize(
    ("phrase", "first", "second"),
    [
        ("twenty thirty", 20, 30),
        ("twenty over thirty", 20, 30),
        ("twenty twenty", 20, 20),
        ("20/40", 20, 40),
        ("six over nine", 6, 9),
        ("twenty over two hundred", 20, 200),
    ],
)
def test_a_fraction_of_acuity(number, phrase, first, second):
    """ "Twenty thirty" is a fraction, not fifty."""
    found = number(phrase)
    assert (found.a, found.op, found.b) == (first, "/", second)


def test_twenty_and_a_number_with_a_unit_are_two_numbers(cut):
    """ "Right twenty, forty seconds" is no acuity."""
    assert [mark.number.op for mark in find_numbers(cut("twenty thirty seconds"))] == ["", ""]


@pytest.mark.parametrize(
    "phrase",
    [
        "four going to two",
        "four millimetres going to two millimetres",
        "four millimetres constricting to two",
        "4 -> 2",
        "4→2",
        "four in the dark, two in the light",
        "4 mm in the dark and 2 mm in the light",
    ],
)
def test_a_change_from_dark_to_light(number, phrase):
    """The first number becomes the second."""
    found = number(phrase)
    assert (found.a, found.op, found.b) == (4, "->", 2)


def test_four_to_two_is_left_open(number):
    """A range or a change: the item decides."""
    found = number("four to two")
    assert (found.a, found.op, found.b) == (4, "to", 2)


def test_a_pair_of_pupils_that_becomes_another_pair(number):
    """ "4/3 decreasing to 2/1": right and left, before and after."""
    found = number("4/3 decreasing to 2/1")
    assert (found.a, found.b, found.then) == (4, 3, (2, 1))


@pytest.mark.parametrize("phrase", ["1T", "1 T", "10T"])
def test_the_t_of_an_untestable_part(number, phrase):
    """A score given with T keeps it."""
    assert number(phrase).mark == "T"


def test_feet_and_inches(number):
    """ "Five feet ten inches" is one height."""
    found = number("five feet ten inches")
    assert (found.a, found.op, found.b) == (5, "ft", 10)


def test_numbers_never_overlap_and_keep_their_order(cut):
    """Every token is in at most one number."""
    found = find_numbers(cut("BP 142/84, pulse sixty six, 4-/5 and 2+ right, twenty thirty, five feet ten"))
    assert [mark.number.first for mark in found] == ["142", "66", "4-", "2+", "20", "5"]
    assert all(one.end <= two.start for one, two in itertools.pairwise(found))


@pytest.mark.parametrize(
    ("phrase", "values"),
    [
        ("standing one twenty over eighty, ninety", [120, 90]),
        ("two plus right, three plus left", [2, 3]),
        ("pulse 70. Over 80", [70, 80]),
    ],
)
def test_numbers_said_apart_stay_apart(cut, phrase, values):
    """Nothing is joined over a comma with words between, or over a full stop."""
    assert [mark.number.a for mark in find_numbers(cut(phrase))] == values


@pytest.mark.parametrize(
    "phrase", ["one metre seventy five", "1 m 75", "1 metre 75 cm tall", "one meter seventy five, weight"]
)
def test_a_height_in_metres_and_centimetres_is_one_number(number, phrase):
    """Metres first, then centimetres of two digits."""
    found = number(phrase)
    assert (found.a, found.op, found.b) == (1, "m", 75)


@pytest.mark.parametrize("phrase", ["one metre twelve seconds", "1 m 20/40", "ten metres 25", "1 m 5", "1 m 75 dB"])
def test_metres_in_front_of_another_count_are_no_height(cut, phrase):
    """Seconds, an acuity, another distance, one digit, another unit: two numbers."""
    assert "m" not in [mark.number.op for mark in find_numbers(cut(phrase)) if mark.number is not None]
