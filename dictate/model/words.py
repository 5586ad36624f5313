"""Word (text, start_s, end_s, probability) and Transcript (words, spans of speech, model's SHA-256)."""

from __future__ import annotations

from datetime import datetime
from typing import Literal

from pydantic import Field

from dictate.model.base import Frozen


class Word(Frozen):
    """One word as heard or typed, with its punctuation."""

    text: str
    lead: str = " "  # the white space that stood before it; line breaks of a typed transcript live here
    start_s: float | None = None  # None: typed text
    end_s: float | None = None
    probability: float | None = None
    source: int = 0  # which of the transcript's sources it came from


class Stretch(Frozen):
    """A span of a recording, in seconds from its start."""

    start_s: float
    end_s: float
    source: int = 0


class ModelIdentity(Frozen):
    """Which recogniser heard the words."""

    name: str
    sha256: str


class Sound(Frozen):
    """How good a recording was to hear; levels in dB against full scale."""

    level_db: float  # of speech
    noise_db: float | None = None  # of the pauses; None: there were none
    tones_db: float | None = None  # of tones in the pauses: music, machines, voices; None: there were no pauses
    voices_apart: float = 0.0  # semitones between two voices; 0: one voice, or two that are not clearly apart
    second_voice: tuple[tuple[float, float], ...] = ()  # of the one heard less: from, to in seconds
    other_channel: tuple[tuple[float, float], ...] = ()  # the talker heard less of two on a channel each, in seconds
    clipped: float = 0.0  # share of samples cut off at the top
    language: str = "en"


class Source(Frozen):
    """One recording or transcript the words came from."""

    name: str
    kind: Literal["recording", "text"]
    sha256: str
    duration_s: float | None = None
    created_at: datetime | None = None  # the recording's own creation time, when it carries one
    sound: Sound | None = None  # None: typed, or nobody spoke


class Hints(Frozen):
    """Terms of the trade that the recogniser is told to expect."""

    first: tuple[str, ...] = ()  # some terms of every component, for the first pass
    by_component: dict[str, tuple[str, ...]] = Field(default_factory=dict)  # whole list of a component
    headings: dict[str, tuple[str, ...]] = Field(default_factory=dict)  # spoken headings of a component


class Transcript(Frozen):
    """Everything that was heard or typed, in order."""

    words: tuple[Word, ...] = ()
    sources: tuple[Source, ...] = ()
    speech: tuple[Stretch, ...] = ()  # where voice was found
    untranscribed: tuple[Stretch, ...] = ()  # voiced, and yet without words
    model: ModelIdentity | None = None  # None: typed text

    def quote(self, first: int, last: int) -> str:
        """The words first..last (both included) as they stand in the transcript."""
        return "".join(w.lead + w.text for w in self.words[first : last + 1]).strip()
