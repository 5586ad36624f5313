"""A side inside the name of a place."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Pinprick diminished over the lateral border of the left foot.",
            ["pinprick left lateral_foot abnormal diminished"],
        ),
        ("Wasting of the small muscles of the left hand.", ["bulk left intrinsic_hand_muscles abnormal wasting"]),
        ("Motor. Small muscles of both hands wasted.", ["bulk both intrinsic_hand_muscles abnormal wasted"]),
        (
            "Intrinsic muscles of the right hand 4/5, left 5.",
            ["strength_interossei right measured 4", "strength_interossei left measured 5"],
        ),
    ],
)
def test_sides_inside_places(rows, text, wanted):
    """The words around the side are one place; common practice, no source."""
    assert rows(text) == wanted
