"""Coma, stroke and muscle sums.

Sources: Teasdale G et al. Lancet Neurol 2014;13:844 and the scale's own FAQ (looked up) · Wijdicks EF et al. Ann
Neurol 2005;58:585 (looked up, table) · Brott T et al. Stroke 1989;20:864 and the NINDS form and training video
(looked up) · Kleyweg RP et al. Muscle Nerve 1991;14:1103 and De Jonghe B et al. JAMA 2002;288:2859 (looked up). Sums
are arithmetic.
"""

from __future__ import annotations

import pytest
from reckoning.series import coma, figures, finding, muscles

from dictate.grammar.sums import ATAXIA, COMA, FOUR, STROKE, SUMS
from dictate.model import Choice, Component, Score, Side, Status
from dictate.reckoning.muscles import MUSCLES
from dictate.reckoning.scales import with_pupils


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
    assert sum(low for low, _ in COMA.parts.values()) == 3
    assert sum(high for _, high in COMA.parts.values()) == 15


def test_an_untestable_part_gives_no_total():
    """E4 V NT M6: components only. Source: scale FAQ (looked up)."""
    (figure,) = figures("coma scale sum", coma(4, "T", 6))
    assert figure.value is None
    assert figure.text == "Coma scale sum not computed: verbal could not be tested"


@pytest.mark.parametrize(
    ("parts", "total"),
    [((3, 2, 4, 1), 10), ((0, 0, 0, 0), 0), ((4, 4, 4, 4), 16), ((4, 4, 4, None), None), ((5, 4, 4, 4), None)],
)
def test_the_four_score(parts, total):
    """Eye, motor, brainstem, respiration, 0 to 4 each; zero is a score here. Source: Wijdicks 2005 (looked up)."""
    found = tuple(
        finding(item, Score(points=float(points)), component=Component.MENTAL_STATUS)
        for item, points in zip(FOUR.parts, parts, strict=True)
        if points is not None
    )
    assert [figure.value for figure in figures("FOUR score sum", found) if figure.value is not None] == (
        [] if total is None else [total]
    )


def stroke(**points: int) -> tuple:
    """All fifteen items; those not named are 0."""
    return tuple(
        finding(
            item, Score(points=float(points.get(item.removeprefix("nihss_"), 0))), component=Component.COORDINATION_GAIT
        )
        for item in STROKE.parts
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
    assert sum(high for _, high in STROKE.parts.values()) == 42


def test_a_stroke_item_that_was_not_scored_gives_no_total():
    """Dysarthria not scored: the rest is not added up as a total. Source: published guide (looked up), own rule."""
    found = [one for one in stroke(facial=1) if one.item != "nihss_dysarthria"]
    (figure,) = figures("stroke scale sum", tuple(found))
    assert (figure.value, figure.text) == (None, "Stroke scale sum not computed: dysarthria is missing")


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


@pytest.mark.parametrize(("total", "unreactive", "expected"), [(3, 2, 1), (15, 0, 15), (8, 1, 7), (10, 0, 10)])
def test_the_coma_scale_with_pupils(total, unreactive, expected):
    """Total less the unreactive pupils, 1 to 15. Source: Brennan 2018 (looked up), arithmetic."""
    assert with_pupils(total, unreactive) == expected


def test_the_ataxia_scale_ends_at_40():
    """Gait 8, stance 6, sitting 4, speech 6, four items of 4. Source: Schmitz-Hübsch 2006 (looked up)."""
    assert ATAXIA.highest == 40


def ataxia(chase: tuple, nose: tuple, hands: tuple, heel: tuple) -> tuple:
    """Gait 3, stance 2, sitting 1, speech 2, and four items right and left; None: that side not said."""
    single = {"sara_gait": 3, "sara_stance": 2, "sara_sitting": 1, "sara_speech": 2}
    sided = {"sara_finger_chase": chase, "sara_nose_finger": nose, "sara_hand_movements": hands, "sara_heel_shin": heel}
    place = {"component": Component.COORDINATION_GAIT}
    return (
        *(finding(item, Score(points=float(points)), **place) for item, points in single.items()),
        *(
            finding(item, Score(points=float(points)), side=side, **place)
            for item, both in sided.items()
            for side, points in zip((Side.RIGHT, Side.LEFT), both, strict=True)
            if points is not None
        ),
    )


def test_a_worked_ataxia_score():
    """8 + 1.5 + 1 + 1.5 + 2 = 14: means of right and left. Source: Schmitz-Hübsch 2006 (arithmetic)."""
    (figure,) = figures("ataxia scale sum", ataxia((1, 2), (1, 1), (2, 1), (2, 2)))
    assert figure.value == 14
    (refused,) = figures("ataxia scale sum", ataxia((1, None), (1, 1), (2, 1), (2, 2)))
    assert refused.value is None


def test_a_stroke_item_that_cannot_be_tested_is_not_counted():
    """Face 1, right arm 2, right leg 1, sensory 1, language 1, dysarthria not scored: 6. Source: published guide."""
    scored = stroke(facial=1, arm_right=2, leg_right=1, sensory=1, language=1)
    untestable = finding("nihss_dysarthria", component=Component.COORDINATION_GAIT, status=Status.NOT_ASSESSABLE)
    (figure,) = figures("stroke scale sum", (*(one for one in scored if one.item != "nihss_dysarthria"), untestable))
    assert figure.value == 6
    assert "dysarthria" in figure.text


def test_a_coma_by_the_default_rules_is_40():
    """Every item at its maximum, ataxia 0. Source: NINDS form (from memory), arithmetic."""
    assert STROKE.highest - STROKE.parts["nihss_ataxia"][1] == 40


def test_every_scale_names_its_source():
    """No clinical number without a source."""
    assert all(one.source for one in SUMS)


def test_eleven_of_twelve_grades_give_no_muscle_sum_and_name_the_missing_one():
    """One movement of one side not graded. Source: Kleyweg 1991 (looked up, secondary), arithmetic of the rule."""
    (figure,) = figures("muscle sum score", muscles("5 5 5 5 5 5", "5 5 5 5 5 -"))
    assert figure.value is None
    assert figure.text == "Muscle sum score not computed: ankle dorsiflexion left is missing"


@pytest.mark.parametrize("verbal", ["T", None])
def test_no_coma_scale_with_pupils_without_a_total(verbal):
    """Verbal not testable or not said, both pupils fixed: nothing to take from. Source: Brennan 2018; own rule."""
    fixed = finding(
        "pupil_reaction",
        Choice(choice="fixed"),
        component=Component.CRANIAL_NERVES,
        side=Side.BOTH,
        status=Status.ABNORMAL,
    )
    assert figures("coma scale with pupils", (*coma(2, verbal, 4), fixed)) == ()
    (whole,) = figures("coma scale with pupils", (*coma(2, 2, 4), fixed))
    assert whole.value == 6
