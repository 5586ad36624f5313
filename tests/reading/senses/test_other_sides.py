"""The other side, hand or leg is the one that was not said."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("say", "wanted"),
    [
        ("Drift on the left, none on the other side.", ["pronator_drift left present", "pronator_drift right absent"]),
        ("Tremor in the left hand, none in the other hand.", ["tremor left hand present", "tremor right hand absent"]),
        (
            "Right arm power four, the other arm five.",
            ["strength_upper_limb right measured 4", "strength_upper_limb left measured 5"],
        ),
        (
            "Pinprick was reduced over the right forearm and normal in the other arm.",
            ["pinprick right forearm abnormal reduced", "pinprick left arm normal"],
        ),
        (
            "Clonus at the right ankle, three beats, and none at the other.",
            ["clonus right ankle present 3 beats", "clonus left ankle absent"],
        ),
        ("Tremor in the right hand, the other is fine.", ["tremor right hand present", "tremor left hand absent"]),
    ],
)
def test_the_side_not_said(rows: Rows, say: str, wanted: list[str]) -> None:
    """What is told of the other side is of the side that was not named."""
    assert rows(say) == wanted


@pytest.mark.parametrize(
    "say",
    [
        "Tone up in the legs. On the other hand there is no rigidity.",
        "Tone up in the legs; on the other hand, no rigidity.",
    ],
)
def test_no_hand(rows: Rows, say: str) -> None:
    """ "On the other hand" leads to what is said against it, and names no hand."""
    assert not any("hand" in row for row in rows(say))
