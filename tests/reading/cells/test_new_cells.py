"""When a word begins another reading. From memory, no source."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("Postural tremor mild, rest absent.", ["tremor present postural mild", "tremor absent"]),
        (
            "Pinprick dull in the left thumb and index, sharp elsewhere.",
            ["pinprick left thumb abnormal dull", "pinprick left index_finger abnormal dull", "pinprick normal"],
        ),
        ("No focal weakness; give-way on the right.", ["strength_all normal", "strength_all right abnormal give way"]),
    ],
)
def test_each_word_has_its_own(rows, phrase, findings):
    """Before, the second word was of the first reading."""
    assert rows(phrase) == findings
