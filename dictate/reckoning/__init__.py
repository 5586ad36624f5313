"""Findings → computed figures: pure, a source each, never a total from missing parts."""

from dictate.reckoning.doubts import with_doubts
from dictate.reckoning.figures import reckon
from dictate.reckoning.persons import person_of

__all__ = ["person_of", "reckon", "with_doubts"]
