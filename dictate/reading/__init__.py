"""The reading room: words → findings with evidence."""

from dictate.reading.read import Reading, read
from dictate.reading.tokens import transcript_of_text

__all__ = ["Reading", "read", "transcript_of_text"]
