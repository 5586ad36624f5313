"""A muscle at the head of its power and its jerk."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Left triceps: power four, reflex absent.",
            ["strength_triceps left measured 4", "reflex_triceps left measured 0"],
        ),
        (
            "Left biceps: strength five, reflex two plus. Left triceps: strength four, reflex one plus.",
            [
                "strength_biceps left measured 5",
                "reflex_biceps left measured 2+",
                "strength_triceps left measured 4",
                "reflex_triceps left measured 1+",
            ],
        ),
        ("Right triceps 4, reflexes normal.", ["strength_triceps right measured 4", "reflexes_all normal"]),
        (
            "Left arm: deltoid 4, biceps 4, rest 5.",
            [
                "strength_deltoid left measured 4",
                "strength_biceps left measured 4",
                "strength_upper_limb left measured 5",
            ],
        ),
    ],
)
def test_muscles_at_the_head(rows, text, wanted):
    """What is told behind it is of it, and of no more; common practice, no source."""
    assert rows(text) == wanted
