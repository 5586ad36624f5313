"""Tables with items over their columns and a side in front of each row."""

from __future__ import annotations

import pytest

NAMES = ("biceps", "triceps", "brachioradialis", "patellar", "achilles")


def jerks(side, grades):
    return [f"reflex_{name} {side} measured {grade}" for name, grade in zip(NAMES, grades.split(), strict=True)]


@pytest.mark.parametrize(
    ("text", "right", "left"),
    [
        (
            "DTR:   B  T  S  K   A\n  Rt   ++ ++ ++ +++ ++++\n  Lt   ++ ++ +  +++ -",
            "2+ 2+ 2+ 3+ 4+",
            "2+ 2+ 1+ 3+ 0",
        ),
        (
            "Reflexes  biceps triceps supinator knee ankle\nR  2 2 2 3 1\nL  1 2 2 3 0",
            "2+ 2+ 2+ 3+ 1+",
            "1+ 2+ 2+ 3+ 0",
        ),
        (
            "Reflexes | B | T | BR | P | A\nR | 2+ | 2+ | 2+ | 3+ | 1+\nL | 2+ | 2+ | 1+ | 2+ | 0",
            "2+ 2+ 2+ 3+ 1+",
            "2+ 2+ 1+ 2+ 0",
        ),
        ("     BJ TJ SJ KJ AJ\nRight ++ ++ + ++ +\nLeft ++ ++ + ++ -", "2+ 2+ 1+ 2+ 1+", "2+ 2+ 1+ 2+ 0"),
    ],
)
def test_jerks_in_columns(rows, text, right, left):
    """By initials, short names or names. Common practice, no source."""
    assert rows(text) == [*jerks("right", right), *jerks("left", left)]


def test_muscles_in_columns(rows):
    """Plain grades under names that jerks share are strengths where one of the columns has no jerk."""
    assert rows("Power\n  deltoid biceps triceps\nR 5 4+ 4\nL 5 5 3") == [
        "strength_deltoid right measured 5",
        "strength_biceps right measured 4+",
        "strength_triceps right measured 4",
        "strength_deltoid left measured 5",
        "strength_biceps left measured 5",
        "strength_triceps left measured 3",
    ]


def test_a_row_of_another_length_is_not_dealt_out(rows):
    """Nobody knows which column has no value: none of them gets one."""
    said = rows("DTR: B T S K A\nRt ++ ++ ++ +++\nLt ++ ++ ++ +++ ++")
    assert not any(name in one for one in said for name in NAMES)
