"""The coma scale by its numbers alone. No source: how they are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]
PARTS = ["gcs_eye measured 3", "gcs_verbal measured 4", "gcs_motor measured 6"]


@pytest.mark.parametrize("said", ["GCS 3/4/6.", "GCS 3-4-6.", "Glasgow three four six.", "Coma scale of 3, 4 and 6."])
def test_three_numbers_are_eyes_speech_and_movement(rows: Rows, said: str) -> None:
    """However they are parted."""
    assert rows(said) == PARTS


@pytest.mark.parametrize("said", ["Glasgow 3 4 6, so 13.", "GCS three four six makes thirteen.", "GCS 3 4 6: sum 13."])
def test_their_sum_is_the_total(rows: Rows, said: str) -> None:
    """Said behind them."""
    assert rows(said) == [*PARTS, "gcs_total measured 13"]


def test_their_sum_may_stand_in_front(rows: Rows) -> None:
    """With the parts in brackets, and only where it is their sum."""
    assert rows("GCS 13 (3/4/6).") == ["gcs_total measured 13", *PARTS]


def test_a_tube_stands_for_speech(rows: Rows) -> None:
    """Teasdale 2014: a part that cannot be tested has no number."""
    assert rows("GCS 1 T 4.") == ["gcs_eye measured 1", "gcs_verbal not_assessable T", "gcs_motor measured 4"]


@pytest.mark.parametrize("said", ["GCS 10 then 9 then 8.", "GCS 5 6 6.", "GCS 15. Three four six.", "GCS 14."])
def test_other_numbers_are_no_parts(rows: Rows, said: str) -> None:
    """More than a part can have, of a further sentence, or not three of them."""
    assert not {row.split()[0] for row in rows(said)} & {"gcs_eye", "gcs_verbal", "gcs_motor"}
