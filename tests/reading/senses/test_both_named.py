"""A "both" of two names, and one of two sides."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Infraspinatus and supraspinatus both four on the right.",
            ["strength_infraspinatus right measured 4", "strength_supraspinatus right measured 4"],
        ),
        (
            "The left arm and leg are both four out of five.",
            ["strength_upper_limb left measured 4", "strength_lower_limb left measured 4"],
        ),
        (
            "Tone is increased in both the arm and the leg on the right.",
            ["tone right arm abnormal increased", "tone right leg abnormal increased"],
        ),
        (
            "Light touch and pin are normal on the right. On the left both are reduced.",
            [
                "light_touch right normal",
                "pinprick right normal",
                "light_touch left abnormal reduced",
                "pinprick left abnormal reduced",
            ],
        ),
        ("Finger nose and heel shin both normal.", ["finger_nose normal", "heel_shin normal"]),
        ("Both ankle jerks are absent.", ["reflex_achilles both measured 0"]),
        (
            "Both arms and both legs are five.",
            ["strength_upper_limb both measured 5", "strength_lower_limb both measured 5"],
        ),
    ],
)
def test_both(rows, text, wanted):
    """The nearest pair of names takes it; English grammar, no source."""
    assert rows(text) == wanted
