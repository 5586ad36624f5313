"""How well a way of dividing a sentence reads."""

from __future__ import annotations

import pytest

from dictate.reading.statements.weights import Statement, Weigher


@pytest.fixture(scope="module")
def weigher(lexicon):
    return Weigher(lexicon)


def split(nodes, phrase, under=""):
    """Words before the name, the name, words after it."""
    found = nodes(phrase, under)
    place = next(place for place, node in enumerate(found) if node.main == "item")
    return Statement(before=found[:place], names=[found[place]], after=found[place + 1 :])


@pytest.mark.parametrize(
    ("candidates", "phrase", "word", "accepted"),
    [
        (("reflex_patellar",), "knee jerk two plus", "two plus", True),
        (("heart_rate",), "knee jerk two plus", "two plus", False),
        (("plantar_response",), "plantars extensor", "extensor", True),
        (("gait",), "gait normal", "normal", True),
        (("reflex_patellar",), "vibration six seconds", "six", False),
        (("vibration",), "vibration six seconds", "six", True),
        (("strength_deltoid", "heart_rate"), "pulse 66", "66", True),
    ],
)
def test_a_value_is_accepted_where_it_is_possible(weigher, nodes, candidates, phrase, word, accepted):
    """By kind, scale and unit; of any of the items is enough."""
    node = next(node for node in nodes(phrase) if node.text == word)
    assert weigher.accepts(candidates, node) is accepted


@pytest.mark.parametrize(
    ("phrase", "enough"), [("ptosis", True), ("facial droop", True), ("gait", False), ("knee jerk", False)]
)
def test_naming_a_sign_is_enough(weigher, nodes, phrase, enough):
    """A sign says what was found; an examination does not."""
    assert weigher.satisfied_alone(split(nodes, phrase)) is enough


def test_a_statement_with_its_value_reads_better(weigher, nodes):
    """ "Gait normal" before "gait"."""
    full, bare = split(nodes, "gait normal"), split(nodes, "gait")
    assert weigher.weigh(full, first=True, tight=False) > weigher.weigh(bare, first=True, tight=False)


def test_a_value_the_item_cannot_have_reads_worse(weigher, nodes):
    """A reflex's grade beside a pulse."""
    right, wrong = split(nodes, "knee jerk two plus"), split(nodes, "temperature two plus")
    assert weigher.weigh(right, first=True, tight=False) > weigher.weigh(wrong, first=True, tight=False)


def test_a_comma_inside_what_stands_before_the_name_reads_worse(weigher, nodes):
    """What stands before a comma belongs to something else."""
    right, wrong = split(nodes, "left ptosis"), split(nodes, "left, ptosis")
    assert weigher.weigh(right, first=False, tight=False) > weigher.weigh(wrong, first=False, tight=False)


def test_a_negation_left_at_the_end_reads_worse(weigher, nodes):
    """ "Gait normal, no" ... tremor: the no is the tremor's."""
    right, wrong = split(nodes, "gait normal"), split(nodes, "gait normal no tremor")
    wrong.after = wrong.after[:2]
    assert [node.main for node in wrong.after] == ["value", "negation"]
    assert weigher.weigh(right, first=True, tight=True) > weigher.weigh(wrong, first=True, tight=True)


@pytest.mark.parametrize(
    ("phrase", "postposed"),
    [("on the right", True), ("bilaterally", True), ("right", False), ("in the right", True), ("of the right", False)],
)
def test_a_side_that_stands_behind_its_value(weigher, nodes, phrase, postposed):
    """ "On the right" belongs to what stands before it, "right" may not."""
    found = nodes(phrase)
    assert weigher.is_postposed(found, len(found) - 1) is postposed


def test_a_statement_knows_its_words_and_items(nodes):
    """In the order said."""
    statement = split(nodes, "left ptosis mild")
    assert [node.text for node in statement.nodes] == ["left", "ptosis", "mild"]
    assert statement.candidates == ("ptosis",)


def test_words_left_to_what_was_said_before_weigh_by_what_it_can_have(weigher, nodes):
    """A grade after a reflex reads better than after a pulse."""
    found = nodes("three plus on the left")
    assert weigher.weigh_orphan(found, ("reflex_patellar",)) > weigher.weigh_orphan(found, ("temperature",))
