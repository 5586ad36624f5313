"""The part a mark plays when nothing but itself is known."""

from __future__ import annotations

import pytest

from dictate.reading.marks import Mark, Number, Role
from dictate.reading.nodes import Node, limb_of, plain_part


def mark(*roles: Role) -> Mark:
    return Mark(0, 1, roles, text="word")


@pytest.mark.parametrize(
    ("roles", "part"),
    [
        ((Role("filler"), Role("normal")), "value"),
        ((Role("side", key="left"), Role("site", key="arm")), "side"),
        ((Role("correction"), Role("filler")), "correction"),
        ((Role("strike"), Role("correction")), "strike"),
        ((Role("number"),), "number"),
        ((Role("negation"), Role("absent")), "negation"),
        ((Role("severity"), Role("filler")), "severity"),
        ((Role("unit", "vibration", "s"),), "unit"),
        ((Role("qualifier", "tremor"),), "qualifier"),
        ((Role("abnormal", "gait"),), "value"),
        ((Role("site", "vibration", "toe"),), "site"),
        ((Role("grade", "tendon_reflex", "0"), Role("absent")), "value"),
        ((Role("word"),), "word"),
        ((Role("item", "gait"),), "word"),
    ],
)
def test_the_stronger_part_is_taken(roles, part):
    """A correction before everything, a value before a filler; a name is decided later, by its neighbours."""
    assert plain_part(mark(*roles)) == part


def test_a_node_says_what_it_means_of_an_item():
    """Only that item's own values, descriptors and qualifiers."""
    own, other = Role("abnormal", "gait"), Role("abnormal", "tone")
    node = Node(mark(own, other, Role("item", "gait")), "value")
    assert node.value_roles("gait") == [own]
    assert node.value_roles("bulk") == []


def test_a_node_gives_the_key_of_a_role():
    """Empty where it has no such role."""
    node = Node(mark(Role("side", key="left")), "side")
    assert (node.key("side"), node.key("site")) == ("left", "")


@pytest.mark.parametrize(("main", "breaks"), [("comma", True), ("semicolon", True), ("conj", True), ("filler", False)])
def test_breaks_are_told_from_words(main, breaks):
    """A comma, a semicolon and a link break, a filler does not."""
    assert Node(Mark(0, 1, (), Number(a=1)), main).is_break is breaks


@pytest.mark.parametrize(
    ("site", "limb"), [("arm", "upper_limb"), ("hand", "upper_limb"), ("leg", "lower_limb"), ("face", "face")]
)
def test_a_site_belongs_to_a_limb(site, limb):
    """Arms and hands, legs and feet; other sites are their own."""
    assert limb_of(site) == limb
