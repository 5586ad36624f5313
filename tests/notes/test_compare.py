"""Earlier and later examination of one patient → item by item what became of every statement."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from by_hand import examination, finding, reflex
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from notes.exams import findings

from dictate.grammar import Grammar, load_grammar
from dictate.model import (
    Acuity,
    Certainty,
    Choice,
    Component,
    Examination,
    Finding,
    Grade,
    Position,
    Pressure,
    Quantity,
    Score,
    Side,
    Status,
    Text,
)
from dictate.notes import compare
from dictate.notes.directions import Kind
from dictate.pipeline import Typed, examine

VISITS = Path(__file__).parent / "visits"
MIRROR = {
    Kind.NEW: Kind.GONE,
    Kind.NEW_BY_NAME: Kind.NOT_NAMED,
    Kind.WORSE: Kind.BETTER,
    Kind.NOT_EXAMINED: Kind.NOT_EXAMINED_BEFORE,
    Kind.NOT_ASSESSABLE: Kind.NOT_ASSESSABLE_BEFORE,
    Kind.NOT_DICTATED: Kind.NOT_DICTATED_BEFORE,
}
MIRROR |= {other: one for one, other in MIRROR.items()}
LEFT_DRIFT = (Component.MOTOR, "pronator_drift")
QUICK, FULL = 15, 2000


def kinds(earlier: Examination, later: Examination, grammar: Grammar) -> list[tuple[str, Kind]]:
    """Item and kind of every row."""
    return [(row.slot.item, row.kind) for row in compare(earlier, later, grammar).rows]


def drift(status: Status, side: Side | None = Side.LEFT) -> Examination:
    """An examination of one sign."""
    return examination(finding(*LEFT_DRIFT, status, side=side))


def strength(grade: str, side: Side | None = Side.LEFT, item: str = "strength_deltoid", **more: object) -> Finding:
    """A grade of strength."""
    value = Grade(scale="mrc", grade=grade)
    return finding(Component.MOTOR, item, Status.MEASURED, value=value, side=side, **more)


def test_two_visits_every_difference_right_and_none_invented(grammar: Grammar) -> None:
    """Two dictations of one invented patient, compared by hand in expected.csv."""
    one, other = (examine([VISITS / f"visit-{n}.txt"], engine=None, grammar=grammar) for n in (1, 2))
    with (VISITS / "expected.csv").open(encoding="utf-8") as file:
        wanted = sorted(tuple(row.values()) for row in csv.DictReader(file))
    rows = compare(one, other, grammar).rows
    found = sorted(
        (row.slot.item, row.slot.side.value if row.slot.side else "", row.kind.value, row.difference) for row in rows
    )
    assert found == wanted


@pytest.mark.parametrize(
    ("was", "now", "kind"),
    [
        (drift(Status.ABSENT), drift(Status.PRESENT), Kind.NEW),
        (drift(Status.PRESENT), drift(Status.ABSENT), Kind.GONE),
        (drift(Status.PRESENT), drift(Status.PRESENT), Kind.UNCHANGED),
        (drift(Status.PRESENT), drift(Status.NOT_EXAMINED), Kind.NOT_EXAMINED),
        (drift(Status.NOT_EXAMINED), drift(Status.PRESENT), Kind.NOT_EXAMINED_BEFORE),
        (drift(Status.PRESENT), drift(Status.NOT_ASSESSABLE), Kind.NOT_ASSESSABLE),
        (drift(Status.PRESENT), examination(), Kind.NOT_DICTATED),
        (examination(), drift(Status.PRESENT), Kind.NOT_DICTATED_BEFORE),
        (drift(Status.PRESENT), drift(Status.PRESENT, Side.RIGHT), Kind.NOT_COMPARABLE),
        (drift(Status.PRESENT), drift(Status.ABSENT, None), Kind.GONE),
        (drift(Status.PRESENT), drift(Status.UNCHANGED), Kind.UNCHANGED),
        (examination(strength("4")), examination(strength("4+")), Kind.BETTER),
        (examination(strength("4")), examination(strength("4-")), Kind.WORSE),
        (examination(strength("4")), examination(finding(Component.MOTOR, "strength_deltoid", Status.NORMAL,
                                                         side=Side.LEFT)), Kind.BETTER),
        (examination(reflex("reflex_biceps", "2+", side=Side.LEFT)),
         examination(reflex("reflex_biceps", "3+", side=Side.LEFT)), Kind.CHANGED),
        (examination(reflex("reflex_biceps", "2+", side=Side.LEFT)),
         examination(reflex("reflex_biceps", "2+", side=Side.LEFT, certainty=Certainty.UNCERTAIN)), Kind.CHANGED),
    ],
)  # fmt: skip
def test_kinds(was: Examination, now: Examination, kind: Kind, grammar: Grammar) -> None:
    """One row for one thing, and its kind."""
    assert [row.kind for row in compare(was, now, grammar).rows] == [kind]


def test_position_that_differs_is_not_compared(grammar: Grammar) -> None:
    """A pressure sitting says nothing of one standing."""
    made = [
        examination(finding(Component.GENERAL, "blood_pressure", Status.MEASURED, unit="mm[Hg]",
                            value=Pressure(systolic=142, diastolic=84), position=position))
        for position in (Position.SITTING, Position.STANDING)
    ]  # fmt: skip
    row = compare(*made, grammar).rows[0]
    assert (row.kind, row.reason) == (Kind.NOT_COMPARABLE, "position differs")


def test_all_that_differs_is_named(grammar: Grammar) -> None:
    """Several parts of a place as a sentence names them."""
    made = [
        examination(finding(Component.GENERAL, "blood_pressure", Status.MEASURED, unit="mm[Hg]",
                            value=Pressure(systolic=142, diastolic=84), **place))
        for place in ({"position": Position.SUPINE}, {"position": Position.STANDING, "minutes": 1.0})
    ]  # fmt: skip
    row = compare(*made, grammar).rows[0]
    assert (row.kind, row.reason) == (Kind.NOT_COMPARABLE, "position and time since standing differ")


def test_numbers_carry_their_difference(grammar: Grammar) -> None:
    """Later less earlier, with the unit; a pressure in both numbers."""
    made = [
        examination(finding(Component.GENERAL, "blood_pressure", Status.MEASURED, unit="mm[Hg]",
                            value=Pressure(systolic=systolic, diastolic=84), position=Position.SITTING))
        for systolic in (142, 130)
    ]  # fmt: skip
    row = compare(*made, grammar).rows[0]
    assert (row.kind, row.difference) == (Kind.CHANGED, "-12/0 mmHg")


def test_unit_that_differs_is_not_compared(grammar: Grammar) -> None:
    """Kilograms against pounds."""
    made = [
        examination(finding(Component.GENERAL, "weight", Status.MEASURED, value=Quantity(number=80), unit=unit))
        for unit in ("kg", "[lb_av]")
    ]
    assert compare(*made, grammar).rows[0].reason == "unit differs"


def test_said_to_be_unchanged_is_tied_to_the_earlier_record(grammar: Grammar) -> None:
    """The row shows what it is tied to."""
    row = compare(examination(strength("4")), drift_free(Status.UNCHANGED), grammar).rows[0]
    assert (row.kind, row.earlier, row.later) == (Kind.UNCHANGED, "4", "unchanged")
    assert "tied" in row.reason


def drift_free(status: Status) -> Examination:
    """The deltoid, without a value."""
    return examination(finding(Component.MOTOR, "strength_deltoid", status, side=Side.LEFT))


def test_said_to_be_unchanged_and_yet_different(grammar: Grammar) -> None:
    """ "Heart rate unchanged at 66" after 80."""
    made = [
        examination(finding(Component.GENERAL, "heart_rate", Status.MEASURED, value=Quantity(number=number),
                            unit="/min", quote=quote))
        for number, quote in ((80, "pulse eighty"), (66, "heart rate unchanged at 66"))
    ]  # fmt: skip
    row = compare(*made, grammar).rows[0]
    assert (row.kind, row.difference) == (Kind.NOT_SO, "-14/min")


def test_said_to_be_unchanged_without_an_earlier_record(grammar: Grammar) -> None:
    """Nothing is made up for it."""
    row = compare(examination(), drift(Status.UNCHANGED), grammar).rows[0]
    assert row.kind is Kind.NOT_COMPARABLE
    assert "no earlier statement" in row.reason


def test_whole_component_not_examined(grammar: Grammar) -> None:
    """ "Reflexes not examined" speaks for every reflex of the earlier visit."""
    earlier = examination(reflex("reflex_biceps", "2+", side=Side.LEFT))
    later = examination(finding(Component.REFLEXES, "reflexes_all", Status.NOT_EXAMINED))
    assert kinds(earlier, later, grammar) == [("reflex_biceps", Kind.NOT_EXAMINED)]


def test_list_that_names_the_item_speaks_for_it(grammar: Grammar) -> None:
    """ "Cranial nerves two to twelve intact" after a weak face: gone, in those words."""
    earlier = examination(
        finding(Component.CRANIAL_NERVES, "facial_strength", Status.ABNORMAL, value=Text(words="weak"), side=Side.LEFT)
    )
    later = examination(
        finding(Component.CRANIAL_NERVES, "cranial_nerves_2_12", Status.NORMAL, quote="cranial nerves intact")
    )
    rows = compare(earlier, later, grammar).rows
    assert [(row.slot.item, row.kind) for row in rows] == [("facial_strength", Kind.GONE)]
    assert 'as said: "cranial nerves intact"' in rows[0].later


def test_a_list_within_a_list_is_met_first(grammar: Grammar) -> None:
    """ "Power five throughout" is what was said of the arm, and no statement of its own: in both directions."""
    throughout = examination(strength("5", None, "strength_all"))
    arm = examination(strength("3", Side.LEFT, "strength_upper_limb"))
    assert kinds(throughout, arm, grammar) == [("strength_upper_limb", Kind.WORSE)]
    assert kinds(arm, throughout, grammar) == [("strength_upper_limb", Kind.BETTER)]


def test_normal_of_a_component_does_not_clear_a_sign(grammar: Grammar) -> None:
    """ "Reflexes normal" may not be meant of a plantar response: not gone, nor new, and yet the two stand together."""
    babinski = examination(
        finding(
            Component.REFLEXES, "plantar_response", Status.ABNORMAL, value=Choice(choice="extensor"), side=Side.LEFT
        )
    )
    whole = examination(finding(Component.REFLEXES, "reflexes_all", Status.NORMAL, quote="reflexes normal"))
    (row,) = compare(babinski, whole, grammar).rows
    assert (row.kind, row.earlier, row.later) == (
        Kind.NOT_NAMED,
        "extensor",
        'normal, as said: "reflexes normal"',
    )
    assert kinds(whole, babinski, grammar) == [("plantar_response", Kind.NEW_BY_NAME)]


@pytest.mark.parametrize(
    ("whole", "named", "rows"),
    [
        ("Motor normal.", "Left pronator drift.", [("pronator_drift", Kind.NEW_BY_NAME)]),
        ("Motor normal.", "Left deltoid 4.", [("strength_deltoid", Kind.NEW_BY_NAME)]),
        ("Motor normal.", "Tone normal. No tremor.", [("tone", Kind.UNCHANGED), ("tremor", Kind.UNCHANGED)]),
        ("Power normal throughout.", "Left deltoid 4.", [("strength_deltoid", Kind.WORSE)]),
        (
            "Sensation normal.",
            "Romberg positive.",
            [("sensory_all", Kind.NOT_DICTATED), ("romberg", Kind.NOT_DICTATED_BEFORE)],
        ),
        ("Reflexes normal.", "Left knee jerk 3 plus.", [("reflex_patellar", Kind.NOT_COMPARABLE)]),
        (
            "General examination normal.",
            "Pulse 130.",
            [("general_all", Kind.NOT_DICTATED), ("heart_rate", Kind.NOT_DICTATED_BEFORE)],
        ),
        (
            "Power normal throughout.",
            "Left pronator drift.",
            [("strength_all", Kind.NOT_DICTATED), ("pronator_drift", Kind.NOT_DICTATED_BEFORE)],
        ),
    ],
)
def test_what_is_named_beside_a_whole_that_was_normal(
    whole: str, named: str, rows: list[tuple[str, Kind]], grammar: Grammar
) -> None:
    """A number is none of its statements, nor what is no part of it; drift is no strength."""
    was, now = (examine([Typed("typed", text)], engine=None, grammar=grammar) for text in (whole, named))
    assert sorted(kinds(was, now, grammar)) == sorted(rows)
    assert sorted(kinds(now, was, grammar)) == sorted((item, MIRROR.get(kind, kind)) for item, kind in rows)


def test_both_sides_meet_one_side(grammar: Grammar) -> None:
    """Both at once, then each by itself."""
    later = [reflex("reflex_biceps", grade, side=side) for grade, side in (("2+", Side.LEFT), ("3+", Side.RIGHT))]
    rows = compare(examination(reflex("reflex_biceps", "2+", side=Side.BOTH)), examination(*later), grammar).rows
    assert {(row.slot.side, row.kind) for row in rows} == {(Side.LEFT, Kind.UNCHANGED), (Side.RIGHT, Kind.CHANGED)}


def test_side_not_said_is_not_taken_for_both(grammar: Grammar) -> None:
    """A grade without side is not compared with one of the left."""
    later = examination(reflex("reflex_biceps", "3+", side=Side.LEFT))
    row = compare(examination(reflex("reflex_biceps", "2+")), later, grammar).rows[0]
    assert (row.kind, row.reason) == (Kind.NOT_COMPARABLE, "side differs")


def test_said_twice_is_not_chosen_from(grammar: Grammar) -> None:
    """Two values at one visit: neither is compared."""
    twice = examination(strength("4"), strength("3"))
    assert kinds(examination(strength("4")), twice, grammar) == [("strength_deltoid", Kind.NOT_COMPARABLE)]


def scale(name: str, points: float, item: str = "named_score") -> Finding:
    """Points of a named scale."""
    return finding(Component.MENTAL_STATUS, item, Status.MEASURED, value=Score(points=points), detail=(name,))


def test_scales_are_kept_apart(grammar: Grammar) -> None:
    """EDSS meets EDSS however it was named; one scale says nothing of another."""
    earlier = examination(scale("EDSS", 3.5), scale("RASS", -1), scale("MMSE", 26, "cognitive_total"))
    later = examination(scale("modified rankin", 2), scale("expanded disability status scale", 4),
                        scale("MOCA", 22, "cognitive_total"))  # fmt: skip
    rows = {
        row.name: (row.kind, row.earlier, row.later, row.difference) for row in compare(earlier, later, grammar).rows
    }
    assert rows == {
        "EDSS": (Kind.WORSE, "3.5", "4", "+0.5"),
        "RASS": (Kind.NOT_DICTATED, "-1", "", ""),
        "modified Rankin scale": (Kind.NOT_DICTATED_BEFORE, "", "2", ""),
        "MMSE": (Kind.NOT_DICTATED, "26", "", ""),
        "MoCA": (Kind.NOT_DICTATED_BEFORE, "", "22", ""),
    }


def test_a_named_scale_within_the_item(grammar: Grammar) -> None:
    """A normal of the whole item speaks for the scale that the other visit names, whichever came first."""
    whole = examination(finding(Component.MENTAL_STATUS, "cognitive_total", Status.NOT_EXAMINED))
    named = examination(scale("MMSE", 26, "cognitive_total"))
    assert kinds(named, whole, grammar) == [("cognitive_total", Kind.NOT_EXAMINED)]
    assert kinds(whole, named, grammar) == [("cognitive_total", Kind.NOT_EXAMINED_BEFORE)]


def test_conditions_are_kept_apart(grammar: Grammar) -> None:
    """Corrected meets corrected, and nothing else; light and dark at one visit are no contradiction."""

    def acuity(text: str, *detail: str) -> Finding:
        return finding(Component.CRANIAL_NERVES, "visual_acuity", Status.MEASURED, side=Side.RIGHT,
                       value=Acuity(text=text), detail=detail)  # fmt: skip

    both = examination(acuity("20/30", "corrected"), acuity("20/60", "uncorrected"))
    later = examination(acuity("20/40", "with glasses"), acuity("20/60", "without glasses"))
    assert [row.kind for row in compare(both, later, grammar).rows] == [Kind.WORSE, Kind.UNCHANGED]
    row = compare(examination(acuity("20/30", "corrected")), examination(acuity("20/60")), grammar).rows[0]
    assert (row.kind, row.reason) == (Kind.NOT_COMPARABLE, "condition differs")


def made(grammar: Grammar) -> st.SearchStrategy[Examination]:
    """Examinations in which nothing is said to be unchanged: that looks back, and so has no mirror."""
    plain = findings(grammar).filter(lambda one: one.status is not Status.UNCHANGED)
    return st.lists(plain, max_size=6).map(lambda said: examination(*said))


def _empty(exam: Examination) -> None:
    assert compare(exam, exam, load_grammar()).changes == ()


def _mirrored(one: Examination, other: Examination) -> None:
    there, back = (compare(*pair, load_grammar()).rows for pair in ((one, other), (other, one)))
    rows = sorted(
        (row.slot.item, row.name, MIRROR.get(row.kind, row.kind).value, row.later, row.earlier) for row in there
    )
    assert rows == sorted((row.slot.item, row.name, row.kind.value, row.earlier, row.later) for row in back)


SLOWLY = (HealthCheck.too_slow, HealthCheck.data_too_large)


@settings(max_examples=QUICK, deadline=None, suppress_health_check=SLOWLY)
@given(exam=made(load_grammar()))
def test_nothing_changed_against_itself(exam: Examination) -> None:
    """compare(a, a) is empty."""
    _empty(exam)


@settings(max_examples=QUICK, deadline=None, suppress_health_check=SLOWLY)
@given(one=made(load_grammar()), other=made(load_grammar()))
def test_comparison_is_the_mirror_of_its_reverse(one: Examination, other: Examination) -> None:
    """compare(a, b) mirrors compare(b, a)."""
    _mirrored(one, other)


FEW = ("reflex_biceps", "strength_deltoid", "strength_all", "strength_upper_limb", "reflexes_all", "pronator_drift",
       "cranial_nerves_2_12", "facial_strength", "blood_pressure", "motor_all", "vibration", "named_score",
       "cognitive_total", "visual_acuity")  # fmt: skip
DETAILS = ((), ("EDSS",), ("expanded disability status scale",), ("RASS",), ("MMSE",), ("corrected",),
           ("with glasses",), ("uncorrected",), ("with reinforcement",), ("more than",))  # fmt: skip


def close(grammar: Grammar) -> st.SearchStrategy[Examination]:
    """Examinations of a few items, so that most of them meet."""
    some = st.sampled_from(FEW).flatmap(
        lambda item: st.builds(
            finding, st.just(grammar.component_of(item)), st.just(item),
            st.sampled_from([status for status in Status if status is not Status.UNCHANGED]),
            side=st.sampled_from((None, Side.LEFT, Side.RIGHT, Side.BOTH)),
            value=st.sampled_from((None, Grade(scale="mrc", grade="4"), Grade(scale="mrc", grade="5"), Score(points=3),
                                   Score(points=4, of=10), Acuity(text="6/9"),
                                   Quantity(number=8), Quantity(number=0), Text(words="absent"))),
            detail=st.sampled_from(DETAILS),
        )
    )  # fmt: skip
    return st.lists(some, max_size=6).map(lambda said: examination(*said))


@settings(max_examples=QUICK, deadline=None, suppress_health_check=SLOWLY)
@given(one=close(load_grammar()), other=close(load_grammar()))
def test_what_meets_is_mirrored_too(one: Examination, other: Examination) -> None:
    """The same among few items: blankets, sides and lists cover each other."""
    _mirrored(one, other)
    _empty(one)


@pytest.mark.slow
@settings(max_examples=FULL, deadline=None, suppress_health_check=SLOWLY)
@given(one=close(load_grammar()), other=close(load_grammar()))
def test_thousands_are_mirrored(one: Examination, other: Examination) -> None:
    """The same in full."""
    _mirrored(one, other)
    _empty(one)


def test_trials_of_a_timed_walk_are_compared_by_their_means(grammar: Grammar) -> None:
    """Not each with its number, and with a single walk as well; what was said of both visits stays in the row."""

    def walks(*seconds: str) -> Examination:
        """Trials of a 25-foot walk."""
        names = ("first trial", "second trial") if len(seconds) > 1 else ("",)
        return examination(
            *(
                finding(
                    Component.COORDINATION_GAIT, "timed_walk", Status.MEASURED,
                    value=Text(words=f"25 ft in {one} s"), detail=(name,) if name else (),
                )
                for one, name in zip(seconds, names, strict=True)
            )
        )  # fmt: skip

    (row,) = compare(walks("6.2", "5.8"), walks("5.2", "4.8"), grammar).rows
    assert (row.kind, row.difference) == (Kind.BETTER, "-1 s")
    assert row.reason == "means of the trials; speed +20 %; faster by 20 % or more (Hobart 2013): met"
    assert row.earlier == "25 ft in 6.2 s (first trial) and also 25 ft in 5.8 s (second trial)"
    (row,) = compare(walks("6"), walks("5.2", "4.8"), grammar).rows
    assert (row.kind, row.difference) == (Kind.BETTER, "-1 s")


def read(text: str, grammar: Grammar) -> Examination:
    """A dictation."""
    return examine([Typed("typed", text)], engine=None, grammar=grammar)


def rows(earlier: str, later: str, grammar: Grammar) -> list[tuple[str, Kind, str, str]]:
    """Name, kind and both statements of every row of two dictations."""
    found = compare(read(earlier, grammar), read(later, grammar), grammar).rows
    return [(row.name, row.kind, row.earlier, row.later) for row in found]


@pytest.mark.parametrize(
    ("was", "kind"), [("4", Kind.UNCHANGED), ("3", Kind.NOT_SO)], ids=["as it was", "another value"]
)
def test_unchanged_beside_a_value_speaks_of_that_value(was: str, kind: Kind, grammar: Grammar) -> None:
    """It is held against that value, is no statement of its own, and says nothing of the other side."""
    earlier = f"Motor. Deltoid right 5, left {was}."
    found = rows(earlier, "Motor. Deltoid strength 4 on the left, unchanged since last visit.", grammar)
    assert found == [
        ("deltoid right", Kind.NOT_DICTATED, "5", ""),
        ("deltoid left", kind, was, "4"),
    ]


def test_otherwise_unchanged_speaks_of_the_other_side(grammar: Grammar) -> None:
    """Not of the value it stands behind."""
    earlier = "Reflexes. Knee jerks 2 plus right, 3 plus left."
    found = rows(earlier, "Reflexes. Knee jerk 1 plus on the right, otherwise unchanged.", grammar)
    assert ("knee jerk left", Kind.UNCHANGED, "3+", "unchanged") in found


def test_unchanged_beside_a_value_at_the_earlier_visit_is_not_compared(grammar: Grammar) -> None:
    """What was unchanged then has its value then."""
    found = rows("Left knee jerk 2 plus, unchanged.", "Knee jerk 2 plus on the left.", grammar)
    assert found == [("knee jerk left", Kind.UNCHANGED, "2+", "2+")]


def test_a_direction_is_compared_with_the_midline(grammar: Grammar) -> None:
    """Its side is where it turns, not another place; half the field of both eyes leaves no eye over."""
    earlier = "Cranial nerves. Tongue midline. Weber midline. Visual fields full on both sides."
    later = "Cranial nerves. Tongue deviates to the left. Weber lateralises to the right. Left homonymous hemianopia."
    found = rows(earlier, later, grammar)
    assert found == [
        ("tongue", Kind.NEW, "midline", "deviates to the left"),
        ("Weber test", Kind.NEW, "midline", "lateralises to the right"),
        ("visual fields", Kind.NEW, "normal", "left homonymous hemianopia"),
    ]
    assert [(name, was, now) for name, _, now, was in rows(later, earlier, grammar)] == [
        (name, was, now) for name, _, was, now in found
    ]


def test_statement_about_both_sides_meets_one_without_a_side_once(grammar: Grammar) -> None:
    """Each speaks for the other: one row, not two."""
    found = rows("Heel to shin normal on both sides.", "Heel to shin not tested.", grammar)
    assert found == [("heel-shin test both sides", Kind.NOT_EXAMINED, "normal", "not examined")]


def test_the_rest_alone_is_told_from_the_whole(grammar: Grammar) -> None:
    """ "Sensation normal except ..." is not what "sensation normal" was; the row says so."""
    whole, rest = "Sensory. Sensation normal.", "Sensory. Sensation normal except left arm light touch reduced."
    reasons = [
        [row.reason for row in compare(read(a, grammar), read(b, grammar), grammar).rows if row.kind is Kind.UNCHANGED]
        for a, b in ((whole, rest), (rest, whole), (rest, rest))
    ]
    assert reasons == [["at one visit of the rest alone"], ["at one visit of the rest alone"], ["", ""]]


def test_one_statement_about_all_stands_beside_each_side(grammar: Grammar) -> None:
    """Where sides are told apart, what the other visit said of neither speaks for both of them."""
    earlier = "Heel to shin normal on both sides. Finger nose test normal on both sides."
    later = "Heel to shin not tested. Finger nose test normal. Finger nose test mild dysmetria on the right."
    assert rows(earlier, later, grammar) == [
        ("heel-shin test both sides", Kind.NOT_EXAMINED, "normal", "not examined"),
        ("finger-nose test right", Kind.NEW, "normal", "mild dysmetria"),
        ("finger-nose test left", Kind.UNCHANGED, "normal", "normal"),
    ]
