"""Findings → computed figures: pure, a source each, never a total from missing parts."""

from dictate.reckoning.figures import reckon
from dictate.reckoning.persons import person_of

__all__ = ["person_of", "reckon"]
