"""The reading room: words → findings with evidence."""

from dictate.reading.read import Ears, Reading, read
from dictate.reading.tokens import transcript_of_text

__all__ = ["Ears", "Reading", "read", "transcript_of_text"]
