"""Live: a dictation heard as it is spoken, phrase by phrase, and nothing of it lost."""

from dictate.live.kept import Kept
from dictate.live.listen import Result, Session
from dictate.live.spoken import controls_help

__all__ = ["Kept", "Result", "Session", "controls_help"]
