"""Motor level beside a sensory level."""

from __future__ import annotations

from reckoning.series import figures, finding

from dictate.model import Component, Grade, Side, Status, Text
from dictate.reckoning.levels import KEY_MUSCLES, motor_level

NAME = "motor level"


def level(words: str, side: Side | None = None, item: str = "sensory_level"):
    """A dictated level."""
    component = Component.SENSORY if item == "sensory_level" else Component.MOTOR
    return finding(item, Text(words=words), component=component, side=side)


def key(grades: str, side: Side | None = Side.RIGHT) -> tuple:
    """Grades of the key muscles from C5 down."""
    return tuple(
        finding(item, Grade(scale="mrc", grade=grade), component=Component.MOTOR, side=side)
        for item, grade in zip(KEY_MUSCLES.values(), grades.split(), strict=False)
    )


def test_the_motor_level_stands_beside_a_sensory_level():
    """C5 5, C6 5, C7 3: C7 on that side; the other side, without grades, has none."""
    (figure,) = figures(NAME, (*key("5 5 3"), level("C6")))
    assert figure.text == "Motor level right: C7 by key muscles; the sensory level stands as said"
    assert figure.inputs == (0, 1, 2, 3)
    both = figures(NAME, (*key("5 5 3", Side.BOTH), level("C6", Side.BOTH)))
    assert [one.text[:17] for one in both] == ["Motor level right", "Motor level left:"]


def test_no_motor_level_without_a_sensory_one_or_with_something_missing():
    """A sensory level of the other side, a muscle not graded, twice differently, side not said, or all 5."""
    assert figures(NAME, key("5 5 3")) == ()
    assert figures(NAME, (*key("5 5 3"), level("C6", Side.LEFT))) == ()
    assert figures(NAME, (*key("5 5"), level("C6"))) == ()
    assert figures(NAME, (*key("5 5 3"), *key("4"), level("C6"))) == ()
    assert figures(NAME, (*key("5 5 3", None), level("C6"))) == ()
    assert figures(NAME, (*key("5 5 5 5 5 5 5 5 5 5"), level("C6"))) == ()
    absent = finding("sensory_level", component=Component.SENSORY, status=Status.ABSENT)
    assert figures(NAME, (*key("5 5 3"), absent)) == ()


def test_without_key_muscle_the_sensory_level_decides():
    """Arms 5 and a sensory level of T6: T6; a level in words gives no such level."""
    (figure,) = figures(NAME, (*key("5 5 5 5 5 0 0 0 0 0"), level("T6")))
    assert "Motor level right: T6" in figure.text
    assert figures(NAME, (*key("5 5 5 5 5 0 0 0 0 0"), level("umbilicus"))) == ()


def test_a_grade_with_a_sign_keeps_its_place():
    """3- is below 3, 4+ is not 5."""
    full = {"C5": "5", "C6": "3-"}
    assert motor_level(full, sensory="C6") == "C5"
    assert motor_level({"C5": "4+"}, sensory="C6") == "C5"


def test_a_dictated_motor_level_stands_beside_the_computed_one():
    """Equal: nothing to add; else both are named, and the dictated one is as it was said."""
    (figure,) = figures(NAME, (*key("5 5 3"), level("C6", item="motor_level")))
    assert figure.text == "Motor level right: C7 by key muscles, C6 as dictated"
    assert figure.inputs == (0, 1, 2, 3)
    assert figures(NAME, (*key("5 5 3"), level("C7", item="motor_level"))) == ()
    assert figures(NAME, (level("C7", item="motor_level"),)) == ()
    (beside,) = figures(NAME, (*key("5 5 3"), level("C6"), level("C6", Side.BOTH, item="motor_level")))
    assert beside.text.endswith("C7 by key muscles, C6 as dictated")
