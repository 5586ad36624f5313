"""How one statement about an item differs from another."""

from __future__ import annotations

import pytest
from by_hand import finding

from dictate.grammar import Grammar
from dictate.model import Acuity, Choice, Finding, Grade, Pressure, Quantity, Score, Status, Text, Value
from dictate.notes.directions import Change, Kind, beside_whole, change


def said(
    item: str, value: Value | None, grammar: Grammar, *, status: Status = Status.MEASURED, **more: object
) -> Finding:
    """A finding of that item."""
    return finding(grammar.component_of(item), item, status, value=value, **more)


def grade(scale: str, text: str) -> Grade:
    """A grade."""
    return Grade(scale=scale, grade=text)


@pytest.mark.parametrize(
    ("item", "was", "now", "kind", "difference"),
    [
        ("strength_deltoid", grade("mrc", "4-"), grade("mrc", "4"), Kind.BETTER, ""),
        ("strength_deltoid", grade("mrc", "5"), grade("mrc", "5-"), Kind.WORSE, ""),
        ("ashworth", grade("ashworth", "1"), grade("ashworth", "1+"), Kind.WORSE, ""),
        ("reflex_biceps", grade("tendon_reflex", "2+"), grade("tendon_reflex", "0"), Kind.CHANGED, ""),
        ("gcs_total", Score(points=13), Score(points=15), Kind.BETTER, "+2"),
        ("nihss_total", Score(points=13), Score(points=15), Kind.WORSE, "+2"),
        ("cognitive_total", Score(points=20, of=30), Score(points=22, of=30), Kind.CHANGED, "+2"),
        ("cognitive_total", Score(points=20, of=30), Score(points=20, of=20), Kind.NOT_COMPARABLE, ""),
        ("visual_acuity", Acuity(text="6/12"), Acuity(text="6/9"), Kind.BETTER, ""),
        ("visual_acuity", Acuity(text="6/12"), Acuity(text="20/40"), Kind.CHANGED, ""),
        ("visual_acuity", Text(words="counting fingers"), Acuity(text="6/9"), Kind.BETTER, ""),
        ("visual_acuity", Acuity(text="20/400"), Text(words="hand movements"), Kind.WORSE, ""),
        ("visual_acuity", Acuity(text="1/60"), Text(words="counting fingers"), Kind.CHANGED, ""),
        ("visual_acuity", Text(words="counting fingers"), Text(words="hand movements"), Kind.WORSE, ""),
        ("visual_acuity", Text(words="blurred"), Acuity(text="6/9"), Kind.NOT_COMPARABLE, ""),
        ("visual_acuity", Acuity(text="6/7.5"), Acuity(text="6/9"), Kind.WORSE, ""),
        ("visual_acuity", Acuity(text="counting fingers"), Acuity(text="hand movements"), Kind.WORSE, ""),
        ("visual_acuity", Acuity(text="no light perception"), Acuity(text="light perception"), Kind.BETTER, ""),
        ("visual_acuity", Acuity(text="light perception"), Acuity(text="hand movements"), Kind.BETTER, ""),
        ("finger_taps", Quantity(number=20), Quantity(number=26.5), Kind.BETTER, "+6.5"),
        ("timed_walk", Text(words="10 m in 12 s"), Text(words="10 m in 14.5 s"), Kind.WORSE, "+2.5 s"),
        ("timed_walk", Text(words="10 m in 12 s"), Text(words="6 m in 8 s"), Kind.NOT_COMPARABLE, ""),
        ("heart_rate", Quantity(number=60), Quantity(number=80), Kind.CHANGED, "+20"),
        ("blood_pressure", Pressure(systolic=90), Pressure(systolic=95, diastolic=60), Kind.CHANGED, "+5"),
        ("pupil_size", Quantity(number=4, then=2), Quantity(number=4, then=3), Kind.CHANGED, ""),
        ("pupil_size", Quantity(number=4), Text(words="small"), Kind.NOT_COMPARABLE, ""),
    ],
)
def test_values(item: str, was: Value, now: Value, kind: Kind, difference: str, grammar: Grammar) -> None:
    """Better and worse only where the scale or the item has a direction; numbers always with their difference."""
    found = change(said(item, was, grammar), said(item, now, grammar), grammar)
    assert (found.kind, found.difference) == (kind, difference)


@pytest.mark.parametrize(
    ("item", "number", "kind"),
    [
        ("vibration", Quantity(number=8), Kind.WORSE),
        ("vibration", Score(points=4, of=8), Kind.WORSE),
        ("vibration", Quantity(number=0), Kind.NOT_COMPARABLE),
        ("pupil_size", Quantity(number=4), Kind.NOT_COMPARABLE),
    ],
)
def test_less_than_absent_there_cannot_be(item: str, number: Value, kind: Kind, grammar: Grammar) -> None:
    """ "8 s", then "absent": worse, where more is better; the other way round better."""
    some = said(item, number, grammar)
    none = said(item, Text(words="absent"), grammar, status=Status.ABNORMAL)
    assert change(some, none, grammar).kind is kind
    assert change(none, some, grammar).kind is (Kind.BETTER if kind is Kind.WORSE else kind)
    reduced = said(item, Text(words="reduced"), grammar, status=Status.ABNORMAL)
    assert change(some, reduced, grammar).kind is Kind.NOT_COMPARABLE


