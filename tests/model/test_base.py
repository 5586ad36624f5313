"""Frozen: what every model of the room shares."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from dictate.model import Word


def test_models_do_not_change() -> None:
    """What one room made, no other room alters."""
    with pytest.raises(ValidationError, match="frozen"):
        Word(text="knee").text = "ankle"  # type: ignore[misc]


def test_unknown_fields_are_refused() -> None:
    """A misspelt field is an error, not a loss."""
    with pytest.raises(ValidationError, match="extra"):
        Word(text="knee", startz=1.0)  # type: ignore[call-arg]


def test_types_are_strict() -> None:
    """A text is no number."""
    with pytest.raises(ValidationError, match="number"):
        Word(text="knee", start_s="1")  # type: ignore[arg-type]
