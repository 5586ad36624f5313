"""The stroke scale said in numbers."""

from __future__ import annotations

import pytest

from dictate.grammar.sums import STROKE

POINTS = (0, 1, 0, 1, 0, 2, 0, 3, 0, 2, 0, 1, 1, 1, 0)
WANTED = [f"{item} measured {points}" for item, points in zip(STROKE.parts, POINTS, strict=True)]


@pytest.mark.parametrize(
    "text",
    [
        "NIHSS 0 1 0 1 0 2 0 3 0 2 0 1 1 1 0.",
        "NIH stroke scale: 0, 1, 0, 1, 0, 2, 0, 3, 0, 2, 0, 1, 1, 1, 0.",
        "NIHSS zero one zero one zero two zero three zero two zero one one one zero.",
        "NIHSS: 1a 0, 1b 1, 1c 0, 2 1, 3 0, 4 2, 5a 0, 5b 3, 6a 0, 6b 2, 7 0, 8 1, 9 1, 10 1, 11 0.",
        "NIHSS 1a 0 1b 1 1c 0 2 1 3 0 4 2 5a 0 5b 3 6a 0 6b 2 7 0 8 1 9 1 10 1 11 0.",
    ],
)
def test_fifteen_points_go_to_their_items(rows, text):
    """In the order of the form, or by item number. Source: NINDS form (public domain)."""
    assert rows(text) == WANTED


def test_a_total_stands_behind_the_points(rows):
    """It is no sixteenth point."""
    assert rows("NIHSS 0 1 0 1 0 2 0 3 0 2 0 1 1 1 0, total 12.") == [*WANTED, "nihss_total measured 12"]


@pytest.mark.parametrize("text", ["NIHSS 0 1 0 1 0 2 0 3 0 2 0 1 1 1.", "NIHSS 0 1 0 9 0 2 0 3 0 2 0 1 1 1 0."])
def test_what_does_not_fit_the_form_is_not_dealt_out(rows, text):
    """Fourteen numbers, or nine points for gaze: no item gets any of them."""
    assert all(one.startswith("nihss_total ") for one in rows(text))


@pytest.mark.parametrize("text", ["NIHSS 12.", "NIHSS 1c 1."])
def test_one_number_stays_what_it_was(rows, text):
    """A total, or one item."""
    assert len(rows(text)) == 1
