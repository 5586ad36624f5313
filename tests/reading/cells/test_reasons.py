"""Why something was not examined. From memory, no source."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("Gait not tested because of pain in the left hip.", ["gait not_examined"]),
        ("Gait not tested, weakness.", ["gait not_examined"]),
        ("Heel shin on the left limited by weakness.", ["heel_shin left not_assessable"]),
    ],
)
def test_a_reason_is_no_finding(rows, phrase, findings):
    """Its pain, weakness and sides are of the reason."""
    assert rows(phrase) == findings
