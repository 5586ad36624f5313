"""Plus and minus behind a side, and grades that hang on one."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Hoffmann R+ L-.", ["hoffmann right present", "hoffmann left absent"]),
        ("Hoffmann R-, L-.", ["hoffmann right absent", "hoffmann left absent"]),
        ("Hoffmann: R -, L +.", ["hoffmann right absent", "hoffmann left present"]),
        ("Hoffmann R+L.", ["hoffmann both present"]),
        ("Clonus R + L.", ["clonus both present"]),
        ("Clonus: R -, L 3 beats", ["clonus right absent", "clonus left present 3 beats"]),
        ("Babinski L+ R-", ["plantar_response left abnormal extensor", "plantar_response right normal"]),
        ("AJ R + L ++", ["reflex_achilles right measured 1+", "reflex_achilles left measured 2+"]),
        ("Ankle jerks R - L -", ["reflex_achilles right measured 0", "reflex_achilles left measured 0"]),
        ("Hoffmann right - present.", ["hoffmann right present"]),
        (
            "Power: shoulder abduction R5 L4+, hip flexion L4 R5.",
            [
                "strength_deltoid right measured 5",
                "strength_deltoid left measured 4+",
                "strength_iliopsoas left measured 4",
                "strength_iliopsoas right measured 5",
            ],
        ),
        ("Pinprick reduced in L5 on the right.", ["pinprick right l5 abnormal reduced"]),
    ],
)
def test_signs_behind_sides(rows, text, wanted):
    """A minus once said nothing, a plus joined the sides, and L4 was a segment; from memory, no source."""
    assert rows(text) == wanted
