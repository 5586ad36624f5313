"""Which phrases name an item, given their neighbours and the heading in force."""

from __future__ import annotations

import pytest

from dictate.reading.in_force.context import Context
from dictate.reading.senses.naming import Labeller


def parts(nodes):
    return {node.text: node.main for node in nodes}


def named(nodes):
    return [node.candidates[0] for node in nodes if node.main == "item"]


@pytest.mark.parametrize(("under", "item"), [("motor", "strength_biceps"), ("reflexes", "reflex_biceps")])
def test_the_heading_decides_a_shared_name(nodes, under, item):
    """ "Biceps" is a muscle under motor, a reflex under reflexes."""
    assert named(nodes("biceps on the left", under)) == [item]


def test_items_last_spoken_of_decide_as_a_heading_does(lexicon, marks):
    """After the deltoid, "biceps five" is a muscle too."""
    context = Context(active=("strength_deltoid",))
    assert named(Labeller(lexicon).label(marks("biceps five"), context)) == ["strength_biceps"]


def test_a_name_in_the_same_sentence_decides_for_the_next(nodes):
    """ "Deltoid five, biceps five"."""
    assert named(nodes("deltoid five, biceps five")) == ["strength_deltoid", "strength_biceps"]


@pytest.mark.parametrize(
    ("phrase", "part"),
    [
        ("gait wide based", ("wide based", "value")),
        ("possible nystagmus", ("possible", "hedge")),
        ("power five except left deltoid four", ("except", "except")),
        ("gait normal, correction, ataxic", ("correction", "correction")),
        ("nystagmus on left gaze", ("on left gaze", "direction")),
        ("mild ptosis", ("mild", "severity")),
        ("vibration six seconds", ("seconds", "unit")),
        ("no tremor", ("no", "negation")),
        ("gait zebra", ("zebra", "word")),
    ],
)
def test_every_mark_plays_one_part(nodes, phrase, part):
    """Values, hedges, exceptions, corrections, directions, severities, units, negations, unknown words."""
    text, main = part
    assert parts(nodes(phrase))[text] == main


def test_a_sign_is_told_from_a_name(nodes):
    """ "Facial droop" says that something was found, "facial strength" only what was examined."""
    (sign,) = nodes("facial droop")
    (name,) = nodes("facial strength")
    assert (sign.candidates, sign.sign) == (("facial_strength",), True)
    assert (name.candidates, name.sign) == (("facial_strength",), False)


def test_words_of_a_reason_name_nothing(nodes):
    """ "Gait not tested because of hip pain": neither hip nor pain is examined."""
    assert named(nodes("gait not tested because of weakness of the deltoid")) == ["gait"]


def test_a_heading_alone_may_be_a_blanket(nodes):
    """ "Motor examination normal" says something of the whole component."""
    assert named(nodes("motor examination normal")) == ["motor_all"]


@pytest.mark.parametrize(
    ("phrase", "under", "items"),
    [("142/84", "", ["blood_pressure"]), ("5/5", "motor", ["strength_all"]), ("5/5", "reflexes", []), ("66", "", [])],
)
def test_a_bare_number_names_what_only_it_can_be(nodes, phrase, under, items):
    """A pressure anywhere, "5/5" under motor, a plain number nothing."""
    assert named(nodes(phrase, under)) == items


@pytest.mark.parametrize(
    ("phrase", "under", "items"),
    [
        ("otherwise normal", "cranial_nerves", ["cranial_nerves_all"]),
        ("the rest is normal", "motor", ["motor_all"]),
        ("otherwise normal", "", []),
        ("the rest of the examination is normal", "motor", []),
    ],
)
def test_the_rest_is_of_the_component_spoken_of(nodes, phrase, under, items):
    """Without a component, or said of the whole examination, it names nothing."""
    assert named(nodes(phrase, under)) == items


def test_a_descriptor_is_no_name_beside_its_item(nodes):
    """ "Finger to nose ... dysmetria": how it was, not what was examined."""
    assert named(nodes("finger to nose mild dysmetria on the left")) == ["finger_nose"]
