"""Sides and sites a sentence declares for all its statements."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "In the upper limbs, tone was normal, power was 5 throughout, and the reflexes were normal.",
            ["tone upper_limb normal", "strength_upper_limb measured 5", "reflex_upper_limb normal"],
        ),
        (
            "Power on the right was grade 3 in hip flexion, 4 in knee flexion.",
            ["strength_iliopsoas right measured 3", "strength_hamstrings right measured 4"],
        ),
        (
            "On the left it was 4 in hip flexion, with ankle dorsiflexion 4+.",
            ["strength_iliopsoas left measured 4", "strength_tibialis_anterior left measured 4+"],
        ),
        (
            "Power, right arm: deltoid two, biceps two.",
            ["strength_deltoid right measured 2", "strength_biceps right measured 2"],
        ),
        ("RUE: tone normal, power 4.", ["tone right upper_limb normal", "strength_upper_limb right measured 4"]),
        (
            "Motor examination. In the left leg, hip flexion 4. Biceps 5 on the right.",
            ["strength_iliopsoas left measured 4", "strength_biceps right measured 5"],
        ),
        ("Right leg: tone was normal. Gait was steady.", ["tone right leg normal", "gait normal"]),
        (
            "Right deltoid 4, biceps 5. Triceps 5.",
            ["strength_deltoid right measured 4", "strength_biceps right measured 5", "strength_triceps measured 5"],
        ),
    ],
)
def test_a_place_said_first_holds_to_the_end_of_its_sentence(rows, phrase, findings):
    """And no further; a side of its own wins."""
    assert rows(phrase) == findings


def test_evidence_holds_the_words_that_said_the_place(reading):
    """So that the side can be checked."""
    (finding,) = reading("In the left leg, hip flexion 4.").findings
    assert "left leg" in finding.quote
