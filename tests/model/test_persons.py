"""Person."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from dictate.model import Person


def test_nothing_is_known_by_default():
    """No age, no height, no origin."""
    assert Person() == Person(age_years=None, age_from="", height_cm=None, height_from="", evidence=())


def test_the_origin_is_one_of_three():
    """An age cannot come from anywhere else."""
    with pytest.raises(ValidationError):
        Person(age_years=72.0, age_from="guess")
