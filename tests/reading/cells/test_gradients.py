"""reading.gradients: words that the next clause shares: a value said once of two senses, a sign beside a jerk."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        (
            "Light touch reduced to the ankles, pinprick to mid calf.",
            ["light_touch ankle abnormal reduced", "pinprick mid_calf abnormal reduced"],
        ),
        (
            "Pinprick lost to the knees and light touch to the ankles.",
            ["pinprick knee abnormal lost", "light_touch ankle abnormal lost"],
        ),
        ("Light touch reduced to the ankles; pinprick to mid calf.", ["light_touch ankle abnormal reduced"]),
        ("Light touch normal, pinprick to mid calf.", ["light_touch normal"]),
    ],
)
def test_how_it_was_is_said_once_and_where_it_begins_of_each(rows: Rows, said: str, wanted: list[str]) -> None:
    """The second place was lost."""
    assert rows(said) == wanted


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        (
            "Left ankle 3+ with clonus, right 2+.",
            ["reflex_achilles left measured 3+", "clonus left ankle present", "reflex_achilles right measured 2+"],
        ),
        ("Knees brisk with ankle clonus.", ["reflex_patellar abnormal brisk", "clonus ankle present"]),
        ("Knee jerks 3+ with clonus on the left.", ["reflex_patellar measured 3+", "clonus left present"]),
    ],
)
def test_a_sign_beside_a_jerk_is_of_its_joint(rows: Rows, said: str, wanted: list[str]) -> None:
    """The clonus was told of the right ankle, and its jerk was lost."""
    assert rows(said) == wanted
