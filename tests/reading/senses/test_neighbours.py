"""Words that mean what their neighbours make of them."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("say", "wanted"),
    [
        (
            "Coordination. On finger nose testing there was a clear intention tremor on the right.",
            ["finger_nose right abnormal clear intention tremor"],
        ),
        (
            "Sensory. Graphesthesia 3 of 5 on the left, all on the right.",
            ["graphesthesia left measured 3/5", "graphesthesia right normal"],
        ),
        (
            "Sensory. Pinprick in the left hand is unchanged, still reduced.",
            ["pinprick left hand abnormal still reduced"],
        ),
        (
            "Coordination. Bilateral dysmetria with finger-nose, none with heel shin.",
            ["finger_nose both abnormal dysmetria", "heel_shin normal"],
        ),
        (
            "Sensory. Vibration at the toes right 3, left 4, all out of 8.",
            ["vibration right toe measured 3", "vibration left toe measured 4"],
        ),
        (
            "Gait. She can walk on her toes, but not on the right heel.",
            ["toe_walk normal", "heel_walk right abnormal unable"],
        ),
    ],
)
def test_the_words_beside_it_decide(rows: Rows, say: str, wanted: list[str]) -> None:
    """No normal where a sign was plain, no reading where a maximum was told."""
    assert rows(say) == wanted
