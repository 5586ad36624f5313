"""What a finding is held against is no finding of its own."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("say", "wanted"),
    [
        ("Sensory. Pin duller left hand cf right.", ["pinprick left hand abnormal duller"]),
        ("Sensory. Touch is different on the left from the right.", ["light_touch left abnormal different"]),
        (
            "Coordination. Arm rolling: the right orbits around the left.",
            ["forearm_rolling left abnormal orbits around"],
        ),
        (
            "Sensory. Vibration 10 seconds shorter in the left foot.",
            ["vibration left foot abnormal 10 seconds shorter"],
        ),
        ("Sensory. Vibration 10 seconds in the left foot.", ["vibration left foot measured 10"]),
        ("Sensory. Pinprick about 50 percent on the left arm.", ["pinprick left arm abnormal 50 percent"]),
        ("Sensory. Left face 60 percent of right to light touch.", ["light_touch left face abnormal 60 percent"]),
        ("Saturation 97 percent.", ["oxygen_saturation measured 97"]),
    ],
)
def test_the_other_side_and_the_difference(rows: Rows, say: str, wanted: list[str]) -> None:
    """Neither the side compared with nor a difference becomes a reading."""
    assert rows(say) == wanted
