"""What stands out, over every item of the packaged grammar and every choice it names.

Common practice, no source, but where a row names one. What is normal and what is a sign is stated here once more by
itself, so that a rule lost or turned round in a grammar file shows.
"""

from __future__ import annotations

import pytest
from by_hand import finding

from dictate.grammar import Grammar, has_rule, load_grammar
from dictate.model import Acuity, Choice, Grade, Pressure, Quantity, Score, Status, Text
from dictate.notes.phrases import stands_out

GRAMMAR = load_grammar()
# A reflex or response whose presence is normal: its absence stands out, and these ways of being present.
RESPONSES: dict[str, set[str]] = {
    "corneal_reflex": {"reduced", "weak"},
    "oculocephalic": {"dysconjugate", "incomplete"},
    "caloric": {"dysconjugate", "reduced"},
    "cough_reflex": {"weak", "bovine"},
    "gag": {"weak", "reduced", "asymmetric"},
    "abdominal_reflex": set(),
    "cremasteric_reflex": set(),
    "anal_reflex": set(),
    "bulbocavernosus_reflex": set(),
    **{f"reflex_{jerk}": set() for jerk in ("biceps", "triceps", "brachioradialis", "patellar", "achilles")},
}
CIRCUMSTANCES = {"examination_conditions"}  # told, and no finding
LEVELS = {"sensory_level", "motor_level"}  # a level is one, whichever it is
PLAIN = (Status.NORMAL, Status.NOT_EXAMINED, Status.NOT_ASSESSABLE, Status.UNCHANGED)


def said(item: str, status: Status, value: object = None, **more: object):
    """One finding of the item's own component."""
    return finding(GRAMMAR.component_of(item), item, status, value=value, **more)


def expected(item: str, status: Status, word: str = "") -> bool:
    """What a neurologist would repeat at the top of the note."""
    if status is Status.ABNORMAL:
        return True
    if status in PLAIN or item in CIRCUMSTANCES:
        return False
    if item in RESPONSES:
        return status is Status.ABSENT or word in RESPONSES[item]
    return status is Status.PRESENT or (status is Status.MEASURED and item in LEVELS)


@pytest.mark.parametrize("item", [name for name, one in GRAMMAR.items.items() if one.values])
def test_every_choice(item):
    """Abnormal stands out, normal does not; a sign when present, a response when absent."""
    kind = GRAMMAR.items[item].kind
    for key, named in GRAMMAR.items[item].values.items():
        status = Status(named.status)
        if status is Status.MEASURED:
            continue
        word = key if named.value is None else named.value
        value = (Choice(choice=word) if kind == "choice" else Text(words=word.replace("_", " "))) if word else None
        assert stands_out(said(item, status, value), GRAMMAR) is expected(item, status, str(value or "")), key


@pytest.mark.parametrize("item", GRAMMAR.items)
def test_every_item_without_a_value(item):
    """A bare statement; signs, tests and responses alike. Only a sign, a response or a level is present or absent."""
    kind = GRAMMAR.items[item].kind
    for status in Status:
        judged = status in (
            Status.NORMAL,
            Status.ABNORMAL,
            Status.NOT_EXAMINED,
            Status.NOT_ASSESSABLE,
            Status.UNCHANGED,
        )
        if judged or (status is not Status.MEASURED and (kind == "presence" or item in LEVELS)):
            assert stands_out(said(item, status), GRAMMAR) is expected(item, status), status


GRADES = {
    "mrc": "0 1 2- 2 2+ 3- 3 3+ 4- 4 4+ 5-",  # MRC 1976 (looked up, secondary): 5 is normal
    "tendon_reflex": "0 trace 4+",  # Hallett 1993 (from memory; looked up, secondary): 1+ to 3+ may be normal
    "ashworth": "1 1+ 2 3 4",  # Bohannon and Smith 1987 (looked up, secondary): 0 is no increase
    "pulse_volume": "0 trace 1+ 3+ 4+",  # common practice, no source
    "edema_pitting": "trace 1+ 2+ 3+ 4+",  # common practice, no source
}


@pytest.mark.parametrize("item", [name for name, one in GRAMMAR.items.items() if one.kind == "grade"])
def test_every_grade_of_every_graded_item(item):
    """The grades that are not normal on their scale; of the jaw jerk only a brisk one."""
    scale = GRAMMAR.items[item].scale
    out = set(GRADES[scale].split()) | ({"3+"} if item == "jaw_jerk" else set())
    for grade in GRAMMAR.scales[scale].grades:
        one = said(item, Status.MEASURED, Grade(scale=scale, grade=grade))
        assert stands_out(one, GRAMMAR) is (grade in out), grade
        assert has_rule(one, GRAMMAR)


