"""What a number means of an item, kind by kind."""

from __future__ import annotations

import pytest

from dictate.grammar import Item, Scale
from dictate.model import Choice, Side, Status, Text
from dictate.reading.phrases.kinds import as_grade, choice_value, distance_in, read_number

MRC = Scale(name="mrc", grades=("0", "1", "2", "3", "4-", "4", "4+", "5"), of=5, source="made up")
TENDON = Scale(name="tendon", grades=("0", "trace", "1+", "2+", "3+", "4+"), of=4, source="made up")
PRESSURE = Item(name="pressure", kind="pressure")
PUPIL = Item(name="pupil", kind="quantity", sided="paired", unit="mm")
PULSE = Item(name="pulse", kind="quantity", unit="/min")
WEIGHT = Item(name="weight", kind="quantity", unit="kg", units={"kg": ("kilos",)}, unit_required=True)
HEIGHT = Item(name="height", kind="quantity", unit="cm", units={"[ft_i]": ("feet",)})
MUSCLE = Item(name="muscle", kind="grade", scale="mrc", sided="paired")
JERK = Item(name="jerk", kind="grade", scale="tendon", sided="paired")
RECALL = Item(name="recall", kind="score", of=3)
TOTAL = Item(name="total", kind="score")
ACUITY = Item(name="acuity", kind="acuity")
MURMUR = Item(name="murmur", kind="presence", of=6)
TREMOR = Item(name="tremor", kind="presence")
GAIT = Item(name="gait", kind="normality")
BLANKET = Item(name="all", kind="normality", blanket=True)


def value(number, phrase, item, scale=None, unit=""):
    """The value as written; None where the number cannot be of the item."""
    meaning = read_number(item, number(phrase), unit, scale)
    return meaning and str(meaning.value)


@pytest.mark.parametrize(
    ("item", "phrase", "scale", "written"),
    [
        (PRESSURE, "one forty two over eighty four", None, "142/84"),
        (PRESSURE, "seventy over palpable", None, "70/palpable"),
        (PRESSURE, "four out of five", None, None),
        (PRESSURE, "six over nine", None, None),
        (PRESSURE, "eighty", None, None),
        (PULSE, "sixty six", None, "66"),
        (PULSE, "two plus", None, None),
        (PULSE, "two out of three", None, None),
        (PUPIL, "four going to two", None, "4->2"),
        (PUPIL, "four to two", None, "4->2"),
        (PULSE, "sixty to seventy", None, "60-70"),
        (HEIGHT, "five feet ten inches", None, "5'10"),
        (PULSE, "five feet ten inches", None, None),
        (MUSCLE, "four minus", MRC, "4-"),
        (MUSCLE, "four out of five", MRC, "4"),
        (MUSCLE, "4-/5", MRC, "4-"),
        (MUSCLE, "4-5", MRC, "4"),
        (MUSCLE, "4.5", MRC, None),
        (JERK, "two plus", TENDON, "2+"),
        (JERK, "two", TENDON, "2+"),
        (JERK, "zero", TENDON, "0"),
        (JERK, "2/4", TENDON, "2+"),
        (RECALL, "two out of three", None, "2"),
        (RECALL, "two", None, "2"),
        (RECALL, "two plus", None, None),
        (TOTAL, "twenty eight out of thirty", None, "28/30"),
        (TOTAL, "1T", None, "1T"),
        (ACUITY, "twenty thirty", None, "20/30"),
        (ACUITY, "six over nine", None, "6/9"),
        (ACUITY, "2030", None, "20/30"),
        (ACUITY, "thirty", None, None),
        (MURMUR, "two out of six", None, "2/6"),
        (TREMOR, "four", None, None),
        (GAIT, "four", None, None),
        (BLANKET, "five", None, None),
    ],
)
def test_a_number_is_read_as_its_item_allows(number, item, phrase, scale, written):
    """The value in the form of the contract, or nothing where such a number cannot be of the item."""
    assert value(number, phrase, item, scale) == written


@pytest.mark.parametrize(
    ("item", "phrase", "scale", "right", "left"),
    [(PUPIL, "4/3", None, "4", "3"), (JERK, "2/3", TENDON, "2+", "3+"), (PUPIL, "4/3 to 2/1", None, "4->2", "3->1")],
)
def test_a_pair_is_right_then_left(number, item, phrase, scale, right, left):
    """Of a paired item "2/3" is right two, left three."""
    meaning = read_number(item, number(phrase), "", scale)
    assert [(side, str(said)) for side, said in meaning.by_side] == [(Side.RIGHT, right), (Side.LEFT, left)]


def test_a_pair_is_nothing_of_an_item_without_sides(number):
    """ "4/3" cannot be a pulse."""
    assert read_number(PULSE, number("4/3"), "", None) is None


def test_a_grade_between_two_keeps_both(number):
    """ "Four to four plus": not rounded, both stand as readings."""
    meaning = read_number(MUSCLE, number("four to four plus"), "", MRC)
    assert meaning.readings == ("4", "4+")


@pytest.mark.parametrize(("item", "unit", "written"), [(WEIGHT, "kg", "kg"), (WEIGHT, "", ""), (PULSE, "", "/min")])
def test_a_unit_is_said_or_the_only_one(number, item, unit, written):
    """A unit that is not said is filled in only where no other is possible."""
    assert read_number(item, number("seventy"), unit, None).unit == written


def test_a_number_of_a_sign_is_its_presence(number):
    """A murmur of two out of six is there."""
    assert read_number(MURMUR, number("two out of six"), "", None).status is Status.PRESENT


def test_a_better_fit_weighs_more(number):
    """A sign of plus fits the reflex better than a bare number; a unit fits its quantity."""
    assert read_number(JERK, number("2+"), "", TENDON).fits > read_number(JERK, number("2"), "", TENDON).fits
    assert read_number(WEIGHT, number("70"), "kg", None).fits > read_number(WEIGHT, number("70"), "", None).fits


@pytest.mark.parametrize(("written", "grade"), [("2", "2+"), ("0", "0"), ("3+", "3+"), ("7+", "7+"), ("2-", "2-")])
def test_a_grade_is_written_as_its_scale_has_it(written, grade):
    """ "2" is 2+ where only 2+ exists; a grade that does not exist is kept, never rounded."""
    assert as_grade(TENDON, written) == grade


def test_a_choice_is_written_by_its_key_or_by_what_the_grammar_writes():
    """Empty: nothing is written."""
    assert choice_value("flexor", None, "choice") == Choice(choice="flexor")
    assert choice_value("two_words", None, "normality") == Text(words="two words")
    assert choice_value("flexor", "down", "choice") == Text(words="down")
    assert choice_value("flexor", "", "choice") is None


@pytest.mark.parametrize(
    ("name", "distance"), [("ten metre walk", "10 m"), ("25 foot walk", "25 ft"), ("timed walk", ""), ("ten steps", "")]
)
def test_a_name_may_hold_a_distance(name, distance):
    """ "Ten metre walk": the distance belongs to the value."""
    assert distance_in(name) == distance
