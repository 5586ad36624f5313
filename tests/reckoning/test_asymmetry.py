"""Sides compared, and weakness by root and nerve."""

from __future__ import annotations

import pytest
from reckoning.series import figures, finding

from dictate.grammar import Grammar, load_grammar
from dictate.model import Component, Grade, Side, Status

REFLEXES, STRENGTH = "reflexes, sides compared", "strength by root and nerve"


@pytest.fixture(scope="module")
def grammar() -> Grammar:
    """The packaged grammar."""
    return load_grammar()


def reflex(item: str, grade: str, side: Side | None):
    """One reflex."""
    value = Grade(scale="tendon_reflex", grade=grade)
    return finding(f"reflex_{item}", value, component=Component.REFLEXES, side=side)


def muscle(item: str, grade: str, side: Side | None = Side.LEFT):
    """One muscle."""
    return finding(f"strength_{item}", Grade(scale="mrc", grade=grade), component=Component.MOTOR, side=side)


def test_reflexes_that_differ_are_named_with_their_roots(grammar):
    """Equal ones, one side alone and blankets are not."""
    found = (
        reflex("biceps", "2+", Side.RIGHT),
        reflex("biceps", "3+", Side.LEFT),
        reflex("triceps", "2+", Side.BOTH),
        reflex("patellar", "2+", Side.RIGHT),
        reflex("achilles", "1+", Side.RIGHT),
        reflex("achilles", "0", Side.LEFT),
        reflex("all", "2+", Side.RIGHT),
    )
    (figure,) = figures(REFLEXES, found, grammar=grammar)
    assert figure.text == "Reflexes differ: biceps reflex right 2+, left 3+ (C5-6); ankle jerk right 1+, left 0 (S1-2)"
    assert figure.inputs == (0, 1, 4, 5)


def test_equal_sides_give_no_figure(grammar):
    """Nothing that adds nothing."""
    equal = (reflex("biceps", "2+", Side.RIGHT), reflex("biceps", "2+", Side.LEFT), muscle("deltoid", "5", Side.BOTH))
    assert figures(REFLEXES, equal, grammar=grammar) == ()
    assert figures(STRENGTH, equal, grammar=grammar) == ()


def test_strength_of_both_sides_stands_in_one_table(grammar):
    """By side and by root; a muscle without roots comes last."""
    found = (
        muscle("shoulder_flexors", "5", Side.RIGHT),
        muscle("shoulder_flexors", "4", Side.LEFT),
        muscle("deltoid", "5", Side.RIGHT),
        muscle("deltoid", "4-", Side.LEFT),
        muscle("triceps", "4", Side.BOTH),
    )
    (figure,) = figures(STRENGTH, found, grammar=grammar)
    assert figure.text == (
        "Strength by root (nerve): C5-6 deltoid right 5 left 4- (axillary); C6-8 triceps both 4 (radial); "
        "shoulder flexion right 5 left 4"
    )


def test_weak_muscles_stand_by_root_with_their_nerve(grammar):
    """From above down, then those of 5; a single weak muscle of one side needs no table, of both it does."""
    weak = (muscle("tibialis_anterior", "4+"), muscle("finger_extensors", "4-"), muscle("deltoid", "4"))
    (figure,) = figures(STRENGTH, (*weak, muscle("triceps", "5"), muscle("biceps", "5", Side.BOTH)), grammar=grammar)
    assert figure.text == (
        "Strength by root (nerve): C5-6 deltoid left 4 (axillary); C7-8 finger extension left 4- "
        "(posterior interosseous); L4-5 tibialis anterior left 4+ (deep peroneal). At 5: C5-6 biceps both; "
        "C6-8 triceps left"
    )
    assert figure.inputs == (0, 1, 2, 3, 4)
    assert figures(STRENGTH, weak[:1], grammar=grammar) == ()
    assert len(figures(STRENGTH, (*weak[:1], muscle("tibialis_anterior", "5", Side.RIGHT)), grammar=grammar)) == 1


def test_a_grade_that_does_not_exist_is_not_compared(grammar):
    """7+ is asked about."""
    assert (
        figures(REFLEXES, (reflex("biceps", "7+", Side.RIGHT), reflex("biceps", "1+", Side.LEFT)), grammar=grammar)
        == ()
    )


def test_no_words_of_localisation(grammar):
    """A table, no lesion."""
    weak = (muscle("tibialis_anterior", "4+"), muscle("peronei", "4-"))
    (figure,) = figures(STRENGTH, weak, grammar=grammar)
    assert not any(
        word in figure.text.lower() for word in ("lesion", "radiculopathy", "palsy", "neuropathy", "syndrome")
    )


def test_two_grades_of_one_side_are_not_compared(grammar):
    """None is chosen; nor is a grade without side, at a site, or not measured."""
    twice = (reflex("biceps", "2+", Side.RIGHT), reflex("biceps", "3+", Side.RIGHT), reflex("biceps", "1+", Side.LEFT))
    assert figures(REFLEXES, twice, grammar=grammar) == ()
    assert figures(REFLEXES, (reflex("biceps", "2+", None), reflex("biceps", "1+", Side.LEFT)), grammar=grammar) == ()
    not_done = finding("reflex_biceps", component=Component.REFLEXES, side=Side.RIGHT, status=Status.NOT_EXAMINED)
    assert figures(REFLEXES, (not_done, reflex("biceps", "1+", Side.LEFT)), grammar=grammar) == ()


def test_without_grammar_there_is_no_table():
    """Roots and nerves are the grammar's."""
    assert figures(REFLEXES, (reflex("biceps", "2+", Side.RIGHT), reflex("biceps", "3+", Side.LEFT))) == ()
