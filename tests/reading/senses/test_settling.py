"""Units told to their numbers, negations that deny nothing, a no that takes back."""

from __future__ import annotations

import pytest


def parts(nodes):
    return [(node.text, node.main) for node in nodes]


def test_a_number_is_told_its_unit(nodes):
    """The unit that directly follows; none over a comma."""
    first, second = [node for node in nodes("vibration six seconds, right great toe four") if node.main == "number"]
    assert first.unit is not None
    assert first.unit.text == "seconds"
    assert second.unit is None


@pytest.mark.parametrize("phrase", ["there was no time", "no zebra", "gait normal, no time today"])
def test_a_negation_of_nothing_examined_denies_nothing(nodes, phrase):
    """ "There was no time" is no finding."""
    assert "negation" not in [main for _, main in parts(nodes(phrase))]


@pytest.mark.parametrize("phrase", ["no tremor", "there was no tremor", "gait normal, no tremor"])
def test_a_negation_of_an_item_stays(nodes, phrase):
    """ "There was no tremor" is one."""
    assert "negation" in [main for _, main in parts(nodes(phrase))]


@pytest.mark.parametrize(
    "phrase",
    ["tremor in the right leg, no, the left leg", "tremor on the left no the right", "gait normal, no, ataxic"],
)
def test_a_no_that_takes_back_is_a_correction(nodes, phrase):
    """Between commas, or before the other side."""
    assert ("no", "correction") in parts(nodes(phrase))


def test_what_was_lost_is_counted_in_words(nodes):
    """ "Missed two" of a recall is no score of two; of no score it is two."""
    assert ("missed two", "value") in parts(nodes("missed two on recall"))
    assert ("two", "number") in parts(nodes("missed two doses, deltoid four"))


def test_a_small_number_at_a_pressure_is_minutes(nodes):
    """ "At three 104/70"; not "at three" of something else."""
    assert ("3", "minutes") in parts(nodes("at 3, 104/70"))
    assert ("3", "number") in parts(nodes("biceps two at 3, triceps two"))
