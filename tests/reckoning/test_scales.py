"""Sums of scales."""

from __future__ import annotations

import pytest
from reckoning.series import coma, figures, finding, totals

from dictate.grammar.sums import ATAXIA, FOUR
from dictate.grammar.sums import STROKE as STROKE_SCALE
from dictate.model import Choice, Component, Score, Side, Status, Text
from dictate.reckoning.scales import with_pupils

COMA, STROKE = "coma scale sum", "stroke scale sum"


def stroke(*points: float) -> tuple:
    """Stroke scale items in their order."""
    return tuple(
        finding(item, Score(points=float(one)), component=Component.COORDINATION_GAIT)
        for item, one in zip(STROKE_SCALE.parts, points, strict=False)
    )


def test_the_coma_sum_is_computed_when_no_total_was_said():
    """E3 V4 M6 gives 13, shown as computed."""
    (figure,) = figures(COMA, coma(3, 4, 6))
    assert (figure.value, figure.inputs) == (13, (0, 1, 2))
    assert figure.text == "Coma scale sum: 13 of 15 (3 + 4 + 6)"


def test_no_coma_sum_beside_an_equal_total():
    """What was dictated is not computed again; a differing total is."""
    assert figures(COMA, coma(3, 4, 6, 13)) == ()
    assert len(figures(COMA, coma(4, 5, 6, 14))) == 1


def test_no_coma_sum_from_missing_untestable_impossible_or_repeated_parts():
    """Never a total from missing parts."""
    assert totals(COMA, coma(3, None, 6)) == []
    assert totals(COMA, coma(3, "T", 6)) == []
    assert totals(COMA, coma(3, 6, 6)) == []
    assert totals(COMA, coma(0, 5, 6)) == []
    assert totals(COMA, (*coma(3, 4, 6), *coma(4, None, None))) == []


def test_the_stroke_sum_needs_all_fifteen_items():
    """Fourteen items give no total."""
    assert totals(STROKE, stroke(*[0] * 14)) == []
    (figure,) = figures(STROKE, stroke(*[0] * 5, 1, 0, 0, 1, 1, 0, 0, 0, 1, 0))
    assert figure.value == 4
    assert figures(STROKE, stroke(9, *[0] * 14)) == ()


def pupils(right: str, left: str) -> tuple:
    """Reactions of both pupils; empty: not said."""
    return tuple(
        finding(
            "pupil_reaction",
            Choice(choice=choice),
            component=Component.CRANIAL_NERVES,
            side=side,
            status=Status.NORMAL if choice == "brisk" else Status.ABNORMAL,
        )
        for side, choice in ((Side.RIGHT, right), (Side.LEFT, left))
        if choice
    )


def test_the_pupils_are_taken_from_the_coma_scale():
    """E2 V2 M4 with one unreactive pupil: 8 - 1; a dictated total serves when no part was said."""
    name = "coma scale with pupils"
    (figure,) = figures(name, (*coma(2, 2, 4), *pupils("fixed", "brisk")))
    assert figure.value == with_pupils(8, 1)
    assert figure.text == "Coma scale with pupils: 8 - 1 = 7 (one pupil unreactive)"
    (figure,) = figures(name, (*coma(None, None, None, 3), *pupils("fixed", "fixed")))
    assert figure.value == 1


def test_a_reaction_to_near_is_none_to_light():
    """A pupil fixed to light that reacts to near is unreactive here."""
    near = tuple(one.model_copy(update={"detail": ("to near",)}) for one in pupils("brisk", "brisk"))
    (figure,) = figures("coma scale with pupils", (*coma(2, 2, 4), *pupils("fixed", "fixed"), *near))
    assert figure.value == 6


def test_pupils_that_do_not_react_to_near_may_react_to_light():
    """ "To light but not to near" reacts."""
    (figure,) = figures("coma scale with pupils", (*coma(2, 2, 4), *pupils("to light but not to near", "fixed")))
    assert figure.value == 7


