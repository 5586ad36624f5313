"""Three visits and more."""

from __future__ import annotations

from by_hand import examination, finding

from dictate.grammar import Grammar
from dictate.model import Component, Examination, Quantity, Side, Status
from dictate.notes.directions import Kind
from dictate.notes.trends import compare_all, tied, trends


def rate(number: float) -> Examination:
    """A heart rate."""
    one = finding(Component.GENERAL, "heart_rate", Status.MEASURED, value=Quantity(number=number), unit="/min")
    return examination(one)


SAME = examination(finding(Component.GENERAL, "heart_rate", Status.UNCHANGED, quote="pulse unchanged"))


def drift(status: Status, side: Side | None) -> Examination:
    """A sign."""
    return examination(finding(Component.MOTOR, "pronator_drift", status, side=side))


def test_unchanged_counts_with_the_value_it_is_tied_to(grammar: Grammar) -> None:
    """The third visit is compared with the first one's number."""
    steps = compare_all([rate(60), SAME, rate(80)], grammar)
    assert [step.rows[0].kind for step in steps] == [Kind.UNCHANGED, Kind.CHANGED]
    assert steps[1].rows[0].difference == "+20/min"
    trend = trends([rate(60), SAME, rate(80)], grammar)[0]
    assert [point.numbers for point in trend.points] == [(60.0,), (60.0,), (80.0,)]
    assert trend.is_drawn


def test_unchanged_without_an_earlier_value_stays_so(grammar: Grammar) -> None:
    """Nothing is made up."""
    assert tied(examination(), SAME, grammar).findings == SAME.findings


def test_a_visit_that_said_nothing_has_no_number(grammar: Grammar) -> None:
    """Nor is it skipped."""
    trend = trends([rate(60), examination(), rate(80)], grammar)[0]
    assert [point.text for point in trend.points][1] == "nothing dictated"
    assert not trend.is_drawn


def test_denial_without_side_stands_in_the_row_of_the_side(grammar: Grammar) -> None:
    """And in no row of its own."""
    made = [drift(Status.PRESENT, Side.LEFT), drift(Status.ABSENT, None), drift(Status.PRESENT, Side.LEFT)]
    found = trends(made, grammar)
    assert [[point.text for point in one.points] for one in found] == [["present", "absent", "present"]]


def test_what_never_changed_is_no_trend(grammar: Grammar) -> None:
    """The comparison lists it as unchanged."""
    assert trends([rate(60), rate(60), rate(60)], grammar) == ()
