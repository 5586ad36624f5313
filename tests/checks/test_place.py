"""Sides, positions and times that are missing."""

from __future__ import annotations

import pytest

from dictate.checks import run_checks
from dictate.grammar import Item
from dictate.model import Component, Position


@pytest.mark.parametrize(
    ("item", "status", "value", "more"),
    [
        ("reflex_biceps", "measured", "3+", {"quote": "biceps reflex three plus"}),
        ("reflex_biceps", "measured", "2+", {"quote": "biceps reflex two plus"}),
        ("strength_deltoid", "measured", "4-", {"quote": "deltoid four minus"}),
        ("strength_wrist_extensors", "measured", "4", {"quote": "wrist extensors four"}),
        ("visual_acuity", "measured", "20/30", {}),
        ("finger_taps", "measured", "30", {}),
        ("pronator_drift", "present", None, {}),
        ("ptosis", "present", "2", {}),
        ("tone", "abnormal", "increased", {"site": "leg", "quote": "tone increased in the legs"}),
        ("plantar_response", "abnormal", "extensor", {"quote": "plantars extensor"}),
        ("dystonia", "present", None, {"site": "foot", "quote": "dystonia of the foot"}),
    ],
)
def test_a_paired_item_that_may_differ_needs_its_side(said, ask, item, status, value, more):
    """Graded, measured, abnormal or present without side must be asked."""
    (query,) = ask("side-missing", said(item, status, value, **more))
    assert query.severity == "must"
    assert set(query.suggestions) == {"left", "right", "both"}


@pytest.mark.parametrize(
    ("item", "status", "value", "more"),
    [
        ("tone", "normal", None, {}),
        ("tremor", "absent", None, {}),
        ("plantar_response", "normal", "flexor", {"quote": "plantars flexor"}),
        ("pronator_drift", "not_examined", None, {}),
        ("reflex_all", "measured", "2+", {}),
        ("strength_upper_limb", "measured", "4", {}),
        ("grip_strength", "measured", "22", {}),
        ("nystagmus", "present", None, {}),
        ("gait", "abnormal", "ataxic", {}),
        ("reflex_biceps", "measured", "3+", {"side": "both"}),
        ("reflex_biceps", "measured", "3+", {"side": "left"}),
        ("fasciculations", "present", None, {"site": "tongue"}),
        ("fasciculations", "present", "generalised", {}),
        ("pinprick", "abnormal", "reduced", {"quote": "pinprick reduced in a stocking distribution"}),
        ("pupil_size", "measured", "3", {"quote": "pupils three millimetres"}),
        ("reflex_patellar", "measured", "2+", {"quote": "knee jerks two plus"}),
        ("reflex_achilles", "measured", "0", {"quote": "ankles absent"}),
        ("pinprick", "abnormal", "absent", {"quote": "pinprick absent at the toes"}),
        ("dystonia", "present", None, {"site": "neck", "quote": "dystonia of the neck"}),
        ("dystonia", "present", None, {"site": "hand", "quote": "dystonia of the hands"}),
        ("dystonia", "absent", None, {"site": "foot", "quote": "no dystonia of the foot"}),
    ],
)
def test_no_side_is_missing(said, ask, item, status, value, more):
    """Normal, absent, blanket, one-sided by nature, or said of both: nothing is asked."""
    assert ask("side-missing", said(item, status, value, **more)) == ()


def test_an_uneven_grade_in_the_plural_is_looked_at(said, ask):
    """ "Ankle jerks trace" most likely means both: look, not must."""
    (query,) = ask("side-missing", said("reflex_achilles", "measured", "trace", quote="the ankle jerks are trace"))
    assert query.severity == "look"
    assert query.suggestions[0] == "both"


def test_one_pressure_by_itself_needs_no_position(said, ask):
    """An isolated resting pressure raises nothing."""
    assert (
        ask("position-missing", said("blood_pressure", "measured", "128/76"), said("heart_rate", "measured", "70"))
        == ()
    )


def test_a_pressure_without_position_in_a_series_is_asked(said, ask):
    """Once another pressure has a position, the one without must be asked; its pulse is not asked again."""
    queries = ask(
        "position-missing",
        said("blood_pressure", "measured", "140/80", position="supine"),
        said("heart_rate", "measured", "60", position="supine"),
        said("blood_pressure", "measured", "118/70"),
        said("heart_rate", "measured", "64"),
    )
    assert [(query.item, query.severity, query.findings) for query in queries] == [("blood_pressure", "must", (2,))]


