"""Rinne and Weber read together.

Source: teaching pages on tests for hearing loss (looked up, secondary); the row of both sides is arithmetic of the
rule.
"""

from __future__ import annotations

import pytest

from dictate.model import Side
from dictate.reckoning.ears import fork_pattern

RIGHT, LEFT, MIDLINE = Side.RIGHT, Side.LEFT, Side.MIDLINE


@pytest.mark.parametrize(
    ("right_air", "left_air", "weber", "worse", "pattern"),
    [
        (True, True, MIDLINE, None, ""),
        (False, True, RIGHT, None, "conductive loss, right"),
        (False, True, RIGHT, RIGHT, "conductive loss, right"),
        (True, True, LEFT, RIGHT, "sensorineural loss, right"),
        (True, True, LEFT, None, "if the right is the worse ear"),
        (False, True, LEFT, RIGHT, "severe sensorineural loss, right"),
        (False, False, MIDLINE, None, "conductive loss of both sides"),
        (True, True, RIGHT, RIGHT, "fit no single rule"),
        (False, True, RIGHT, LEFT, "fit no single rule"),
        (False, False, LEFT, None, "fit no single rule"),
        (False, True, MIDLINE, None, "fit no single rule"),
        (True, True, MIDLINE, LEFT, "fit no single rule"),
    ],
)
def test_the_two_together(right_air, left_air, weber, worse, pattern):
    """Weber goes to the conductive ear or away from the sensorineural one. Source: teaching pages (secondary)."""
    found = fork_pattern(right_air=right_air, left_air=left_air, weber=weber, worse=worse)
    assert pattern in found
    assert bool(found) is bool(pattern)


def test_left_and_right_are_treated_alike():
    """Changing the sides changes the sides of the answer. Source: symmetry."""
    swap = {RIGHT: LEFT, LEFT: RIGHT, MIDLINE: MIDLINE, None: None}
    for right_air in (True, False):
        for left_air in (True, False):
            for weber in (RIGHT, LEFT, MIDLINE):
                for worse in (RIGHT, LEFT, None):
                    one = fork_pattern(right_air=right_air, left_air=left_air, weber=weber, worse=worse)
                    other = fork_pattern(right_air=left_air, left_air=right_air, weber=swap[weber], worse=swap[worse])
                    assert other == one.replace("right", "?").replace("left", "right").replace("?", "left")
