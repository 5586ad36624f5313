"""Review: queries → decisions, at the keyboard, in the browser or in the terminal."""

from dictate.review.decisions import apply, in_order, undo
from dictate.review.typed import Refused

__all__ = ["Refused", "apply", "in_order", "undo"]
