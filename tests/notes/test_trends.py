"""Three visits and more."""

from __future__ import annotations

from by_hand import examination, finding

from dictate.grammar import Grammar
from dictate.model import Component, Examination, Quantity, Side, Status
from dictate.notes.directions import Kind
from dictate.notes.trends import compare_all, tied, trends
from dictate.pipeline import Typed, examine


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
    assert tied(examination(), SAME, grammar)[0].findings == SAME.findings


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


def test_unchanged_beside_a_value_adds_nothing_of_the_other_side(grammar: Grammar) -> None:
    """The value stands at that visit, and the other side is not said to be what it was."""
    said = ("Motor. Deltoid right 5, left 3.", "Motor. Deltoid strength 4 on the left, unchanged.", "Deltoid left 5.")
    visits = [examine([Typed("typed", text)], engine=None, grammar=grammar) for text in said]
    (trend,) = trends(visits, grammar)
    assert (trend.name, [point.text for point in trend.points]) == ("deltoid left", ["3", "4", "5"])
    assert [(row.name, row.earlier, row.later) for row in compare_all(visits, grammar)[1].rows] == [
        ("deltoid left", "4", "5")
    ]


def test_a_row_points_at_the_statements_of_the_visit_itself(grammar: Grammar) -> None:
    """Also where one "unchanged" there stands for two earlier values."""
    said = ("Knee jerks 2 plus right, 3 plus left.", "Knee jerks unchanged. Gait normal.", "Gait spastic.")
    visits = [examine([Typed("typed", text)], engine=None, grammar=grammar) for text in said]
    places = {row.name: row.earlier_at for row in compare_all(visits, grammar)[1].rows}
    assert places == {"knee jerk right": (0,), "knee jerk left": (0,), "gait": (1,)}


def test_a_direction_is_told_by_its_words(grammar: Grammar) -> None:
    """`tongue: midline, then deviates to the left`, not `tongue left: normal, then deviates`."""
    said = ("Tongue midline.", "Tongue deviates to the left.", "Tongue midline.")
    visits = [examine([Typed("typed", text)], engine=None, grammar=grammar) for text in said]
    (trend,) = trends(visits, grammar)
    assert trend.name == "tongue"
    assert [point.text for point in trend.points] == ["midline", "deviates to the left", "midline"]


def read(*texts: str, grammar: Grammar) -> list[Examination]:
    """Dictations."""
    return [examine([Typed("typed", text)], engine=None, grammar=grammar) for text in texts]


def test_a_normal_is_the_same_in_whose_words_it_was_told(grammar: Grammar) -> None:
    """By name, then of the whole: no trend; a sign that was there at one visit is one, with the words of all."""
    exams = read("Naming normal. Clock drawing abnormal.", "Mental status normal.", "Mental status is normal.",
                 grammar=grammar)  # fmt: skip
    (found,) = trends(exams, grammar)
    assert (found.name, [point.text for point in found.points]) == (
        "clock drawing",
        ["abnormal", 'normal, as said: "Mental status normal"', 'normal, as said: "Mental status is normal"'],
    )


def test_a_walk_is_drawn_where_its_length_stays(grammar: Grammar) -> None:
    """Its seconds; another distance has no place on the same line."""
    walks = [f"Timed walk ten metres in {said} seconds." for said in ("fourteen point five", "eleven", "nine")]
    (found,) = trends(read(*walks, grammar=grammar), grammar)
    assert ([point.numbers for point in found.points], found.is_drawn) == ([(14.5,), (11.0,), (9.0,)], True)
    walks[1] = "Timed walk six metres in eight seconds."
    (found,) = trends(read(*walks, grammar=grammar), grammar)
    assert ([point.numbers for point in found.points], found.is_drawn) == ([(), (), ()], False)