@pytest.mark.parametrize(
    ("item", "value", "unit", "out"),
    [
        ("pupil_size", Quantity(number=5.0), "mm", False),  # Witting 2003 (looked up): 96th percentile in ward light
        ("pupil_size", Quantity(number=5.1), "mm", True),
        ("pupil_size", Quantity(number=1.9), "mm", False),  # Witting 2003: 3rd percentile in bright light
        ("pupil_size", Quantity(number=1.8), "mm", True),
        ("pupil_size", Quantity(number=6, then=3), "mm", False),  # 4 to 8 mm in the dark: Spector 1990 (secondary)
        ("pupil_size", Quantity(number=8, then=7), "mm", True),
        ("anisocoria", Quantity(number=1), "mm", False),  # above 1 mm: common teaching
        ("anisocoria", Quantity(number=1.5), "mm", True),
        ("gcs_total", Score(points=15), "", False),
        ("gcs_total", Score(points=14), "", True),  # Teasdale 2014 (looked up)
        ("four_score", Score(points=16), "", False),
        ("four_score", Score(points=15), "", True),  # Wijdicks 2005 (looked up)
        ("nihss_total", Score(points=0), "", False),
        ("nihss_total", Score(points=1), "", True),
        ("nihss_language", Score(points=1), "", True),
        ("sara_total", Score(points=0), "", False),
        ("sara_total", Score(points=0.5), "", True),
        ("muscle_sum", Score(points=48), "", False),
        ("muscle_sum", Score(points=47), "", True),  # De Jonghe 2002 (looked up)
        ("timed_up_and_go", Quantity(number=11.9), "s", False),
        ("timed_up_and_go", Quantity(number=12), "s", True),  # CDC STEADI (looked up, secondary)
        ("digit_span_forward", Quantity(number=5), "", False),
        ("digit_span_forward", Quantity(number=4), "", True),
        ("digit_span_backward", Quantity(number=3), "", False),
        ("digit_span_backward", Quantity(number=2), "", True),
        ("pull_test", Quantity(number=2), "", False),
        ("pull_test", Quantity(number=3), "", True),
        ("recall", Score(points=3, of=3), "", False),
        ("recall", Score(points=2, of=3), "", False),
        ("recall", Score(points=1, of=3), "", True),
        ("registration", Score(points=3, of=3), "", False),
        ("registration", Score(points=2, of=3), "", True),
        ("sensory_level", Text(words="T10"), "", True),
        ("motor_level", Text(words="C6"), "", True),
    ],
)
def test_measured_values_with_a_rule(item, value, unit, out):
    """Each at and beside its limit."""
    status = Status.PRESENT if item == "anisocoria" and out else Status.MEASURED
    assert stands_out(said(item, status, value, unit=unit), GRAMMAR) is out


@pytest.mark.parametrize(
    ("item", "value"),
    [
        ("blood_pressure", Pressure(systolic=180, diastolic=110)),
        ("heart_rate", Quantity(number=120)),
        ("temperature", Quantity(number=39)),
        ("respiratory_rate", Quantity(number=28)),
        ("oxygen_saturation", Quantity(number=88)),
        ("retinal_artery_diastolic", Quantity(number=30)),
        ("visual_acuity", Acuity(text="20/200")),
        ("vital_capacity", Quantity(number=1.2)),
        ("weight", Quantity(number=40)),
        ("pain_score", Score(points=8, of=10)),
        ("cognitive_total", Score(points=20, of=30)),
        ("named_score", Score(points=20)),
        ("timed_walk", Text(words="25 ft in 9 s")),
        ("two_point", Quantity(number=12)),
        ("vibration", Score(points=2, of=8)),
        ("joint_position", Score(points=5, of=10)),
        ("finger_taps", Quantity(number=10)),
        ("grip_strength", Quantity(number=10)),
    ],
)
def test_a_measured_value_without_a_rule_is_listed_as_it_is(item, value):
    """No verdict on it, and the grammar says that it has none. Source: own rule; limits depend on age and method."""
    one = said(item, Status.MEASURED, value)
    assert not stands_out(one, GRAMMAR)
    assert not has_rule(one, GRAMMAR)


def test_a_word_that_goes_with_a_number_can_stand_out():
    """ "Straight leg raise positive at forty degrees"; the angle by itself does not."""
    raised = said("straight_leg_raise", Status.MEASURED, Quantity(number=40), unit="deg", detail=("positive",))
    assert stands_out(raised, GRAMMAR)


def test_a_wide_pupil_in_the_dark_does_not_stand_out():
    """The limits are of light. Source: Witting 2003 (looked up); in the dark 4 to 8 mm: Spector 1990 (secondary)."""
    assert not stands_out(
        said("pupil_size", Status.MEASURED, Quantity(number=7), unit="mm", detail=("in the dark",)), GRAMMAR
    )


def test_the_lists_here_name_items_of_the_grammar(grammar: Grammar):
    """No row of this file speaks of nothing."""
    assert {*RESPONSES, *CIRCUMSTANCES, *LEVELS} <= set(grammar.items)
    assert {item.scale for item in grammar.items.values() if item.kind == "grade"} <= set(GRADES)
