"""What a denial goes on to admit. No source: how findings are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("No bruits, a soft one on the left.", ["carotid_bruit absent", "carotid_bruit left present soft"]),
        ("No clonus, two beats on the left.", ["clonus absent", "clonus left present 2 beats"]),
        ("No tremor, slight postural on the left.", ["tremor absent", "tremor left present slight postural"]),
        (
            "Eyes full, no nystagmus, a few beats on right gaze.",
            ["eye_movements normal", "nystagmus absent", "nystagmus present a few beats on right gaze"],
        ),
        (
            "No weakness in the arms, slight in the left leg.",
            ["strength_upper_limb normal", "strength_lower_limb left abnormal slight weakness"],
        ),
    ],
)
def test_how_much_and_where_was_found(rows: Rows, said: str, found: list[str]) -> None:
    """Behind a comma, without a word that denies it."""
    assert rows(said) == found


@pytest.mark.parametrize(
    ("said", "item"),
    [
        ("No wasting, weakness or mild tremor of the left hand.", "tremor"),
        ("No tremor, no dystonia.", "dystonia"),
    ],
)
def test_a_list_that_is_denied_goes_on(rows: Rows, said: str, item: str) -> None:
    """Up to its "or"."""
    assert all(row.split()[-1] in ("absent", "normal") for row in rows(said) if row.startswith(item))
