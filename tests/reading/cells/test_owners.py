"""Which of several items a value speaks of, and in which sense."""

from __future__ import annotations

import pytest

from dictate.reading.cells.owners import Owners

PUPILS = ("pupil_size", "pupil_reaction", "anisocoria")
PULSE = ("heart_rate", "heart_rhythm", "peripheral_pulses")


def one(nodes, phrase, word):
    return next(node for node in nodes(phrase) if node.text == word)


@pytest.mark.parametrize(
    ("candidates", "phrase", "word", "owner"),
    [
        (PUPILS, "pupils three millimetres", "three", "pupil_size"),
        (PUPILS, "pupils brisk", "brisk", "pupil_reaction"),
        (PULSE, "pulse 66", "66", "heart_rate"),
        (PULSE, "pulse irregularly irregular", "irregularly irregular", "heart_rhythm"),
        (("reflex_all", "reflexes_all"), "reflexes two plus", "two plus", "reflex_all"),
        (("reflex_all", "reflexes_all"), "reflexes normal", "normal", "reflexes_all"),
    ],
)
def test_a_value_goes_to_the_item_that_can_have_it(lexicon, nodes, candidates, phrase, word, owner):
    """Millimetres to the size, "brisk" to the reaction, a grade to the graded."""
    assert Owners(lexicon).owner(candidates, one(nodes, phrase, word)) == owner


def test_without_items_nobody_owns_it(lexicon, nodes):
    """Empty."""
    assert Owners(lexicon).owner((), one(nodes, "pupils brisk", "brisk")) == ""


@pytest.mark.parametrize(
    ("owner", "phrase", "word", "sense"),
    [
        ("plantar_response", "plantars flexor", "flexor", "normal"),
        ("plantar_response", "plantars extensor", "extensor", "abnormal"),
        ("gait", "gait normal", "normal", "normal"),
        ("gait", "gait wide based", "wide based", "abnormal"),
        ("gait", "gait not tested", "not tested", "not_examined"),
        ("tone", "tone could not be assessed", "could not be assessed", "not_assessable"),
        ("tremor", "tremor absent", "absent", "absent"),
    ],
)
def test_the_sense_of_a_word_is_its_items(lexicon, nodes, owner, phrase, word, sense):
    """Flexor is normal of the plantar response, extensor is not."""
    assert Owners(lexicon).sense(owner, one(nodes, phrase, word)) == sense


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Pupils three millimetres and brisk on both sides.",
            ["pupil_size both measured 3", "pupil_reaction both normal brisk"],
        ),
        ("Triceps jerk two plus on the left.", ["reflex_triceps left measured 2+"]),
        ("Pulse 66.", ["heart_rate measured 66"]),
    ],
)
def test_one_name_may_speak_of_several_items(rows, phrase, findings):
    """Each value is given to its own."""
    assert sorted(rows(phrase)) == sorted(findings)
