"""Coma, stroke and muscle sums.

Sources: Teasdale G et al. Lancet Neurol 2014;13:844 and the scale's own FAQ (looked up) · Wijdicks EF et al. Ann
Neurol 2005;58:585 (looked up, table) · Brott T et al. Stroke 1989;20:864 and the NINDS form and training video
(looked up) · Kleyweg RP et al. Muscle Nerve 1991;14:1103 and De Jonghe B et al. JAMA 2002;288:2859 (looked up). Sums
are arithmetic.
"""

from __future__ import annotations

import pytest
from reckoning.series import coma, figures, finding, muscles

from dictate.model import Component, Score
from dictate.reckoning.scales import COMA_PARTS, MUSCLES, STROKE_PARTS, four_sum


@pytest.mark.parametrize(
    ("eye", "verbal", "motor", "total"),
    [(1, 1, 1, 3), (4, 5, 6, 15), (4, 4, 5, 13), (3, 4, 6, 13), (4, 4, 6, 14), (2, 2, 4, 8)],
)
def test_the_coma_sum(eye, verbal, motor, total):
    """Eye, verbal and motor added. Source: Teasdale 2014; a published example gives E4 V4 M5 = 13 (looked up)."""
    (figure,) = figures("coma scale sum", coma(eye, verbal, motor))
    assert figure.value == total


def test_the_coma_scale_runs_from_3_to_15():
    """Lowest and highest points of its parts. Source: Teasdale 2014 (looked up)."""
    assert sum(low for low, _ in COMA_PARTS.values()) == 3
    assert sum(high for _, high in COMA_PARTS.values()) == 15


def test_an_untestable_part_gives_no_total():
    """E4 V NT M6: components only. Source: scale FAQ (looked up)."""
    assert figures("coma scale sum", coma(4, "T", 6)) == ()


@pytest.mark.parametrize(
    ("parts", "total"),
    [((3, 2, 4, 1), 10), ((0, 0, 0, 0), 0), ((4, 4, 4, 4), 16), ((4, 4, 4, None), None), ((5, 4, 4, 4), None)],
)
def test_the_four_score(parts, total):
    """Eye, motor, brainstem, respiration, 0 to 4 each; zero is a score here. Source: Wijdicks 2005 (looked up)."""
    assert four_sum(*parts) == total


def stroke(**points: int) -> tuple:
    """All fifteen items; those not named are 0."""
    return tuple(
        finding(
            item, Score(points=float(points.get(item.removeprefix("nihss_"), 0))), component=Component.COORDINATION_GAIT
        )
        for item in STROKE_PARTS
    )


@pytest.mark.parametrize(
    ("points", "total"),
    [
        ({"facial": 1, "leg_left": 1, "leg_right": 1, "dysarthria": 1}, 4),
        (
            {
                "questions": 2,
                "facial": 2,
                "arm_left": 2,
                "arm_right": 1,
                "leg_left": 3,
                "leg_right": 3,
                "language": 2,
                "dysarthria": 2,
            },
            17,
        ),
        (
            {
                "questions": 1,
                "gaze": 1,
                "facial": 2,
                "arm_right": 3,
                "leg_right": 2,
                "sensory": 1,
                "language": 1,
                "dysarthria": 1,
            },
            12,
        ),
    ],
)
def test_worked_stroke_scores(points, total):
    """Two demonstration patients of the NINDS training video, one of a published guide (looked up)."""
    (figure,) = figures("stroke scale sum", stroke(**points))
    assert figure.value == total


def test_the_stroke_scale_ends_at_42():
    """Maxima of the fifteen items. Source: Brott 1989; NINDS form (looked up)."""
    assert sum(high for _, high in STROKE_PARTS.values()) == 42


def test_a_stroke_item_that_was_not_scored_gives_no_total():
    """Dysarthria not scored: the rest is not added up as a total. Source: published guide (looked up), own rule."""
    found = [one for one in stroke(facial=1) if one.item != "nihss_dysarthria"]
    assert figures("stroke scale sum", tuple(found)) == ()


@pytest.mark.parametrize(
    ("right", "left", "total", "below"),
    [
        ("5 5 5 5 5 5", "5 5 5 5 5 5", 60, False),
        ("4 4 4 4 4 4", "4 4 4 4 4 4", 48, False),
        ("4 4 4 4 4 4", "4 4 4 4 4 3", 47, True),
        ("5 5 5 5 5 5", "2 3 1 3 4 2", 45, True),
    ],
)
def test_the_muscle_sum(right, left, total, below):
    """Six movements, both sides, 0 to 60; criterion below 48. Source: Kleyweg 1991; De Jonghe 2002 (looked up)."""
    (figure,) = figures("muscle sum score", muscles(right, left))
    assert figure.value == total
    assert ("not below 48" not in figure.text) is below


def test_the_muscle_sum_takes_six_movements():
    """Shoulder abduction to ankle dorsiflexion. Source: Kleyweg 1991 (looked up)."""
    assert len(MUSCLES) == 6


@pytest.mark.parametrize("left", ["5 5 5 5 5 4-", "5 5 5 5 5 4+"])
def test_a_grade_with_a_sign_gives_no_muscle_sum(left):
    """The original has no rule for 4- and 4+: no silent total. Source: own rule."""
    (figure,) = figures("muscle sum score", muscles("5 5 5 5 5 5", left))
    assert figure.value is None
    assert "has no value" in figure.text