def test_a_rate_without_position_is_asked_when_no_pressure_lacks_one(said, ask):
    """A series of rates alone is a series too."""
    (query,) = ask(
        "position-missing",
        said("heart_rate", "measured", "60", position="supine"),
        said("heart_rate", "measured", "90"),
    )
    assert query.findings == (1,)


def test_what_was_felt_between_two_positions_is_asked(said, ask):
    """No symptoms lying, or none on standing: nobody said; of the last reading it is no question."""
    lying = said("blood_pressure", "measured", "140/80", position="supine")
    standing = said("blood_pressure", "measured", "120/80", position="standing", minutes=1.0)
    felt = said("orthostatic_symptoms", "absent")
    assert len(ask("position-missing", lying, felt, standing)) == 1
    assert not ask("position-missing", lying, standing, felt)
    assert not ask("position-missing", lying, said("murmur", "absent"), felt, standing)


def test_the_dizziness_scope_asks_for_the_position_of_one_pressure(said, ask):
    """With dizziness as the complaint even an isolated pressure needs its position."""
    assert len(ask("position-missing", said("blood_pressure", "measured", "128/76"), scope="dizziness")) == 1


def test_a_pressure_after_a_manoeuvre_has_no_position_to_miss(said, ask):
    """After stairs no position is asked for."""
    assert (
        ask(
            "position-missing",
            said("blood_pressure", "measured", "140/80", position="supine"),
            said("blood_pressure", "measured", "118/70", site="stairs"),
        )
        == ()
    )


def test_one_standing_pressure_without_time_is_looked_at(said, ask):
    """Lying and one standing reading: the time is worth a look."""
    (query,) = ask(
        "time-missing",
        said("blood_pressure", "measured", "98/80", position="supine"),
        said("heart_rate", "measured", "64", position="supine"),
        said("blood_pressure", "measured", "70/palpable", position="standing"),
        said("heart_rate", "measured", "84", position="standing"),
    )
    assert (query.item, query.severity) == ("blood_pressure", "look")


@pytest.mark.parametrize("scope", ["", "dizziness"])
def test_a_standing_series_must_have_its_times(said, ask, scope):
    """With two standing readings, or dizziness, the time must be asked."""
    (query,) = ask(
        "time-missing",
        said("blood_pressure", "measured", "140/80", position="supine"),
        said("blood_pressure", "measured", "102/66", position="standing"),
        said("blood_pressure", "measured", "98/60", position="standing", minutes=5.0),
        scope=scope,
    )
    assert (query.severity, query.findings) == ("must", (1,))


def test_a_standing_pressure_must_have_its_time_with_dizziness(said, ask):
    """One standing reading is enough with dizziness as the complaint."""
    (query,) = ask(
        "time-missing",
        said("blood_pressure", "measured", "140/80", position="supine"),
        said("blood_pressure", "measured", "102/66", position="standing"),
        scope="dizziness",
    )
    assert query.severity == "must"


def test_standing_pressures_without_a_baseline_need_no_time(said, ask):
    """Without a reading lying or sitting nothing is compared."""
    assert ask("time-missing", said("blood_pressure", "measured", "102/66", position="standing")) == ()


def test_minutes_zero_is_a_time(said, ask):
    """Immediately on standing is a time."""
    assert (
        ask(
            "time-missing",
            said("blood_pressure", "measured", "140/80", position="sitting"),
            said("blood_pressure", "measured", "102/66", position="standing", minutes=0.0),
        )
        == ()
    )


def test_other_readings_in_several_positions_need_theirs(said, exam, grammar):
    """Vital capacity lying and once without position: asked, the dizziness scope or not."""
    item = Item(name="vital capacity", kind="quantity", unit="L", positions=True)
    part = grammar.components[Component.GENERAL]
    part = part.model_copy(update={"items": {**part.items, "vital_capacity": item}})
    changed = grammar.model_copy(update={"components": {**grammar.components, Component.GENERAL: part}})
    made = said("heart_rate", "measured", "3")
    lying = made.model_copy(update={"item": "vital_capacity", "position": Position.SUPINE})
    other = made.model_copy(update={"item": "vital_capacity"})
    assert [query.code for query in run_checks(exam(lying, other), changed)] == ["position-missing"]
    assert run_checks(exam(other), changed) == ()
