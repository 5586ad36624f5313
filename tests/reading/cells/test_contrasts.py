"""A "but" inside one finding."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Gait is steady but slow.", ["gait abnormal slow (steady)"]),
        ("She gets out of a low chair without her hands but only slowly.", ["chair_rise abnormal slowly"]),
        ("Romberg negative, although she sways a bit.", ["romberg normal"]),
        ("Rapid alternating movements slow but regular in both hands.", ["rapid_alternating both abnormal slow"]),
        (
            "Eye movements full except for reduced upgaze.",
            ["eye_movements normal", "eye_movements abnormal upgaze limited"],
        ),
    ],
)
def test_one_finding(rows, text, wanted):
    """No second finding that contradicts the first; an exception is one of its own. Common practice, no source."""
    assert [row.partition(" (")[0] for row in rows(text)] == [row.partition(" (")[0] for row in wanted]
