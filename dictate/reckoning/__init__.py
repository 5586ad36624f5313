"""Findings → computed figures: pure, a source each, never a total from missing parts."""

from dictate.reckoning.figures import reckon

__all__ = ["reckon"]
