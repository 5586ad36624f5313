"""Components, sides and sites declared for what follows, and blankets over no one knows what."""

from __future__ import annotations

import pytest

from dictate.model import Side
from dictate.reading.in_force.context import Context
from dictate.reading.in_force.headings import HeadingReader


@pytest.fixture
def context():
    return Context()


@pytest.fixture(scope="module")
def reader(lexicon):
    return HeadingReader(lexicon)


@pytest.mark.parametrize(
    ("phrase", "component"),
    [
        ("Motor.", "motor"),
        ("Cranial nerves.", "cranial_nerves"),
        ("Coordination and gait.", "coordination_gait"),
        ("General examination.", "general"),
        ("Mental status.", "mental_status"),
        ("Sensory.", "sensory"),
        ("Reflexes.", "reflexes"),
        ("Motor examination normal.", "motor"),
        ("Zebra.", ""),
    ],
)
def test_a_heading_opens_its_component(reader, nodes, context, phrase, component):
    """Alone, or with what is said of it."""
    reader.headings(nodes(phrase), context)
    assert context.component == component


def test_another_component_ends_a_declared_side(reader, nodes, context):
    """ "On the left: ... Reflexes."."""
    context.component, context.heading_side = "motor", Side.LEFT
    reader.headings(nodes("Reflexes."), context)
    assert context.heading_side is None


@pytest.mark.parametrize(
    ("phrase", "side"),
    [
        ("On the left: deltoid four.", Side.LEFT),
        ("On the right, deltoid four.", Side.RIGHT),
        ("Left: deltoid four.", Side.LEFT),
        ("Left deltoid four.", None),
        ("Deltoid four on the left.", None),
    ],
)
def test_a_side_is_declared_at_the_head(reader, nodes, context, phrase, side):
    """Before a colon, or "on the left" before a comma."""
    reader.orders(nodes(phrase), context)
    assert context.heading_side is side


def test_an_order_is_declared(reader, nodes, context):
    """ "Right then left"."""
    reader.orders(nodes("knee jerks right then left, two plus, three plus"), context)
    assert context.order == (Side.RIGHT, Side.LEFT)
    reader.orders(nodes("left then right"), context)
    assert context.order == (Side.LEFT, Side.RIGHT)


def test_a_site_is_declared(reader, nodes, context):
    """ "Hands: tremor ..." to the end of the sentence."""
    reader.orders(nodes("Hands: tremor on the left."), context)
    assert context.heading_site == "hand"
    reader.orders(nodes("Tremor on the left."), context)
    assert context.heading_site == ""


@pytest.mark.parametrize(
    "phrase",
    ["The rest of the examination is normal.", "Neurological examination otherwise normal.", "Everything else normal."],
)
def test_a_blanket_without_bounds_is_no_finding(rows, remarks, phrase):
    """No one knows what was examined: the words are kept and asked about."""
    assert rows(phrase) == []
    assert remarks(phrase) == [f"blanket-unbounded: {phrase}"]


@pytest.mark.parametrize(
    ("phrase", "finding"),
    [
        ("Cranial nerves. Left ptosis. Otherwise normal.", "cranial_nerves_all normal"),
        ("Motor. Left deltoid four. The rest is normal.", "motor_all normal"),
        ("Mild left facial droop. Otherwise cranial nerves normal.", "cranial_nerves_all normal"),
    ],
)
def test_the_rest_of_a_component_is_one_row(rows, phrase, finding):
    """ "Otherwise normal" is of the component it was said in."""
    assert rows(phrase)[-1] == finding
