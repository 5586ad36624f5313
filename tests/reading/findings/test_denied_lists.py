"""A side or place behind a list of what is denied."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "No tremor, rigidity or bradykinesia on the right.",
            ["tremor right absent", "tone right normal", "bradykinesia right absent"],
        ),
        ("No wasting or fasciculation in the left hand.", ["bulk left hand normal", "fasciculations left hand absent"]),
        ("No weakness or sensory loss in the legs.", ["strength_lower_limb normal", "sensory_all leg normal"]),
        ("No murmur or oedema at the ankles.", ["murmur absent", "edema ankle absent"]),
        ("No tremor, and no wasting in the legs.", ["tremor absent", "bulk leg normal"]),
    ],
)
def test_a_place_is_of_the_whole_list(rows, text, wanted):
    """Under one "no" and with nothing of their own between them; common practice, no source."""
    assert rows(text) == wanted
