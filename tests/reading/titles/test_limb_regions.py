"""A limb in front of a sentence, and how far it reaches. From memory, no source."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("In the arms tone was normal. Power was full.", ["tone arm normal", "strength_upper_limb normal"]),
        (
            "Arms: tone normal. Power normal. Reflexes 2+. Legs: tone increased. Power 4/5.",
            [
                "tone arm normal",
                "strength_upper_limb normal",
                "reflex_upper_limb measured 2+",
                "tone leg abnormal increased",
                "strength_lower_limb measured 4",
            ],
        ),
        (
            "In the left leg tone was increased, with reduced power.",
            ["tone left leg abnormal increased", "strength_lower_limb left abnormal reduced"],
        ),
        ("The arms had normal tone and power.", ["tone arm normal", "strength_upper_limb normal"]),
    ],
)
def test_the_limb_is_of_all_that_is_told_of_it(rows, phrase, findings):
    """Before, what stood behind the first finding was of the whole patient."""
    assert rows(phrase) == findings


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "In the legs tone was increased. Power was 4 throughout.",
            ["tone leg abnormal increased", "strength_all measured 4"],
        ),
        ("In the legs tone was increased. Sensation normal.", ["tone leg abnormal increased", "sensory_all normal"]),
        (
            "Arms 5/5. Legs 5/5. Tone normal.",
            ["strength_upper_limb measured 5", "strength_lower_limb measured 5", "tone normal"],
        ),
        (
            "In the legs tone was increased. Drift of both arms. Power 5.",
            ["tone leg abnormal increased", "pronator_drift both present", "strength_all measured 5"],
        ),
    ],
)
def test_nobody_says_where_the_last_limb_ends(rows, phrase, findings):
    """Another component, another limb, or "throughout" ends it; a limb with a bare grade opens nothing."""
    assert rows(phrase) == findings
