"""What one word beside an item says of it."""

from __future__ import annotations

import pytest

from dictate.model import Status
from dictate.reading.phrases.wording import WordReader


@pytest.mark.parametrize(
    ("phrase", "item", "status", "word"),
    [
        ("gait unsteady", "gait", Status.ABNORMAL, "unsteady"),
        ("gait normal", "gait", Status.NORMAL, ""),
        ("gait not tested", "gait", Status.NOT_EXAMINED, ""),
        ("tremor absent", "tremor", Status.ABSENT, ""),
        ("gag normal", "gag", Status.PRESENT, ""),
        ("able to toe walk", "toe_walk", Status.NORMAL, ""),
    ],
)
def test_a_word_says_how_it_was(lexicon, nodes, phrase, item, status, word):
    """By the kind of the item: a normal gag is present, a normal gait is normal."""
    (value,) = (node for node in nodes(phrase) if node.main == "value")
    found = WordReader(lexicon).read(item, lexicon.items[item], value)
    assert found is not None
    assert (found[0], found[2]) == (status, word)


def test_ability_says_nothing_of_what_is_no_task(lexicon, nodes):
    """ "Able to" in front of a walk says nothing of the gait."""
    (value,) = (node for node in nodes("able to toe walk") if node.main == "value")
    assert WordReader(lexicon).read("gait", lexicon.items["gait"], value) is None


def test_the_sign_of_a_muscle_is_written_without_its_name(lexicon, nodes):
    """The line of the note names the muscle already."""
    (sign,) = nodes("supinator muscle weakness")
    found = WordReader(lexicon).read("strength_supinator", lexicon.items["strength_supinator"], sign)
    assert found == (Status.ABNORMAL, None, "weakness")