@pytest.mark.parametrize(
    ("was", "now", "kind"),
    [
        ("moderate lower facial weakness", "mild lower facial weakness", Kind.BETTER),
        ("mild lower facial weakness", "severe lower facial weakness", Kind.WORSE),
        ("mild lower facial weakness", "moderate upper facial weakness", Kind.CHANGED),
        ("lower facial weakness", "mild lower facial weakness", Kind.CHANGED),
        ("Mild weakness", "mild  weakness", Kind.UNCHANGED),
    ],
)
def test_how_severe(was: str, now: str, kind: Kind, grammar: Grammar) -> None:
    """Only where the words differ in nothing else."""
    pair = [said("facial_strength", Text(words=text), grammar, status=Status.ABNORMAL) for text in (was, now)]
    assert change(*pair, grammar).kind is kind


def test_number_words_and_digits_are_the_same(grammar: Grammar) -> None:
    """ "Five minutes" heard at one visit and typed as "5 minutes" at the other."""
    pair = [
        said("orthostatic_symptoms", None, grammar, status=Status.PRESENT, detail=(text,))
        for text in ("after five minutes", "after 5 minutes")
    ]
    assert change(*pair, grammar).kind is Kind.UNCHANGED


def test_choice_by_its_sense(grammar: Grammar) -> None:
    """Flexor then extensor is new; the reverse is gone."""
    flexor = said("plantar_response", Choice(choice="flexor"), grammar, status=Status.NORMAL)
    extensor = said("plantar_response", Choice(choice="extensor"), grammar, status=Status.ABNORMAL)
    assert (change(flexor, extensor, grammar).kind, change(extensor, flexor, grammar).kind) == (Kind.NEW, Kind.GONE)


def test_normal_stands_for_the_only_normal_grade(grammar: Grammar) -> None:
    """Of strength it is 5; a reflex has several, so "normal" against 3+ stays open."""
    strong = said("strength_deltoid", None, grammar, status=Status.NORMAL)
    assert change(said("strength_deltoid", grade("mrc", "4"), grammar), strong, grammar).kind is Kind.BETTER
    lively = said("reflex_biceps", grade("tendon_reflex", "3+"), grammar)
    normal = said("reflex_biceps", None, grammar, status=Status.NORMAL)
    assert change(normal, lively, grammar).kind is Kind.NOT_COMPARABLE


@pytest.mark.parametrize(
    ("scale", "was", "now", "kind"),
    [
        ("EDSS", Score(points=3.5), Score(points=4), Kind.WORSE),
        ("barthel", Score(points=60, of=100), Score(points=75), Kind.BETTER),
        ("RASS", Score(points=-2), Score(points=0), Kind.CHANGED),  # 0 is what is aimed at
        ("frailty scale", Score(points=4), Score(points=5), Kind.CHANGED),  # which of them was not said
    ],
)
def test_direction_of_a_named_scale(scale: str, was: Score, now: Score, kind: Kind, grammar: Grammar) -> None:
    """Each scale has its own, from the grammar; without one it is a change. The name fixes the maximum."""
    pair = [said("named_score", value, grammar, detail=(scale,)) for value in (was, now)]
    assert change(*pair, grammar).kind is kind


def test_limit_is_no_number(grammar: Grammar) -> None:
    """ "More than ten seconds" and then twelve: it may be the same."""
    pair = [
        said("vibration", Quantity(number=number), grammar, unit="s", detail=detail)
        for number, detail in ((10, ("more than",)), (12, ()))
    ]
    found = change(*pair, grammar)
    assert (found.kind, found.difference, found.reason) == (Kind.NOT_COMPARABLE, "", "said as a limit")


def test_same_value_told_otherwise(grammar: Grammar) -> None:
    """The number is the same; both wordings are shown."""
    pair = [said("recall", Score(points=2, of=3), grammar, detail=detail) for detail in (("after 5 minutes",), ())]
    found = change(*pair, grammar)
    assert (found.kind, found.reason) == (Kind.UNCHANGED, "the value")


def test_normal_and_its_grade_told_otherwise_mirror_each_other(grammar: Grammar) -> None:
    """Whichever came first: a normal deltoid and "5, with pain" are the same strength (found by generated visits)."""
    normal = said("strength_deltoid", None, grammar, status=Status.NORMAL)
    five = said("strength_deltoid", grade("mrc", "5"), grammar, detail=("with pain",))
    assert change(normal, five, grammar).kind is Kind.UNCHANGED
    assert change(five, normal, grammar).kind is Kind.UNCHANGED


@pytest.mark.parametrize(
    ("was", "now", "reason"),
    [
        ("25 ft in 6 s", "25 ft in 5 s", "speed +20 %; faster by 20 % or more (Hobart 2013): met"),
        ("25 ft in 5 s", "25 ft in 6 s", "speed -16.7 %; faster by 20 % or more (Hobart 2013): not met"),
        ("10 m in 12 s", "10 m in 8 s", ""),
    ],
)
def test_a_walk_of_25_feet_says_whether_it_is_faster_by_a_fifth(
    was: str, now: str, reason: str, grammar: Grammar
) -> None:
    """Of speed, on the two times that stand beside it; other distances say nothing of it."""
    walks = [said("timed_walk", Text(words=words), grammar) for words in (was, now)]
    assert change(*walks, grammar).reason == reason


@pytest.mark.parametrize("kind", list(Kind))
def test_beside_a_whole_that_was_normal(kind: Kind) -> None:
    """What became of a sign is told apart where only one visit named it; what says nothing of it stays."""
    says = kind in (Kind.NEW, Kind.GONE, Kind.WORSE, Kind.BETTER, Kind.CHANGED)
    assert beside_whole(Change(kind), named_now=True).kind is (Kind.NEW_BY_NAME if says else kind)
    assert beside_whole(Change(kind), named_now=False).kind is (Kind.NOT_NAMED if says else kind)
