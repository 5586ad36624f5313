"""Times of day are of no item. No source: how times are said, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    "said",
    [
        "Tone normal. GCS at 10:20 was 13.",
        "Tone normal. GCS at 9.30 was 13.",
        "Tone normal. GCS at ten past nine 13.",
        "Tone normal. GCS at half past two 13.",
        "Tone normal. GCS 13 at quarter to ten.",
        "Tone normal. GCS at twenty to eleven 13.",
        "Tone normal. GCS 13 at 8 am.",
        "Tone normal. GCS at six this morning 13.",
    ],
)
def test_a_time_gives_no_number(rows: Rows, said: str) -> None:
    """However it is said; the score beside it stands."""
    assert [row.partition(" (")[0] for row in rows(said)] == ["tone normal", "gcs_total measured 13"]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Pupils 4 to 5 mm.", "pupil_size measured 4->5"),
        ("Straight leg raise right positive at 40 to 50 degrees.", "straight_leg_raise right measured 40"),
        ("Digit span forward 5 to 6.", "digit_span_forward measured 5"),
    ],
)
def test_a_range_is_no_time(rows: Rows, said: str, found: str) -> None:
    """A "to" between two numbers of an item."""
    assert rows(said)[0].startswith(found.split("->")[0])


def test_an_hour_of_the_dial_is_a_place_on_the_disc(rows: Rows) -> None:
    """It is told with what was found there."""
    assert rows("Flame haemorrhage at six o'clock on the left.") == [
        "fundi left abnormal flame haemorrhage six o clock"
    ]
