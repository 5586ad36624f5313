"""What is kept and what comes back."""

from __future__ import annotations

import pytest
from pydantic import ValidationError
from records.visits import START, visit

from dictate.records.kept import Fault, Leaf, Sound


def test_a_leaf_survives_its_way_through_json() -> None:
    """Byte by byte the same examination."""
    leaf = Leaf(why="x", exam=visit(examined_at=START), sounds=(Sound(sha256="0", file="f", keep="always"),))
    assert Leaf.model_validate_json(leaf.model_dump_json()) == leaf


def test_a_leaf_with_something_unknown_is_refused() -> None:
    """Nothing is half understood."""
    with pytest.raises(ValidationError):
        Leaf.model_validate_json('{"why": "x", "unheard_of": 1}')


def test_a_fault_is_one_line() -> None:
    """Where, and what."""
    assert str(Fault(where="entry 1", what="changed")) == "entry 1: changed"
