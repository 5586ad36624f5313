"""What a grammar file may say; and whether the packaged files keep to it."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.model import Component

FEWEST_EXAMPLES = 5


def test_item_is_found_by_id(small: Grammar) -> None:
    """In whichever component it stands."""
    assert small.item("gait").name == "gait"
    assert set(small.items) >= {"gait", "lungs", "reflex_biceps"}


@pytest.mark.parametrize("ask", [Grammar.item, Grammar.component_of])
def test_unknown_id(small: Grammar, ask: object) -> None:
    """KeyError, never a guess."""
    assert callable(ask)
    with pytest.raises(KeyError):
        ask(small, "gate")


@pytest.mark.parametrize("component", Component)
def test_every_item_has_examples(grammar: Grammar, component: Component) -> None:
    """Five or more, at least one of which must yield nothing."""
    for name, item in grammar.components[component].items.items():
        assert len(item.examples) >= FEWEST_EXAMPLES, name
        assert any(not example.find for example in item.examples), f"{name}: no example that yields nothing"


@pytest.mark.parametrize("component", Component)
def test_every_item_can_be_said(grammar: Grammar, component: Component) -> None:
    """An item without a term, a sign or a value that names it could never be dictated."""
    for name, item in grammar.components[component].items.items():
        by_value = any(value.alone for value in item.values.values())
        assert item.terms or item.context_terms or item.signs or by_value or item.bare_value, name


def test_numbers_with_limits_name_their_source(grammar: Grammar) -> None:
    """Every limit and every note of what stands out says who says so."""
    for name, item in grammar.items.items():
        for claim in (item.limits, item.noteworthy):
            assert claim is None or claim.source.strip(), name
    assert all(scale.source.strip() for scale in grammar.scales.values())
