"""Short names: in which company "biceps", "knees", "eyes", "motor" name an item."""

from __future__ import annotations

import pytest


def named(nodes):
    return [node.candidates[0] for node in nodes if node.main == "item"]


@pytest.mark.parametrize(
    ("phrase", "under", "items"),
    [
        ("knees two plus", "", ["reflex_patellar"]),
        ("ankles one plus", "", ["reflex_achilles"]),
        ("knees two plus, ankles absent", "reflexes", ["reflex_patellar", "reflex_achilles"]),
        ("knees painful", "", []),
        ("biceps five", "", ["strength_biceps"]),
        ("biceps two plus", "", ["reflex_biceps"]),
        ("biceps painful", "", []),
        ("biceps five", "motor", ["strength_biceps"]),
        ("quadriceps five", "motor", ["strength_quadriceps"]),
    ],
)
def test_a_value_only_it_can_have_or_its_heading(nodes, phrase, under, items):
    """ "Knees 2+" is a reflex anywhere, "biceps five" a strength: no reflex is graded so; bare, it is neither."""
    assert named(nodes(phrase, under)) == items


def test_parts_of_the_coma_scale_need_one_another(nodes):
    """ "Eyes three, verbal four, motor six" said in one breath."""
    assert named(nodes("eyes three, verbal four, motor six, total thirteen")) == [
        "gcs_eye",
        "gcs_verbal",
        "gcs_motor",
        "gcs_total",
    ]
    assert named(nodes("eyes three")) == []


@pytest.mark.parametrize(
    ("phrase", "items"),
    [
        ("legs spastic", ["tone"]),
        ("legs 5/5", ["strength_lower_limb"]),
        ("arms five", ["strength_upper_limb"]),
        ("legs weak", ["strength_lower_limb"]),
    ],
)
def test_a_limb_is_a_strength_when_it_is_graded(nodes, phrase, items):
    """ "Legs spastic" says how the tone was, not how strong they were."""
    assert named(nodes(phrase, "motor")) == items