def test_no_coma_scale_with_pupils_when_something_is_open():
    """Both react, one not said, one doubtful, verbal not testable, or a total that does not fit the parts."""
    name = "coma scale with pupils"
    assert figures(name, (*coma(2, 2, 4), *pupils("brisk", "sluggish"))) == ()
    assert figures(name, (*coma(2, 2, 4), *pupils("fixed", ""))) == ()
    assert figures(name, (*coma(2, 2, 4), *pupils("fixed", "light_near_dissociation"))) == ()
    assert figures(name, (*coma(2, 2, 4), *pupils("fixed", "brisk"), *pupils("brisk", ""))) == ()
    assert figures(name, (*coma(2, "T", 4), *pupils("fixed", "fixed"))) == ()
    assert figures(name, (*coma(2, 2, 4, 9), *pupils("fixed", "fixed"))) == ()
    assert figures(name, (*coma(2, 2, None, 9), *pupils("fixed", "fixed"))) == ()


def test_an_untestable_stroke_item_is_not_counted_and_named():
    """Dysarthria untestable: the sum of the fourteen others; a face that is untestable gives none."""
    parts = list(stroke(0, 0, 0, 0, 0, 1, 0, 2, 0, 1, 0, 1, 1, 0, 0))
    at = list(STROKE_SCALE.parts).index("nihss_dysarthria")
    parts[at] = finding("nihss_dysarthria", component=Component.COORDINATION_GAIT, status=Status.NOT_ASSESSABLE)
    (figure,) = figures(STROKE, tuple(parts))
    assert figure.value == 6
    assert figure.text.endswith("of 14 scored items: 6; not counted: dysarthria (untestable)")
    parts[5] = finding("nihss_facial", component=Component.COORDINATION_GAIT, status=Status.NOT_ASSESSABLE)
    assert totals(STROKE, tuple(parts)) == []


def test_the_ataxia_scale_takes_means_of_both_sides():
    """One side of a sided item, or a missing item, gives no total; "both" gives one."""

    def ataxia(**left_out: object) -> tuple:
        found = []
        for item in ATAXIA.parts:
            sides = (Side.RIGHT, Side.LEFT) if item in ATAXIA.sided else (None,)
            for side in sides:
                if left_out.get(item, "none") not in (side, "all"):
                    found.append(finding(item, Score(points=2.0), component=Component.COORDINATION_GAIT, side=side))
        return tuple(found)

    name = "ataxia scale sum"
    (figure,) = figures(name, ataxia())
    assert figure.value == 16
    assert totals(name, ataxia(sara_heel_shin=Side.LEFT)) == []
    assert totals(name, ataxia(sara_gait="all")) == []
    both = finding("sara_heel_shin", Score(points=3.0), component=Component.COORDINATION_GAIT, side=Side.BOTH)
    (figure,) = figures(name, (*ataxia(sara_heel_shin="all"), both))
    assert figure.value == 17


def test_the_four_score_keeps_zero():
    """E0 is a score of this scale."""
    zero = tuple(finding(item, Score(points=0.0), component=Component.MENTAL_STATUS) for item in FOUR.parts)
    (figure,) = figures("FOUR score sum", zero)
    assert figure.text == "FOUR score sum: 0 of 16 (0 + 0 + 0 + 0)"


@pytest.mark.parametrize(
    ("found", "text"),
    [
        (coma(3, None, 6), "Coma scale sum not computed: verbal is missing"),
        (coma(3, "T", 6), "Coma scale sum not computed: verbal could not be tested"),
        (stroke(*[0] * 14), "Stroke scale sum not computed: neglect is missing"),
    ],
)
def test_one_part_short_of_a_sum_says_which(found, text):
    """One more and it says nothing, as beside a dictated total."""
    name = text.partition(" not computed")[0]
    (figure,) = figures(f"{name[:1].lower()}{name[1:]}", found)
    assert (figure.text, figure.value) == (text, None)


def test_no_word_of_a_sum_beside_a_dictated_total_or_with_more_missing():
    """A total was said, or two parts are missing."""
    assert figures(COMA, coma(3, None, 6, 12)) == ()
    assert figures(COMA, coma(3, None, None)) == ()
    assert figures(STROKE, stroke(*[0] * 13)) == ()


def test_a_verbal_1_of_an_intubated_patient_is_named():
    """The sum stands as dictated, and says what it rests on. Source: the scale's FAQ (looked up): do not enter 1."""
    tube = finding("examination_conditions", Text(words="intubated"), status=Status.PRESENT)
    (figure,) = figures(COMA, (*coma(4, 1, 6), tube))
    assert figure.text.endswith("; verbal 1 was said of an intubated patient, whose words cannot be tested")
    assert "intubated" not in figures(COMA, coma(4, 1, 6))[0].text
    assert "intubated" not in figures(COMA, (*coma(4, 2, 6), tube))[0].text
