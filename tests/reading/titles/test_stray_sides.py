"""Sides that a recogniser's stop parted from their finding. From memory, no source."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Rest tremor of the right hand, none. On the left.",
            ["tremor right hand present rest", "tremor left hand absent"],
        ),
        (
            "Plantar extensor on the left, flexor. On the right.",
            ["plantar_response left abnormal extensor", "plantar_response right normal flexor"],
        ),
    ],
)
def test_it_is_of_what_lacks_a_side(rows, phrase, findings):
    """Before, "none" denied the tremor of the right hand."""
    assert rows(phrase) == findings


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Plantar extensor on the left. On the right. Biceps jerk 2+.",
            ["plantar_response left abnormal extensor", "reflex_biceps right measured 2+"],
        ),
    ],
)
def test_else_it_may_be_a_title(rows, phrase, findings):
    """Nothing in front of it lacks a side."""
    assert rows(phrase) == findings
