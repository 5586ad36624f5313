"""Body parts: where something was found, or the name of an item."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "under", "site"),
    [
        ("tone increased in the right arm", "motor", "arm"),
        ("tone increased in the legs", "", "legs"),
        ("pinprick reduced in both feet", "sensory", "feet"),
        ("vibration absent at the ankles", "sensory", "ankles"),
        ("vibration absent at the knees", "sensory", "knees"),
        ("clonus at the right ankle", "reflexes", "ankle"),
        ("tremor of the right hand", "", "hand"),
        ("edema at both ankles", "", "ankles"),
    ],
)
def test_a_body_part_after_an_item_told_by_site(nodes, phrase, under, site):
    """It says where, whatever else the word may name."""
    assert [node.text for node in nodes(phrase, under) if node.main == "site"] == [site]
    assert sum(node.main == "item" for node in nodes(phrase, under)) == 1


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("Reflexes 2+ at the knees.", ["reflex_patellar measured 2+"]),
        ("Knees 2+, ankles 1+.", ["reflex_patellar measured 2+", "reflex_achilles measured 1+"]),
        (
            "Reflexes two plus at the knees, absent at the ankles.",
            ["reflex_patellar measured 2+", "reflex_achilles measured 0"],
        ),
    ],
)
def test_a_grade_beside_it_makes_it_a_reflex(rows, phrase, findings):
    """ "2+ at the knees" is the knee jerk."""
    assert rows(phrase) == findings


def test_sites_of_one_item_are_read_one_after_the_other(rows):
    """Each site with its own words."""
    assert rows("Clonus at the right ankle sustained, at the left ankle three beats.") == [
        "clonus right ankle present sustained",
        "clonus left ankle present 3 beats",
    ]


def test_the_limbs_of_a_blanket_are_its_regions(rows):
    """ "Strength five out of five in the arms" is the strength of the upper limbs."""
    assert rows("Strength five out of five in the arms.") == ["strength_upper_limb measured 5"]
