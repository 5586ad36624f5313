"""Parts against the dictated sum."""

from __future__ import annotations

import pytest
from by_hand import examination, finding

from dictate.checks import run_checks
from dictate.grammar import Grammar, load_grammar
from dictate.grammar.sums import ATAXIA, FOUR, STROKE
from dictate.model import Query, Score, Status
from dictate.pipeline import Typed, examine


def coma(said, eye, verbal, motor, total):
    """The coma scale as dictated; None: that part was not."""
    parts = {"gcs_eye": eye, "gcs_verbal": verbal, "gcs_motor": motor, "gcs_total": total}
    return [
        said(item, "not_assessable" if value == "T" else "measured", value)
        for item, value in parts.items()
        if value is not None
    ]


def test_parts_that_do_not_add_up_must_be_asked(said, ask):
    """Eyes 4, verbal 5, motor 6, total 14."""
    (query,) = ask("total-mismatch", *coma(said, "4", "5", "6", "14"))
    assert (query.item, query.severity, query.suggestions) == ("gcs_total", "must", ("14", "15"))
    assert query.findings == (3, 0, 1, 2)


def test_parts_that_add_up_are_left_alone(said, ask):
    """Eyes 3, verbal 4, motor 6, total 13."""
    assert ask("total-mismatch", *coma(said, "3", "4", "6", "13")) == ()


def test_an_untestable_part_leaves_the_total(said, ask):
    """Verbal T: nothing is added up, with the T said of the total or not."""
    assert ask("total-mismatch", *coma(said, "4", "T", "6", "10T")) == ()
    assert ask("total-mismatch", *coma(said, "4", "T", "6", "10")) == ()


def test_a_missing_part_leaves_a_possible_total(said, ask):
    """Eyes 4 and motor 6 allow 11 to 15."""
    assert ask("total-mismatch", *coma(said, "4", None, "6", "13")) == ()
    (query,) = ask("total-mismatch", *coma(said, "4", None, "6", "9"))
    assert "11 to 15" in query.message


def test_a_total_by_itself_is_left_alone(said, ask):
    """A total without parts cannot be checked."""
    assert ask("total-mismatch", *coma(said, None, None, None, "14")) == ()


def test_a_part_said_twice_is_not_added_up(said, ask):
    """Which of the two counts is another query."""
    assert ask("total-mismatch", *coma(said, "4", "5", "6", "14"), said("gcs_eye", "measured", "3")) == ()


def test_stroke_items_beyond_the_total_must_be_asked(said, ask):
    """Face 2 and gaze 2 cannot give a total of 3."""
    parts = [said("nihss_facial", "measured", "2"), said("nihss_gaze", "measured", "2")]
    assert len(ask("total-mismatch", *parts, said("nihss_total", "measured", "3"))) == 1
    assert ask("total-mismatch", *parts, said("nihss_total", "measured", "4")) == ()


@pytest.fixture(scope="module")
def packaged() -> Grammar:
    """The packaged grammar, which holds every scale."""
    return load_grammar()


def mismatches(packaged: Grammar, total: float, **points: float | None) -> list[Query]:
    """Queries on a dictated total (its item is the last name); None: could not be tested."""
    *parts, last = points
    found = [
        finding(
            packaged.component_of(item),
            item,
            Status.NOT_ASSESSABLE if value is None else Status.MEASURED,
            value=None if value is None else Score(points=value),
        )
        for item, value in ((*((name, points[name]) for name in parts), (last, total)))
    ]
    return [one for one in run_checks(examination(*found), packaged) if one.code == "total-mismatch"]


def test_an_untestable_stroke_item_is_not_counted(packaged):
    """Face 1 and dysarthria untestable: the fourteen others must add up to the total."""
    parts = dict.fromkeys(STROKE.parts, 0.0) | {"nihss_facial": 1.0, "nihss_dysarthria": None, "nihss_total": 0.0}
    assert mismatches(packaged, 1.0, **parts) == []
    (query,) = mismatches(packaged, 2.0, **parts)
    assert "without NIHSS 10, dysarthria (untestable)" in query.message
    assert query.suggestions == ("2", "1")
    parts["nihss_facial"] = None
    assert mismatches(packaged, 2.0, **parts) == []


def test_the_other_scales_are_checked_too(packaged):
    """FOUR, and the ataxia scale, whose missing sided items leave a range."""
    four = dict.fromkeys(FOUR.parts, 3.0) | {"four_score": 0.0}
    assert mismatches(packaged, 12.0, **four) == []
    assert len(mismatches(packaged, 11.0, **four)) == 1
    ataxia = {item: 2.0 for item in ATAXIA.parts if item not in ATAXIA.sided} | {"sara_total": 0.0}
    assert mismatches(packaged, 8.0, **ataxia) == []
    (query,) = mismatches(packaged, 7.0, **ataxia)
    assert "allow 8 to 24" in query.message


@pytest.mark.parametrize(("said_sum", "asked"), [("50", ["50", "48"]), ("48", [])])
def test_a_muscle_sum_is_checked_against_its_twelve_grades(said_sum: str, asked: list[str]) -> None:
    """Grade 4 of six movements on both sides is 48 (Kleyweg 1991, from memory); with grades missing: no query."""
    muscles = ("Deltoid", "Biceps", "Wrist extension", "Iliopsoas", "Quadriceps", "Tibialis anterior")
    grades = " ".join(f"{name} 4 on both sides." for name in muscles)
    for text, wanted in ((f"{grades} MRC sum score {said_sum}.", asked), (f"MRC sum score {said_sum}. Biceps 4.", [])):
        exam = examine([Typed("t", text)], engine=None, grammar=load_grammar())
        assert [s for q in exam.queries if q.code == "total-mismatch" for s in q.suggestions] == wanted
