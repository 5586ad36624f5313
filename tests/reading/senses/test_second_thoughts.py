"""What is said behind a "but" takes back what was only thought. From memory, no source."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("I thought there was a bruit on the left, but when I listened again, no.", ["carotid_bruit left absent"]),
        ("I thought power was reduced but it was normal.", ["strength_all normal"]),
        ("At first I thought the right plantar was up but no, it was down.", ["plantar_response right normal flexor"]),
        (
            "I thought there was a tremor of the right hand but no rigidity.",
            ["tremor right hand present", "tone normal"],
        ),
        (
            "I thought power was reduced on the right but normal on the left.",
            ["strength_all right abnormal reduced", "strength_all left normal"],
        ),
    ],
)
def test_what_was_only_thought_is_taken_back(rows, phrase, findings):
    """Not where what follows the "but" is told of another sign, or of the other side."""
    assert rows(phrase) == findings


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("Left deltoid four, well, four minus.", ["strength_deltoid left measured 4-"]),
        (
            "Left deltoid four, well, biceps four minus.",
            ["strength_deltoid left measured 4", "strength_biceps left measured 4-"],
        ),
    ],
)
def test_a_better_number_behind_a_well(rows, phrase, findings):
    """Of the same name only."""
    assert rows(phrase) == findings


def test_a_reason_that_is_thought_makes_no_finding_unsure(rows):
    """The question mark of these rows stands for a hedge."""
    assert rows("Left deltoid four plus, and I think that was pain.") == ["strength_deltoid left measured 4+"]
    assert rows("Left deltoid four plus, I think.") == ["strength_deltoid left measured 4+ ?"]
