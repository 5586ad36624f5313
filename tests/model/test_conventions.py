"""Choices where sources differ."""

from __future__ import annotations

import pytest
from pydantic import ValidationError
from reckoning.series import figures, series

from dictate.model import Conventions, Pressure


def test_the_defaults_are_the_surer_ones():
    """No vibration norms, supine hypertension from 140/90."""
    assert Conventions() == Conventions(vibration_norms=False, supine_hypertension="140/90 or more")


def test_a_high_lying_pressure_is_a_matter_of_the_setting():
    """150/80 is high from 140/90, not above 160; a palpable pressure is judged by its systolic."""
    other = Conventions(supine_hypertension="above 160")
    assert Conventions().is_high(Pressure(systolic=150, diastolic=80))
    assert not other.is_high(Pressure(systolic=150, diastolic=95))
    assert not Conventions().is_high(Pressure(systolic=120))
    assert "Fanciulli" in Conventions().hypertension_source
    assert "160" in other.hypertension_source


def test_the_larger_fall_follows_the_setting():
    """Lying 150/80: the fall of 30 is written by default only."""
    readings = series("supine 150/80 > 1 min 118/70")
    assert len(figures("fall of 30 systolic", readings)) == 1
    other = Conventions(supine_hypertension="above 160")
    assert figures("fall of 30 systolic", readings, conventions=other) == ()


def test_an_unknown_choice_is_refused():
    """A typing error does not pass for the default."""
    with pytest.raises(ValidationError):
        Conventions.model_validate({"supine_hypertension": "150"})
    with pytest.raises(ValidationError):
        Conventions.model_validate({"vibration_norm": True})
